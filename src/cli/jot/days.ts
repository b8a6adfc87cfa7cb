/** Days as a keeper says them when writing something down: what has been, where `--on` asks for what comes. */
import type { Day } from '../../core/day.ts';
import { addDays, weekday } from '../../core/day.ts';
import { dated } from '../../language/jotted.ts';
import { readDate, WEEKDAYS } from '../dates.ts';
import { Stop } from '../exit.ts';

/** A line that is nothing but a day: `Tue` (the last one, today included), `14 Feb`, `2026-02-14`, `yesterday`. */
export function dayAlone(text: string, today: Day): Day | null {
  const words = text
    .trim()
    .replace(/[:.,]$/, '')
    .toLowerCase();
  if (!/^[\d a-z+-]+$/.test(words) || words === '') return null;
  return lastWeekday(words, today) ?? otherDay(words, today);
}

/**
 * The words with their day before them: their own where they begin with one (`Tue A1: chasing`, which counts
 * for that line alone), else `day`.
 */
export function datedLine(words: string, day: Day, today: Day): string {
  for (const begins of [DAY_AND_MONTH, ONE_WORD]) {
    const [, first = '', rest = ''] = begins.exec(words) ?? [];
    const own = first === '' ? null : dayAlone(first, today);
    if (own !== null) return dated(rest, own);
  }
  return dated(words, day);
}

/** A day, and a heading after it: without one it would be a heading itself (`Sun: all well`). */
const DAY_AND_MONTH = /^\s*(\d{1,2}\s+\p{L}+|\p{L}+\s+\d{1,2})\s+([^:"\s][^:"]*:.*)$/su;
const ONE_WORD = /^\s*(\p{L}+)\s+([^:"\s][^:"]*:.*)$/su;

/** A day given with the command. Throws a `Stop` where it is none. */
export function dayTold(text: string, today: Day): Day {
  return lastWeekday(text.trim().toLowerCase(), today) ?? readDate(text, today);
}

function lastWeekday(word: string, today: Day): Day | null {
  if (word.length < 3) return null;
  const index = WEEKDAYS.findIndex((name) => name.startsWith(word));
  return index < 0 ? null : addDays(today, -((weekday(today) - index - 1 + 7) % 7));
}

function otherDay(words: string, today: Day): Day | null {
  if (/^\d+$/.test(words)) return null;
  try {
    return readDate(words, today);
  } catch (error) {
    if (error instanceof Stop) return null;
    throw error;
  }
}
