/** How builders look: each kind of clause has one function that makes the facts it states. */
import type { ClauseKind } from '../../../grammar/phrases.ts';
import type { EventBase, EventKind, EventOf } from '../../journal/event.ts';
import type { FishRef, Subject } from '../../journal/subject.ts';
import type { Clause } from '../clause.ts';

/** A fact without what every event carries: place, day, subject, remark, when. */
export type BodyOf<K extends EventKind> = { [P in K]: Omit<EventOf<P>, keyof EventBase> }[K];
export type Body = BodyOf<EventKind>;

export interface Task {
  readonly clause: Clause;
  readonly subject: Subject;
  /** The fish that the heading names, if it does. */
  readonly fish: FishRef;
  /** How many subjects the heading has; several tanks that only the plumbing can list count as two. */
  readonly among: number;
}

/** Nothing or null after a fault. */
export type Build = (task: Task) => Body | readonly Body[] | null;
export type Builds<K extends ClauseKind> = { readonly [P in K]: Build };
