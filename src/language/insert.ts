/**
 * The text of a new entry as it goes into the journal: the keeper's own words, with the names of the broods
 * that it begins written in, so that no line filed later can change which brood it means.
 */
import type { Event } from '../journal/event.ts';
import { printClause } from './print.ts';
import { withBrood } from './tidy.ts';

/**
 * `line` is the whole line and `events` what it was read as, with places in it. `brood` gives the name for an
 * event that begins a brood and writes none, else null. Only the clauses of such events are worded anew.
 */
export function withBroodNames(line: string, events: readonly Event[], brood: (event: Event) => string | null): string {
  const named = events.flatMap((event) => {
    const name = brood(event);
    return name === null ? [] : [withBrood(event, name)];
  });
  return named
    .toSorted((a, b) => b.place.from - a.place.from)
    .reduce((text, event) => text.slice(0, event.place.from) + printClause(event) + text.slice(event.place.to), line);
}
