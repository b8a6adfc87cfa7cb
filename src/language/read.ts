/**
 * Text → events. Names and conventions are collected first, since lines stand in any order; then every
 * line is read by itself; then the facts are put into the order of the room's history. Never throws: a
 * line that is not understood is left out alone, with its problems.
 */
import { isoDay } from '../core/day.ts';
import type { Day } from '../core/day.ts';
import type { Problem } from '../core/problem.ts';
import type { Event } from '../journal/event.ts';
import { declare } from './declare.ts';
import type { Declared } from './declare.ts';
import { readEntry } from './entry.ts';
import type { ReadEntry } from './entry.ts';
import type { Fault } from './faults.ts';
import { problemsOf } from './mend.ts';
import { Clock, Filing } from './order.ts';
import type { Entry, Fetch, Reading } from './reading.ts';
import { sourceLines } from './source.ts';
import type { RawEntry } from './source.ts';

export type { Entry, Fetch, Fetched, Reading } from './reading.ts';

/** The day written where a line has none and none stands before it. */
export const SOME_DAY = '2026-01-01';

/** Reads a journal and the files that it reads in. `name` is shown as the file of its lines. */
export function readJournal(name: string, text: string, fetch: Fetch): Reading {
  const raw = [...sourceLines(name, text, fetch)];
  const declared = declare(raw);
  return readLines(raw, declared, FROM_THE_START);
}

/** What stands before the lines that are read. */
export interface Before {
  /** How many events. */
  readonly events: number;
  /** The day of the last line that has one, ISO 8601. */
  readonly today: string;
}

const FROM_THE_START: Before = { events: 0, today: SOME_DAY };

/** Reads lines in the order of filing, with all names and conventions at hand. */
export function readLines(raw: readonly RawEntry[], declared: Declared, before: Before): Reading {
  const { events, times, wrong } = fileLines(raw, declared, before);
  const problems = problemsIn(raw, wrong, declared);
  let entries: readonly Entry[] | null = null;
  return {
    events,
    // Most questions ask for the events alone.
    get entries() {
      return (entries ??= entriesOf(raw, times, events));
    },
    problems,
    declared,
    behind: null,
  };
}

interface Filed {
  readonly events: readonly Event[];
  readonly times: Times;
  readonly wrong: readonly (readonly [filed: number, Wrong])[];
}

/** Apart from what outlives it: what is needed to file a long journal takes as much memory as many of its lines. */
function fileLines(raw: readonly RawEntry[], declared: Declared, before: Before): Filed {
  const clock = new Clock();
  const filing = new Filing(before.events);
  const times = new Times();
  const wrong = new Map<number, Wrong>();
  let last: Day | null = null;
  raw.forEach((entry, filed) => {
    const {
      day,
      minute: own,
      facts,
      faults,
    } = entry.reads ? left(entry.faults) : readEntry(entry.text, declared.names, declared.conventions);
    times.add(day, own);
    if (day !== null) {
      last = day;
      const minute = clock.at(entry.file, day, own);
      for (const fact of facts) filing.add({ fact, day, minute, file: entry.file, line: entry.line, filed });
    }
    if (faults.length > 0) wrong.set(filed, { faults, today: last === null ? before.today : isoDay(last) });
  });
  const { events, faults } = filing.history();
  return { events, times, wrong: merged(wrong, faults, times) };
}

function left(faults: readonly Fault[]): ReadEntry {
  return { day: null, minute: null, facts: [], loose: [], faults };
}

/** Day and time of every line, as written. */
class Times {
  private readonly days: (Day | null)[] = [];
  private readonly minutes: (number | null)[] = [];

  add(day: Day | null, minute: number | null): void {
    this.days.push(day);
    this.minutes.push(minute);
  }

  of(filed: number): { readonly day: Day | null; readonly minute: number | null } {
    return { day: this.days[filed] ?? null, minute: this.minutes[filed] ?? null };
  }
}

function entriesOf(raw: readonly RawEntry[], times: Times, events: readonly Event[]): Entry[] {
  const byLine = new Map<string, Map<number, Event[]>>();
  for (const event of events) {
    const { file, line } = event.place;
    const lines = byLine.get(file) ?? new Map<number, Event[]>();
    byLine.set(file, lines);
    const there = lines.get(line);
    if (there === undefined) lines.set(line, [event]);
    else there.push(event);
  }
  return raw.map(({ file, line, text }, filed) => {
    const place = { file, line, from: 0, to: text.length };
    return { place, ...times.of(filed), text, events: byLine.get(file)?.get(line) ?? [] };
  });
}

/** What is wrong with a line, and the day of the last line that has one. */
interface Wrong {
  readonly faults: readonly Fault[];
  readonly today: string;
}

/** Faults of lines with those found when lines were compared, in the order of filing. */
function merged(
  wrong: ReadonlyMap<number, Wrong>,
  more: ReadonlyMap<number, readonly Fault[]>,
  times: Times,
): readonly (readonly [filed: number, Wrong])[] {
  const all = new Map(wrong);
  for (const [filed, faults] of more) {
    const { day } = times.of(filed);
    const own = all.get(filed) ?? { faults: [], today: day === null ? SOME_DAY : isoDay(day) };
    all.set(filed, { ...own, faults: [...own.faults, ...faults] });
  }
  return [...all].sort(([a], [b]) => a - b);
}

function problemsIn(
  raw: readonly RawEntry[],
  wrong: readonly (readonly [filed: number, Wrong])[],
  declared: Declared,
): Problem[] {
  return wrong.flatMap(([filed, { faults, today }]) => {
    const entry = raw[filed];
    if (entry === undefined) return [];
    return problemsOf(entry.text, faults, entry, today, (text) => wouldRead(text, declared));
  });
}

/** Whether a line would be read as it stands. */
export function wouldRead(text: string, declared: Declared): boolean {
  if (/^\s*also\s+read\b/i.test(text)) return true;
  const { faults } = readEntry(text, declared.names, declared.conventions);
  return faults.every(({ doubt }) => doubt === true);
}
