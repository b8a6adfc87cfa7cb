/** A fact on its day, and the event that it is. */
import type { Day } from '../core/day.ts';
import type { Event } from '../journal/event.ts';
import type { Fact } from './build/build.ts';

/** A fact with all that decides its place. */
export interface Dated {
  readonly fact: Fact;
  readonly day: Day;
  readonly minute: number | null;
  readonly file: string;
  readonly line: number;
  /** Count of lines filed before it. */
  readonly filed: number;
}

/** The finished event. */
export function toEvent({ fact, day, minute, file, line }: Dated, seq: number): Event {
  const place = { file, line, from: fact.at.from, to: fact.at.to };
  return { seq, day, minute, subject: fact.subject, place, remark: fact.remark, when: fact.when, ...fact.body };
}
