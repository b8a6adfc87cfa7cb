/** Rows of one theme of today's list in plain words, for tests that hold a row as a whole. */
import { isoDay, type Day } from '../../../src/core/day.ts';
import type { DueItem, DueSource } from '../../../src/questions/due/item.ts';
import { journalOn } from '../../support/journal.ts';
import { ROOM } from '../../support/lines.ts';

const SETUP = ROOM.split('\n').length - 1;

/** What a keeper reads of a row, its days as a window, its lines counted from the first after the room's own. */
export interface Told {
  readonly id: string;
  readonly place: string;
  readonly what: string;
  /** One day, or `low..likely..high`. */
  readonly due: string;
  readonly weight: number;
  readonly why: string;
  readonly close: string;
  readonly caution: string | null;
  readonly after: string | null;
  /** What puts it off; null where nothing does. */
  readonly key: string | null;
  readonly pressing: boolean;
  readonly steps: readonly string[];
  readonly lines: readonly number[];
}

export function told(item: DueItem): Told {
  const { id, place, what, due, weight, why, close, caution, after, putOffKey, pressing, because, lines } = item;
  const days = [due.low, due.likely, due.high].map((day: Day | null) => (day === null ? '' : isoDay(day)));
  return {
    id,
    place,
    what,
    due: new Set(days).size === 1 ? (days[0] ?? '') : days.join('..'),
    weight,
    why,
    close,
    caution: caution ?? null,
    after: after ?? null,
    key: putOffKey,
    pressing,
    steps: because.steps,
    lines: lines.map(({ line }) => line - SETUP),
  };
}

/** The rows of a theme for lines after those of the small room of `lines.ts`. */
export function rowsOf(source: DueSource, on: string, lines: string, days = 7): readonly Told[] {
  return source(journalOn(on, lines), days).map(told);
}

/** The one row of a theme; throws where there are others, or none. */
export function rowOf(source: DueSource, on: string, lines: string, days = 7): Told {
  const [row, ...others] = rowsOf(source, on, lines, days);
  if (row === undefined || others.length > 0) throw new Error(`${String(others.length)} rows besides`);
  return row;
}
