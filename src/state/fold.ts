/**
 * Events → room. Pure: the same events and day give the same room. Inside one call the draft is
 * changed in place (a room of a million lines would otherwise be copied a million times); nobody
 * outside ever sees it change.
 */
import type { Day } from '../core/day.ts';
import type { Event, EventKind, EventOf } from '../journal/event.ts';
import type { Draft, Room } from './draft.ts';
import { HOMES } from './homes.ts';
import { emptyDraft } from './empty.ts';

/** Folds what is known on a day: no event of a later day counts. */
export function foldRoom(events: readonly Event[], on: Day): Room {
  const draft = emptyDraft(on);
  for (const event of events) {
    if (event.day > on) break;
    applyEvent(draft, event);
  }
  return draft;
}

export function applyEvent<K extends EventKind>(draft: Draft, event: EventOf<K>): void {
  HOMES[event.kind](draft, event);
}
