/** Days as a keeper says them when writing something down: what has been, where `--on` asks for what comes. */
import type { Day } from '../../core/day.ts';
import { dated } from '../../language/jotted.ts';
import { pastDay } from '../dates.ts';

/** A line that is nothing but a day: `Tue` (the last one, today included), `14 Feb`, `2026-02-14`, `yesterday`. */
export function dayAlone(text: string, today: Day): Day | null {
  const words = text
    .trim()
    .replace(/[:.,]$/, '')
    .toLowerCase();
  if (!/^[\d a-z+-]+$/.test(words) || words === '') return null;
  // A bare number may be a tank.
  return /^\d+$/.test(words) ? null : pastDay(words, today);
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
