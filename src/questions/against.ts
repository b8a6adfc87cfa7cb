/**
 * Two copies of a journal side by side: what each has and the other lacks. A line is the same where its
 * words are, or where it was read as the same facts: a copy that was tidied, or that a phone spelt its own
 * way, lacks nothing.
 */
import type { Day } from '../core/day.ts';
import type { LineRef } from '../core/span.ts';
import { lineOf } from '../core/span.ts';
import type { Written } from './history.ts';

export interface AgainstLine {
  readonly text: string;
  readonly line: LineRef;
}

/** One row: a line that only one copy has, or two of one day and subject that tell different facts. */
export interface AgainstRow {
  readonly day: Day | null;
  readonly here: AgainstLine | null;
  readonly there: AgainstLine | null;
  /** True where the other copy has the line too, but less often. */
  readonly again: boolean;
}

export interface Against {
  /** In the order of days; lines without a day first. */
  readonly rows: readonly AgainstRow[];
  /** Lines that both copies have. */
  readonly same: number;
}

/** Compares the entries of two copies. `here` is the keeper's journal, `there` the other. */
export function against(here: readonly Written[], there: readonly Written[]): Against {
  const byWords = matched(here, there, wordsOf);
  const byFacts = matched(byWords.here, byWords.there, factsOf);
  const changed = matched(byFacts.here, byFacts.there, aboutOf);
  const known = { here: new Set(here.map(wordsOf)), there: new Set(there.map(wordsOf)) };
  const rows = [
    ...changed.met.map(([one, other]) => ({ day: one.day, here: told(one), there: told(other), again: false })),
    ...changed.here.map((one) => alone(one, 'here', known.there)),
    ...changed.there.map((one) => alone(one, 'there', known.here)),
  ];
  const order = (row: AgainstRow): number => row.day ?? -Infinity;
  return { rows: rows.sort((a, b) => order(a) - order(b)), same: byWords.met.length + byFacts.met.length };
}

interface Matched {
  /** Lines that met a line of the same key on the other side, each at most one. */
  readonly met: readonly (readonly [here: Written, there: Written])[];
  readonly here: readonly Written[];
  readonly there: readonly Written[];
}

function matched(here: readonly Written[], there: readonly Written[], keyOf: (one: Written) => string | null): Matched {
  const waiting = new Map<string, Written[]>();
  for (const one of there.toReversed()) {
    const key = keyOf(one);
    if (key === null) continue;
    const those = waiting.get(key);
    if (those === undefined) waiting.set(key, [one]);
    else those.push(one);
  }
  const met: (readonly [Written, Written])[] = [];
  const left: Written[] = [];
  for (const one of here) {
    const key = keyOf(one);
    const other = key === null ? undefined : waiting.get(key)?.pop();
    if (other === undefined) left.push(one);
    else met.push([one, other]);
  }
  const taken = new Set(met.map(([, other]) => other));
  return { met, here: left, there: there.filter((one) => !taken.has(one)) };
}

function alone(one: Written, side: 'here' | 'there', others: ReadonlySet<string>): AgainstRow {
  const again = others.has(wordsOf(one));
  const [here, there] = side === 'here' ? [told(one), null] : [null, told(one)];
  return { day: one.day, here, there, again };
}

function told({ text, place }: Written): AgainstLine {
  return { text, line: lineOf(place) };
}

/** The line's words, whatever the blanks between them. */
function wordsOf({ text }: Written): string {
  return text.normalize('NFC').replaceAll(/\s+/gu, ' ').trim();
}

/** What the line was read as; null where nothing of it was. A time taken from lines above it is not its own. */
function factsOf({ events, minute, day }: Written): string | null {
  if (events.length === 0) return null;
  return JSON.stringify([day, minute, events.map((event) => ({ ...event, seq: 0, minute: 0, place: null }))]);
}

/** The day, the heading and the kinds of facts. */
function aboutOf({ events, day }: Written): string | null {
  if (events.length === 0) return null;
  return JSON.stringify([day, events.map(({ kind, subject }) => [kind, subject])]);
}
