/** What a plan made as large as it can be, in words and in numbers. */
import type { Because } from '../../core/because.ts';
import type { Day } from '../../core/day.ts';
import { dayWords, plural, rangeWords, listWords } from '../../core/words.ts';
import { FILLING } from '../../science/boxes.ts';
import type { Weeks } from './glass.ts';
import type { PlanRules, SalePlan } from './plan.ts';

type Made = Omit<SalePlan, 'objective' | 'because'> & { readonly weeks: Weeks };

/** `likely income 412.30 CAD + 9.2 tank-weeks × 1.66 CAD = about 428 CAD`. */
export function objectiveOf({ income, tankWeeks, tankWeekValue, worth, currency }: Made): string {
  const unit = currency === null ? '' : ` ${currency}`;
  if (tankWeekValue.amount === 0)
    return `likely income ${income.likely.toFixed(2)}${unit}; ${tankWeeks.toFixed(1)} tank-weeks go free besides`;
  return `likely income ${income.likely.toFixed(2)}${unit} + ${tankWeeks.toFixed(1)} tank-weeks × ${tankWeekValue.amount.toFixed(2)}${unit} = about ${worth.toFixed(0)}${unit}`;
}

export function planBecause(plan: Made, now: Day): Because {
  const { rules, weeks, tankWeekValue, lines } = plan;
  return {
    rule: 'as much as can be of: likely income after the split, and tank-weeks that go free at what one is worth; a whole-number programme solved to the end, never below taking the dearest bags first',
    source: 'the journal; ours: that income and glass are added up in money',
    steps: [
      objectiveOf(plan),
      `a tank-week: ${tankWeekValue.amount.toFixed(2)}, ${tankWeekValue.from}`,
      `fish that stay hold their tanks ${weeks.weeks.toFixed(1)} weeks more: ${weeks.from}`,
      `rules: ${listWords(ruleWords(rules))}`,
      `on ${dayWords(plan.on, now)}: ${plural(plan.fish, 'fish', 'fish')} in ${plural(bagsOf(plan), 'bag')}`,
    ],
    lines,
  };
}

function bagsOf({ lots }: Pick<SalePlan, 'lots'>): number {
  return lots.reduce((sum, { bags }) => sum + bags.length, 0);
}

/** Each rule of a plan in words, for its head. */
export function ruleWords(rules: PlanRules): readonly string[] {
  const share = { low: rules.sellerShare.low * 100, likely: null, high: rules.sellerShare.high * 100 };
  return [
    ...(rules.lots === null ? [] : [`${plural(rules.lots, 'lot')} at the most, each bag one`]),
    `bags of ${rangeWords(rules.bagOf)}${rules.bagOfSaid ? '' : ' (usual for unsexed young)'}`,
    ...(rules.bagsPerSpecies === null ? [] : [`${plural(rules.bagsPerSpecies, 'bag')} of a species`]),
    ...(rules.minimum === null ? [] : [`minimum ${rules.minimum.toFixed(2)} a bag`]),
    `the seller gets ${rangeWords(share)} %`,
    ...(rules.boxes === null
      ? []
      : [`${plural(rules.boxes, 'box', 'boxes')} of ${rules.boxLitres} L, filled to ${FILLING * 100} %`]),
  ];
}
