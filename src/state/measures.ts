/** Temporary measures and faults: open from the line that starts one to the line that undoes it. */
import type { Homes } from './home.ts';
import type { Day } from '../core/day.ts';
import type { Measure } from '../core/quantity.ts';
import type { Place } from '../core/span.ts';
import type { MeasureKind } from '../journal/event.ts';
import { beginMeasure, everythingUndone, measureStays, undoMeasure } from './rigging.ts';
import { noteSpill } from './prefilter.ts';
import { beginFault, fixFaults, LEAK, powerBack, STUCK } from './faults.ts';

export interface Measures {
  /** Oldest first, closed ones too. */
  rigs: Rig[];
  /** Those of them that no line has closed, and perhaps some that one has: `unclosedRigs` strikes these off. */
  unclosed: Rig[];
  /** Those of them that raise the heat. */
  raised: Rig[];
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
  minute: number | null;
  /** `power off 2 h`: how long it lasted, where the line says so. */
  lasts: Measure<'minutes'> | null;
  begun: Place;
  fixed: { day: Day; minute: number | null; text: string | null; place: Place } | null;
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
  'measure begun': beginMeasure,
  'measure undone': undoMeasure,
  'measure stays': measureStays,
  'everything undone': everythingUndone,
  fault: (draft, event) => {
    beginFault(draft, event, 'fault', event.text);
  },
  overflowed: (draft, event) => {
    beginFault(draft, event, 'overflow', 'overflowed');
    noteSpill(draft, event);
  },
  leak: (draft, event) => {
    beginFault(draft, event, 'leak', event.remark ?? LEAK);
  },
  'heater stuck': (draft, event) => {
    const at = event.at === null ? '' : ` at ${Math.round(event.at.likely ?? event.at.high)} C`;
    beginFault(draft, event, 'heater stuck', `${STUCK}${at}`);
  },
  'power off': (draft, event) => {
    beginFault(draft, event, 'power', 'power off', event.lasts);
  },
  'power on': powerBack,
  fixed: fixFaults,
};
