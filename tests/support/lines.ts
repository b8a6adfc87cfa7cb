/** Reads lines in a small room of our own, for tests of the language. */
import type { Event, EventKind } from '../../src/journal/event.ts';
import { readJournal } from '../../src/language/read.ts';
import type { Fetch, Reading } from '../../src/language/read.ts';

/** Everything that a test line may name. All of it is declared on the first day of 2026. */
export const ROOM = `2026-01-01 room: units metric; currency EUR
2026-01-01 loop Long: sump 240 L; return 3200 L/h; prefilter 6 layers; spills at 80 mm
2026-01-01 tank A1: 100 x 40 x 40 cm; on Long
2026-01-01 tank A2: 100 x 40 x 40 cm; on Long
2026-01-01 tank B1: 60 x 40 x 35 cm; on Long
2026-01-01 tank C1: 54 L; alone; sponge filter
2026-01-01 tank C2: 54 L; alone; sponge filter
2026-01-01 tank Q1: 40 L; alone; quarantine
2026-01-01 tank 12: 54 L; alone
2026-01-01 row D: C1 C2
2026-01-01 species krib: Pelvicachromis taeniatus; cave spawner
2026-01-01 species limia: Limia nigrofasciata; livebearer
2026-01-01 pair Rowan: krib; male 80 mm; female 60 mm; in A1
2026-01-01 trio Sedge: krib; male; females Fern and Lark; in A2
2026-01-01 colony Pebble: limia; about 25; in B1
2026-01-01 group Ash: krib; 12; in C1
2026-01-01 culture M1: microworm
2026-01-01 culture M2: microworm
2026-01-01 auction Autumn: on 2026-09-05; 20 lots
`;

const ROOM_LINES = ROOM.split('\n').length - 1;

export const NO_FILES: Fetch = () => ({ ok: false, says: 'there is no such file' });

/** Reads lines after those of the room. */
export function readLines(lines: string, fetch: Fetch = NO_FILES): Reading {
  return readJournal('fishroom.txt', ROOM + lines, fetch);
}

/** The events of the lines after the room's own, in the order of history. */
export function eventsOf(lines: string): readonly Event[] {
  const reading = readLines(lines);
  const [problem] = reading.problems;
  if (problem) throw new Error(`line ${String(problem.at.line - ROOM_LINES)}: ${problem.says} (${problem.kind})`);
  return reading.events.filter(({ place }) => place.line > ROOM_LINES);
}

/** What the clauses of one line come to, without date and place; the heading is that of A1 unless told. */
export function factsOf(clauses: string, heading = 'A1'): readonly object[] {
  return eventsOf(`2026-03-10 ${heading}: ${clauses}`).map(bare);
}

/** The one event of that kind in some lines. */
export function only<K extends EventKind>(kind: K, lines: string): Extract<Event, { kind: K }> {
  const found = eventsOf(lines).filter((event): event is Extract<Event, { kind: K }> => event.kind === kind);
  const [event] = found;
  if (event === undefined || found.length > 1) throw new Error(`${String(found.length)} events of kind ${kind}`);
  return event;
}

/** The one event of that kind in the clauses of a line. */
export function fact<K extends EventKind>(kind: K, clauses: string, heading = 'A1'): Extract<Event, { kind: K }> {
  return only(kind, `2026-03-10 ${heading}: ${clauses}`);
}

const CARRIED = new Set(['seq', 'day', 'minute', 'subject', 'place', 'remark', 'when']);

/** An event without what every event carries. */
export function bare(event: Event): object {
  return Object.fromEntries(Object.entries(event).filter(([key]) => !CARRIED.has(key)));
}

export interface Told {
  readonly kind: string;
  readonly says: string;
  readonly write: string;
  /** The words marked. */
  readonly words: string;
}

/** What is wrong with some lines after the room's own. */
export function problemsIn(lines: string, fetch: Fetch = NO_FILES): readonly Told[] {
  const reading = readLines(lines, fetch);
  return reading.problems.map(({ kind, says, write, at }) => {
    const entry = reading.entries.find(({ place }) => place.line === at.line && place.file === at.file);
    return { kind, says, write, words: entry?.text.slice(at.from, at.to) ?? '' };
  });
}

/** The one thing that is wrong with a line. */
export function problemIn(line: string, fetch: Fetch = NO_FILES): Told {
  const found = problemsIn(line, fetch);
  const [problem] = found;
  if (problem === undefined || found.length > 1)
    throw new Error(`${String(found.length)} problems: ${found.map(({ kind }) => kind).join()}`);
  return problem;
}
