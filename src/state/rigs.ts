/** Reading the temporary measures: which are open, and when each ends by itself. */
import { toDay, type Day } from '../core/day.ts';
import type { DeepReadonly } from '../core/readonly.ts';
import type { Draft, Room } from './draft.ts';
import type { Rig } from './measures.ts';
import type { Moment } from './plumbing.ts';
import { after, isBy } from './tanks.ts';
import { insertInTime } from './when.ts';

/** A pump that stood longer than this, minutes, starves the filter of oxygen and starts a water watch (ours: a setting). */
export const PUMP_LIMIT = 6 * 60;

type Span = Pick<DeepReadonly<Rig>, 'day' | 'minute' | 'until' | 'lasts'>;

/**
 * The moment at which a measure is over by itself, or null: `pump off for 1 h` an hour later, `until`
 * a date when that day is over, and so `for 2 days` of a line without a time. Untimed hours count from the day's start.
 */
export function endsBy(rig: Span): Moment | null {
  if (rig.lasts !== null && !isInDays(rig)) return after(rig, Math.ceil(rig.lasts.high));
  const last = lastDay(rig);
  return last === null ? null : { day: toDay(last + 1), minute: null };
}

/**
 * Least minutes that a measure had been open at a moment: a line without a time of day makes them nearly a day less.
 * One that was over by itself before then was open for as long as its line said.
 */
export function leastOpen(rig: Span, at: Moment): number {
  const own = endsBy(rig);
  const end = own !== null && isBy(own, at.day, at.minute) ? own : at;
  const start = rig.minute ?? (rig.day === end.day ? (end.minute ?? 0) : 1439);
  const between = (end.day - rig.day) * 1440 + (end.minute ?? 0) - start;
  const isOver = own !== null && isBy(own, at.day, at.minute ?? 0);
  return Math.max(between, isOver ? (rig.lasts?.low ?? 0) : 0);
}

/** The day on which it is to be undone, as its line says; null where that says no end. */
export function lastDay(rig: Span): Day | null {
  return rig.lasts === null ? rig.until : after(rig, Math.ceil(rig.lasts.high)).day;
}

function isInDays({ minute, lasts }: Span): boolean {
  return minute === null && lasts !== null && lasts.high >= 1440;
}

/** True where a measure stood open on a day: begun, not undone, and not over by itself before that day. */
export function isOpenOn(rig: DeepReadonly<Rig>, day: Day): boolean {
  if (rig.day > day || (rig.closed !== null && rig.closed.day <= day)) return false;
  const end = endsBy(rig);
  return end === null || end.day > day || (end.day === day && (end.minute ?? 0) > 0);
}

/** Those that no line has closed, over by themselves or not, oldest first. Of a long history only these are asked about. */
export function unclosedRigs({ measures }: Draft): readonly Rig[] {
  if (measures.unclosed.some(({ closed }) => closed !== null)) {
    measures.unclosed = measures.unclosed.filter(({ closed }) => closed === null);
  }
  return measures.unclosed;
}

/** Puts one into every list that it belongs to. */
export function addRig({ measures }: Draft, rig: Rig): void {
  insertInTime(measures.rigs, rig);
  if (rig.closed === null) insertInTime(measures.unclosed, rig);
  if (rig.kind === 'heat raised') insertInTime(measures.raised, rig);
}

/** Temporary measures open on the room's day, of one tank or loop or of all; what `stays` is none any more. */
export function openRigs(room: Room, where?: string): DeepReadonly<Rig>[] {
  return room.measures.unclosed.filter(
    (rig) => !rig.stays && (where === undefined || rig.where === where) && isOpenOn(rig, room.on),
  );
}
