/**
 * Reading on: of a journal that was read whole once, only the latest lines are read again, and what stands
 * behind them. Gives the same as reading it whole, or nothing where only that will do.
 */
import { isoDay } from '../core/day.ts';
import type { Day } from '../core/day.ts';
import type { Problem } from '../core/problem.ts';
import type { Event } from '../journal/event.ts';
import { Conventions } from './conventions.ts';
import type { SaidConventions } from './conventions.ts';
import { isDeclaring, mayDeclare } from './declare.ts';
import type { Declared } from './declare.ts';
import { Names } from './names.ts';
import { readLines, SOME_DAY } from './read.ts';
import { withProblems } from './reading.ts';
import type { Behind, Entry, Reading } from './reading.ts';
import { isPlain, NOTHING } from './source.ts';
import type { RawEntry } from './source.ts';
import { splitLines } from './split.ts';

/** A line that is read again. */
interface Line {
  readonly file: string;
  readonly line: number;
  readonly text: string;
}

/** What was read, as plain data: enough to read on from `start` of the main file. */
export interface ReadBefore {
  /** Lines of later days are read again; this day and all before it are over. */
  readonly day: Day;
  /** How many events are of that day or before. */
  readonly events: number;
  /** Where the main file goes on: bytes of UTF-8, and lines, before it. */
  readonly start: { readonly at: number; readonly lines: number };
  /** Lines before `start` of later days, in the order of filing. */
  readonly again: readonly Line[];
  /** Of the last dated line before `start`, ISO 8601. */
  readonly today: string;
  /** Of the lines that are not read again. */
  readonly problems: readonly Problem[];
  readonly names: ReturnType<Names['declarations']>;
  readonly conventions: SaidConventions;
  readonly homes: Declared['homes'];
}

/** How many days are read again: what a keeper writes down or mends later than that is rare. */
const DAYS_AGAIN = [14, 7, 3, 1] as const;
/** More lines than these are not left to be read again. */
const FEW = 200;
/** Where more than these have come, what was kept is old: all of it is read, and kept anew. */
const MOST_AGAIN = 2_500;

/**
 * What to keep of a reading, so that lines behind it can be read on from there. The end of the kept
 * part lies before the latest lines, as these are still being worked on. Null where nothing can be kept:
 * the journal is young, or its last line is not ended. `bytes` are the main file's; `by` is the last day that counts as
 * past; `old` is what the reading itself was read on from.
 */
export function keepReading(
  reading: Reading,
  file: string,
  bytes: Uint8Array,
  by: Day,
  old: ReadBefore | null = null,
): ReadBefore | null {
  const { entries, declared } = reading;
  const day = overBy(entries, by);
  if (day === null || (old !== null && day <= old.day)) return null;
  const start = startOf(entries, file, bytes, day, old?.start ?? { at: 0, lines: 0 });
  if (start.at > 0 && bytes[start.at - 1] !== NEWLINE) return null;
  const isBefore = ({ place }: Entry): boolean => place.file !== file || place.line <= start.lines;
  const before = entries.filter(isBefore);
  const again = before.filter((entry) => isLater(entry, day));
  const readAgain = new Set(entries.filter((entry) => !isBefore(entry) || isLater(entry, day)).map(keyOf));
  const last = before.findLast((entry) => entry.day !== null);
  return {
    day,
    events: (old?.events ?? 0) + reading.events.findLastIndex((event) => event.day <= day) + 1,
    start,
    again: again.map(({ place, text: words }) => ({ file: place.file, line: place.line, text: words })),
    today: last?.day === undefined || last.day === null ? (old?.today ?? SOME_DAY) : isoDay(last.day),
    problems: reading.problems.filter(({ at }) => !readAgain.has(`${at.line} ${at.file}`)),
    names: declared.names.declarations(),
    conventions: declared.conventions.said(),
    homes: declared.homes,
  };
}

const NEWLINE = 10;
const MARK = 0xfeff;

function keyOf({ place }: Entry): string {
  return `${place.line} ${place.file}`;
}

function isLater({ day }: Entry, than: Day): boolean {
  return day !== null && day > than;
}

/** The last day that is over, with few enough lines after it; null where there is none. */
function overBy(entries: readonly Entry[], by: Day): Day | null {
  const days = entries.flatMap(({ day }) => (day === null ? [] : [day])).sort((a, b) => b - a);
  const last = days.find((day) => day <= by);
  if (last === undefined) return null;
  const over = DAYS_AGAIN.map((back) => days.find((day) => day <= last - back) ?? null);
  const few = (day: Day): boolean => (days[FEW] ?? day) <= day;
  return over.find((day) => day !== null && few(day)) ?? null;
}

/** Where the last lines begin of which none names anything, and all are of later days. */
function startOf(
  entries: readonly Entry[],
  file: string,
  bytes: Uint8Array,
  day: Day,
  old: ReadBefore['start'],
): ReadBefore['start'] {
  const own = entries.filter(({ place }) => place.file === file);
  const lines = Math.max(old.lines, own.findLast((entry) => !isFree(entry, day))?.place.line ?? 0);
  let { at } = old;
  for (let line = old.lines; line < lines && at < bytes.length; line += 1) {
    const newline = bytes.indexOf(NEWLINE, at);
    at = newline < 0 ? bytes.length : newline + 1;
  }
  return { at, lines };
}

function isFree({ day, text, events }: Entry, over: Day): boolean {
  const named = events.some((event) => writtenName(event) !== null);
  return isPlain(text) && !mayDeclare(text) && !named && (day === null || day > over);
}

/** What the room of before adds to what was read before. */
export type BehindRoom = Omit<Behind, 'day' | 'events' | 'start'>;

/** Whether so much was read again that a later part of it is worth keeping: the longer the journal, the dearer that is. */
export function isLong({ entries, behind }: Reading): boolean {
  const share = (behind?.start.lines ?? 0) / 64;
  return entries.length > Math.min(2_000, Math.max(2 * FEW, share));
}

/** The names and conventions that were kept. */
export function declaredBefore({ names, conventions, homes }: ReadBefore): Declared {
  return { names: Names.restored(names), conventions: new Conventions(conventions), homes };
}

/**
 * Reads on: `tail` is all that the main file holds from `start` on. The reading holds the events and entries
 * of days after `before.day` only, but every problem. Null where a line behind changes what was read before.
 */
export function readOnward(file: string, before: ReadBefore, behind: BehindRoom, tail: string): Reading | null {
  // A mark at the very start of a file is none of its text; here it would be.
  if (tail.charCodeAt(0) === MARK) return null;
  const declared = declaredBefore(before);
  const raw: RawEntry[] = before.again.map((line) => ({ ...line, faults: [], reads: false }));
  for (const { number, text } of splitLines(tail)) {
    if (NOTHING.test(text)) continue;
    if (!isPlain(text) || isDeclaring(text, declared.names) || raw.length > MOST_AGAIN) return null;
    raw.push({ file, line: before.start.lines + number, text, faults: [], reads: false });
  }
  const reading = readLines(raw, declared, before);
  const { day, events, start } = before;
  const all: Behind = { ...behind, day, events, start };
  if (reading.entries.some((entry) => isBehind(entry.day, all)) || takesName(reading.events, all)) return null;
  return withProblems(reading, [...before.problems, ...reading.problems], all);
}

/** Whether a day is over for a reading, so that nothing more can be read of it. */
export function isBehind(day: Day | null, behind: Behind | null): boolean {
  return behind !== null && day !== null && day <= behind.day;
}

/** Whether a line writes the name that an earlier brood was given because it was free. */
export function takesName(events: readonly Event[], behind: Behind | null): boolean {
  return events.some((event) => behind?.begun.has(writtenName(event) ?? '') === true);
}

/** The name of a brood that a line gives it, or null. */
function writtenName(event: Event): string | null {
  return event.kind === 'spawned' || event.kind === 'stage seen' ? event.brood : null;
}
