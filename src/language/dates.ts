/** Dates as they stand inside a line: `2026-02-14`, `14 Feb`, `friday`, `the 20th`, seen from the line's own day. */
import { MONTHS, WEEKDAYS } from '../../grammar/words.ts';
import { addDays, addMonths, civil, dayOf, weekday } from '../core/day.ts';
import type { Day } from '../core/day.ts';

/** Which way a date without a year lies: before the day of the line, or from it on. */
export type Direction = 'past' | 'ahead';

const ISO = /^(\d{4})-(\d{1,2})-(\d{1,2})$/;

/** A date with a year, month and day in ISO order; one-digit months and days too. Null where there is no such day. */
export function readIso(text: string): Day | null {
  if (text !== latest.text) latest = { text, day: isoDayOf(text) };
  return latest.day;
}

/** The date that was read last: most lines have that of the line before. */
let latest: { readonly text: string; readonly day: Day | null } = { text: '', day: null };

function isoDayOf(text: string): Day | null {
  const match = ISO.exec(text);
  return match === null ? null : dayOf(Number(match[1]), Number(match[2]), Number(match[3]));
}

/** The day that words in a line mean, or null where the calendar has none. */
export function readDayWords(text: string, from: Day, direction: Direction): Day | null {
  const iso = ISO.test(text) ? readIso(text) : undefined;
  if (iso !== undefined) return iso;
  const words = text
    .toLowerCase()
    .split(/\s+/)
    .filter((word) => word !== 'the' && word !== 'of');
  const first = words[0] ?? '';
  const relative = RELATIVE.get(words.join(' '));
  if (relative !== undefined) return addDays(from, relative);
  const named = WEEKDAYS.get(first);
  if (named !== undefined) return nearestWeekday(named, from, direction);
  return monthDay(words, from, direction);
}

const RELATIVE: ReadonlyMap<string, number> = new Map([
  ['yesterday', -1],
  ['yest', -1],
  ['yday', -1],
  ['last night', -1],
  ['today', 0],
  ['this morning', 0],
  ['this am', 0],
  ['this afternoon', 0],
  ['this pm', 0],
  ['this evening', 0],
  ['tonight', 0],
  ['tomorrow', 1],
]);

/** The last such weekday before the day, or the next one after it. */
function nearestWeekday(named: number, from: Day, direction: Direction): Day {
  const back = (weekday(from) - named + 7) % 7;
  return direction === 'past' ? addDays(from, -(back === 0 ? 7 : back)) : addDays(from, back === 0 ? 7 : 7 - back);
}

function monthDay(words: readonly string[], from: Day, direction: Direction): Day | null {
  const month = words.map((word) => MONTHS.get(word)).find((value) => value !== undefined);
  const numbers = words.map((word) => Number.parseInt(word, 10)).filter((value) => !Number.isNaN(value));
  const dayOfMonth = numbers[0] ?? 0;
  const { year } = civil(from);
  if (month === undefined) return sameMonth(dayOfMonth, from, direction);
  const given = numbers.find((value) => value > 31);
  if (given !== undefined) return dayOf(given, month, numbers.find((value) => value <= 31) ?? 0);
  const step = direction === 'past' ? -1 : 1;
  for (const candidate of [year, year + step, year + 4 * step]) {
    const day = dayOf(candidate, month, dayOfMonth);
    if (day !== null && (direction === 'past' ? day <= from : day >= from)) return day;
  }
  return null;
}

/** `the 20th`: of this month, or of the nearest one that has it. */
function sameMonth(dayOfMonth: number, from: Day, direction: Direction): Day | null {
  for (let months = 0; months < 3; months += 1) {
    const { year, month } = civil(addMonths(from, direction === 'past' ? -months : months));
    const day = dayOf(year, month, dayOfMonth);
    if (day !== null && (direction === 'past' ? day <= from : day >= from)) return day;
  }
  return null;
}
