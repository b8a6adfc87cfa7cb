/** Temporary measures and faults: open from the line that starts one to the line that undoes it. */
import type { Homes } from './home.ts';
import type { Day } from '../core/day.ts';
import type { Measure } from '../core/quantity.ts';
import type { Place } from '../core/span.ts';
import type { MeasureKind } from '../journal/event.ts';

export interface Measures {
  /** Oldest first, closed ones too. */
  rigs: Rig[];
  faults: Fault[];
}

/** One temporary measure. */
export interface Rig {
  kind: MeasureKind;
  /** Tank or loop. */
  where: string;
  day: Day;
  minute: number | null;
  until: Day | null;
  lasts: Measure<'minutes'> | null;
  to: Measure<'C'> | null;
  /** `stays`: no longer temporary. */
  stays: boolean;
  begun: Place;
  closed: { day: Day; minute: number | null; place: Place } | null;
  /** Later lines that said it again while it was open. */
  again: Place[];
}

export interface Fault {
  kind: 'fault' | 'leak' | 'overflow' | 'power' | 'heater stuck';
  /** Tank, loop or `room`. */
  where: string;
  text: string;
  day: Day;
  begun: Place;
  fixed: { day: Day; text: string | null; place: Place } | null;
}

export const MEASURES_HOMES: Homes<
  | 'measure begun'
  | 'measure undone'
  | 'measure stays'
  | 'everything undone'
  | 'fault'
  | 'fixed'
  | 'overflowed'
  | 'leak'
  | 'power off'
  | 'power on'
  | 'heater stuck'
> = {
  'measure begun': () => undefined,
  'measure undone': () => undefined,
  'measure stays': () => undefined,
  'everything undone': () => undefined,
  fault: () => undefined,
  fixed: () => undefined,
  overflowed: () => undefined,
  leak: () => undefined,
  'power off': () => undefined,
  'power on': () => undefined,
  'heater stuck': () => undefined,
};
