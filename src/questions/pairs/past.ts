/** What a pair's own disputes teach: how long they last, and whether lights off shortened them. */
import type { Interval } from '../../core/interval.ts';
import { median } from '../../core/stats.ts';
import { plural, rangeWords } from '../../core/words.ts';
import type { DisputeRow } from './dispute.ts';

/** Fewer disputes than this teach nothing (ours). */
export const ENOUGH = 3;
/** Fewer than this on one side make no comparison (ours). */
const ENOUGH_A_SIDE = 2;

export interface Lengths {
  readonly count: number;
  readonly median: number;
  readonly range: Interval;
}

export interface Past {
  /** Of disputes that ended by themselves and were written down throughout; null where there are too few. */
  readonly lengths: Lengths | null;
  readonly lightsOff: { readonly with: Lengths; readonly without: Lengths } | null;
  /** In words, or null where there is too little. */
  readonly says: string | null;
}

/** What ended disputes say. Those with gaps, and those ended by parting or death, tell no length. */
export function pastOf(rows: readonly DisputeRow[]): Past {
  const told = rows.filter(
    (row) =>
      row.gaps.length === 0 && (row.endedBy === 'made up' || row.endedBy === 'shimmying' || row.endedBy === 'spawned'),
  );
  const lengths = told.length >= ENOUGH ? lengthsOf(told) : null;
  const dark = told.filter((row) => row.measures.some((tried) => tried.measure === 'lights off'));
  const lit = told.filter((row) => !dark.includes(row));
  const lightsOff =
    dark.length >= ENOUGH_A_SIDE && lit.length >= ENOUGH_A_SIDE
      ? { with: lengthsOf(dark), without: lengthsOf(lit) }
      : null;
  return { lengths, lightsOff, says: pastWords(lengths, lightsOff) };
}

function lengthsOf(rows: readonly DisputeRow[]): Lengths {
  const days = rows.map((row) => row.days);
  const middle = median(days) ?? 0;
  return {
    count: rows.length,
    median: middle,
    range: { low: Math.min(...days), likely: middle, high: Math.max(...days) },
  };
}

function pastWords(lengths: Lengths | null, lightsOff: Past['lightsOff']): string | null {
  if (lengths === null) return null;
  const usual = `its last ${String(lengths.count)} took ${daysWords(lengths.range)}`;
  if (lightsOff === null) return usual;
  const { with: dark, without: lit } = lightsOff;
  return `${usual}; with lights off ${daysWords(dark.range)} (${times(dark)}), without ${daysWords(lit.range)} (${times(lit)})`;
}

function daysWords(days: Interval): string {
  return days.low === days.high ? plural(days.low, 'day') : `${rangeWords(days)} days`;
}

function times(lengths: Lengths): string {
  return lengths.count === 2 ? 'twice' : `${String(lengths.count)} times`;
}
