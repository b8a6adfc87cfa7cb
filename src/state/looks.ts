/** When anything was last said of each tank. */
import type { Homes } from './home.ts';
import type { Day } from '../core/day.ts';
import type { Place } from '../core/span.ts';

export interface Looks {
  /** Last word of each tank, `all well` of the room included. */
  last: Map<string, { day: Day; place: Place }>;
}

export const LOOKS_HOMES: Homes<'all well' | 'note' | 'photo'> = {
  'all well': () => undefined,
  note: () => undefined,
  photo: () => undefined,
};
