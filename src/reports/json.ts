/**
 * Values as version 1 of the JSON writes them: a plain number or ISO date where it is certain,
 * `{low, likely, high}` where it is not, null for a side that is open or unknown.
 */
import type { Day } from '../core/day.ts';
import { isoDay } from '../core/day.ts';
import type { DayWindow, Interval } from '../core/interval.ts';
import { isSure } from '../core/interval.ts';
import type { LineRef } from '../core/span.ts';
import { DIRECTING } from './printable.ts';

export interface Spread<T> {
  readonly low: T | null;
  readonly likely: T | null;
  readonly high: T | null;
}

/** A count, size or level. */
export function countJson(count: Interval): number | Spread<number>;
export function countJson(count: Interval | null): number | Spread<number> | null;
export function countJson(count: Interval | null): number | Spread<number> | null {
  if (count === null) return null;
  if (isSure(count) && Number.isFinite(count.low)) return count.low;
  return {
    low: finite(count.low),
    likely: count.likely === null ? null : finite(count.likely),
    high: finite(count.high),
  };
}

function finite(value: number): number | null {
  return Number.isFinite(value) ? value : null;
}

export function dayJson(day: Day): string;
export function dayJson(day: Day | null): string | null;
export function dayJson(day: Day | null): string | null {
  return day === null ? null : isoDay(day);
}

/** A date or window of dates: an ISO string where it is one certain day. */
export function windowJson(window: DayWindow): string | Spread<string>;
export function windowJson(window: DayWindow | null): string | Spread<string> | null;
export function windowJson(window: DayWindow | null): string | Spread<string> | null {
  if (window === null) return null;
  if (window.low !== null && window.low === window.high) return isoDay(window.low);
  return spreadJson(window);
}

/** A window of dates always written as one, for keys that are documented so (`due`). */
export function spreadJson(window: DayWindow): Spread<string> {
  return { low: dayJson(window.low), likely: dayJson(window.likely), high: dayJson(window.high) };
}

/** A line or a place in one, without the columns. */
export function lineJson(line: LineRef): LineRef {
  return { file: line.file, line: line.line };
}

export function linesJson(lines: readonly LineRef[]): readonly LineRef[] {
  return lines.map(lineJson);
}

/** What JSON lets stand as it is, though it would act on the terminal that shows it. */
const ACTS = new RegExp(String.raw`[\x7f-\x9f${DIRECTING}]`, 'g');

/** JSON text of an answer, with a line end; the same answer gives the same bytes. */
export function jsonText(answer: object): string {
  const text = JSON.stringify(answer, null, 2).replace(
    ACTS,
    (sign) => `\\u${sign.charCodeAt(0).toString(16).padStart(4, '0')}`,
  );
  return `${text}\n`;
}
