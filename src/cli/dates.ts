/** Days as `--on` takes them: a date, a step from today, a weekday to come, a day of the year. */
import type { Day } from '../core/day.ts';
import { addDays, civil, dayFromIso, dayOf, isDay, weekday } from '../core/day.ts';
import { misuse } from './exit.ts';

export const WEEKDAYS = ['monday', 'tuesday', 'wednesday', 'thursday', 'friday', 'saturday', 'sunday'] as const;
const MONTHS = [
  'january',
  'february',
  'march',
  'april',
  'may',
  'june',
  'july',
  'august',
  'september',
  'october',
  'november',
  'december',
] as const;
const STEPS = new Map([
  ['today', 0],
  ['yesterday', -1],
  ['tomorrow', 1],
]);

/**
 * Reads a day: `2026-02-14`, `today`, `yesterday`, `tomorrow`, `+14`, `-3`, `saturday` (the next one,
 * today included), `next saturday` (after today), `last saturday` (before today), `14 Feb` (the one
 * nearest to today), `14 Feb 2025`. Throws a `Stop` where it is none of these.
 */
export function readDate(text: string, today: Day): Day {
  const words = text.trim().toLowerCase().split(/\s+/);
  const day = dayFromIso(text.trim()) ?? stepped(words, today) ?? ofWeek(words, today) ?? ofYear(words, today);
  if (day !== null) return day;
  throw misuse(`«${text}» is no date that exists`, '--on 2026-02-14 (or today, +14, "next saturday", "14 Feb")');
}

function stepped(words: readonly string[], today: Day): Day | null {
  const [word = '', ...others] = words;
  if (others.length > 0) return null;
  const step = STEPS.get(word) ?? (/^[+-]\d{1,6}$/.test(word) ? Number(word) : null);
  return step !== null && isDay(today + step) ? addDays(today, step) : null;
}

function ofWeek(words: readonly string[], today: Day): Day | null {
  const [name = '', ...before] = [...words].reverse();
  const index = find(WEEKDAYS, name);
  if (index === null || before.length > 1) return null;
  const ahead = (index + 1 - weekday(today) + 7) % 7;
  switch (before[0]) {
    case undefined:
      return addDays(today, ahead);
    case 'next':
      return addDays(today, ahead === 0 ? 7 : ahead);
    case 'last':
      return addDays(today, ahead - 7);
    default:
      return null;
  }
}

function ofYear(words: readonly string[], today: Day): Day | null {
  const match = /^(?:(\d{1,2}) ([a-z]+)|([a-z]+) (\d{1,2}))(?: (\d{4}))?$/.exec(words.join(' '));
  if (match === null) return null;
  const month = find(MONTHS, match[2] ?? match[3] ?? '');
  if (month === null) return null;
  const dayOfMonth = Number(match[1] ?? match[4]);
  if (match[5] !== undefined) return dayOf(Number(match[5]), month + 1, dayOfMonth);
  const { year } = civil(today);
  return [year - 1, year, year + 1]
    .map((each) => dayOf(each, month + 1, dayOfMonth))
    .reduce(
      (best, day) => (day !== null && (best === null || distance(day, today) < distance(best, today)) ? day : best),
      null,
    );
}

function distance(a: Day, b: Day): number {
  return Math.abs(a - b);
}

/** The index of the one name that the word is, or begins with at least three letters of. */
function find(names: readonly string[], word: string): number | null {
  if (word.length < 3) return null;
  const index = names.findIndex((name) => name.startsWith(word));
  return index < 0 ? null : index;
}
