/**
 * From a moment to the calendar day on which it falls, where this machine is or in a zone of the IANA list.
 * Luxon is loaded only for a zone: a room that names none never waits for it.
 */
import { civil, dayOf, toDay, type Day } from '../core/day.ts';

/** The day that it is at a moment, as this machine's clock shows it. */
export function dayHere(moment: Date): Day {
  return dayOf(moment.getFullYear(), moment.getMonth() + 1, moment.getDate()) ?? toDay(0);
}

/** From when until before when it is a day somewhere, milliseconds since 1970. */
export interface DayBounds {
  readonly from: number;
  readonly until: number;
}

/** Days of zones that were looked up before, in this run or another of the same day. */
const known = new Map<string, DayBounds & { readonly day: Day }>();

/** Takes over what `dayBounds` said before, so that the same day is not looked up twice. */
export function bringDay(zone: string, day: DayBounds & { readonly day: Day }): void {
  known.set(zone, day);
}

/** The day that it is at a moment in a zone; null for no such zone. */
export async function dayIn(zone: string, moment: Date): Promise<Day | null> {
  const before = known.get(zone);
  if (before !== undefined && before.from <= moment.getTime() && moment.getTime() < before.until) return before.day;
  const { DateTime, Settings } = await import('luxon');
  Settings.defaultLocale = 'en-US';
  const there = DateTime.fromJSDate(moment, { zone });
  return there.isValid ? (dayOf(there.year, there.month, there.day) ?? toDay(0)) : null;
}

/** From when until before when it is that day in a zone, milliseconds since 1970; null for no such zone. */
export async function dayBounds(zone: string, day: Day): Promise<DayBounds | null> {
  const before = known.get(zone);
  if (before?.day === day) return { from: before.from, until: before.until };
  const { DateTime } = await import('luxon');
  const { year, month, dayOfMonth } = civil(day);
  // Noon is there on every day; midnight is skipped where clocks go forward then.
  const noon = DateTime.fromObject({ year, month, day: dayOfMonth, hour: 12 }, { zone });
  if (!noon.isValid) return null;
  return { from: noon.startOf('day').toMillis(), until: noon.plus({ days: 1 }).startOf('day').toMillis() };
}
