/**
 * Where lines are written down: judged against the journal as it is, saved under its lock. If the journal
 * changed between the two, the lines are judged again before they are written.
 */
import path from 'node:path';
import type { Day } from '../../core/day.ts';
import type { Files } from '../../files/port.ts';
import { extended } from '../../language/extend.ts';
import { declares, isBare } from '../../language/jotted.ts';
import type { Fetch, Reading } from '../../language/reading.ts';
import { changes } from '../../questions/changes.ts';
import { raisedByLines } from '../../questions/raisedby.ts';
import type { JotAnswer, Refused } from '../../reports/jot.ts';
import type { Room } from '../../state/draft.ts';
import { readingOf, zoneOf } from '../journal.ts';
import type { Book, Judged } from './judge.ts';
import { judgeMending, refusal } from './mend.ts';

/** What is loaded late: the language and the fold. */
export interface Readers {
  readonly readJournal: (name: string, text: string, fetch: Fetch) => Reading;
  readonly foldRoom: (events: Reading['events'], on: Day) => Room;
}

export interface Wish {
  readonly asNotes: boolean;
  /** Only say what would be. */
  readonly tryOnly: boolean;
}

export type Outcome =
  | {
      readonly kind: 'done';
      readonly answer: JotAnswer;
      /** The journal with the lines. */
      readonly reading: Reading;
      readonly notices: readonly string[];
    }
  | { readonly kind: 'refused'; readonly refused: readonly Refused[]; readonly reading: Reading }
  | { readonly kind: 'unsaved'; readonly says: string; readonly notices: readonly string[] };

export interface Desk {
  readonly book: Book;
  /** Judges the lines and, if all of them count, adds them. */
  write(lines: readonly string[], wish: Wish): Outcome;
  /** The room as the journal has it now, for completing names. */
  room(): Room;
}

/** Days ahead in which a change of the list is told. */
const AHEAD = 7;

/** `text` is what the journal holds now; `todayIn` knows the day in the zone that it names. */
export async function openDesk(
  files: Files,
  file: string,
  text: string,
  readers: Readers,
  todayIn: (zone: string | null) => Promise<Day>,
): Promise<Desk> {
  const shelf = shelfOf(files, file, readers);
  const today = await todayIn(zoneOf(shelf.read(text)));
  const book: Book = { file: path.basename(file), today, ...shelf };
  return {
    book,
    write: (lines, wish) => write(files, file, book, lines, wish),
    room() {
      const got = files.read(file);
      return book.fold(book.read(got.ok ? got.text : ''), today);
    },
  };
}

/** Remembers the last few readings: each line is added to one, and the next stands on it; nothing is read twice. */
function shelfOf(
  files: Files,
  file: string,
  { readJournal, foldRoom }: Readers,
): Pick<Book, 'read' | 'readWith' | 'fold'> {
  const readings: { text: string; reading: Reading; rooms: Map<Day, Room> }[] = [];
  const known = (text: string): Reading | undefined => {
    const at = readings.findIndex((each) => each.text === closed(text));
    // What is used stays: a line may be tried in many ways on the same journal.
    readings.unshift(...(at < 0 ? [] : readings.splice(at, 1)));
    return at < 0 ? undefined : readings[0]?.reading;
  };
  const remember = (text: string, reading: Reading): Reading => {
    readings.unshift({ text: closed(text), reading, rooms: new Map() });
    readings.length = Math.min(readings.length, REMEMBERED);
    return reading;
  };
  const read = (text: string): Reading =>
    known(text) ?? remember(text, readingOf(files, file, { ok: true, text, problems: [], notices: [] }, readJournal));
  return {
    read,
    readWith(text, lines, first) {
      const whole = `${text}${lines.join('\n')}\n`;
      const there = known(whole);
      if (there !== undefined) return there;
      const more = extended(read(text), lines, path.basename(file), first);
      return more === null ? read(whole) : remember(whole, more);
    },
    fold(reading, on) {
      const rooms = readings.find((each) => each.reading === reading)?.rooms;
      const room = rooms?.get(on) ?? foldRoom(reading.events, on);
      rooms?.set(on, room);
      return room;
    },
  };
}

const REMEMBERED = 4;

/** A text with its last line ended, as it is before anything is added. */
export function closed(text: string): string {
  return text === '' || text.endsWith('\n') ? text : `${text}\n`;
}

function write(files: Files, file: string, book: Book, lines: readonly string[], wish: Wish): Outcome {
  const got = files.read(file);
  if (!got.ok) return { kind: 'unsaved', says: `${book.file} cannot be read: ${got.says}`, notices: [] };
  let judged = judgeMending(book, got.text, lines, wish.asNotes);
  if (!judged.ok) return refuse(book, got.text, judged);
  if (wish.tryOnly) return done(judged, false, got.notices);
  let text = got.text;
  const result = files.append(file, (under) => {
    const now = under.read();
    if (!now.ok) return null;
    if (now.file.text !== text) {
      text = now.file.text;
      judged = judgeMending(book, text, lines, wish.asNotes);
    }
    return judged.ok ? judged.lines.map((line) => line.text) : null;
  });
  if (result.saved) return done(judged, true, result.notices);
  if (!judged.ok) return refuse(book, text, judged);
  return {
    kind: 'unsaved',
    says: result.says ?? `${book.file} could not be read under its lock`,
    notices: result.notices,
  };
}

function refuse(book: Book, text: string, judged: Judged): Outcome {
  const refused = judged.lines.flatMap((_, index) => {
    const bad = refusal(book, text, judged, index);
    if (bad === null) return [];
    const { text: words, problems } = bad.line;
    const first = bad.write !== null && declares(bad.write) && !declares(words);
    return [{ text: words, problems, write: bad.write, first }];
  });
  return { kind: 'refused', refused, reading: judged.reading };
}

function done(judged: Judged, saved: boolean, notices: readonly string[]): Outcome {
  const { lines, elsewhere, before, after, events, reading } = judged;
  const said = lines.every(({ text }) => isBare(text));
  const answer: JotAnswer = {
    saved,
    lines,
    elsewhere,
    changes: changes(said ? after : before, after, AHEAD),
    cautions: raisedByLines(after, events),
  };
  return { kind: 'done', answer, reading, notices };
}
