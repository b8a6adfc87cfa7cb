/**
 * Days, ages, counts and lists in the words of an answer. Here rather than with the reports because the
 * reason of a row is worded where it is found; what depends on the look of an answer is in `reports/words.ts`.
 */
import type { Day } from './day.ts';
import { civil } from './day.ts';
import type { DayWindow, Interval } from './interval.ts';
import { clamp, outward } from './interval.ts';

const MONTHS = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'] as const;
/** Ages are told in days up to six weeks, in weeks up to half a year, then in months. */
const LAST_IN_DAYS = 42;
const LAST_IN_WEEKS = 182;
const DAYS_A_MONTH = 30.44;

/** A tank's name inside a clause of a line, where a bare number would be a number: `tank 12`. */
export function tankInLine(name: string): string {
  return /^\d/u.test(name) ? `tank ${name}` : name;
}

/** `14 Feb`, with the year where it is not that of `now`. */
export function dayWords(day: Day, now: Day): string {
  const { year, month, dayOfMonth } = civil(day);
  const short = `${dayOfMonth} ${MONTHS[month - 1] ?? ''}`;
  return year === civil(now).year ? short : `${short} ${year}`;
}

/** `12–26 Jun`, `28 Jan – 3 Feb`, `from 12 Jun`, `by 26 Jun`; `not known` where both sides are open. */
export function windowWords(window: DayWindow, now: Day): string {
  const { low, high } = window;
  if (low === null) return high === null ? 'not known' : `by ${dayWords(high, now)}`;
  if (high === null) return `from ${dayWords(low, now)}`;
  if (low === high) return dayWords(low, now);
  const from = civil(low);
  const to = civil(high);
  if (from.year !== to.year) return `${dayWords(low, now)} – ${dayWords(high, now)}`;
  if (from.month === to.month) return `${from.dayOfMonth}–${dayWords(high, now)}`;
  return `${from.dayOfMonth} ${MONTHS[from.month - 1] ?? ''} – ${dayWords(high, now)}`;
}

/** A hard window with the likely days inside it: `2–5 Feb, most likely 3–4`; the window alone where they say no more. */
export function likelyWindowWords(window: DayWindow, likely: DayWindow | null, now: Day): string {
  const whole = windowWords(window, now);
  if (likely === null || likely.low === null || likely.high === null) return whole;
  if (window.low !== null && likely.low <= window.low && window.high !== null && likely.high >= window.high)
    return whole;
  const month = (day: Day | null): string | null => (day === null ? null : dayWords(day, now).replace(/^\d+/, ''));
  const one = month(likely.low);
  const alike = [likely.high, window.low, window.high].every((day) => month(day) === one);
  const { dayOfMonth: from } = civil(likely.low);
  const { dayOfMonth: to } = civil(likely.high);
  const days = from === to ? `the ${ordinal(from)}` : `${String(from)}–${String(to)}`;
  return `${whole}, most likely ${alike ? days : windowWords(likely, now)}`;
}

/** `since the 14th` in the last four weeks, `since 14 Jan` before that, `since today`. */
export function sinceWords(day: Day, now: Day): string {
  if (day === now) return 'since today';
  const recent = day < now && now - day < 28;
  return recent ? `since the ${ordinal(civil(day).dayOfMonth)}` : `since ${dayWords(day, now)}`;
}

/** `1st`, `2nd`, `3rd`, `11th`, `22nd`. */
export function ordinal(number: number): string {
  const tens = number % 100;
  if (tens >= 11 && tens <= 13) return `${number}th`;
  const last = number % 10;
  return `${number}${last === 1 ? 'st' : last === 2 ? 'nd' : last === 3 ? 'rd' : 'th'}`;
}

/** An age or a length of time in days, as it is said: `13 days`, `5–8 days`, `7–9 weeks`, `at least 6 months`. */
export function ageWords(days: Interval): string {
  const top = Number.isFinite(days.high) ? days.high : days.low;
  if (top <= LAST_IN_DAYS) return unitWords(days, 1, 'day');
  if (top <= LAST_IN_WEEKS) return unitWords(days, 7, 'week');
  return unitWords(days, DAYS_A_MONTH, 'month');
}

function unitWords(days: Interval, each: number, unit: string): string {
  const low = Math.floor(days.low / each);
  if (!Number.isFinite(days.high)) return `at least ${plural(low, unit)}`;
  const high = Math.floor(days.high / each);
  return low === high ? plural(low, unit) : `${low}–${high} ${unit}s`;
}

/**
 * A count of fish or eggs as an answer gives it: `18`, `about 45 (34–56)`, `34–56`, `at least 1`,
 * `unknown`. Whole numbers only: 33.75 to 56.25 fish are 34 to 56.
 */
export function countWords(count: Interval): string {
  const { low, likely, high } = wholeWithin(count);
  if (low === high) return String(low);
  if (!Number.isFinite(high)) return low <= 0 ? 'unknown' : `at least ${low}`;
  return likely === null ? `${low}–${high}` : `about ${likely} (${low}–${high})`;
}

function wholeWithin(count: Interval): Interval {
  const low = Math.ceil(count.low);
  const high = Math.floor(count.high);
  if (low > high) return outward(count);
  return { low, likely: count.likely === null ? null : clamp(Math.round(count.likely), low, high), high };
}

/** A quantity as a bare range, rounded outward to `decimals`: `34–56`, `18`, `0.20–0.35`, `22 or more`. */
export function rangeWords(value: Interval, decimals = 0): string {
  const scale = 10 ** decimals;
  const low = (Math.floor(value.low * scale + 1e-9) / scale).toFixed(decimals);
  if (!Number.isFinite(value.high)) return `${low} or more`;
  const high = (Math.ceil(value.high * scale - 1e-9) / scale).toFixed(decimals);
  return low === high ? low : `${low}–${high}`;
}

/**
 * A measured figure: one number, rounded, where it is no wider than its last decimal, else the range;
 * no needless zeros: `0.044`, `7.4`, `24–27`.
 */
export function figureWords(value: Interval, decimals: number): string {
  const scale = 10 ** decimals;
  const { low, likely, high } = value;
  if (likely !== null && high - low <= 1 / scale) return String(Math.round(likely * scale) / scale);
  return rangeWords(value, decimals)
    .replace(/(\.\d*?)0+(?=\D|$)/g, '$1')
    .replace(/\.(?=\D|$)/g, '');
}

/** `A1`, `A1 and A2`, `A1, A2 and C1`. */
export function listWords(items: readonly string[]): string {
  if (items.length < 2) return items.join('');
  return `${items.slice(0, -1).join(', ')} and ${items.at(-1) ?? ''}`;
}

/** `1 line`, `2 lines`, `2 boxes` where the plural is given. */
export function plural(number: number, one: string, many = `${one}s`): string {
  return `${number} ${number === 1 ? one : many}`;
}

/** A share of 0 to 1 in percent: `62 % (40–88 %)`. */
export function shareWords({ low, likely, high }: Interval): string {
  const percent = (share: number): string => String(Math.round(share * 100));
  const range = percent(low) === percent(high) ? `${percent(low)} %` : `${percent(low)}–${percent(high)} %`;
  return likely === null || percent(low) === percent(high) ? range : `${percent(likely)} % (${range})`;
}

/** A sum of money: `46.20`, or the likely one with its range. */
export function sumWords(value: Interval): string {
  const { low, likely, high } = value;
  if (high - low < 0.005) return (likely ?? low).toFixed(2);
  return likely === null ? rangeWords(value, 2) : `${likely.toFixed(2)} (${rangeWords(value, 2)})`;
}
