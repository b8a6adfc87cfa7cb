/** The room's own conventions: currency, zone, walking order, scoops, how nitrogen is written. */
import type { Homes } from './home.ts';
import type { Measure } from '../core/quantity.ts';

export interface Settings {
  currency: string | null;
  zone: string | null;
  /** Walking order as set; tanks not in it follow in order of declaration. */
  walk: string[];
  rows: Map<string, string[]>;
  scoops: Map<string, { volume: Measure<'L'> | null; mass: Measure<'g'> | null }>;
}

export const SETTINGS_HOMES: Homes<
  'units set' | 'currency set' | 'zone set' | 'walk set' | 'nitrogen set' | 'scoop set' | 'row declared'
> = {
  'units set': () => undefined,
  'currency set': () => undefined,
  'zone set': () => undefined,
  'walk set': () => undefined,
  'nitrogen set': () => undefined,
  'scoop set': () => undefined,
  'row declared': () => undefined,
};
