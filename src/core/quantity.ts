/**
 * Quantities in the units that everything inside uses. The unit is part of the type, so a length can
 * never be added to a volume; the reader converts once, the printer converts back.
 */
import type { Interval } from './interval.ts';

/** Canonical units. Nitrogen species are always mg/L as N; hardness and alkalinity in German degrees. */
export type Unit =
  | 'mm'
  | 'L'
  | 'L/h'
  | 'g'
  | 'C'
  | 'mg/L'
  | 'dH'
  | 'pH'
  | 'uS/cm'
  | 'ppt'
  | 'minutes'
  | 'days'
  | 'share'
  | 'g/L'
  | 'mL/L'
  | 'mL';

/** An interval in one canonical unit. */
export interface Measure<U extends Unit = Unit> extends Interval {
  readonly unit: U;
}

/** Money in the room's currency; `whole` is what the journal said it buys: each fish, or all of them. */
export interface Price {
  readonly amount: number;
  readonly per: 'each' | 'all';
}

/** A value in its unit; exact where only one number is given. */
export function measure<U extends Unit>(
  unit: U,
  low: number,
  likely: number | null = low,
  high: number = low,
): Measure<U> {
  return { unit, low, likely, high };
}
