/** Days as a keeper says them when writing something down: what has been, where `--on` asks for what comes. */
import type { Day } from '../../core/day.ts';
import { addDays, weekday } from '../../core/day.ts';
import { readDate } from '../dates.ts';
import { Stop } from '../exit.ts';

const WEEKDAYS = ['monday', 'tuesday', 'wednesday', 'thursday', 'friday', 'saturday', 'sunday'] as const;

/** A line that is nothing but a day: `Tue` (the last one, today included), `14 Feb`, `2026-02-14`, `yesterday`. */
export function dayAlone(text: string, today: Day): Day | null {
  const words = text
    .trim()
    .replace(/[:.,]$/, '')
    .toLowerCase();
  if (!/^[\d a-z+-]+$/.test(words) || words === '') return null;
  return lastWeekday(words, today) ?? otherDay(words, today);
}

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
