/** What stays at home, and every reason for it. */
import { plural } from '../../core/words.ts';
import type { Limits } from '../../science/choose.ts';
import type { Room } from '../../state/draft.ts';
import { dayWords } from '../../core/words.ts';
import { rowId } from '../id.ts';
import type { Lot, SaleAnswer } from '../sale.ts';
import type { Candidate } from './candidates.ts';
import { LIMIT, type Offer } from './offers.ts';
import type { PlanLeft, PlanRules } from './plan.ts';

interface Bagged {
  readonly offer: Offer;
  readonly bags: number;
}

export interface Outcome {
  /** The auction, or what stands for it in ids. */
  readonly plan: string;
  readonly answer: SaleAnswer;
  /** Every stock that may go, with its offers or why it has none. */
  readonly ways: readonly { readonly of: Candidate; readonly offers: readonly Offer[] | string }[];
  readonly taken: readonly Bagged[];
  readonly limits: Limits;
  readonly rules: PlanRules;
}

/** First what could go and stays, then what is blocked. */
export function leftBehind(room: Room, outcome: Outcome): readonly PlanLeft[] {
  return [
    ...outcome.ways.flatMap((way) => couldGo(way, outcome)),
    ...outcome.answer.lots.filter(({ ready }) => !ready).map((lot) => blocked(room, outcome.plan, lot)),
  ];
}

function couldGo({ of, offers }: Outcome['ways'][number], outcome: Outcome): PlanLeft[] {
  const going = outcome.taken
    .filter(({ offer }) => offer.of === of)
    .reduce((sum, { offer, bags }) => sum + offer.bag * bags, 0);
  const free = of.free - going;
  if (free <= 0) return [];
  const why = typeof offers === 'string' ? offers : whyNot(of, offers, free, outcome);
  return [
    {
      id: rowId(outcome.plan, of.body.name, of.tank, 'stays'),
      stock: of.body.name,
      name: of.name,
      species: of.species,
      tank: of.tank,
      free,
      why: [why],
      lines: of.lines,
    },
  ];
}

function whyNot(of: Candidate, offers: readonly Offer[], free: number, { taken, limits, rules }: Outcome): string {
  const [smallest] = offers.toSorted((a, b) => a.bag - b.bag);
  if (smallest === undefined) return 'no bag fits the rules';
  if (free < smallest.bag) return `no full bag of ${smallest.bag}`;
  const room = (name: string): number =>
    (limits.get(name) ?? Infinity) -
    taken.reduce((sum, { offer, bags }) => sum + (offer.takes.get(name) ?? 0) * bags, 0);
  if (room(LIMIT.species(of)) < 1)
    return `${plural(rules.bagsPerSpecies ?? 0, 'bag')} of ${of.species ?? of.name} at the most`;
  if (room(LIMIT.bags) < 1)
    return rules.lots === 0
      ? 'the auction takes no lots'
      : `all ${plural(rules.lots ?? 0, 'lot')} are taken by bags that are worth more`;
  if (room(LIMIT.litres) < (smallest.takes.get(LIMIT.litres) ?? 0))
    return `no room in ${plural(rules.boxes ?? 0, 'box', 'boxes')}`;
  if (room(LIMIT.body(of)) < smallest.bag) return 'no more of them are surely there in all tanks together';
  return 'other bags are worth more together';
}

function blocked(room: Room, plan: string, lot: Lot): PlanLeft {
  return {
    id: rowId(plan, lot.name, lot.tank, 'stays'),
    stock: lot.name,
    name: lot.stock,
    species: lot.species,
    tank: lot.tank,
    free: 0,
    why: lot.blockers.map(({ why, until }) =>
      until === null || lot.blockers.length === 1 ? why : `${why}, until ${dayWords(until, room.on)}`,
    ),
    lines: lot.lines,
  };
}
