/** Live foods: jars by generation, brine shrimp hatches, and what was fed. */
import type { Homes } from './home.ts';
import type { Day } from '../core/day.ts';
import type { Measure } from '../core/quantity.ts';
import type { Place } from '../core/span.ts';

export interface Cultures {
  jars: Map<string, Jar>;
  hatches: { where: string; grams: Measure<'g'> | null; of: string; day: Day; minute: number | null; place: Place }[];
  feeds: { where: string; food: string; grams: Measure<'g'> | null; day: Day; place: Place }[];
}

export interface Jar {
  name: string;
  of: string;
  declared: Place;
  day: Day;
  /** Null until `started`, or split from another. */
  started: { day: Day; place: Place } | null;
  harvests: { day: Day; place: Place }[];
  sour: { day: Day; place: Place } | null;
}

export const CULTURES_HOMES: Homes<
  'culture declared' | 'culture started' | 'culture harvested' | 'culture split' | 'culture sour' | 'hatch set' | 'fed'
> = {
  'culture declared': () => undefined,
  'culture started': () => undefined,
  'culture harvested': () => undefined,
  'culture split': () => undefined,
  'culture sour': () => undefined,
  'hatch set': () => undefined,
  fed: () => undefined,
};
