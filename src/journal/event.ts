/**
 * Every fact that a journal line can state, in canonical units, with names looked up and dates made
 * days. What follows from a fact is the fold's business; nothing here is derived from other lines.
 * The kinds stand in `kinds.ts`.
 */
import type { Day } from '../core/day.ts';
import type { DayWindow } from '../core/interval.ts';
import type { Place } from '../core/span.ts';
import type { Subject } from './subject.ts';
import type { Kinds } from './kinds.ts';

export type * from './values.ts';

/** What every event carries. */
export interface EventBase {
  /** Place in the order of the room's history: day, then time, then as filed; unique in one reading. */
  readonly seq: number;
  /** The entry's day: when it was known. */
  readonly day: Day;
  /** Minutes after midnight where the line has a time of day or stands under one that has. */
  readonly minute: number | null;
  readonly subject: Subject;
  /** The clause in its file. */
  readonly place: Place;
  /** Text in quotes after the clause: kept, searched, shown. */
  readonly remark: string | null;
  /** `by DATE`, `yesterday`, `2-4 days ago`: when it happened, where the line says so; null: that day. */
  readonly when: DayWindow | null;
}

export type EventKind = keyof Kinds;
export type EventOf<K extends EventKind> = { [P in K]: EventBase & { readonly kind: P } & Kinds[P] }[K];
/** Any one fact. Discriminate by `kind`. */
export type Event = EventOf<EventKind>;
