/**
 * Events → room. Pure: the same events and day give the same room. Inside one call the draft is
 * changed in place (a room of a million lines would otherwise be copied a million times); nobody
 * outside ever sees it change.
 */
import { isoDay, type Day } from '../core/day.ts';
import type { Event, EventKind, EventOf } from '../journal/event.ts';
import { writtenBroodNames } from './broodnames.ts';
import type { Draft, Room } from './draft.ts';
import { HOMES } from './homes.ts';
import { emptyDraft } from './empty.ts';
import { expand } from './expand.ts';
import { noteWord } from './looks.ts';

/**
 * Folds what is known on a day: no event of a later day counts. Only the brood names written later are
 * kept free, so that a brood is called the same on every day.
 */
export function foldRoom(events: readonly Event[], on: Day): Room {
  return foldOn(beginRoom(writtenBroodNames(events), on), events, on);
}

/** A room before its first event, with the names of broods that are written anywhere. */
export function beginRoom(written: Set<string>, on: Day): Draft {
  const draft = emptyDraft(on);
  draft.stock.takenNames = written;
  return draft;
}

/**
 * Folds into a room all events up to a day that it does not hold yet: folding to one day and on to
 * another gives the same room as folding to the other at once. The room given is no longer what it was.
 */
export function foldOn(draft: Draft, events: readonly Event[], on: Day): Draft {
  for (const event of events) {
    if (event.day > on) break;
    // What an event does to the room rests on what was known on its day, whichever day is asked about.
    draft.on = event.day;
    applyEvent(draft, event);
  }
  draft.on = on;
  return draft;
}

/** Folds one event, for several tanks one by one; a clause that cannot count is no word about its tank either. */
function applyEvent(draft: Draft, event: Event): void {
  for (const one of expand(draft, event)) {
    if (isOfRetiredTank(draft, one)) continue;
    const before = draft.problems.length;
    applyOne(draft, one);
    if (!draft.problems.slice(before).some((problem) => problem.weight === 'stops')) noteWord(draft, one);
  }
}

function applyOne<K extends EventKind>(draft: Draft, event: EventOf<K>): void {
  HOMES[event.kind](draft, event);
}

/** A tank that was retired on an earlier day can only be written of again by declaring it anew, or in a note. */
function isOfRetiredTank(draft: Draft, event: Event): boolean {
  if (event.subject.kind !== 'tank' || event.kind === 'tank declared') return false;
  if (event.kind === 'note' || event.kind === 'photo') return false;
  const tank = draft.plumbing.tanks.get(event.subject.tank);
  if (!tank?.retired || tank.retired.day >= event.day) return false;
  const home = tank.plumbed.at(-1)?.home ?? null;
  draft.problems.push({
    kind: 'retired-tank',
    weight: 'stops',
    says: `${tank.name} was retired ${isoDay(tank.retired.day)}`,
    write: `${isoDay(event.day)} tank ${tank.name}: ${home === null ? 'alone' : `on ${home}`}`,
    at: event.place,
    also: [tank.retired.place],
  });
  return true;
}
