/** When a thing happened, where its line tells of an earlier day (`yesterday`, `2-4 days ago`), and lists kept in that order. */
import type { Place } from '../core/span.ts';
import type { EventBase } from '../journal/event.ts';
import type { Moment } from './plumbing.ts';

/** The likely day of what a line tells, its own day and time where it names no other. */
export function happened(event: Pick<EventBase, 'day' | 'minute' | 'when'>): Moment {
  const { day, minute, when } = event;
  return when === null ? { day, minute } : { day: when.likely ?? when.high ?? day, minute: null };
}

/** Puts an item where its day belongs: after everything of that day and before all later ones. */
export function insertInTime<T extends { readonly day: number }>(list: T[], item: T): void {
  const at = list.findLastIndex((one) => one.day <= item.day) + 1;
  // Nearly always: and at its end a long list is added to without a look at the rest.
  if (at === list.length) list.push(item);
  else list.splice(at, 0, item);
}

/** Those of a list in order of days that are of a day or later: years that lie before it are not gone through. */
export function since<T extends { readonly day: number }>(list: readonly T[], day: number): readonly T[] {
  return list.slice(list.findLastIndex((one) => one.day < day) + 1);
}

/** The last of them that is so, or undefined. */
export function lastSince<T extends { readonly day: number }>(
  list: readonly T[],
  day: number,
  is: (one: T) => boolean,
): T | undefined {
  const last = list.findLast((one) => one.day < day || is(one));
  return last === undefined || last.day < day ? undefined : last;
}

/** True where `a` comes after `b`: on a later day, or of one day told later. */
export function isAfter(a: { day: number; seq: number }, b: { day: number; seq: number }): boolean {
  return a.day === b.day ? a.seq > b.seq : a.day > b.day;
}

interface Told extends Moment {
  readonly place: Place;
}

/** Of one day: the later time, and of one time what its file tells later, so that `test …; water change …` is in order. */
export function isToldLater(a: Told, b: Told): boolean {
  if (a.day !== b.day) return a.day > b.day;
  const [early, late] = [b.minute ?? -1, a.minute ?? -1];
  if (early !== late) return late > early;
  const [from, to] = [b.place, a.place];
  return from.file === to.file && (to.line > from.line || (to.line === from.line && to.from > from.from));
}
