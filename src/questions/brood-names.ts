/** Which line began which brood: names that stand in no line yet, for `tidy`, `jot` and `check`. */
import { clauseKey } from '../core/span.ts';
import type { Place } from '../core/span.ts';
import type { Event } from '../journal/event.ts';
import { nextBroodName } from '../state/broodnames.ts';
import type { Room } from '../state/draft.ts';

/** Gives the name of the brood that a clause without a name began, or null: it began none, or writes one. */
export function begunBroods(room: Room): (event: Event) => string | null {
  return (event) => {
    if ((event.kind !== 'spawned' && event.kind !== 'stage seen') || event.brood !== null) return null;
    if (event.fish.kind === 'brood' || event.subject.kind === 'brood') return null;
    const brood = room.stock.begunAt.get(clauseKey(event.place));
    // What is only suspected has no name yet that a line could write.
    return brood === undefined || brood.suspected || /\s/u.test(brood.name) ? null : brood.name;
  };
}

/** A name that would mean another brood, had another line been written. */
export interface Shift {
  readonly place: Place;
  readonly was: string;
  readonly becomes: string;
}

/**
 * Names written nowhere whose meaning differs between two readings of a journal, the second with lines
 * more at its end. Events are matched by their places.
 */
export function shiftedNames(before: Room, after: Room, events: readonly Event[]): readonly Shift[] {
  const [old, now] = [begunBroods(before), begunBroods(after)];
  return events.flatMap((event) => {
    const [was, becomes] = [old(event), now(event)];
    return was === null || becomes === null || was === becomes ? [] : [{ place: event.place, was, becomes }];
  });
}

/**
 * Names to write into a new line: for each of its events that begins a brood without one, the next number
 * that no brood of that group has or had written. `before` is the room without the line, `after` with it.
 */
export function namesToWrite(before: Room, after: Room, events: readonly Event[]): ReadonlyMap<Event, string> {
  const begun = begunBroods(after);
  const taken = new Set(before.stock.takenNames);
  const names = new Map<Event, string>();
  for (const event of events) {
    const now = begun(event);
    const group = now === null ? null : (after.stock.broods.get(now)?.group ?? null);
    if (group === null) continue;
    const name = nextBroodName({ broods: before.stock.broods, takenNames: taken }, group);
    taken.add(name);
    names.set(event, name);
  }
  return names;
}
