/** Tanks and loops, and which tank was on which loop when. */
import type { Homes } from './home.ts';
import type { Day } from '../core/day.ts';
import type { Measure } from '../core/quantity.ts';
import type { Place } from '../core/span.ts';

export interface Plumbing {
  tanks: Map<string, Tank>;
  loops: Map<string, Loop>;
}

export interface Tank {
  name: string;
  since: Day;
  declared: Place;
  size: readonly [Measure<'mm'>, Measure<'mm'>, Measure<'mm'>] | null;
  nominal: Measure<'L'> | null;
  live: Measure<'L'> | null;
  filter: string | null;
  quarantine: boolean;
  inTank: string | null;
  hides: string | null;
  retired: { day: Day; place: Place } | null;
  /** Oldest first. `home` is the loop that it belongs to, `on` the loop that it shares water with from then. */
  plumbed: Plumbed[];
}

export interface Plumbed {
  day: Day;
  minute: number | null;
  home: string | null;
  on: string | null;
  place: Place;
}

export interface Loop {
  name: string;
  since: Day;
  declared: Place;
  sump: Measure<'L'> | null;
  returnFlow: Measure<'L/h'> | null;
  layers: number | null;
  spillsAt: Measure<'mm'> | null;
  spare: Measure<'L'> | null;
  /** Level in the prefilter chamber above its floor, mm: rises towards `spillsAt` as it clogs. */
  levels: { day: Day; minute: number | null; level: Measure<'mm'>; pumpOff: boolean; place: Place }[];
  cleans: { day: Day; minute: number | null; layers: number; of: number | null; place: Place }[];
}

export const PLUMBING_HOMES: Homes<'loop declared' | 'tank declared' | 'tank retired' | 'level' | 'layers cleaned'> = {
  'loop declared': () => undefined,
  'tank declared': () => undefined,
  'tank retired': () => undefined,
  level: () => undefined,
  'layers cleaned': () => undefined,
};
