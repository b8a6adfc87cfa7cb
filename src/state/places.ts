/** Which tanks or loops a clause about water, rigs or faults happens in: its heading, or where those fish live. */
import type { Subject } from '../journal/subject.ts';
import { bodiesIn } from './bodies.ts';
import type { Room } from './draft.ts';

/** `room`, a loop, a tank; the tanks of a group's or brood's fish. Empty where the heading has no place. */
export function placesOf(room: Room, subject: Subject): string[] {
  switch (subject.kind) {
    case 'room':
      return ['room'];
    case 'loop':
      return [subject.loop];
    case 'tank':
      return [subject.tank];
    case 'group': {
      const group = room.stock.groups.get(subject.group);
      if (group === undefined) return [];
      const tanks = [...group.parts.keys()];
      return tanks.length > 0 || group.home === null ? tanks : [group.home];
    }
    case 'brood':
      return [...(room.stock.broods.get(subject.brood)?.parts.keys() ?? [])];
    default:
      return [];
  }
}

/** Names of the groups and broods with fish in a tank, on record or possibly. */
export function fishIn(room: Room, tank: string): string[] {
  return bodiesIn(room, tank).map(({ name }) => name);
}

/** Fish were on record there, and all of them left: a tank nobody wrote fish into may hold some all the same. */
export function isKnownEmpty(room: Room, tank: string): boolean {
  return fishIn(room, tank).length === 0 && room.stock.stocked.has(tank);
}
