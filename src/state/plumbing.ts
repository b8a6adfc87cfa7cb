/**
 * Tanks and loops, and which tank was on which loop when. Temporary measures change what a tank shares
 * too (`off the loop`): `measures.ts` adds to `plumbed` through `plumb`.
 */
import type { Homes } from './home.ts';
import { declareTank, retireTank } from './declare.ts';
import { noteClean, noteLevel } from './prefilter.ts';
import type { Day } from '../core/day.ts';
import type { Measure } from '../core/quantity.ts';
import type { Place } from '../core/span.ts';

export interface Plumbing {
  tanks: Map<string, Tank>;
  loops: Map<string, Loop>;
  /** All tanks in walking order, retired ones too: kept here since nearly every line asks for it. */
  order: string[];
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
  heated: Measure<'C'> | null;
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
  /** `off the loop for 2 h`, `… until …`: from that moment it is back on its home loop. */
  until: Moment | null;
  place: Place;
}

/** A day and a minute of it; null is the day's start. */
export interface Moment {
  day: Day;
  minute: number | null;
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
  /** Level in the prefilter chamber above its floor, mm: rises towards `spillsAt` as it clogs. Oldest first. */
  levels: LoopLevel[];
  cleans: LoopClean[];
}

export interface LoopLevel {
  day: Day;
  minute: number | null;
  /** Order among levels and cleans of one day. */
  seq: number;
  level: Measure<'mm'>;
  /** Not read: water went over the lip. */
  spilled: boolean;
  /** Read while the return pump stood still: says nothing about clogging. */
  pumpOff: boolean;
  /** Words after it, which may say that a pipe was flushed or the sump stood low. */
  remark: string | null;
  place: Place;
  /** A later untimed reading of that day stands in its place; it stays in the history only. */
  superseded: boolean;
}

export interface LoopClean {
  day: Day;
  minute: number | null;
  seq: number;
  layers: number;
  of: number | null;
  place: Place;
}

export const PLUMBING_HOMES: Homes<'loop declared' | 'tank declared' | 'tank retired' | 'level' | 'layers cleaned'> = {
  'loop declared': (draft, event) => {
    const known = draft.plumbing.loops.get(event.loop);
    draft.plumbing.loops.set(event.loop, {
      name: event.loop,
      since: known?.since ?? event.day,
      declared: known?.declared ?? event.place,
      sump: event.sump ?? known?.sump ?? null,
      returnFlow: event.returnFlow ?? known?.returnFlow ?? null,
      layers: event.layers ?? known?.layers ?? null,
      spillsAt: event.spillsAt ?? known?.spillsAt ?? null,
      spare: event.spare ?? known?.spare ?? null,
      levels: known?.levels ?? [],
      cleans: known?.cleans ?? [],
    });
  },
  'tank declared': declareTank,
  'tank retired': retireTank,
  level: noteLevel,
  'layers cleaned': noteClean,
};
