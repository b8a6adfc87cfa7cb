/** The date at the start of a line, and the time of day that may follow it. */
import { DateToken, endOf } from '../../grammar/tokens.ts';
import type { Token } from '../../grammar/tokens.ts';
import { MONTHS } from '../../grammar/words.ts';
import { dayOf, daysInMonth, isoDay } from '../core/day.ts';
import type { Day } from '../core/day.ts';
import { readIso } from './dates.ts';
import { fault } from './faults.ts';
import type { Fault } from './faults.ts';

/** The day of a line; null after a fault. */
export function dateOf(text: string, token: Token | undefined, faults: Fault[]): Day | null {
  if (token?.tokenType !== DateToken) {
    faults.push(noDate(text));
    return null;
  }
  const day = readIso(token.image);
  const at = { from: token.startOffset, to: endOf(token) };
  if (day === null) {
    faults.push(fault('no-such-date', at, `there is no ${token.image} in the calendar`, nearestDate(token.image)));
    return null;
  }
  const iso = isoDay(day);
  if (iso === token.image) return day;
  faults.push(fault('date-form', at, `a line begins with a date like ${iso}`, iso));
  return null;
}

/** The last day of that month, or of the year, for a date that the calendar does not have. */
function nearestDate(image: string): string | null {
  const [year = 0, month = 0, dayOfMonth = 0] = image.split('-').map(Number);
  const inYear = Math.min(12, Math.max(1, month));
  const day = dayOf(year, inYear, Math.min(daysInMonth(year, inYear), Math.max(1, dayOfMonth)));
  return day === null ? null : isoDay(day);
}

const NUMERIC = /^\s*(\d{1,4})[./-](\d{1,2})[./-](\d{1,4})(?=[\s:]|$)/;
const NAMED = /^\s*(\d{1,2})\.?\s+(\p{L}{3,9})\.?,?\s+(\d{4})(?=[\s:]|$)/u;

/** No ISO date at the start. Other ways to write one are mended where they have one reading only. */
function noDate(text: string): Fault {
  const says = 'a line begins with its date, year first: 2026-02-14';
  const written = otherDate(text);
  const to = written?.to ?? /^\s*\S*/.exec(text)?.[0].length ?? 0;
  const at = { from: /^\s*/.exec(text.slice(0, to))?.[0].length ?? 0, to };
  const days = written?.days ?? [];
  const [only] = days;
  if (only === undefined) return fault('no-date', at, says);
  if (days.length > 1) {
    const both = days.map((day) => isoDay(day)).join(' or ');
    return fault('date-form', at, `«${text.slice(at.from, at.to)}» may be ${both}: write the year first`, isoDay(only));
  }
  return fault('date-form', at, says, isoDay(only));
}

/** A date at the start of a text as other people write it: how far it goes, and the days that it may mean. */
export function otherDate(text: string): { readonly to: number; readonly days: readonly Day[] } | null {
  const [whole, a = '', b = '', c = ''] = NUMERIC.exec(text) ?? NAMED.exec(text) ?? [];
  return whole === undefined ? null : { to: whole.length, days: readings(a, b, c) };
}

/** The days that `14/02/2026`, `2026/2/14` or `14 Feb 2026` may mean. */
function readings(a: string, b: string, c: string): Day[] {
  const month = MONTHS.get(b.toLowerCase());
  const candidates =
    month !== undefined
      ? [dayOf(Number(c), month, Number(a))]
      : a.length === 4
        ? [dayOf(Number(a), Number(b), Number(c))]
        : c.length === 4
          ? [dayOf(Number(c), Number(b), Number(a)), dayOf(Number(c), Number(a), Number(b))]
          : [];
  return [...new Set(candidates.filter((day) => day !== null))];
}

/** Minutes after midnight; null after a fault. */
export function timeOf(token: Token | undefined, faults: Fault[]): number | null {
  if (token === undefined) return null;
  const [hours = 0, minutes = 0] = token.image.split(':').map(Number);
  if (hours < 24 && minutes < 60) return hours * 60 + minutes;
  const at = { from: token.startOffset, to: endOf(token) };
  faults.push(fault('no-such-time', at, `there is no ${token.image} in a day`, '12:00'));
  return null;
}
