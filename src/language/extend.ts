/**
 * A reading with a few lines more at the end of its main file, without reading the rest again. Lines that
 * may change how others are read (a name, a convention, a file read in, a mistake) are not for this.
 */
import { isDeclaring } from './declare.ts';
import type { Event, EventKind } from '../journal/event.ts';
import { isBehind, takesName } from './onward.ts';
import { readOne } from './readone.ts';
import type { Entry, Reading } from './reading.ts';
import { isPlain, NOTHING } from './source.ts';

/**
 * The same as reading the journal with these lines, the first of them number `first` of `file`; null where
 * only that will do. Entries of before keep their events as they were, numbers of order included.
 */
export function extended(reading: Reading, lines: readonly string[], file: string, first: number): Reading | null {
  let now = reading;
  for (const [index, line] of lines.entries()) {
    if (NOTHING.test(line)) continue;
    const more = withLine(now, line, file, first + index);
    if (more === null) return null;
    now = more;
  }
  return now;
}

function withLine(reading: Reading, line: string, file: string, number: number): Reading | null {
  if (!isPlain(line) || MISTAKE.test(line)) return null;
  if (isDeclaring(line, reading.declared.names)) return null;
  const one = readOne(line, reading, file, number);
  if (one.day === null || one.events.some(isEarly)) return null;
  if (isBehind(one.day, reading.behind) || takesName(one.events, reading.behind)) return null;
  // What a mistake of that day takes back may be another thing with this line.
  if (reading.entries.some((entry) => entry.day === one.day && MISTAKE.test(entry.text))) return null;
  const place = { file, line: number, from: 0, to: line.length };
  const entry: Entry = { place, day: one.day, minute: one.minute, text: line, events: one.events };
  return {
    events: merged(reading.events, one.events, reading.behind?.events ?? 0),
    entries: [...reading.entries, entry],
    problems: [...reading.problems, ...one.problems],
    declared: reading.declared,
    behind: reading.behind,
  };
}

const MISTAKE = /\bmistake\b/i;

/** What happened, filed last: after all of its day and time, and after all that its day declares. */
function merged(events: readonly Event[], fresh: readonly Event[], behind: number): readonly Event[] {
  const [first] = fresh;
  if (first === undefined) return events;
  const at = events.findLastIndex((event) => comesBefore(event, first)) + 1;
  const rest = [...fresh, ...events.slice(at)];
  return [...events.slice(0, at), ...rest.map((event, index) => ({ ...event, seq: behind + at + index }))];
}

/** Facts that stand at the start of their day, whatever the time. */
function isEarly({ kind }: Event): boolean {
  return kind.endsWith(' declared') || CONVENTIONS.has(kind);
}

const CONVENTIONS: ReadonlySet<EventKind> = new Set<EventKind>([
  'units set',
  'currency set',
  'zone set',
  'nitrogen set',
  'scoop set',
  'walk set',
  'award rule set',
]);

function comesBefore(event: Event, fresh: Event): boolean {
  if (event.day !== fresh.day) return event.day < fresh.day;
  return isEarly(event) || (event.minute ?? -1) <= (fresh.minute ?? -1);
}
