/**
 * A generated journal → its events, by hand and in one pass. The lines of the first day, which declare the room,
 * are read by the language itself. In all others every word is compared where it must stand, and what stands
 * elsewhere is an error: a form that the generator has learnt since then shows at once.
 */
import { dayOf, toDay } from '../../../src/core/day.ts';
import type { Event } from '../../../src/journal/event.ts';
import type { Subject } from '../../../src/journal/subject.ts';
import { CODE, Cursor } from './cursor.ts';
import { clauseAt } from './clauses.ts';

/** The events of a journal as `generateJournal` writes it. `file` is shown as the file of its lines. */
export async function scan(file: string, text: string): Promise<Event[]> {
  const first = text.slice(0, DATE);
  let from = 0;
  let line = 1;
  for (; from < text.length && text.startsWith(first, from); line += 1)
    from = text.indexOf('\n', from) + 1 || text.length;
  // Loaded only now: the fold and the scanner need nothing of it.
  const { readJournal } = await import('../../../src/language/read.ts');
  const declared = readJournal(file, text.slice(0, from), () => ({ ok: false, says: 'only one file is read' }));
  const events = [...declared.events];
  scanLines(new Cursor(file, text, from, line), subjectsOf(events), events);
  return events;
}

/** `1996-01-02` */
const DATE = 10;

/** What a line can be about, by the name in its heading. */
function subjectsOf(events: readonly Event[]): ReadonlyMap<string, Subject> {
  const subjects = new Map<string, Subject>([['room', { kind: 'room' }]]);
  for (const { kind, subject } of events) {
    if (kind === 'tank declared' && subject.kind === 'tank') subjects.set(subject.tank, subject);
    if (kind === 'loop declared' && subject.kind === 'loop') subjects.set(subject.loop, subject);
    if (kind === 'culture declared' && subject.kind === 'culture') subjects.set(subject.culture, subject);
  }
  return subjects;
}

function scanLines(cursor: Cursor, subjects: ReadonlyMap<string, Subject>, events: Event[]): void {
  const about: Subject[] = [];
  let date = '';
  for (; cursor.begin(); cursor.next()) {
    if (!cursor.takes(date) || date === '') {
      cursor.day = readDay(cursor);
      date = cursor.text.slice(cursor.start, cursor.at);
    }
    cursor.expect(' ');
    readHeading(cursor, subjects, about);
    readClauses(cursor, about, events);
  }
}

function readDay(cursor: Cursor): Cursor['day'] {
  const year = cursor.figure();
  cursor.expect('-');
  const month = cursor.figure();
  cursor.expect('-');
  return dayOf(year, month, cursor.figure()) ?? toDay(0);
}

/** `A1:`, `A1 A2:` */
function readHeading(cursor: Cursor, subjects: ReadonlyMap<string, Subject>, about: Subject[]): void {
  about.length = 0;
  for (let more = true; more;) {
    const subject = subjects.get(cursor.word());
    if (subject === undefined) throw cursor.wrong();
    about.push(subject);
    more = cursor.code() === CODE.blank;
    cursor.expect(more ? ' ' : ': ');
  }
}

/** A clause ends at `;` or at the comma before another one; a comment ends the line. */
function readClauses(cursor: Cursor, about: readonly Subject[], events: Event[]): void {
  for (;;) {
    const from = cursor.at;
    for (const subject of about) {
      cursor.at = from;
      cursor.subject = subject;
      events.push(clauseAt(cursor, events.length));
    }
    if (cursor.at === cursor.end || cursor.takes(' # ')) return;
    if (!cursor.takes('; ')) cursor.expect(', ');
  }
}
