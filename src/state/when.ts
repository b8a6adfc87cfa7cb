/** When a thing happened, where its line tells of an earlier day (`yesterday`, `2-4 days ago`), and lists kept in that order. */
import type { EventBase } from '../journal/event.ts';
import type { Moment } from './plumbing.ts';

/** The likely day of what a line tells, its own day and time where it names no other. */
export function happened(event: Pick<EventBase, 'day' | 'minute' | 'when'>): Moment {
  const { day, minute, when } = event;
  return when === null ? { day, minute } : { day: when.likely ?? when.high ?? day, minute: null };
}

/** Puts an item where its day belongs: after everything of that day and before all later ones. */
export function insertInTime<T extends { readonly day: number }>(list: T[], item: T): void {
  const before = list.findLastIndex((one) => one.day <= item.day);
  list.splice(before + 1, 0, item);
}

/** True where `a` comes after `b`: on a later day, or of one day told later. */
export function isAfter(a: { day: number; seq: number }, b: { day: number; seq: number }): boolean {
  return a.day === b.day ? a.seq > b.seq : a.day > b.day;
}
