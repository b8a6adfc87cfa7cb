/** Days as a keeper says them when writing something down: what has been, where `--on` asks for what comes. */
import type { Day } from '../../core/day.ts';
import { otherDate } from '../../language/dating.ts';
import { dated } from '../../language/jotted.ts';
import { pastDay } from '../dates.ts';

/** A line that is nothing but a day: `Tue` (the last one, today included), `14 Feb`, `2026-02-14`, `14.2.2026`, `yesterday`. */
export function dayAlone(text: string, today: Day): Day | null {
  const bare = text.replace(/[:.,]?\s*$/, '');
  const written = inNumbers(bare);
  if (written?.to === bare.length) return only(written.days);
  const words = text
    .trim()
    .replace(/[:.,]$/, '')
    .replace(/,(?=\s+\d{4}$)/, '')
    .toLowerCase();
  if (!/^[\d a-z+-]+$/.test(words) || words === '') return null;
  // A bare number may be a tank.
  return /^\d+$/.test(words) ? null : pastDay(words, today);
}

/** `14.2.2026`; a month that is named may have no year, and a tank's number behind it. */
function inNumbers(text: string): ReturnType<typeof otherDate> {
  return /^\s*\d+[./-]/.test(text) ? otherDate(text) : null;
}

/** Null where there are several. */
function only(days: readonly Day[]): Day | null {
  return days.length === 1 ? (days[0] ?? null) : null;
}

/**
 * The words with their day before them: their own where they begin with one (`Tue A1: chasing`, which counts
 * for that line alone), else `day`. A date that may be two days stays as it is: reading it says which.
 */
export function datedLine(words: string, day: Day, today: Day): string {
  const written = inNumbers(words);
  if (written !== null && written.days.length > 1) return words.trim();
  const own = only(written?.days ?? []);
  if (written !== null && own !== null) return dated(words.slice(written.to), own);
  for (const begins of [DAY_AND_MONTH, ONE_WORD]) {
    const [, first = '', rest = ''] = begins.exec(words) ?? [];
    const said = first === '' ? null : dayAlone(first, today);
    if (said !== null) return dated(rest, said);
  }
  return dated(words, day);
}

/** A day, and a heading after it: without one it would be a heading itself (`Sun: all well`). */
const DAY_AND_MONTH = /^\s*((?:\d{1,2}\s+\p{L}+|\p{L}+\s+\d{1,2})(?:,?\s+\d{4},?)?)\s+([^:"\s][^:"]*:.*)$/su;
const ONE_WORD = /^\s*((?:last\s+)?\p{L}+)\s+([^:"\s][^:"]*:.*)$/su;
