/**
 * Reads lines as if they stood at the end of the journal already: what they mean, what is wrong with
 * them, which names of broods go into them, what they change. Nothing is written here.
 */
import type { Day } from '../../core/day.ts';
import { toDay } from '../../core/day.ts';
import { linesAhead } from '../../checks/dated-ahead.ts';
import { newPairsIn } from '../../checks/new-pair.ts';
import type { Problem } from '../../core/problem.ts';
import type { Event } from '../../journal/event.ts';
import { withBroodNames } from '../../language/insert.ts';
import { printEntry } from '../../language/print.ts';
import type { Reading } from '../../language/reading.ts';
import { begunBroods, namesToWrite, shiftedNames } from '../../questions/brood-names.ts';
import type { Shift } from '../../questions/brood-names.ts';
import { nothingPutOff } from '../../questions/due/nothing-put-off.ts';
import { promisedTooMany } from '../../questions/promises/over.ts';
import { lastDay } from '../../questions/check.ts';
import type { Room } from '../../state/draft.ts';

/** The journal to add to, and how to read it. Its texts stand behind what need not be read again. */
export interface Book {
  /** The main file's name in problems. */
  readonly file: string;
  readonly today: Day;
  /** How many lines of the main file stand before its texts. */
  readonly linesBefore: number;
  /** Reads the main file as if it held this text. */
  read(text: string): Reading;
  /** The same with lines more after a text that ends in a line end, the first of them of that number. */
  readWith(text: string, lines: readonly string[], first: number): Reading;
  fold(reading: Reading, on: Day): Room;
}

export interface JudgedLine {
  /** As it goes into the journal: names of broods written in. */
  readonly text: string;
  /** The same in the usual words, without its date; null where it says nothing about the room. */
  readonly readAs: string | null;
  /** Its own problems, with places in the journal as it would be. */
  readonly problems: readonly Problem[];
}

export interface Judged {
  /** True if every line counts. */
  readonly ok: boolean;
  readonly lines: readonly JudgedLine[];
  /** The journal with them. */
  readonly reading: Reading;
  /** What they state. */
  readonly events: readonly Event[];
  /** Older lines that these make doubtful. */
  readonly elsewhere: readonly Problem[];
  /** The room on the later of today and the last new day, without the lines and with them. */
  readonly before: Room;
  readonly after: Room;
}

/** What the lines mean at the end of that text, what is wrong with them and what they change; writes nothing. */
export function judge(book: Book, text: string, lines: readonly string[]): Judged {
  const plain = see(book, text, lines);
  // Asked for after the lines were seen: some can be read only with the whole journal, and so has this to be.
  const old = book.read(text);
  const far = toDay(Math.max(book.today, lastDay(plain.reading.events) ?? book.today));
  const before = book.fold(old, far);
  // A line that is not understood changes nothing: the room with it is the one without.
  const unread = lines.every((_, index) => isUnread(plain, index));
  const after = unread ? before : book.fold(plain.reading, far);
  const names = namesToWrite(before, after, plain.events);
  const named = lines.map((line, index) => {
    const events = plain.eventsOf(index);
    return withBroodNames(line, events, (event) => names.get(event) ?? null);
  });
  const seen = names.size === 0 ? plain : see(book, text, named);
  if ((seen.reading.behind === null) !== (plain.reading.behind === null)) return judge(book, text, lines);
  const last = isCalledSo(names, after, plain) ? after : book.fold(seen.reading, far);
  const on = toDay(Math.max(book.today, ...seen.events.map(({ day }) => day)));
  const shifts = shiftedNames(before, last, old.events);
  const known = new Set([...old.problems, ...before.problems].map(keyOf));
  const problems = [
    ...seen.reading.problems,
    ...last.problems,
    ...shifts.map((shift) => shifted(shift, seen, named)),
    ...promisedTooMany(last, seen.events),
    ...nothingPutOff(last, seen.events),
    ...(seen.events.some(({ kind }) => kind === 'moved') ? newPairsIn(last) : []),
    // A journal that lies ahead as a whole is an example, or the machine's clock is wrong.
    ...(old.behind !== null || old.events.some(({ day }) => day <= book.today)
      ? linesAhead(seen.events, book.today)
      : []),
  ];
  const fresh = problems.filter((problem) => !known.has(keyOf(problem)));
  const judged = named.map((line, index): JudgedLine => {
    const events = seen.eventsOf(index);
    const own = fresh.filter(({ at }) => at.file === book.file && at.line === seen.first + index);
    return { text: line, readAs: events.length === 0 ? null : undatedEntry(events), problems: own };
  });
  return {
    ok: judged.every((line) => line.problems.every(({ weight }) => weight !== 'stops')),
    lines: judged,
    reading: seen.reading,
    events: seen.events,
    elsewhere: fresh.filter(({ at }) => at.file !== book.file || at.line < seen.first),
    before: on === far ? before : book.fold(old, on),
    after: on === far ? last : book.fold(seen.reading, on),
  };
}

/** False for a line that the language alone refuses: what the room says of it need not be asked. */
export function mayBeRead(book: Book, text: string, lines: readonly string[], index: number): boolean {
  return !isUnread(see(book, text, lines), index);
}

function isUnread({ reading, first, file }: Seen, index: number): boolean {
  return reading.problems.some(({ weight, at }) => weight === 'stops' && at.file === file && at.line === first + index);
}

/** Whether the names to write are those that the broods have without them, and no problem points into those lines. */
function isCalledSo(names: ReadonlyMap<Event, string>, after: Room, { first, file }: Seen): boolean {
  if (names.size === 0) return true;
  const begun = begunBroods(after);
  const told = after.problems.some(({ at }) => at.file === file && at.line >= first);
  return !told && [...names].every(([event, name]) => begun(event) === name);
}

interface Seen {
  readonly reading: Reading;
  /** Number of the first new line. */
  readonly first: number;
  /** Of the new lines alone. */
  readonly events: readonly Event[];
  eventsOf(index: number): readonly Event[];
  readonly file: string;
}

function see(book: Book, text: string, lines: readonly string[]): Seen {
  const whole = text === '' || text.endsWith('\n') ? text : `${text}\n`;
  const first = book.linesBefore + linesIn(whole) + 1;
  const reading = book.readWith(whole, lines, first);
  const events = reading.events.filter(({ place }) => place.file === book.file && place.line >= first);
  return {
    reading,
    first,
    events,
    eventsOf: (index) => inLine(events, first + index),
    file: book.file,
  };
}

/** How many lines end in it. */
function linesIn(text: string): number {
  let lines = 0;
  for (let at = text.indexOf('\n'); at >= 0; at = text.indexOf('\n', at + 1)) lines += 1;
  return lines;
}

function inLine(events: readonly Event[], line: number): readonly Event[] {
  return events.filter(({ place }) => place.line === line).sort((a, b) => a.place.from - b.place.from);
}

function undatedEntry(events: readonly Event[]): string {
  return printEntry(events).replace(/^\S+ /, '');
}

function keyOf({ kind, says, at }: Problem): string {
  return `${at.file}:${at.line}:${at.from} ${kind} ${says}`;
}

/** A brood that no line names is counted by its date: one more before it would make it another. */
function shifted({ place, was, becomes }: Shift, { first, file, events }: Seen, lines: readonly string[]): Problem {
  const line = events.find((event) => event.kind === 'spawned' || event.kind === 'stage seen')?.place.line ?? first;
  return {
    kind: 'name-would-change',
    weight: 'stops',
    says: `with this line, what line ${place.line} began would be ${becomes} and no longer ${was}`,
    write: 'tankside tidy --write first (it writes the names in), then this line again',
    at: { file, line, from: 0, to: lines[line - first]?.length ?? 0 },
    also: [place],
  };
}
