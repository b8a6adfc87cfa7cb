/** From when to when, and on which weekday: told in a way that no clause has, with the line that would be read. */
import { WEEKDAYS } from '../../grammar/words.ts';
import { isoDay } from '../core/day.ts';
import { readDayWords } from './dates.ts';
import { fault } from './faults.ts';
import type { Fault } from './faults.ts';
import type { Said } from './said.ts';

const CLOCK = '(\\d{1,2})(?:[:.](\\d{2}))?\\s*(am|pm)?';
const FROM_TO = new RegExp(`^(\\p{L}.*?)\\s+((?:from\\s+)?${CLOCK}\\s*(?:-|–|—|to|till|until)\\s*${CLOCK})$`, 'iu');
const DAY = 24 * 60;

/** `power cut 14:00-18:30`: how long it was is known from that; the times stay as the remark. */
export function fromTo({ at, text, reads }: Said): Fault | null {
  const [, what, span, hour, minute, half, hour2, minute2, half2] = FROM_TO.exec(text) ?? [];
  if (what === undefined || span === undefined || hour === undefined || hour2 === undefined) return null;
  // `pump off 2-4` may be hours, or how many there were.
  if (minute === undefined && minute2 === undefined && half === undefined && half2 === undefined) return null;
  const end = minuteOf(hour2, minute2, half2);
  const same = minuteOf(hour, minute, half ?? half2);
  // `11-1pm` began before noon.
  const turned = half === undefined && half2 !== undefined && same !== null && end !== null && same > end;
  const begin = turned ? minuteOf(hour, minute, /^p/iu.test(half2) ? 'am' : 'pm') : same;
  if (begin === null || end === null || begin === end) return null;
  const lasted = (end - begin + DAY) % DAY;
  const words = `${what} ${String(lasted)} min "${span}"`;
  return reads(words)
    ? fault('not-understood', at, `«${span}» is how long it was: ${String(lasted)} min`, words)
    : null;
}

function minuteOf(hours: string, minutes: string | undefined, half: string | undefined): number | null {
  const [hour, minute] = [Number(hours), Number(minutes ?? 0)];
  if (minute > 59 || hour > (half === undefined ? 24 : 12)) return null;
  const noon = half === undefined ? hour : (hour % 12) + (half.toLowerCase() === 'pm' ? 12 : 0);
  return (noon * 60 + minute) % DAY;
}

const AWAY =
  /^((?:on\s+)?(?:away|holidays?)|gone)\s+(?:from\s+)?(\S.*?)\s*(?:-|–|—|\sto\s|\still\s|\suntil\s)\s*(\S.*)$/iu;

/** `away 5-12 march`: from that day on, and so of a line of that day. */
export function daysAway({ line, at, text, has }: Said): Fault | null {
  const [, word, first, last] = AWAY.exec(text) ?? [];
  if (word === undefined || first === undefined || last === undefined || !has.has('away')) return null;
  // `away 5-12` may be days of any month.
  const month = /\p{L}{3,}/u.exec(last)?.[0];
  if (month === undefined) return null;
  const from = readDayWords(/^\d+(?:st|nd|rd|th)?$/iu.test(first) ? `${first} ${month}` : first, line.day, 'ahead');
  const to = from === null ? null : readDayWords(last, from, 'ahead');
  if (from === null || to === null) return null;
  const until = `${word} until ${isoDay(to)}`;
  if (from === line.day) return fault('no-date', at, `until when is said with \`until\``, until);
  const says = `away begins on the day of its line: a line of ${isoDay(from)}`;
  return { ...fault('no-date', at, says), line: `${isoDay(from)} room: away until ${isoDay(to)}` };
}

const WEEKDAY = [...WEEKDAYS.keys()].sort((a, b) => b.length - a.length).join('|');
const LAST = new RegExp(`^(\\S.*\\S|\\S+)\\s+every\\s+((?:${WEEKDAY})s?)$`, 'iu');
const FIRST = new RegExp(`^every\\s+((?:${WEEKDAY})s?)\\s+(\\S.*)$`, 'iu');

/** `wc 30 % every sunday`: once a week; on which day a chore comes up follows from the line. */
export function onWeekday({ at, text, has, reads }: Said): Fault | null {
  const [, behind, day] = LAST.exec(text) ?? [];
  const [, first, before] = behind === undefined ? (FIRST.exec(text) ?? []) : [];
  const [what, weekday] = [behind ?? before, day ?? first];
  if (what === undefined || weekday === undefined || !has.has('chore')) return null;
  const words = `${reads(`${what} every week`) ? what : `"${what}"`} every week "${weekday}"`;
  const says = `no chore is kept for a weekday: once a week counts from the day of the line`;
  return fault('unknown-clause', at, says, words);
}
