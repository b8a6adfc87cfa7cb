/** What lines that have just been written down can have done to the water (toxic ammonia, hardness), and to whom it goes: told at once. */
import { listWords } from '../core/words.ts';
import type { Event } from '../journal/event.ts';
import type { Room } from '../state/draft.ts';
import { whereOf } from '../state/where.ts';
import { hardnessLines } from './hardened.ts';
import { afterRaising, raisesPh } from './raised.ts';
import { sharedLines } from './sharedby.ts';

/** One text for each tank that does not have its dose alone, and each outcome with the places that it is true of; nothing where no line changes or doses water. */
export function raisedByLines(room: Room, events: readonly Event[]): readonly string[] {
  const places = new Map<string, string[]>();
  for (const event of events) {
    const by = raiser(event);
    if (by === null) continue;
    const where = whereOf(event.subject);
    const { says } = afterRaising(room, where, by);
    const told = places.get(says) ?? [];
    if (!told.includes(where)) places.set(says, [...told, where]);
  }
  return [
    ...sharedLines(room, events),
    ...[...places].map(([says, all]) => `${listWords(all)}: ${says}`),
    ...hardnessLines(room, events),
  ];
}

function raiser(event: Event): 'new water' | 'dose' | null {
  switch (event.kind) {
    case 'water changed':
      return 'new water';
    case 'dosed':
    case 'treated':
      return raisesPh(event.product) ? 'dose' : null;
    default:
      return null;
  }
}
