/**
 * What the disputes of a pair come to in numbers: how long they last, how often they come, whether they
 * come faster. A dispute that is still open, that was ended by parting the fish, or that fell silent
 * lasted at least so long: it is told so (censored), never left out and never taken as over.
 */
import type { Day } from '../../core/day.ts';
import type { Interval } from '../../core/interval.ts';
import { poissonLimits } from '../../core/distributions.ts';
import { rankScore } from '../../core/stats.ts';
import { plural, rangeWords } from '../../core/words.ts';
import { medianSurvival, survivalCurve } from '../../science/survival.ts';
import type { SurvivalStep } from '../../science/survival.ts';
import { BOUT_HOURS } from '../../state/quarrel.ts';
import type { DisputeRow } from './dispute.ts';

/** Days over which disputes are counted. */
export const SPAN = 90;
/** Bounds hold the truth four times of five, as everywhere. */
const LEVEL = 0.8;
/** Fewer ended disputes than this on one side make no comparison (ours). */
const ENOUGH_A_SIDE = 3;
/** A rate over fewer days than this says nothing (ours). */
const LEAST_DAYS = 60;

export interface Durations {
  /** Disputes that were seen to end by themselves, and those that lasted at least as long as was seen. */
  readonly ended: number;
  readonly atLeast: number;
  /** Days by which half were over (Kaplan–Meier); null while that cannot be told. */
  readonly median: number | null;
  readonly curve: readonly SurvivalStep[];
}

export interface Recurrence {
  readonly seen: number;
  /** Days under watch. */
  readonly days: number;
  /** Disputes per 90 days, exact Poisson limits. */
  readonly per90: Interval;
}

export interface LightsOff {
  readonly with: Durations;
  readonly without: Durations;
  readonly verdict: 'shorter' | 'longer' | 'no difference to tell' | 'too few';
  readonly says: string;
}

/** A word that comes later than this after the last one says that it is over, not when (48 hours). */
const SILENT_DAYS = BOUT_HOURS / 24;

/** How long a dispute was seen to last, and whether that was its end. */
export function lastedOf(row: DisputeRow): { readonly days: number; readonly over: boolean } {
  const [gap] = row.gaps;
  const seen = gap?.from ?? row.lastSign;
  const silent = gap !== undefined || (row.to !== null && row.to - row.lastSign > SILENT_DAYS);
  const over = row.endedBy === 'made up' || row.endedBy === 'shimmying' || row.endedBy === 'spawned';
  return over && !silent ? { days: row.days, over } : { days: seen - row.from + 1, over: false };
}

export function durationsOf(rows: readonly DisputeRow[]): Durations {
  const lasted = rows.map(lastedOf);
  const curve = survivalCurve(
    lasted.length,
    lasted.map(({ days, over }) => ({ day: days, died: over ? 1 : 0, left: over ? 0 : 1 })),
  );
  const ended = lasted.filter(({ over }) => over).length;
  return { ended, atLeast: lasted.length - ended, median: medianSurvival(curve), curve };
}

/** How often disputes begin; null where the pair has not been watched for two months. */
export function recurrenceOf(rows: readonly DisputeRow[], since: Day, on: Day): Recurrence | null {
  const days = on - since + 1;
  if (days < LEAST_DAYS) return null;
  const { low, high } = poissonLimits(rows.length, LEVEL);
  const rate = (seen: number): number => (seen / days) * SPAN;
  return { seen: rows.length, days, per90: { low: rate(low), likely: rate(rows.length), high: rate(high) } };
}

/** Days between the end of a dispute and the start of the next. `closing`: each of the last three shorter than the one before. */
export function gapsBetween(rows: readonly DisputeRow[]): {
  readonly days: readonly number[];
  readonly closing: boolean;
} {
  const days = rows.slice(1).flatMap((row, index) => {
    const before = rows[index]?.to ?? null;
    return before === null ? [] : [row.from - before];
  });
  const [a, b, c] = days.slice(-3);
  return { days, closing: a !== undefined && b !== undefined && c !== undefined && a > b && b > c };
}

/**
 * Whether disputes with lights off were shorter in this room. Only with three ended ones of each; a
 * difference is told where chance alone would seldom give it (rank score beyond 1.28). Keepers put the
 * lights off in the worse quarrels, so that a longer one proves nothing against it.
 */
export function lightsOffOf(rows: readonly DisputeRow[]): LightsOff {
  const dark = rows.filter((row) => row.measures.some(({ measure }) => measure === 'lights off'));
  const lit = rows.filter((row) => !dark.includes(row));
  const [withOff, without] = [durationsOf(dark), durationsOf(lit)];
  const told = { with: withOff, without };
  if (withOff.ended < ENOUGH_A_SIDE || without.ended < ENOUGH_A_SIDE) {
    const few = `lights off in ${String(withOff.ended)} ended disputes of this room, not in ${String(without.ended)}: too few to tell whether it helps (${String(ENOUGH_A_SIDE)} of each)`;
    return { ...told, verdict: 'too few', says: few };
  }
  const ended = (some: readonly DisputeRow[]): number[] =>
    some.map(lastedOf).flatMap(({ days, over }) => (over ? [days] : []));
  const score = rankScore(ended(dark), ended(lit)) ?? 0;
  const verdict = score < -1.28 ? 'shorter' : score > 1.28 ? 'longer' : 'no difference to tell';
  const half = ({ median: days }: Durations): string =>
    days === null ? 'a day that is not known' : `day ${String(days)}`;
  const caveat = verdict === 'longer' ? ' (it is mostly tried in the worse ones)' : '';
  return {
    ...told,
    verdict,
    says: `with lights off half were over by ${half(withOff)} (${String(withOff.ended + withOff.atLeast)} disputes of this room), without by ${half(without)} (${String(without.ended + without.atLeast)}): ${verdict}${caveat}`,
  };
}

/** `half are over by day 3 (4 ended, 1 lasted at least so long)`. */
export function durationWords({ ended, atLeast, median: half }: Durations): string | null {
  if (ended + atLeast === 0) return null;
  const seen = `${String(ended)} seen to end${atLeast === 0 ? '' : `, ${String(atLeast)} open, parted or fallen silent`}`;
  return half === null
    ? `too few ended to say how long they last (${seen})`
    : `half are over by day ${String(half)} (${seen})`;
}

/** `1.2 disputes per 90 days (0.5–2.4)`. */
export function recurrenceWords({ seen, days, per90 }: Recurrence): string {
  return `${(per90.likely ?? 0).toFixed(1)} disputes per ${String(SPAN)} days (${rangeWords(per90, 1)}; ${String(seen)} in ${plural(days, 'day')})`;
}

export function gapWords({ days, closing }: ReturnType<typeof gapsBetween>): string | null {
  if (days.length < 2) return null;
  const listed = days.slice(-4).join(', ');
  return `${closing ? 'the peace between them grows shorter' : 'peace between them'}: ${listed} days`;
}
