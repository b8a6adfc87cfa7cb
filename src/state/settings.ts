/** The room's own conventions: currency, zone, walking order, scoops, how nitrogen is written. */
import type { Homes } from './home.ts';
import type { Measure } from '../core/quantity.ts';
import { orderOf } from './tanks.ts';

export interface Settings {
  /** What a bare number means, already applied by the reader; kept for answers in the keeper's own units. */
  units: 'metric' | 'US' | 'imperial' | null;
  /** How the keeper's kit reports nitrogen; inside it is always as N. */
  nitrogen: 'N' | 'ion' | null;
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
  'units set': (draft, event) => {
    draft.settings.units = event.units;
  },
  'currency set': (draft, event) => {
    draft.settings.currency = event.currency;
  },
  'zone set': (draft, event) => {
    draft.settings.zone = event.zone;
  },
  'walk set': (draft, event) => {
    draft.settings.walk = [...event.tanks];
    draft.plumbing.order = orderOf(draft);
  },
  'nitrogen set': (draft, event) => {
    draft.settings.nitrogen = event.as;
  },
  'scoop set': (draft, event) => {
    draft.settings.scoops.set(event.name, { volume: event.volume, mass: event.mass });
  },
  'row declared': (draft, event) => {
    draft.settings.rows.set(event.row, [...event.tanks]);
  },
};
