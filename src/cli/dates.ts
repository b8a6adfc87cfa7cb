/** Days as options take them: a date, a step from today, a weekday, a day of the year. */
import type { Day } from '../core/day.ts';
import { addDays, civil, dayFromIso, dayOf, isDay, weekday } from '../core/day.ts';
import { misuse } from './exit.ts';

const WEEKDAYS = ['monday', 'tuesday', 'wednesday', 'thursday', 'friday', 'saturday', 'sunday'] as const;
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
 * Reads a day asked about: `2026-02-14`, `today`, `yesterday`, `tomorrow`, `+14`, `-3`, `saturday` (the next
 * one, today included), `next saturday` (after today), `last saturday` (before today), `14 Feb` (the one
 * nearest to today), `14 Feb 2025`. Throws a `Stop` where it is none of these.
 */
export function readDate(text: string, today: Day): Day {
  const words = wordsOf(text);
  return (
    plainDay(words, today) ?? ofWeek(words, today) ?? nearestOf(inYears(words, today), today) ?? fail(text, '--on')
  );
}

/**
 * Reads a day of what has been: the same, but `saturday` is the last one, today included, and `14 Feb` the last
 * one too. Throws a `Stop` where it is none; `option` is what it was given for.
 */
export function readPastDate(text: string, today: Day, option = '--on'): Day {
  return pastDay(text, today) ?? fail(text, option);
}

/** The same; null where it is no day. */
export function pastDay(text: string, today: Day): Day | null {
  const words = wordsOf(text);
  return (
    plainDay(words, today) ?? lastWeekday(words, today) ?? ofWeek(words, today) ?? lastOf(inYears(words, today), today)
  );
}

function fail(text: string, option: string): never {
  const says = /\d/.test(text) ? 'is no date that exists' : 'is no date';
  throw misuse(
    `«${text}» ${says}`,
    `${option} 2026-02-14 (or today, ${option === '--on' ? '+14' : '-14'}, "last saturday", "14 Feb")`,
  );
}

function wordsOf(text: string): readonly string[] {
  return text.trim().toLowerCase().split(/\s+/);
}

function plainDay(words: readonly string[], today: Day): Day | null {
  return dayFromIso(words.join(' ')) ?? stepped(words, today);
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

/** `tue`: the last one, today included. */
function lastWeekday(words: readonly string[], today: Day): Day | null {
  const index = words.length === 1 ? find(WEEKDAYS, words[0] ?? '') : null;
  return index === null ? null : addDays(today, -((weekday(today) - index - 1 + 7) % 7));
}

/** `14 Feb` of the years around today, or of the one that it names. */
function inYears(words: readonly string[], today: Day): readonly Day[] {
  const match = /^(?:(\d{1,2}) ([a-z]+)|([a-z]+) (\d{1,2}))(?: (\d{4}))?$/.exec(words.join(' '));
  const month = find(MONTHS, match?.[2] ?? match?.[3] ?? '');
  if (match === null || month === null) return [];
  const { year } = civil(today);
  const years = match[5] === undefined ? YEARS_AROUND.map((step) => year + step) : [Number(match[5])];
  return years.map((each) => dayOf(each, month + 1, Number(match[1] ?? match[4]))).filter((day) => day !== null);
}

const YEARS_AROUND = [-1, 0, 1] as const;

function nearestOf(days: readonly Day[], today: Day): Day | null {
  const far = (day: Day): number => Math.abs(day - today);
  return days.reduce<Day | null>((best, day) => (best === null || far(day) < far(best) ? day : best), null);
}

/** Tomorrow has been where another zone is ahead of this machine's. */
function lastOf(days: readonly Day[], today: Day): Day | null {
  return days.findLast((day) => day <= today + 1) ?? days[0] ?? null;
}

/** The index of the one name that the word is, or begins with at least three letters of. */
function find(names: readonly string[], word: string): number | null {
  if (word.length < 3) return null;
  const index = names.findIndex((name) => name.startsWith(word));
  return index < 0 ? null : index;
}
