/**
 * A journal file in its canonical form. Only lines that are read whole are touched, and only where the
 * new line gives the same events; everything else, line ends and comments too, stays byte for byte.
 */
import type { Event, EventOf } from '../journal/event.ts';
import type { Subject } from '../journal/subject.ts';
import { inOwnMeasures, voiceOf } from './print/voices.ts';
import type { Reading } from './reading.ts';
import { rewriteLine } from './rewrite.ts';

export interface TidyLine {
  readonly line: number;
  readonly was: string;
  readonly becomes: string;
}

export type Tidied =
  | { readonly ok: true; readonly text: string; readonly changes: readonly TidyLine[] }
  /** A line or the whole would mean something else: nothing is to be written. */
  | { readonly ok: false; readonly says: string };

export interface TidyTask {
  /** The file's name in the reading, and its text. */
  readonly file: string;
  readonly text: string;
  /** The journal read with this file as it is. */
  readonly reading: Reading;
  /** Reads the journal again with another text in this file's place. */
  reread(text: string): Reading;
  /** The name of the brood that a line without one began, as the room knows it. */
  brood(event: Event): string | null;
  /** Lines of this file that do not count, by number. */
  readonly leftOut: ReadonlySet<number>;
}

export function tidy(task: TidyTask): Tidied {
  const named = task.reading.events.map((event) => withBrood(event, task.brood(event)));
  const first = rewrittenLines(task, named);
  const kept = sameLines(task.reading, named, task.reread(joined(task.text, first)), task.file, first);
  const text = joined(task.text, kept);
  const isKept = ({ place }: Event): boolean => place.file === task.file && kept.has(place.line);
  const meant = task.reading.events.map((event, index) => (isKept(event) ? (named[index] ?? event) : event));
  if (!sameEvents(meant, task.reread(text).events)) {
    return { ok: false, says: 'the tidied journal would not say the same, so nothing is changed' };
  }
  return { ok: true, text, changes: [...kept.values()] };
}

/** An event that begins a brood, with the brood's name in it. */
export function withBrood(event: Event, brood: string | null): Event {
  if (brood === null || !beginsBrood(event) || event.brood !== null) return event;
  return { ...event, brood };
}

function beginsBrood(event: Event): event is EventOf<'spawned' | 'stage seen'> {
  return event.kind === 'spawned' || event.kind === 'stage seen';
}

/** Every line that would change, by number. */
function rewrittenLines(task: TidyTask, named: readonly Event[]): Map<number, TidyLine> {
  const byLine = eventsByLine(named, task.file);
  const spelling = spellings(named);
  const said = {
    units: named.filter((event) => event.kind === 'units set'),
    nitrogen: named.filter((event) => event.kind === 'nitrogen set'),
  };
  const rewritten = new Map<number, TidyLine>();
  for (const { place, text } of task.reading.entries) {
    const events = byLine.get(place.line);
    if (place.file !== task.file || events === undefined || task.leftOut.has(place.line)) continue;
    const becomes = rewriteLine(text, events, {
      keeps: inOwnMeasures,
      voice: (event, written) => voiceOf(written, event.day, said),
      word: (word) => spelling.get(word.toLowerCase()) ?? word,
    });
    if (becomes !== null && becomes !== text) rewritten.set(place.line, { line: place.line, was: text, becomes });
  }
  return rewritten;
}

function eventsByLine(events: readonly Event[], file: string): ReadonlyMap<number, readonly Event[]> {
  const found = new Map<number, Event[]>();
  for (const event of events) {
    if (event.place.file !== file) continue;
    const those = found.get(event.place.line);
    if (those === undefined) found.set(event.place.line, [event]);
    else those.push(event);
  }
  return found;
}

/** Names in lower case to names as declared, and the words that headings are made of. */
function spellings(events: readonly Event[]): ReadonlyMap<string, string> {
  const words = 'room tank tray loop row pair trio harem colony group species culture auction all tanks except to and';
  const found = new Map(words.split(' ').map((word) => [word, word]));
  for (const event of events) for (const name of namesIn(event.subject)) found.set(name.toLowerCase(), name);
  return found;
}

function namesIn(subject: Subject): readonly string[] {
  switch (subject.kind) {
    case 'loop':
      return [subject.loop];
    case 'tank':
      return [subject.tank];
    case 'group':
      return [subject.group, ...(typeof subject.member?.name === 'string' ? [subject.member.name] : [])];
    case 'brood':
      return [subject.brood];
    case 'culture':
      return [subject.culture];
    case 'auction':
      return [subject.auction];
    case 'species':
      return [subject.species];
    case 'room':
    case 'tanks':
      return [];
  }
}

/** The file's text with some lines anew; line ends stay. */
function joined(text: string, lines: ReadonlyMap<number, TidyLine>): string {
  const parts = text.split(/(\r?\n)/u);
  return parts.map((part, index) => (index % 2 === 0 ? (lines.get(index / 2 + 1)?.becomes ?? part) : part)).join('');
}

/** The new lines that give the same events as the old ones. */
function sameLines(
  before: Reading,
  named: readonly Event[],
  after: Reading,
  file: string,
  lines: ReadonlyMap<number, TidyLine>,
): ReadonlyMap<number, TidyLine> {
  const olds = toldByLine(named, file);
  const news = toldByLine(after.events, file);
  const wrong = new Set(after.problems.filter(({ at }) => at.file === file).map(({ at }) => at.line));
  for (const { at } of before.problems) if (at.file === file) wrong.delete(at.line);
  return new Map([...lines].filter(([line]) => olds.get(line) === news.get(line) && !wrong.has(line)));
}

function toldByLine(events: readonly Event[], file: string): ReadonlyMap<number, string> {
  return new Map([...eventsByLine(events, file)].map(([line, those]) => [line, those.map(tell).join('\n')]));
}

function sameEvents(a: readonly Event[], b: readonly Event[]): boolean {
  return a.length === b.length && a.every((event, index) => tell(event) === tell(b[index]));
}

/** All that an event says, but not where it stands in its line. */
function tell(event: Event | undefined): string {
  if (event === undefined) return '';
  const { place, ...says } = event;
  return `${place.file}:${place.line} ${JSON.stringify(says, (_key, value: unknown) => (value === Infinity ? '∞' : value))}`;
}
