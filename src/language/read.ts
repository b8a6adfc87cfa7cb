/**
 * Text → events. Names and conventions are collected first, since lines stand in any order; then every
 * line is read by itself; then the facts are put into the order of the room's history. Never throws: a
 * line that is not understood is left out alone, with its problems.
 */
import { isoDay } from '../core/day.ts';
import type { Problem } from '../core/problem.ts';
import type { Event } from '../journal/event.ts';
import { declare } from './declare.ts';
import type { Declared } from './declare.ts';
import { readEntry } from './entry.ts';
import type { ReadEntry } from './entry.ts';
import type { Fault } from './faults.ts';
import { problemsOf } from './mend.ts';
import { takeBack } from './mistakes.ts';
import { Clock, inOrder, toEvent } from './order.ts';
import type { Dated } from './order.ts';
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
  const clock = new Clock();
  const read: ReadEntry[] = [];
  const facts: Dated[] = [];
  raw.forEach((entry, filed) => {
    const one = entry.reads ? left(entry.faults) : readEntry(entry.text, declared.names, declared.conventions);
    read.push(one);
    if (one.day === null) return;
    const { day } = one;
    const minute = clock.at(entry.file, day, one.minute);
    for (const fact of one.facts) facts.push({ fact, day, minute, file: entry.file, line: entry.line, filed });
  });
  const corrected = takeBack(facts);
  const { events, byEntry } = eventsOf(inOrder(corrected.facts), raw.length, before.events);
  const entries = raw.map((entry, filed) => entryOf(entry, read[filed], byEntry[filed] ?? []));
  return {
    events,
    entries,
    problems: problems(raw, read, { more: corrected.faults, declared, before }),
    declared,
    behind: null,
  };
}

function left(faults: readonly Fault[]): ReadEntry {
  return { day: null, minute: null, facts: [], loose: [], faults };
}

function eventsOf(facts: readonly Dated[], lines: number, first: number): { events: Event[]; byEntry: Event[][] } {
  const events: Event[] = [];
  const byEntry: Event[][] = new Array<Event[]>(lines);
  facts.forEach((dated, index) => {
    const event = toEvent(dated, first + index);
    events.push(event);
    const own = byEntry[dated.filed];
    if (own === undefined) byEntry[dated.filed] = [event];
    else own.push(event);
  });
  return { events, byEntry };
}

function entryOf(entry: RawEntry, read: ReadEntry | undefined, events: readonly Event[]): Entry {
  const place = { file: entry.file, line: entry.line, from: 0, to: entry.text.length };
  return { place, day: read?.day ?? null, minute: read?.minute ?? null, text: entry.text, events };
}

interface Beside {
  /** Found when the lines were compared, by the count of lines filed before. */
  readonly more: ReadonlyMap<number, readonly Fault[]>;
  readonly declared: Declared;
  readonly before: Before;
}

function problems(raw: readonly RawEntry[], read: readonly ReadEntry[], { more, declared, before }: Beside): Problem[] {
  const found: Problem[] = [];
  let { today } = before;
  raw.forEach((entry, filed) => {
    const one = read[filed];
    if (one?.day !== null && one?.day !== undefined) today = isoDay(one.day);
    const faults = [...(one?.faults ?? []), ...(more.get(filed) ?? [])];
    if (faults.length === 0) return;
    found.push(...problemsOf(entry.text, faults, entry, today, (text) => wouldRead(text, declared)));
  });
  return found;
}

/** Whether a line would be read as it stands. */
export function wouldRead(text: string, declared: Declared): boolean {
  if (/^\s*also\s+read\b/i.test(text)) return true;
  const { faults } = readEntry(text, declared.names, declared.conventions);
  return faults.every(({ doubt }) => doubt === true);
}
