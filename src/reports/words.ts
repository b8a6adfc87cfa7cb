/** The words of `core/words.ts` as a look wants them: a machine gets ISO 8601 dates, a keeper the short ones. */
import type { Day } from '../core/day.ts';
import { civil, isoDay, weekday } from '../core/day.ts';
import type { DayWindow } from '../core/interval.ts';
import { dayWords, likelyWindowWords, windowWords } from '../core/words.ts';
import type { Look } from './look.ts';

export { ageWords, countWords, listWords, ordinal, plural, rangeWords, shareWords, sinceWords } from '../core/words.ts';
export { printable } from './printable.ts';

const WEEKDAYS = ['Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat', 'Sun'] as const;

/** `14 Feb`, or `2026-02-14` for a machine. */
export function dayText(day: Day, look: Look): string {
  return look.machine ? isoDay(day) : dayWords(day, look.on);
}

/**
 * `14 Feb` in a cell of words, beside those of the questions, which name days as people do: one cell has one form of
 * dates, whoever reads it. A column of days has `dayText`.
 */
export function saidDay(day: Day, look: Look): string {
  return dayWords(day, look.on);
}

/** `12–26 Jun`; for a machine `2026-06-12/2026-06-26`, an ISO 8601 interval, `..` where a side is open. */
export function windowText(window: DayWindow, look: Look): string {
  if (!look.machine) return windowWords(window, look.on);
  const { low, high } = window;
  if (low !== null && low === high) return isoDay(low);
  return `${low === null ? '..' : isoDay(low)}/${high === null ? '..' : isoDay(high)}`;
}

/** A hard window with the days that are most likely in it: `2–5 Feb, most likely 3–4`; ISO where a machine reads. */
export function datesText(window: DayWindow, likely: DayWindow | null, look: Look): string {
  if (!look.machine) return likelyWindowWords(window, likely, look.on);
  const whole = windowText(window, look);
  const inside = likely === null ? whole : windowText(likely, look);
  return inside === whole ? whole : `${whole}, most likely ${inside}`;
}

/** The opening words of an answer: `Sun 15 Feb 2026`, and that it is a projection where it is one. */
export function heading(look: Look): string {
  const { year } = civil(look.on);
  const named = `${WEEKDAYS[weekday(look.on) - 1] ?? ''} ${dayWords(look.on, look.on)} ${year}`;
  return `${look.machine ? isoDay(look.on) : named}${look.projected ? ' (a projection)' : ''}`;
}
