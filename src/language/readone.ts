/** Reads one more line against a journal that has been read, without reading that again. */
import { isoDay } from '../core/day.ts';
import type { Day } from '../core/day.ts';
import type { Problem } from '../core/problem.ts';
import type { Event } from '../journal/event.ts';
import type { Fact } from './build/build.ts';
import { declareMore, isDeclaring } from './declare.ts';
import type { Declared } from './declare.ts';
import { readEntry } from './entry.ts';
import type { Fault } from './faults.ts';
import { problemsOf } from './mend.ts';
import { isNear, notOne, saySame } from './mistakes.ts';
import { toEvent } from './dated.ts';
import { SOME_DAY, wouldRead } from './read.ts';
import type { Entry, Reading } from './reading.ts';
import type { RawEntry } from './source.ts';

/** What one line came to. Its events are numbered from 0, as if nothing stood before them. */
export interface ReadOne {
  readonly day: Entry['day'];
  readonly minute: Entry['minute'];
  readonly events: readonly Event[];
  readonly problems: readonly Problem[];
  /** Events of the journal that the line takes back (`mistake …`). */
  readonly takenBack: readonly Event[];
}

/**
 * Reads a line as if it stood at the end of `file`. Nothing of the reading is changed. The line may
 * declare names that it uses itself; `also read` is left to whoever reads files.
 */
export function readOne(line: string, reading: Reading, file: string, number: number): ReadOne {
  const declared = isDeclaring(line, reading.declared.names)
    ? declaredWith(reading.declared, { file, line: number, text: line, faults: [], reads: false })
    : reading.declared;
  const { day, minute: own, facts, faults } = readEntry(line, declared.names, declared.conventions);
  const reads = (text: string): boolean => wouldRead(text, declared);
  const where = { file, line: number };
  if (day === null) {
    const problems = problemsOf(line, faults, where, SOME_DAY, reads);
    return { day, minute: null, events: [], problems, takenBack: [] };
  }
  const minute = own ?? timeAbove(reading, file, day);
  const events = facts.map((fact, index) => toEvent({ fact, day, minute, file, line: number, filed: index }, index));
  const taken = facts.flatMap((fact, index) => {
    const event = events[index];
    return fact.mistake && event !== undefined ? [taking(event, fact, reading)] : [];
  });
  const wrong = taken.flatMap(({ fault }) => (fault === null ? [] : [fault]));
  return {
    day,
    minute,
    events: events.filter((_, index) => facts[index]?.mistake !== true),
    problems: problemsOf(line, [...faults, ...wrong], where, isoDay(day), reads),
    takenBack: taken.flatMap(({ event }) => (event === null ? [] : [event])),
  };
}

function declaredWith({ names, conventions, homes }: Declared, entry: RawEntry): Declared {
  const declared: Declared = { names: names.copy(), conventions: conventions.copy(), homes: [...homes] };
  declareMore(declared, entry);
  return declared;
}

/** The one event that a mistake takes back, or what is wrong with it. */
function taking(mistake: Event, fact: Fact, reading: Reading): { event: Event | null; fault: Fault | null } {
  const there = reading.events.filter((event) => event.day === mistake.day);
  const found = there.filter((event) => saySame(event, mistake));
  const [only] = found;
  if (only !== undefined && found.length === 1) return { event: only, fault: null };
  return {
    event: null,
    fault: notOne(
      fact.at,
      found.map(({ place }) => place),
      there.filter((event) => isNear(event, mistake)).map(({ place }) => place),
    ),
  };
}

/** The time of the last timed line of that file and date, under which the line would stand. */
function timeAbove(reading: Reading, file: string, day: Day): number | null {
  const timed = reading.entries.filter(
    (entry) => entry.minute !== null && entry.day === day && entry.place.file === file,
  );
  return timed.at(-1)?.minute ?? null;
}
