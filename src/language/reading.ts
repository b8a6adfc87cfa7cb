/** What reading a journal gives: the events in the order of the room's history, and everything that was wrong. */
import type { Day } from '../core/day.ts';
import type { Problem } from '../core/problem.ts';
import type { Place } from '../core/span.ts';
import type { Event } from '../journal/event.ts';
import type { Declared } from './declare.ts';

/** One line of a journal that is an entry (not blank, not a comment). */
export interface Entry {
  readonly place: Place;
  readonly day: Day | null;
  readonly minute: number | null;
  /** The line as written, without its line end. */
  readonly text: string;
  /** Events that came of it, empty where it was left out. */
  readonly events: readonly Event[];
}

export interface Reading {
  /** In the order of the room's history: day, then time, then as filed; `seq` counts up. */
  readonly events: readonly Event[];
  readonly entries: readonly Entry[];
  readonly problems: readonly Problem[];
  /** Names and conventions, for reading one more line and for completing a name. */
  readonly declared: Declared;
  /** What was read before, where only the latest lines were read again; null where all were. */
  readonly behind: Behind | null;
}

/**
 * The part of a journal that was not read again: its events and entries are not in the reading, its
 * problems and names are.
 */
export interface Behind {
  /** Events of this day and before are behind. */
  readonly day: Day;
  /** How many of them there are. */
  readonly events: number;
  /** Bytes and lines of the main file that were not read again. */
  readonly start: { readonly at: number; readonly lines: number };
  /** Names that broods were given then and that no line wrote: one that is written later means another brood. */
  readonly begun: ReadonlySet<string>;
  /** The time zone that the room named last. */
  readonly zone: string | null;
  /** People named in those lines. */
  readonly buyers: readonly string[];
}

/** What the edge answers when a journal asks to read another file in. */
export type Fetched =
  { readonly ok: true; readonly name: string; readonly text: string } | { readonly ok: false; readonly says: string };

/** `from` is the name of the file that asks, `asked` the path as written. */
export type Fetch = (from: string, asked: string) => Fetched;

/** The same reading with other problems. What its entries are is worked out only where somebody asks. */
export function withProblems(reading: Reading, problems: Reading['problems'], behind = reading.behind): Reading {
  const { events, declared } = reading;
  return {
    events,
    get entries() {
      return reading.entries;
    },
    problems,
    declared,
    behind,
  };
}
