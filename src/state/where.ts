/** What a line is about as one word, and the tanks that it speaks of on its day. */
import { unreachable } from '../core/unreachable.ts';
import type { EventBase } from '../journal/event.ts';
import type { Subject } from '../journal/subject.ts';
import type { Room } from './draft.ts';
import { sharers, tanksOn } from './tanks.ts';

/** The name in the line's heading: a tank, a loop, `room`, a group … */
export function whereOf(subject: Subject): string {
  switch (subject.kind) {
    case 'room':
      return 'room';
    case 'loop':
      return subject.loop;
    case 'tank':
      return subject.tank;
    case 'tanks':
      return subject.of === 'all' ? 'room' : subject.of.loop;
    case 'group':
      return subject.group;
    case 'brood':
      return subject.brood;
    case 'culture':
      return subject.culture;
    case 'auction':
      return subject.auction;
    case 'species':
      return subject.species;
    default:
      return unreachable(subject);
  }
}

/**
 * The tanks that a line speaks of on its day: the tank itself, every tank on a loop, every tank for
 * `room`, the tanks that hold fish of a group or brood.
 */
export function tanksNamed(room: Room, event: EventBase): string[] {
  const { subject, day, minute } = event;
  switch (subject.kind) {
    case 'tank':
      return [subject.tank];
    case 'loop':
      return tanksOn(room, subject.loop, day, minute);
    case 'room':
      return sharers(room, 'room', day, minute);
    case 'tanks': {
      const all =
        subject.of === 'all' ? sharers(room, 'room', day, minute) : tanksOn(room, subject.of.loop, day, minute);
      return all.filter((tank) => !subject.except.includes(tank));
    }
    case 'group':
      return [...(room.stock.groups.get(subject.group)?.parts.keys() ?? [])];
    case 'brood':
      return [...(room.stock.broods.get(subject.brood)?.parts.keys() ?? [])];
    case 'culture':
    case 'auction':
    case 'species':
      return [];
    default:
      return unreachable(subject);
  }
}
