/** A line dated after today: a slip in the date, most often, which no answer counts until that day comes. */
import { isoDay } from '../core/day.ts';
import type { Day } from '../core/day.ts';
import type { Problem } from '../core/problem.ts';
import { plural } from '../core/words.ts';
import type { Event } from '../journal/event.ts';
import type { Check } from './check.ts';

/** Tomorrow is no slip: a journal may be kept in another zone than this machine's. */
const LEAST_AHEAD = 2;

export const datedAhead: Check = ({ events, today }) => {
  // A journal that lies ahead as a whole is an example, or the machine's clock is wrong.
  return events.every(({ day }) => day > today) ? [] : linesAhead(events, today);
};

/** Of these events, the lines that are dated ahead: each told once. */
export function linesAhead(events: readonly Event[], today: Day): readonly Problem[] {
  const found = new Map<string, Problem>();
  for (const { day, place } of events) {
    const line = `${place.file}:${place.line}`;
    if (day - today < LEAST_AHEAD || found.has(line)) continue;
    found.set(line, {
      kind: 'dated-ahead',
      weight: 'doubt',
      says: `this line is dated ${plural(day - today, 'day')} after today, and counts for nothing until then`,
      write: `the day on which it happened, ${isoDay(today)} or before`,
      at: { ...place, from: 0, to: isoDay(day).length },
      also: [],
    });
  }
  return [...found.values()];
}
