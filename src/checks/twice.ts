/**
 * The same loss, birth, move, sale or dose written twice on one day. Both count, since both may have happened;
 * but merging two copies of a journal doubles lines too.
 */
import type { Problem } from '../core/problem.ts';
import type { Place } from '../core/span.ts';
import type { Event, EventKind } from '../journal/event.ts';
import type { Check } from './check.ts';

/** Kinds that add up: twice is more than once. */
const ADDING: ReadonlySet<EventKind> = new Set<EventKind>([
  'moved',
  'lost',
  'bought',
  'kept back',
  'reserved',
  'wanted',
  'sold',
  'gave away',
  'spent',
  'water changed',
  'topped up',
  'dosed',
]);

export const twice: Check = ({ events }) => {
  const first = new Map<string, Place>();
  const found: Problem[] = [];
  for (const event of events) {
    if (!addsUp(event)) continue;
    const told = tell(event);
    const before = first.get(told);
    if (before === undefined) first.set(told, event.place);
    else if (before.line !== event.place.line || before.file !== event.place.file) {
      found.push({
        kind: 'same-twice',
        weight: 'doubt',
        says: 'the same is written twice on this day, and counts twice',
        write: 'a time of day in each line if it happened twice; else take one of the two lines out',
        at: event.place,
        also: [before],
      });
    }
  }
  return found;
};

/** Births add up as well; stages that were merely seen do not. */
function addsUp(event: Event): boolean {
  return ADDING.has(event.kind) || (event.kind === 'stage seen' && event.stage === 'born' && event.count !== null);
}

/** Everything that the event says, but not where it is written. */
function tell(event: Event): string {
  return JSON.stringify({ ...event, seq: null, place: null });
}
