/** Events by hand, for tests of the fold and of the questions: one line, one event, in the order given. */
import { dayFromIso, type Day } from '../../src/core/day.ts';
import type { Event, EventBase, EventKind, EventOf } from '../../src/journal/event.ts';
import type { Subject } from '../../src/journal/subject.ts';
import type { Room } from '../../src/state/draft.ts';
import { foldRoom } from '../../src/state/fold.ts';

export function day(iso: string): Day {
  const found = dayFromIso(iso);
  if (found === null) throw new Error(`not a date: ${iso}`);
  return found;
}

export const tank = (name: string): Subject => ({ kind: 'tank', tank: name });
export const loop = (name: string): Subject => ({ kind: 'loop', loop: name });
export const room: Subject = { kind: 'room' };

type Facts<K extends EventKind> = Omit<EventOf<K>, keyof EventBase> &
  Partial<Pick<EventBase, 'minute' | 'remark' | 'when'>>;
/** One line of a test journal: date, subject, fact. */
export type Line = { [K in EventKind]: readonly [on: string, about: Subject, fact: Facts<K> & { kind: K }] }[EventKind];

/** The room on a day, from lines in any order; line numbers count from 1 as listed. */
export function roomOn(on: string, lines: readonly Line[]): Room {
  return foldRoom(eventsOf(lines), day(on));
}

/** The lines as events in the order of the room's history. */
export function eventsOf(lines: readonly Line[]): readonly Event[] {
  return lines
    .map(([on, subject, fact], index) => ({ on: day(on), subject, fact, line: index + 1 }))
    .sort((a, b) => a.on - b.on || a.line - b.line)
    .map(({ on, subject, fact, line }, index) => {
      const base: EventBase = {
        seq: index,
        day: on,
        minute: null,
        subject,
        place: { file: 'fishroom.txt', line, from: 0, to: 1 },
        remark: null,
        when: null,
      };
      return { ...base, ...fact };
    });
}
