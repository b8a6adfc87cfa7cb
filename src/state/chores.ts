/** Standing chores, one-off tasks, and what was put off. */
import type { Homes } from './home.ts';
import type { Day } from '../core/day.ts';
import type { Measure } from '../core/quantity.ts';
import type { Place } from '../core/span.ts';
import type { ChoreAction, MeasureKind, WaterAmount } from '../journal/event.ts';

export interface Chores {
  standing: StandingChore[];
  tasks: Task[];
  putOffs: PutOff[];
  /** The keeper is away until that day, as said on `day`. */
  away: { day: Day; until: Day; remark: string | null; place: Place }[];
}

export interface StandingChore {
  /** Tank, loop, culture or `room`. */
  where: string;
  action: ChoreAction;
  every: Measure<'days'> | null;
  /** Every so many calendar months. */
  monthly: number | null;
  levelAbove: Measure<'mm'> | null;
  amount: WaterAmount | null;
  takes: Measure<'minutes'> | null;
  day: Day;
  place: Place;
  stopped: { day: Day; place: Place } | null;
  /** When it was done, oldest first; `part` is the share of it that was done (2 of 6 layers: 1/3). */
  done: { day: Day; part: number; place: Place }[];
}

export interface Task {
  where: string;
  text: string;
  by: Day | null;
  day: Day;
  place: Place;
  done: { day: Day; place: Place } | null;
}

export interface PutOff {
  where: string;
  what: { action: ChoreAction } | { measure: MeasureKind } | { text: string };
  day: Day;
  until: Day;
  remark: string | null;
  place: Place;
}

export const CHORES_HOMES: Homes<'away' | 'chore set' | 'chore stopped' | 'to do' | 'did' | 'put off'> = {
  away: () => undefined,
  'chore set': () => undefined,
  'chore stopped': () => undefined,
  'to do': () => undefined,
  did: () => undefined,
  'put off': () => undefined,
};
