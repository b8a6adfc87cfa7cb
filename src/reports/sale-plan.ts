/** A plan for an auction, as text: what goes in which bags, what stays at home and why, and what it is worth. */
import type { PlanBag, PlanBox, PlanLeft, PlanLot, SalePlan } from '../questions/plan/plan.ts';
import type { Look } from './look.ts';
import { table, type Row } from './table.ts';
import { dayText, heading, listWords, plural, rangeWords } from './words.ts';
import { paragraph } from './wrap.ts';

export function planText(plan: SalePlan, look: Look): string {
  const [first = '', ...more] = paragraph(`${heading(look)}: ${matters(plan, look)}`, look.width, 2).split('\n');
  const blocks = [
    [look.paint.strong(first), ...more].join('\n'),
    table(
      look,
      goesColumns(plan),
      plan.lots.map((lot) => goesRow(lot, plan, look)),
    ).trimEnd(),
    boxLines(plan, look),
    table(
      look,
      STAYS,
      plan.leftOut.map((left) => staysRow(left)),
    ).trimEnd(),
    closing(plan)
      .map((line) => paragraph(line, look.width, 2))
      .join('\n'),
  ];
  return `${blocks.filter((block) => block !== '').join('\n\n')}\n`;
}

function matters(plan: SalePlan, look: Look): string {
  const day = dayText(plan.on, look);
  const where = plan.auction === null ? ` on ${day}` : ` for ${plan.auction} on ${day}`;
  const bags = plan.lots.reduce((sum, lot) => sum + lot.bags.length, 0);
  if (bags === 0) return `nothing can go${where}`;
  const { low, likely } = plan.income;
  const least = low === null ? '' : `, ${money(low, plan)} at the least`;
  const what = `${plural(bags, 'bag')}, ${plural(plan.fish, 'fish', 'fish')}`;
  const goes = plan.past ? `${plan.auction ?? ''} was on ${day}; by its rules ${what} could go today` : what + where;
  return `${goes}; likely ${money(likely, plan)} after the split${least}`;
}

function money(amount: number, { currency }: SalePlan): string {
  return `${amount.toFixed(2)}${currency === null ? '' : ` ${currency}`}`;
}

function goesColumns({ currency }: SalePlan): readonly { head: string; align?: 'right'; wraps?: boolean }[] {
  return [
    { head: 'bag' },
    { head: 'goes', wraps: true },
    { head: 'where' },
    { head: 'fish', align: 'right' },
    { head: 'mm', align: 'right' },
    { head: currency === null ? 'likely' : `likely ${currency}`, align: 'right' },
    { head: 'each bag', wraps: true },
  ];
}

function goesRow(lot: PlanLot, { rules }: SalePlan, look: Look): Row {
  return {
    cells: [
      numbers(lot.bags),
      lotWords(lot),
      lot.tank,
      { text: fishWords(lot.bags), paint: look.paint.strong },
      lot.size === null ? '' : `${rangeWords(lot.size)}${lot.sizeRead ? '' : '?'}`,
      lot.price === null ? 'no price' : lot.income.likely.toFixed(2),
      bagWords(lot.bags, rules.oxygen),
    ],
    under: lot.cautions.map((caution) => `take care: ${caution}`),
  };
}

/** `4–6`: the bags of a lot are numbered in a row. */
function numbers(bags: readonly PlanBag[]): string {
  const all = bags.map(({ number }) => number);
  return rangeWords({ low: Math.min(...all), likely: null, high: Math.max(...all) });
}

/** `Rowan-1, krib`; a bonded pair as one; the species once, where the name of the stock has it. */
function lotWords({ name, species, bondedPair }: PlanLot): string {
  const stock = bondedPair ? `bonded pair ${name}` : name;
  return species === null || stock.startsWith(species) ? stock : `${stock}, ${species}`;
}

/** `3 × 6`, or `2 × 6 + 4` where bags differ. */
function fishWords(bags: readonly PlanBag[]): string {
  const sizes = [...new Set(bags.map(({ count }) => count))];
  return sizes
    .map((size) => {
      const many = bags.filter(({ count }) => count === size).length;
      return many === 1 ? String(size) : `${many} × ${size}`;
    })
    .join(' + ');
}

/** `0.9 L water, 1.8 L air`, or `each fish alone: …` where fish travel alone. */
function bagWords(bags: readonly PlanBag[], oxygen: boolean): string {
  const [first] = bags;
  if (first === undefined) return '';
  const litres = `${first.water.toFixed(1)} L water, ${first.air.toFixed(1)} L ${oxygen ? 'oxygen' : 'air'}`;
  if (first.packs === 1) return litres;
  return first.alone ? `each fish alone: ${litres}` : `${first.packs} packs of ${litres}`;
}

function boxLines({ boxes, rules, lots }: SalePlan, look: Look): string {
  if (boxes.length === 0) return '';
  const many = lots.flatMap(({ bags }) => bags);
  const lines = boxes.map((box) => `box ${box.number}: ${packWords(box, many)}`);
  const how = rules.boxes === null ? 'as many as are needed; --boxes 2 for no more' : `${rules.boxes} at the most`;
  return [
    paragraph(`${plural(boxes.length, 'box', 'boxes')} of ${rules.boxLitres} L (${how})`, look.width, 2),
    ...lines.map((line) => paragraph(line, look.width, 2)),
  ].join('\n');
}

/** `bags 1–4 and 2 packs of bag 5`. */
function packWords({ packs }: PlanBox, bags: readonly PlanBag[]): string {
  const whole = packs.filter(({ bag, packs: here }) => bags.find(({ number }) => number === bag)?.packs === here);
  const parts = packs.filter((one) => !whole.includes(one));
  const runs = runsOf(whole.map(({ bag }) => bag));
  return listWords([
    ...(whole.length === 0 ? [] : [`${whole.length === 1 ? 'bag' : 'bags'} ${runs.join(', ')}`]),
    ...parts.map(({ bag, packs: here }) => `${plural(here, 'pack')} of bag ${bag}`),
  ]);
}

/** `1–3`, `7`: whole numbers in rising order, those in a row together. */
function runsOf(numbers: readonly number[]): readonly string[] {
  const runs: { from: number; to: number }[] = [];
  for (const number of numbers) {
    const last = runs.at(-1);
    if (last !== undefined && last.to === number - 1) last.to = number;
    else runs.push({ from: number, to: number });
  }
  return runs.map(({ from, to }) => (from === to ? String(from) : `${from}–${to}`));
}

const STAYS = [
  { head: 'stays', wraps: true },
  { head: 'where' },
  { head: 'free', align: 'right' as const },
  { head: 'because', wraps: true },
];

function staysRow({ name, species, tank, free, why }: PlanLeft): Row {
  const stock = species === null || name.startsWith(species) ? name : `${name}, ${species}`;
  return { cells: [stock, tank, free === 0 ? '–' : String(free), why] };
}

function closing(plan: SalePlan): string[] {
  const { lots, rules, emptied, tankWeekValue, warnings } = plan;
  if (lots.length === 0) return [...warnings];
  const fasts = [...new Set(lots.map(({ fastDays }) => fastDays))].toSorted((a, b) => b - a);
  const [longest = 0, shorter] = fasts;
  const young = shorter === undefined ? '' : `, ${plural(shorter, 'day')} for the young of ${youngOf(lots, shorter)}`;
  const unread = lots.some(({ size, sizeRead }) => size !== null && !sizeRead);
  return [
    `made as large as can be: ${plan.objective}`,
    `a tank-week: ${tankWeekValue.from}`,
    ...(emptied.length === 0 ? [] : [`comes free: ${listWords(emptied)}`]),
    `before bagging: no food for ${plural(longest, 'day')}${young}`,
    ...(unread ? ['a length with ? is what is usual for their age: nobody measured them'] : []),
    ...warnings,
    `take care: water and ${rules.oxygen ? 'oxygen' : 'air'} for ${rules.hours} h from bagging to unpacking; keep them dark and even in warmth; permits are local law; never release fish, plants or water`,
  ];
}

function youngOf(lots: readonly PlanLot[], days: number): string {
  return listWords([...new Set(lots.filter(({ fastDays }) => fastDays === days).map(({ name }) => name))]);
}
