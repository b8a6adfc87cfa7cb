/** Sickness, holds, treatments and quarantine. Only `hold` holds. */
import type { Homes } from './home.ts';
import type { Day } from '../core/day.ts';
import type { Measure } from '../core/quantity.ts';
import type { Place } from '../core/span.ts';
import type { Dose } from '../journal/event.ts';

export interface Health {
  sick: {
    where: string;
    tanks: string[];
    text: string;
    catching: boolean | null;
    day: Day;
    place: Place;
    answered: Place | null;
    over: Day | null;
  }[];
  holds: Hold[];
  treatments: Treatment[];
  quarantines: { where: string; day: Day; until: Day; ended: { day: Day; place: Place } | null; place: Place }[];
}

export interface Hold {
  /** Tank or loop of the line. */
  where: string;
  text: string;
  day: Day;
  minute: number | null;
  place: Place;
  /** Later signs of the same trouble: each restarts the clear days. */
  signs: { day: Day; place: Place }[];
  over: { day: Day; place: Place } | null;
}

export interface Treatment {
  where: string;
  /** Every tank that shared the water that day. */
  tanks: string[];
  product: string;
  dose: Dose | null;
  every: Measure<'days'> | null;
  doses: number | null;
  wait: Measure<'days'> | null;
  day: Day;
  place: Place;
  given: { day: Day; place: Place }[];
}

export const HEALTH_HOMES: Homes<
  'sick' | 'catching' | 'treated' | 'hold begun' | 'hold over' | 'quarantine begun' | 'quarantine over'
> = {
  sick: () => undefined,
  catching: () => undefined,
  treated: () => undefined,
  'hold begun': () => undefined,
  'hold over': () => undefined,
  'quarantine begun': () => undefined,
  'quarantine over': () => undefined,
};
