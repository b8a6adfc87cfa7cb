/**
 * Where lines are written down: judged against the journal as it is, saved under its lock. If the journal
 * changed between the two, the lines are judged again before they are written.
 */
import path from 'node:path';
import type { Day } from '../../core/day.ts';
import { sameBefore, withTail } from '../../files/content.ts';
import type { Content, Files } from '../../files/port.ts';
import { extended } from '../../language/extend.ts';
import { declares, isBare } from '../../language/jotted.ts';
import { isBehind } from '../../language/onward.ts';
import type { Behind, Reading } from '../../language/reading.ts';
import { changes, rowsAhead } from '../../questions/changes.ts';
import type { Changes } from '../../questions/changes.ts';
import { raisedByLines } from '../../questions/raisedby.ts';
import type { JotAnswer, Refused } from '../../reports/jot.ts';
import type { Room } from '../../state/draft.ts';
import type { Context } from '../context.ts';
import type { KeptRows } from '../footing/rows.ts';
import { zoneOf } from '../journal.ts';
import { readerOf } from '../reader.ts';
import type { Reader } from '../reader.ts';
import type { Book, Judged } from './judge.ts';
import { judgeMending, refusal } from './mend.ts';

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

/** Where readings come from: with what the cache keeps of the journal, or from all of it. */
export type Readers = (from: 'cache' | 'all') => Reader;

/** `content` is what the journal holds now. Without a chest the whole of it is read. */
export async function openDesk(
  { files, chest, today: todayIn }: Pick<Context, 'files' | 'chest' | 'today'>,
  file: string,
  content: Content,
  readers: Readers = (from) => readerOf({ files, chest: from === 'all' ? null : chest }, file),
): Promise<Desk> {
  const shelf = new Readings(readers, path.basename(file), content);
  const latest = shelf.read(shelf.textOf(content));
  const today = await todayIn(zoneOf(latest));
  // Days before the kept room can be told only from all of the journal.
  if (isBehind(today, latest.behind)) shelf.readAll();
  const book: Book = {
    file: path.basename(file),
    today,
    get linesBefore() {
      return shelf.linesBefore;
    },
    read: (of) => shelf.read(of),
    readWith: (of, lines, first) => shelf.readWith(of, lines, first),
    fold: (reading, on) => shelf.fold(reading, on, today),
  };
  return {
    book,
    write: (lines, wish) => write({ files, file, book, shelf }, lines, wish),
    room() {
      const got = files.read(file);
      return book.fold(book.read(got.ok ? shelf.textOf(got.content) : ''), today);
    },
  };
}

/**
 * Remembers the last few readings: each line is added to one, and the next stands on it; nothing is read twice. All
 * its texts are of what stands behind `base`, which is not read again and so need not be decoded either.
 */
class Readings {
  private readings: { text: string; reading: Reading; rooms: Map<Day, Room> }[] = [];
  private reader: Reader;
  private readonly readers: Readers;
  private readonly file: string;
  private base: Behind['start'] & { readonly content: Content };

  constructor(readers: Readers, file: string, content: Content) {
    this.readers = readers;
    this.reader = readers('cache');
    this.file = file;
    this.base = { content, ...this.reader.start(content) };
  }

  get linesBefore(): number {
    return this.base.lines;
  }

  /** The text of a journal that holds this, as the other methods take it. */
  textOf(content: Content): string {
    const { at, content: known } = this.base;
    if (at > 0 && !sameBefore(content, known, at)) {
      this.base = { content, at: 0, lines: 0 };
      this.readings = [];
      return content.text;
    }
    return content.behind(at);
  }

  /** Rows of readings that stand on what the cache keeps. */
  get rows(): KeptRows | null {
    return this.reader.rows;
  }

  /** From here on every reading is a whole one: two that are compared have to hold the same lines. */
  readAll(): void {
    this.reader = this.readers('all');
    this.readings = [];
  }

  read(text: string): Reading {
    return this.known(text) ?? this.remember(text, this.readAnew(text));
  }

  readWith(text: string, lines: readonly string[], first: number): Reading {
    const whole = `${text}${lines.join('\n')}\n`;
    const there = this.known(whole);
    if (there !== undefined) return there;
    const before = this.read(text);
    const more = extended(before, lines, this.file, first);
    if (more !== null) return this.remember(whole, more);
    if (before.behind !== null) this.readAll();
    return this.read(whole);
  }

  fold(reading: Reading, on: Day, today: Day): Room {
    const rooms = this.readings.find((each) => each.reading === reading)?.rooms;
    const room = rooms?.get(on) ?? this.reader.fold(reading, on, today);
    rooms?.set(on, room);
    return room;
  }

  private readAnew(text: string): Reading {
    const content = withTail(this.base.content, this.base.at, text);
    return this.reader.read({ ok: true, content, problems: [], notices: [] }).latest;
  }

  private known(text: string): Reading | undefined {
    const at = this.readings.findIndex((each) => each.text === closed(text));
    // What is used stays: a line may be tried in many ways on the same journal.
    this.readings.unshift(...(at < 0 ? [] : this.readings.splice(at, 1)));
    return at < 0 ? undefined : this.readings[0]?.reading;
  }

  private remember(text: string, reading: Reading): Reading {
    this.readings.unshift({ text: closed(text), reading, rooms: new Map() });
    this.readings.length = Math.min(this.readings.length, REMEMBERED);
    return reading;
  }
}

const REMEMBERED = 4;

/** A text with its last line ended, as it is before anything is added. */
export function closed(text: string): string {
  return text === '' || text.endsWith('\n') ? text : `${text}\n`;
}

interface Journal {
  readonly files: Files;
  readonly file: string;
  readonly book: Book;
  readonly shelf: Readings;
}

function write(journal: Journal, lines: readonly string[], wish: Wish): Outcome {
  const { files, file, book, shelf } = journal;
  const got = files.read(file);
  if (!got.ok) return { kind: 'unsaved', says: `${book.file} cannot be read: ${got.says}`, notices: [] };
  let text = shelf.textOf(got.content);
  let judged = judgeMending(book, text, lines, wish.asNotes);
  if (!judged.ok) return refuse(book, text, judged);
  if (wish.tryOnly) return done(journal, text, judged, false, got.notices);
  const result = files.append(file, (under) => {
    const now = under.read();
    if (!now.ok) return null;
    const latest = shelf.textOf(now.file.content);
    if (latest !== text) {
      text = latest;
      judged = judgeMending(book, text, lines, wish.asNotes);
    }
    return judged.ok ? judged.lines.map((line) => line.text) : null;
  });
  if (result.saved) return done(journal, text, judged, true, result.notices);
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

function done(journal: Journal, text: string, judged: Judged, saved: boolean, notices: readonly string[]): Outcome {
  const { lines, elsewhere, after, events, reading } = judged;
  let known: Changes | null = null;
  const answer: JotAnswer = {
    saved,
    lines,
    elsewhere,
    // Worked out when it is told: half of a keeper's wait, and the lines are on the disk by then.
    get changes() {
      return (known ??= changesBy(journal, text, judged, saved));
    },
    cautions: raisedByLines(after, events),
  };
  return { kind: 'done', answer, reading, notices };
}

/** What the lines change. The list that they leave is kept: the next lines are told against it. */
function changesBy({ shelf }: Journal, text: string, judged: Judged, saved: boolean): Changes {
  const { before, after, lines, reading } = judged;
  // Where all of the journal was read nothing stands on what is kept.
  const kept = reading.behind === null ? null : shelf.rows;
  const same = before === after || lines.every((line) => isBare(line.text));
  const old = same ? null : (kept?.of(text, before.on) ?? rowsAhead(before));
  const now = rowsAhead(after);
  if (saved) kept?.keep(closed(text), lines.map((line) => `${line.text}\n`).join(''), after.on, now);
  return changes(same ? after : before, after, { before: old ?? now, after: now });
}
