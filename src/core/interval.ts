/**
 * Uncertainty as data. A count, size or day that is not certain is a closed interval with a likely
 * value. An open side is ±Infinity inside and null in JSON.
 */
import type { Day } from './day.ts';

export interface Interval {
  readonly low: number;
  /** The single value to name if one must be named; null where there is no reason to prefer one. */
  readonly likely: number | null;
  readonly high: number;
}

/** A window of calendar days; null where a side is open. */
export interface DayWindow {
  readonly low: Day | null;
  readonly likely: Day | null;
  readonly high: Day | null;
}

/** None at all. */
export const NONE: Interval = { low: 0, likely: 0, high: 0 };
export const UNKNOWN_COUNT: Interval = { low: 0, likely: null, high: Infinity };

/** That very value, nothing else. */
export function exactly(value: number): Interval {
  return { low: value, likely: value, high: value };
}

/** Anything from `low` to `high`, most likely in the middle unless told; open to one side, nothing is most likely. */
export function between(low: number, high: number, likely: number | null = (low + high) / 2): Interval {
  return { low, likely: Number.isFinite(likely ?? 0) ? likely : null, high };
}

/** True where both ends are the same finite number: counted, not guessed. */
export function isSure(interval: Interval): boolean {
  return interval.low === interval.high;
}

/** Sum of two independent quantities. */
export function plus(a: Interval, b: Interval): Interval {
  const likely = a.likely === null || b.likely === null ? null : a.likely + b.likely;
  return { low: a.low + b.low, likely, high: a.high + b.high };
}

/** What is left of `a` after `b` went, never below none. */
export function less(a: Interval, b: Interval): Interval {
  const low = Math.max(0, a.low - b.high);
  const high = Math.max(0, a.high === Infinity ? Infinity : a.high - b.low);
  const likely = a.likely === null || b.likely === null ? null : clamp(a.likely - b.likely, low, high);
  return { low, likely, high };
}

/** The values that both allow, or null where they share none. */
export function meet(a: Interval, b: Interval): Interval | null {
  const low = Math.max(a.low, b.low);
  const high = Math.min(a.high, b.high);
  if (low > high) return null;
  const wish = b.likely ?? a.likely;
  return { low, likely: wish === null ? null : clamp(wish, low, high), high };
}

/** `a` times a non-negative factor. */
export function times(a: Interval, factor: number): Interval {
  const side = (value: number): number => (value === 0 || factor === 0 ? 0 : value * factor);
  return { low: side(a.low), likely: a.likely === null ? null : side(a.likely), high: side(a.high) };
}

/** Whole numbers that hold the interval: low down, high up (design: intervals are rounded outward). */
export function outward(a: Interval): Interval {
  const low = Math.floor(a.low);
  const high = Math.ceil(a.high);
  return { low, likely: a.likely === null ? null : clamp(Math.round(a.likely), low, high), high };
}

/**
 * One value for what is not certain: the most likely, else the middle between the ends, else, where it is
 * open upwards, the low end. For drawing lines through and weighing; never to be told as a fact.
 */
export function middle(value: Interval): number;
export function middle(value: Interval | null): number | null;
export function middle(value: Interval | null): number | null {
  if (value === null) return null;
  const { low, likely, high } = value;
  return likely ?? (Number.isFinite(high) ? (low + high) / 2 : low);
}

/** The value, or the nearest end where it lies outside. */
export function clamp(value: number, low: number, high: number): number {
  return Math.min(high, Math.max(low, value));
}

/** The window of something that is known to the day. */
export function onDay(day: Day): DayWindow {
  return { low: day, likely: day, high: day };
}
