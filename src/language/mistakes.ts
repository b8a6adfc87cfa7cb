/** `mistake …` takes back the one such clause of that subject and day. None or several is an error. */
import type { Day } from '../core/day.ts';
import type { Place } from '../core/span.ts';
import type { Event } from '../journal/event.ts';
import type { Fact } from './build/build.ts';
import { fault } from './faults.ts';
import type { Fault } from './faults.ts';
import { toEvent } from './order.ts';
import type { Dated } from './order.ts';

export interface Corrected {
  /** What is left: neither the mistakes nor what they took back. */
  readonly facts: readonly Dated[];
  /** Mistakes that found none or several, by the count of lines filed before them. */
  readonly faults: ReadonlyMap<number, readonly Fault[]>;
}

/** Facts without those that a `mistake` takes back; a `mistake` that fits none or several is a fault of its entry. */
export function takeBack(facts: readonly Dated[]): Corrected {
  const mistakes = facts.filter(({ fact }) => fact.mistake);
  if (mistakes.length === 0) return { facts, faults: new Map() };
  const gone = new Set<Dated>(mistakes);
  const faults = new Map<number, Fault[]>();
  const byDay = daysOf(facts, new Set(mistakes.map(({ day }) => day)));
  for (const mistake of mistakes) {
    const same = (byDay.get(mistake.day) ?? []).filter(
      (other) => !gone.has(other) && saySame(toEvent(other, 0), toEvent(mistake, 0)),
    );
    const [only] = same;
    if (only !== undefined && same.length === 1) gone.add(only);
    else faults.set(mistake.filed, [...(faults.get(mistake.filed) ?? []), notOne(mistake.fact, same.map(placeOf))]);
  }
  return { facts: facts.filter((each) => !gone.has(each)), faults };
}

function daysOf(facts: readonly Dated[], days: ReadonlySet<Day>): ReadonlyMap<Day, readonly Dated[]> {
  const found = new Map<Day, Dated[]>();
  for (const each of facts) {
    if (!days.has(each.day)) continue;
    const there = found.get(each.day);
    if (there === undefined) found.set(each.day, [each]);
    else there.push(each);
  }
  return found;
}

function placeOf({ file, line, fact }: Dated): Place {
  return { file, line, from: fact.at.from, to: fact.at.to };
}

/** The fault of a mistake that found none or several, at these places. */
export function notOne({ at }: Fact, places: readonly Place[]): Fault {
  if (places.length === 0) return fault('mistake-of-none', at, 'no such clause of that subject stands on that day');
  const says = 'several such clauses of that subject stand on that day: which one?';
  return { ...fault('mistake-of-several', at, says), also: places };
}

/** What does not count when two facts are compared: where and when they were written, and the remark. */
const ASIDE: ReadonlySet<string> = new Set(['seq', 'day', 'minute', 'place', 'remark']);

/** Whether two events of one day state the same fact of the same subject. */
export function saySame(a: Event, b: Event): boolean {
  return a.kind === b.kind && same(facts(a), facts(b));
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
