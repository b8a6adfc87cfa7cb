/**
 * One line of a journal in its canonical form. Works clause by clause on the places of the events, so that
 * heading, remarks and comments stay where they are; gives null wherever it does not know every word.
 */
import type { Event } from '../journal/event.ts';
import { printClause } from './print.ts';
import type { Voice } from './print/words.ts';

export interface Rewriting {
  /** True for a clause that is to keep its own words. */
  keeps(written: string): boolean;
  /** The units that a clause is to be printed in, from its text as written. */
  voice(event: Event, written: string): Voice;
  /** A name as it was declared, or a heading's own word as it is usually written; else the word itself. */
  word(written: string): string;
}

/** A clause as written: where it stands, and what it gave. */
interface Clause {
  readonly from: number;
  readonly to: number;
  readonly events: readonly Event[];
}

/** Date, and perhaps a time of day, that begin an entry. */
const HEAD = /^\s*(\d{4}-\d{2}-\d{2})(?:[\sT]+(\d{1,2}[:.]\d{2}))?\s*/u;
/** What may stand between two clauses; `found 1 dead` says no more than `1 dead`. */
const SEPARATOR = /^(?:[\s;,.–—&-]|(?<!\p{L})(?:and|then|plus|found)(?!\p{L}))*$/iu;
/** What may stand after the last: a full stop, a comment. */
const TAIL = /^[\s.;]*?(\s*#.*)?$/u;

/** The line anew, or null where it cannot be written from its events alone. `events` are all of that line. */
export function rewriteLine(text: string, events: readonly Event[], how: Rewriting): string | null {
  const head = HEAD.exec(text);
  const clauses = clausesOf(events);
  const [first, last] = [clauses[0], clauses.at(-1)];
  if (head === null || first === undefined || last === undefined) return null;
  const heading = headingWords(text.slice(head[0].length, first.from), how);
  const tail = TAIL.exec(text.slice(last.to));
  if (heading === null || tail === null || !onlySeparators(text, clauses)) return null;
  const written = clauses.map((clause) => clauseWords(text.slice(clause.from, clause.to), clause, how));
  const date = head[2] === undefined ? head[1] : `${head[1] ?? ''} ${clock(head[2])}`;
  return `${date ?? ''} ${heading}${written.join('; ')}${tail[1] ?? ''}`;
}

function clock(written: string): string {
  return written.replace('.', ':').padStart(5, '0');
}

/** The clauses of a line from left to right; null events of several subjects stand in one clause. */
function clausesOf(events: readonly Event[]): readonly Clause[] {
  const found = new Map<string, Event[]>();
  for (const event of events) {
    const key = `${event.place.from}-${event.place.to}`;
    found.set(key, [...(found.get(key) ?? []), event]);
  }
  return [...found.values()]
    .flatMap((those) => (those[0] === undefined ? [] : [{ ...those[0].place, events: those }]))
    .sort((a, b) => a.from - b.from);
}

function onlySeparators(text: string, clauses: readonly Clause[]): boolean {
  return clauses.every((clause, index) => {
    const next = clauses[index + 1];
    return next === undefined || (clause.to <= next.from && SEPARATOR.test(text.slice(clause.to, next.from)));
  });
}

/** `A1 and A2: ` with single blanks and declared spellings; empty for a note without a heading. */
function headingWords(written: string, how: Rewriting): string | null {
  const trimmed = written.trim().replace(/(?<=:)\s*found$/iu, '');
  if (trimmed === '') return '';
  if (!trimmed.endsWith(':')) return null;
  const words = trimmed.slice(0, -1).trim().split(/\s+/u);
  return `${words.map((word) => spelt(word, how)).join(' ')}: `;
}

/** A comma that hangs on a name stays with it. */
function spelt(word: string, how: Rewriting): string {
  const [, name = word, comma = ''] = /^(.*?)(,?)$/u.exec(word) ?? [];
  return how.word(name) + comma;
}

function clauseWords(written: string, { events }: Clause, how: Rewriting): string {
  if (how.keeps(written)) return written.replaceAll(/\s+/gu, ' ');
  return [...new Set(events.map((event) => printClause(event, how.voice(event, written))))].join(', ');
}
