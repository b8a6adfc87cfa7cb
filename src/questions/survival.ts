/**
 * What became of a brood: the share that lived from one stage to the next, between what the numbers
 * allow, and the curve of those that were lost. Sold, given away and culled fish did not die of
 * themselves: up to that day they lived, after it nobody knows.
 */
import type { Because } from '../core/because.ts';
import type { Day } from '../core/day.ts';
import { toDay } from '../core/day.ts';
import type { Interval } from '../core/interval.ts';
import { clamp } from '../core/interval.ts';
import type { DeepReadonly } from '../core/readonly.ts';
import type { Place } from '../core/span.ts';
import { linesOf } from '../core/span.ts';
import { countWords, dayWords, plural, shareWords } from '../core/words.ts';
import { medianSurvival, survivalCurve } from '../science/survival.ts';
import type { Leaving, SurvivalStep } from '../science/survival.ts';
import type { SeenBrood } from '../state/bodies.ts';
import { rankOfStage } from '../state/broodlife.ts';
import type { Room } from '../state/draft.ts';
import { countsAsKnown } from '../state/hindsight.ts';
import type { Gone } from '../state/stock.ts';
import { middleOf } from './counts/ledger.ts';

type PointName = 'eggs' | 'hatched' | 'swimming' | 'first count' | 'first sale' | 'last count';

/** How many there were at a point of their life. */
export interface Point {
  readonly at: PointName;
  readonly day: Day;
  readonly count: Interval;
  readonly places: readonly DeepReadonly<Place>[];
}

/** The share that lived from one point to the next, 0 to 1. */
export interface StageSurvival {
  readonly from: Point;
  readonly to: Point;
  readonly share: Interval;
}

export interface Survival {
  /** First day on which a number was said. */
  readonly from: Day;
  /** How many there were then, as later lines show. */
  readonly start: Interval;
  /** Share alive by days since `from` (Kaplan–Meier, 95 % log-log limits), at the likely numbers. */
  readonly steps: readonly SurvivalStep[];
  /** Days since `from` by which half were lost; null while more live. */
  readonly median: number | null;
  /** Losses and leavings behind the curve. */
  readonly leavings: readonly Leaving[];
  readonly stages: readonly StageSurvival[];
  /** Found dead, missing, eaten, culled; left alive; and lost between counts without a line. */
  readonly fates: Fates;
  /** The fates in words. */
  readonly says: string;
  /** False where any number behind the curve was a guess. */
  readonly counted: boolean;
  readonly because: Because;
}

interface Fates {
  readonly died: number;
  readonly missing: number;
  readonly eaten: number;
  readonly culled: number;
  readonly leftAlive: number;
  readonly unseen: number;
}

/** What became of a brood; null where nobody ever said how many there were. */
export function survivalOf(room: Room, brood: SeenBrood): Survival | null {
  const known = countsAsKnown(brood).filter(({ total }) => total.high > 0 && Number.isFinite(total.high));
  const [first] = known;
  if (!first || brood.suspected) return null;
  const { leavings, fates, start } = tallied(room, brood, known);
  const steps = survivalCurve(start, leavings);
  const stages = stagesOf(brood);
  const counted = known.every(({ total }) => total.low === total.high);
  const whole = { low: Math.min(first.total.low, start), likely: start, high: Math.max(first.total.high, start) };
  return {
    from: first.day,
    start: whole,
    steps,
    median: medianSurvival(steps),
    leavings,
    stages,
    fates,
    says: fateWords(fates),
    counted,
    because: becauseOf(room, brood, { from: first.day, start: whole, steps, stages, fates, known }),
  };
}

/** Number by number from the first: what is missing at a count and no line tells of was lost by then. */
function tallied(
  room: Room,
  brood: SeenBrood,
  known: ReturnType<typeof countsAsKnown>,
): { leavings: readonly Leaving[]; fates: Fates; start: number } {
  const from = known[0]?.day ?? room.on;
  const outs = (after: Day, until: number): readonly DeepReadonly<Gone>[] =>
    brood.gone.filter((gone) => gone.day > after && gone.day <= until);
  const numbers: number[] = [];
  for (let index = known.length - 1; index >= 0; index--) {
    const here = known[index];
    if (!here) continue;
    const next = known[index + 1];
    const gone = next ? outs(here.day, next.day).reduce((sum, one) => sum + numberOf(one), 0) : 0;
    const least = next ? (numbers[0] ?? 0) + gone : 0;
    numbers.unshift(Math.max(Math.round(middleOf(here.total)), least));
  }
  const fates = { died: 0, missing: 0, eaten: 0, culled: 0, leftAlive: 0, unseen: 0 };
  const leavings: Leaving[] = [];
  let left = numbers[0] ?? 0;
  const start = left;
  for (const [index, here] of known.entries()) {
    const next = known[index + 1];
    for (const gone of outs(here.day, next?.day ?? Infinity)) {
      const number = gone.whole ? left : Math.min(left, numberOf(gone));
      left -= number;
      const fate = fateOf(gone.how);
      fates[fate] += number;
      const alive = fate === 'leftAlive' || fate === 'culled';
      leavings.push({ day: gone.day - from, died: alive ? 0 : number, left: alive ? number : 0 });
    }
    const unseen = next ? Math.max(0, left - (numbers[index + 1] ?? left)) : 0;
    if (next && unseen > 0) leavings.push({ day: next.day - from, died: unseen, left: 0 });
    left -= unseen;
    fates.unseen += unseen;
  }
  return { leavings, fates, start };
}

function numberOf({ count }: DeepReadonly<Gone>): number {
  return Math.round(middleOf(count));
}

function fateOf(how: Gone['how']): keyof Fates {
  switch (how) {
    case 'sold':
    case 'gave away':
    case 'joined':
      return 'leftAlive';
    default:
      return how;
  }
}

/** How many there were at each point where that can be told, in order of time. */
function pointsOf(brood: SeenBrood): readonly Point[] {
  const points: Point[] = [];
  const add = (at: PointName, day: Day, count: Interval | null, place: DeepReadonly<Place> | undefined): void => {
    const before = points.at(-1);
    if (count === null || count.high <= 0 || !Number.isFinite(count.high) || (before && day < before.day)) return;
    points.push({ at, day, count: aliveOn(brood, day, count), places: place ? [place] : [] });
  };
  const eggs = brood.looks.find((look) => look.stage === 'eggs' && look.count !== null);
  if (eggs) add('eggs', eggs.day, eggs.count, eggs.place);
  for (const [rank, at] of [
    [1, 'hatched'],
    [2, 'swimming'],
  ] as const) {
    const look = brood.looks.find((one) => rankOfStage(one.stage) === rank && one.count !== null);
    if (look) add(at, look.day, look.count, look.place);
  }
  const counts = standing(brood);
  const sure = counts.find((seen) => seen.sure && seen.total.low === seen.total.high);
  if (sure) add('first count', sure.day, sure.total, sure.place);
  const sale = brood.gone.find(({ how }) => how === 'sold');
  if (sale) add('first sale', toDay(sale.day - 1), aliveOn(brood, toDay(sale.day - 1), null), sale.place);
  const last = counts.at(-1);
  // Without a count since the point before it, nobody knows how many live on.
  if (last && last.day > (points.at(-1)?.day ?? Infinity)) add('last count', last.day, last.total, last.place);
  return points;
}

/** Its counts without those that a later one of the same moment replaced. */
function standing(brood: SeenBrood): SeenBrood['counts'] {
  return brood.counts.filter(({ replaced }) => !replaced);
}

/** How many were alive on a day: no fewer than are left and have gone since, no more than was counted before and has not gone. */
function aliveOn(brood: SeenBrood, day: Day, said: Interval | null): Interval {
  const went = (until: number): number =>
    brood.gone.reduce((sum, gone) => sum + (gone.day > day && gone.day <= until ? gone.count.low : 0), 0);
  const counts = standing(brood);
  const later = counts.filter((seen) => seen.day >= day).map((seen) => seen.total.low + went(seen.day));
  const least = Math.max(brood.total.low + went(Infinity), ...later);
  const before = counts.findLast((seen) => seen.day <= day);
  const between = before ? brood.gone.filter((gone) => gone.day > before.day && gone.day <= day) : [];
  const most = before
    ? Math.max(0, before.total.high - between.reduce((sum, gone) => sum + gone.count.low, 0))
    : Infinity;
  const low = Math.max(said?.low ?? 0, least);
  const high = Math.max(low, said?.high ?? most);
  const middle = said ? middleOf(said) : Math.sqrt(Math.max(low, 0.5) * (Number.isFinite(high) ? high : low));
  return { low, likely: Math.round(clamp(middle, low, high)), high };
}

/** From each point to the next; what left alive between them lived, and no share is above one. */
function stagesOf(brood: SeenBrood): readonly StageSurvival[] {
  const points = pointsOf(brood);
  return points.slice(1).flatMap((to, index) => {
    const from = points[index];
    if (!from || (to.day === from.day && to.at !== 'first count')) return [];
    const alive = brood.gone.filter((gone) => gone.day > from.day && gone.day <= to.day && countsAsAlive(gone.how));
    const sum = (end: (gone: DeepReadonly<Gone>) => number): number => alive.reduce((all, gone) => all + end(gone), 0);
    const least = to.count.low + sum(({ count }) => count.low);
    const most = to.count.high + sum(({ count }) => count.high);
    const middle = middleOf(to.count) + sum(({ count }) => middleOf(count));
    const low = clamp(least / from.count.high, 0, 1);
    const high = clamp(most / Math.max(1, from.count.low, least), low, 1);
    return [{ from, to, share: { low, likely: clamp(middle / middleOf(from.count), low, high), high } }];
  });
}

function countsAsAlive(how: Gone['how']): boolean {
  const fate = fateOf(how);
  return fate === 'leftAlive' || fate === 'culled';
}

/** `3 died, 1 missing, 12 left alive`; the culled and the unseen each by themselves. */
export function fateWords({ died, missing, eaten, culled, leftAlive, unseen }: Fates): string {
  const told = [
    [died, 'found dead'],
    [missing, 'missing'],
    [eaten, 'eaten'],
    [culled, 'culled'],
    [leftAlive, 'sold, given away or grown into groups'],
    [unseen, 'lost between counts, unseen'],
  ] as const;
  const words = told.filter(([number]) => number > 0).map(([number, what]) => `${String(number)} ${what}`);
  return words.length === 0 ? 'no loss written down' : words.join(', ');
}

function becauseOf(
  room: Room,
  brood: SeenBrood,
  {
    from,
    start,
    steps,
    stages,
    fates,
    known,
  }: Pick<Survival, 'from' | 'start' | 'steps' | 'stages' | 'fates'> & { known: ReturnType<typeof countsAsKnown> },
): Because {
  const shown = steps.length > 8 ? [...steps.slice(0, 3), ...steps.slice(-4)] : steps;
  return {
    rule: 'sold, given away and culled fish lived up to that day and are no deaths; what a count finds missing was lost by then. Survival on a day with losses = survival before × (1 − lost ÷ there)',
    source: 'Kaplan & Meier 1958; limits log-log by Greenwood, 95 %; the numbers from the journal',
    steps: [
      `${dayWords(from, room.on)}: ${countWords(start)} at the start`,
      fateWords(fates),
      ...shown.map(
        ({ day, atRisk, died, survival }) =>
          `${plural(day, 'day')} on: × (1 − ${String(died)}/${String(atRisk)}) = ${String(Math.round(survival * 1000) / 10)} %`,
      ),
      ...stages.map(
        ({ from: a, to: b, share }) =>
          `${a.at} ${countWords(a.count)} to ${b.at} ${countWords(b.count)}: ${shareWords(share)}`,
      ),
    ],
    lines: linesOf([
      ...known.map(({ place }) => place),
      ...brood.gone.map(({ place }) => place),
      ...stages.flatMap(({ from: a, to: b }) => [...a.places, ...b.places]),
    ]),
  };
}
