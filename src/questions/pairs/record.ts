/** What a pair's broods come to: days between spawns, failures, white eggs, clutches, young raised for the glass they took. */
import type { Interval } from '../../core/interval.ts';
import { clamp } from '../../core/interval.ts';
import type { DeepReadonly } from '../../core/readonly.ts';
import type { Place } from '../../core/span.ts';
import { mad, median } from '../../core/stats.ts';
import { plural, rangeWords, shareWords } from '../../core/words.ts';
import { medianSurvival, survivalCurve } from '../../science/survival.ts';
import type { SurvivalStep } from '../../science/survival.ts';
import { robustLine } from '../../science/trend.ts';
import type { SeenBrood, SeenGroup } from '../../state/bodies.ts';
import { reached } from '../../state/broodlife.ts';
import type { Room } from '../../state/draft.ts';
import { likelyCount } from '../counts.ts';
import { oncePerRoom } from '../holds/once.ts';
import { leftAlive, middleOf } from '../counts/ledger.ts';
import { laidDay } from '../laying.ts';
import { stays, tankWeeks } from '../money/stays.ts';
import { survivalOf } from '../survival.ts';
import { ownIntervals } from './spawning.ts';

export interface Intervals {
  readonly count: number;
  /** Median days between spawns, and the median absolute deviation from it. */
  readonly median: number;
  readonly mad: number;
}

export interface BroodRecord {
  /** Days to the next spawn after broods that left early, and after broods that stayed; null where there was none. */
  readonly afterEarly: Intervals | null;
  readonly afterKept: Intervals | null;
  /** Latest broods in a row that came to nothing, and how many of all whose fate is known. */
  readonly failures: { readonly running: number; readonly all: number; readonly of: number };
  /** Share of the eggs that went white, where both were written down. */
  readonly white: { readonly share: Interval; readonly broods: number } | null;
  readonly clutches: { readonly eggs: readonly number[]; readonly trend: 'growing' | 'shrinking' | null };
  /** Young sold, given away or alive, for the tank-weeks of the pair and its broods. */
  readonly raised: { readonly young: Interval; readonly tankWeeks: number; readonly perWeek: Interval } | null;
  /** Survival by age in days from laying, all broods together (Kaplan–Meier, late entry). */
  readonly survival: {
    readonly steps: readonly SurvivalStep[];
    readonly median: number | null;
    readonly broods: number;
  };
  readonly says: readonly string[];
  readonly places: readonly DeepReadonly<Place>[];
}

/** Fewer clutches than this have no trend; and it must come to a quarter of the usual clutch (ours). */
const ENOUGH_CLUTCHES = 4;
const TREND_SHARE = 0.25;

export function recordOf(room: Room, group: SeenGroup, broods: readonly SeenBrood[]): BroodRecord {
  const intervals = ownIntervals(room, group, broods);
  const told = {
    afterEarly: intervalsOf(intervals.flatMap(({ days, early }) => (early ? [days] : []))),
    afterKept: intervalsOf(intervals.flatMap(({ days, early }) => (early ? [] : [days]))),
    failures: failuresOf(broods),
    white: whiteOf(broods),
    clutches: clutchesOf(broods),
    raised: raisedOf(room, group, broods),
    survival: pooled(room, broods),
  };
  const places = broods.flatMap((brood) => [...brood.lines.slice(0, 1), ...(brood.ended ? [brood.ended.place] : [])]);
  return { ...told, says: wordsOf(told), places };
}

function intervalsOf(days: readonly number[]): Intervals | null {
  const middle = median(days);
  return middle === null ? null : { count: days.length, median: middle, mad: mad(days) ?? 0 };
}

/** True where a brood came to nothing, false where young of it were raised past swimming, null while nobody can say. */
export function cameToNothing(brood: SeenBrood): boolean | null {
  if (brood.gone.some(leftAlive) || brood.moved || brood.ended?.how === 'mixed') return false;
  if (brood.ended !== null) return true;
  return reached(brood, 'swam') ? false : null;
}

function failuresOf(broods: readonly SeenBrood[]): BroodRecord['failures'] {
  const known = broods.map(cameToNothing).filter((failed) => failed !== null);
  const running = known.toReversed().findIndex((failed) => !failed);
  return {
    running: running < 0 ? known.length : running,
    all: known.filter((failed) => failed).length,
    of: known.length,
  };
}

function whiteOf(broods: readonly SeenBrood[]): BroodRecord['white'] {
  const told = broods.flatMap(({ white, eggs }) => (white === null || eggs === null ? [] : [{ white, eggs }]));
  if (told.length === 0) return null;
  const sum = (of: (one: (typeof told)[number]) => number): number => told.reduce((all, one) => all + of(one), 0);
  const low = clamp(sum(({ white }) => white.low) / sum(({ eggs }) => eggs.high), 0, 1);
  const high = clamp(
    sum(({ white }) => white.high) /
      Math.max(
        1,
        sum(({ eggs }) => eggs.low),
      ),
    low,
    1,
  );
  const likely = clamp(sum(({ white }) => middleOf(white)) / sum(({ eggs }) => middleOf(eggs)), low, high);
  return { share: { low, likely, high }, broods: told.length };
}

function clutchesOf(broods: readonly SeenBrood[]): BroodRecord['clutches'] {
  const eggs = broods.flatMap((brood) =>
    brood.eggs === null || !Number.isFinite(brood.eggs.high) ? [] : [middleOf(brood.eggs)],
  );
  const line = eggs.length < ENOUGH_CLUTCHES ? null : robustLine(eggs.map((y, x) => ({ x, y })));
  const change = line === null ? 0 : (line.slope * (eggs.length - 1)) / (median(eggs) ?? 1);
  return { eggs, trend: change >= TREND_SHARE ? 'growing' : change <= -TREND_SHARE ? 'shrinking' : null };
}

/** Weeks of glass that each stock held up to the room's day, its part where it shared a tank. */
const weeksOf: (room: Room) => ReadonlyMap<string, number> = oncePerRoom((room) => {
  const held = tankWeeks(stays(room), null, room.on);
  return new Map([...held].map(([name, tanks]) => [name, tanks.reduce((sum, { weeks }) => sum + weeks, 0)]));
});

/** Young that were sold, given away or are likely alive past swimming, and the glass that they and their parents took. */
function raisedOf(room: Room, group: SeenGroup, broods: readonly SeenBrood[]): BroodRecord['raised'] {
  const held = weeksOf(room);
  const weeks = [group, ...broods].reduce((sum, { name }) => sum + (held.get(name) ?? 0), 0);
  if (weeks <= 0 || broods.length === 0) return null;
  const young = broods
    .map((brood) => youngOf(room, brood))
    .reduce(
      (all, one) => ({
        low: all.low + one.low,
        likely: (all.likely ?? 0) + (one.likely ?? one.low),
        high: all.high + one.high,
      }),
      { low: 0, likely: 0, high: 0 },
    );
  const per = (count: number): number => count / weeks;
  return {
    young,
    tankWeeks: weeks,
    perWeek: { low: per(young.low), likely: per(young.likely ?? young.low), high: per(young.high) },
  };
}

function youngOf(room: Room, brood: SeenBrood): Interval {
  const alive = brood.gone.filter(leftAlive);
  const swims = brood.ended === null && (brood.moved || reached(brood, 'swam'));
  const now = swims ? (likelyCount(room, brood) ?? brood.total) : { low: 0, likely: 0, high: 0 };
  const sum = (of: (count: Interval) => number): number => alive.reduce((all, { count }) => all + of(count), 0);
  return {
    low: sum(({ low }) => low) + now.low,
    likely: sum(middleOf) + middleOf(now),
    high: sum(({ high }) => high) + now.high,
  };
}

/** All broods on one clock, age from laying: each comes under watch at the age of its first number. */
function pooled(room: Room, broods: readonly SeenBrood[]): BroodRecord['survival'] {
  const told = broods.flatMap((brood) => {
    const laid = laidDay(room, brood);
    const survival = survivalOf(room, brood);
    return laid === null || survival === null ? [] : [{ at: survival.from - laid, survival }];
  });
  const leavings = told.flatMap(({ at, survival }) => [
    { day: at, died: 0, left: 0, entered: survival.start.likely ?? survival.start.low },
    ...survival.leavings.map((one) => ({ ...one, day: one.day + at })),
  ]);
  const steps = survivalCurve(0, leavings);
  return { steps, median: medianSurvival(steps), broods: told.length };
}

function wordsOf(record: Omit<BroodRecord, 'says' | 'places'>): string[] {
  const { afterEarly, afterKept, failures, white, clutches, raised, survival } = record;
  const last = survival.steps.at(-1);
  const between = [intervalWords(afterEarly, 'taken early'), intervalWords(afterKept, 'that stayed')].filter(
    (words) => words !== null,
  );
  return [
    ...(between.length === 0 ? [] : [`days to the next spawn: ${between.join('; ')}`]),
    ...(failures.of === 0
      ? []
      : [
          `${String(failures.all)} of ${plural(failures.of, 'brood')} came to nothing${failures.running > 1 ? `, the last ${String(failures.running)} in a row` : ''}`,
        ]),
    ...(white === null
      ? []
      : [`white eggs: ${shareWords(white.share)} (${plural(white.broods, 'clutch', 'clutches')})`]),
    ...(clutches.eggs.length < 2
      ? []
      : [
          `clutches: ${clutches.eggs.slice(-6).map(Math.round).join(', ')} eggs${clutches.trend === null ? '' : `, ${clutches.trend}`}`,
        ]),
    ...(last === undefined || survival.broods === 0
      ? []
      : [
          `young of ${plural(survival.broods, 'brood')}: ${String(Math.round(last.survival * 100))} % lived to ${plural(Math.round(last.day), 'day')} from laying, sold and moved fish counted as alive`,
        ]),
    ...(raised === null
      ? []
      : [
          `young raised: ${rangeWords(raised.young)} in ${String(Math.round(raised.tankWeeks))} tank-weeks, ${rangeWords(raised.perWeek, 1)} a tank-week`,
        ]),
  ];
}

function intervalWords(intervals: Intervals | null, what: string): string | null {
  if (intervals === null) return null;
  const { count, median: middle, mad: spread } = intervals;
  return `${String(Math.round(middle))} after broods ${what} (${plural(count, 'interval')}${count > 1 ? `, give or take ${String(Math.round(spread))}` : ''})`;
}
