/** Readings, changes, top-ups and doses, per tank and loop, each with the tanks that shared that water that day. */
import type { Homes } from './home.ts';
import type { Day } from '../core/day.ts';
import type { Measure } from '../core/quantity.ts';
import type { Place } from '../core/span.ts';
import type { Dose, Reading, WaterAmount } from '../journal/event.ts';

export interface Water {
  /** Oldest first; a superseded one stays for the history only. */
  readings: WaterFact<{ reading: Reading; superseded: boolean }>[];
  changes: WaterFact<{ amount: WaterAmount }>[];
  topUps: WaterFact<{ litres: Measure<'L'> }>[];
  doses: WaterFact<{ dose: Dose | null; product: string }>[];
  /** Biological media cleaned, or the only sponge of a tank rinsed: starts a water watch. */
  disturbed: WaterFact<{ what: 'media cleaned' | 'sponge rinsed' | 'power lost' | 'new sponge' }>[];
}

export type WaterFact<T> = T & {
  /** The tank or loop of the line. */
  where: string;
  /** Every tank that shared that water on that day. */
  tanks: string[];
  day: Day;
  minute: number | null;
  place: Place;
};

export const WATER_HOMES: Homes<
  'media cleaned' | 'sponge rinsed' | 'water changed' | 'topped up' | 'tested' | 'dosed'
> = {
  'media cleaned': () => undefined,
  'sponge rinsed': () => undefined,
  'water changed': () => undefined,
  'topped up': () => undefined,
  tested: () => undefined,
  dosed: () => undefined,
};
