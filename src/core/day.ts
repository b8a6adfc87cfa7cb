/**
 * Calendar days as whole numbers. A day is never an instant, so no time zone or clock change can
 * move it; month arithmetic and names of weekdays live here too, so that nothing inside needs a date library.
 */

declare const dayBrand: unique symbol;

/** A calendar day: days since 1970-01-01 in the proleptic Gregorian calendar of ISO 8601. */
export type Day = number & { readonly [dayBrand]: true };

/** The first and last day that a journal may name: 0001-01-01 and 9999-12-31. */
export const FIRST_DAY = -719_162;
export const LAST_DAY = 2_932_896;

/** True for a whole number inside the years 1 to 9999. */
export function isDay(value: number): value is Day {
  return Number.isInteger(value) && value >= FIRST_DAY && value <= LAST_DAY;
}

/** A number as a day, rounded down and kept inside the calendar. */
export function toDay(value: number): Day {
  const whole = Math.min(LAST_DAY, Math.max(FIRST_DAY, Math.floor(value)));
  if (isDay(whole)) return whole;
  throw new RangeError(`not a day: ${value}`);
}

/**
 * The day of a year, month (1–12) and day of month, or null where the calendar has none (30 February).
 * Formula: days-from-civil, H. Hinnant, "chrono-Compatible Low-Level Date Algorithms" (from memory).
 */
export function dayOf(year: number, month: number, dayOfMonth: number): Day | null {
  if (month < 1 || month > 12 || dayOfMonth < 1 || dayOfMonth > daysInMonth(year, month)) return null;
  const y = month <= 2 ? year - 1 : year;
  const era = Math.floor(y / 400);
  const yearOfEra = y - era * 400;
  const dayOfYear = Math.floor((153 * (month + (month > 2 ? -3 : 9)) + 2) / 5) + dayOfMonth - 1;
  const dayOfEra = yearOfEra * 365 + Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100) + dayOfYear;
  const day = era * 146_097 + dayOfEra - 719_468;
  return isDay(day) ? day : null;
}

/** Year, month (1–12) and day of month of a day. */
export function civil(day: Day): { year: number; month: number; dayOfMonth: number } {
  const z = day + 719_468;
  const era = Math.floor(z / 146_097);
  const doe = z - era * 146_097;
  const yoe = Math.floor((doe - Math.floor(doe / 1460) + Math.floor(doe / 36_524) - Math.floor(doe / 146_096)) / 365);
  const doy = doe - (365 * yoe + Math.floor(yoe / 4) - Math.floor(yoe / 100));
  const mp = Math.floor((5 * doy + 2) / 153);
  const month = mp < 10 ? mp + 3 : mp - 9;
  const year = yoe + era * 400 + (month <= 2 ? 1 : 0);
  return { year, month, dayOfMonth: doy - Math.floor((153 * mp + 2) / 5) + 1 };
}

/** Length of a month (1–12) in days. */
export function daysInMonth(year: number, month: number): number {
  if (month === 2) return (year % 4 === 0 && year % 100 !== 0) || year % 400 === 0 ? 29 : 28;
  return month === 4 || month === 6 || month === 9 || month === 11 ? 30 : 31;
}

const ISO = /^(\d{4})-(\d{2})-(\d{2})$/;

/** Reads an ISO 8601 calendar date (`2026-02-14`); null where it is none. */
export function dayFromIso(text: string): Day | null {
  const match = ISO.exec(text);
  if (!match) return null;
  return dayOf(Number(match[1]), Number(match[2]), Number(match[3]));
}

/** ISO 8601 calendar date of a day. */
export function isoDay(day: Day): string {
  const { year, month, dayOfMonth } = civil(day);
  return `${String(year).padStart(4, '0')}-${String(month).padStart(2, '0')}-${String(dayOfMonth).padStart(2, '0')}`;
}

/** The day `days` later (earlier where negative), kept inside the calendar. */
export function addDays(day: Day, days: number): Day {
  return toDay(day + days);
}

/** The same day of month `months` later, or that month's last day where it is shorter. */
export function addMonths(day: Day, months: number): Day {
  const { year, month, dayOfMonth } = civil(day);
  const index = year * 12 + (month - 1) + months;
  const toYear = Math.floor(index / 12);
  const toMonth = index - toYear * 12 + 1;
  return dayOf(toYear, toMonth, Math.min(dayOfMonth, daysInMonth(toYear, toMonth))) ?? toDay(day + months * 30);
}

/** ISO 8601 weekday: 1 Monday to 7 Sunday. */
export function weekday(day: Day): number {
  return ((((day + 3) % 7) + 7) % 7) + 1;
}
