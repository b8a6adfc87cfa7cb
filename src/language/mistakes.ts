/** `mistake …` takes back the one such clause of that subject and day. None or several is an error. */
import type { Piece } from '../../grammar/syntax.ts';
import type { Day } from '../core/day.ts';
import type { Place } from '../core/span.ts';
import type { Event } from '../journal/event.ts';
import { fault } from './faults.ts';
import type { Fault } from './faults.ts';

export interface Corrected {
  /** Places in the list of the mistakes, and of what they took back. */
  readonly gone: ReadonlySet<number>;
  /** Mistakes that found none or several, by the count of lines filed before them. */
  readonly faults: ReadonlyMap<number, readonly Fault[]>;
}

/**
 * What mistakes take back; one that fits none or several is a fault of its entry. Events stand as they were filed;
 * `mistakes` are places among them, `filed` counts the lines before each.
 */
export function takeBack(events: readonly Event[], mistakes: readonly number[], filed: readonly number[]): Corrected {
  if (mistakes.length === 0) return { gone: new Set(), faults: new Map() };
  const gone = new Set(mistakes);
  const faults = new Map<number, Fault[]>();
  const byDay = daysOf(events, new Set(mistakes.flatMap((index) => events[index]?.day ?? [])));
  for (const index of mistakes) {
    const mistake = events[index];
    if (mistake === undefined) continue;
    const same = (byDay.get(mistake.day) ?? []).filter(
      (other) => !gone.has(other.index) && saySame(other.event, mistake),
    );
    const [only] = same;
    if (only !== undefined && same.length === 1) gone.add(only.index);
    else {
      const entry = filed[index] ?? 0;
      const near = (byDay.get(mistake.day) ?? []).filter((one) => !gone.has(one.index) && isNear(one.event, mistake));
      const [places, others] = [same, near].map((found) => found.map(({ event }) => event.place));
      faults.set(entry, [...(faults.get(entry) ?? []), notOne(mistake.place, places ?? [], others)]);
    }
  }
  return { gone, faults };
}

interface Filed {
  readonly index: number;
  readonly event: Event;
}

function daysOf(events: readonly Event[], days: ReadonlySet<Day>): ReadonlyMap<Day, readonly Filed[]> {
  const found = new Map<Day, Filed[]>();
  for (const [index, event] of events.entries()) {
    if (!days.has(event.day)) continue;
    const there = found.get(event.day);
    if (there === undefined) found.set(event.day, [{ index, event }]);
    else there.push({ index, event });
  }
  return found;
}

/** The fault of a mistake that found none or several, at these places. `near`: where clauses of its kind stand that say more or less. */
export function notOne({ from, to }: Piece, places: readonly Place[], near: readonly Place[] = []): Fault {
  const at = { from, to };
  if (places.length === 0) {
    const whole = near.length === 0 ? '' : ': write the whole of it behind `mistake`';
    return { ...fault('mistake-of-none', at, `no such clause of that subject stands on that day${whole}`), also: near };
  }
  const says = 'several such clauses of that subject stand on that day: which one?';
  return { ...fault('mistake-of-several', at, says), also: places };
}

/** What does not count when two facts are compared: where and when they were written, and the remark. */
const ASIDE: ReadonlySet<string> = new Set(['seq', 'day', 'minute', 'place', 'remark']);

/** Whether two events of one day state the same fact of the same subject. */
export function saySame(a: Event, b: Event): boolean {
  return a.kind === b.kind && same(facts(a), facts(b));
}

/** Whether an event is of the same kind and subject as a mistake: its words may be all of those that the other has. */
export function isNear(event: Event, mistake: Event): boolean {
  return event.kind === mistake.kind && same(event.subject, mistake.subject);
}

function facts(event: Event): object {
  return Object.fromEntries(Object.entries(event).filter(([key]) => !ASIDE.has(key)));
}

function same(a: unknown, b: unknown): boolean {
  if (a === b) return true;
  if (typeof a !== 'object' || typeof b !== 'object' || a === null || b === null) return Object.is(a, b);
  const [left, right] = [Object.entries(a), new Map(Object.entries(b))];
  return left.length === right.size && left.every(([key, value]) => right.has(key) && same(value, right.get(key)));
}
