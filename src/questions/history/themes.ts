/** What each kind of fact is about, in a word that a keeper looks for; the compiler wants every kind here. */
import type { Event, EventKind } from '../../journal/event.ts';

type Theme =
  | 'set-up'
  | 'chore'
  | 'water'
  | 'filter'
  | 'measure'
  | 'fault'
  | 'dispute'
  | 'bond'
  | 'spawn'
  | 'brood'
  | 'count'
  | 'size'
  | 'move'
  | 'loss'
  | 'health'
  | 'sale'
  | 'feed'
  | 'culture'
  | 'note';

const THEME: { readonly [K in EventKind]: Theme } = {
  'units set': 'set-up',
  'currency set': 'set-up',
  'zone set': 'set-up',
  'walk set': 'set-up',
  'nitrogen set': 'set-up',
  'scoop set': 'set-up',
  'award rule set': 'set-up',
  'row declared': 'set-up',
  'loop declared': 'set-up',
  'tank declared': 'set-up',
  'tank retired': 'set-up',
  'species declared': 'set-up',
  'group declared': 'set-up',
  'culture declared': 'culture',
  'auction declared': 'sale',
  'all well': 'note',
  away: 'note',
  'chore set': 'chore',
  'chore stopped': 'chore',
  'to do': 'chore',
  did: 'chore',
  'put off': 'chore',
  level: 'filter',
  'layers cleaned': 'filter',
  'media cleaned': 'filter',
  'sponge rinsed': 'filter',
  'water changed': 'water',
  'topped up': 'water',
  tested: 'water',
  dosed: 'water',
  'measure begun': 'measure',
  'measure undone': 'measure',
  'measure stays': 'measure',
  'everything undone': 'measure',
  fault: 'fault',
  fixed: 'fault',
  overflowed: 'fault',
  leak: 'fault',
  'power off': 'fault',
  'power on': 'fault',
  'heater stuck': 'fault',
  bonded: 'bond',
  'dispute sign': 'dispute',
  calmer: 'dispute',
  shimmying: 'bond',
  'made up': 'dispute',
  'split up': 'bond',
  resting: 'bond',
  'member back': 'bond',
  'new mate': 'bond',
  'parents chase fry': 'brood',
  'about to spawn': 'spawn',
  'no eggs': 'spawn',
  spawned: 'spawn',
  'eggs white': 'brood',
  'eggs gone': 'brood',
  'stage seen': 'brood',
  counted: 'count',
  sized: 'size',
  moved: 'move',
  mixed: 'move',
  lost: 'loss',
  sick: 'health',
  catching: 'health',
  treated: 'health',
  'hold begun': 'health',
  'hold over': 'health',
  'quarantine begun': 'health',
  'quarantine over': 'health',
  shared: 'health',
  bought: 'sale',
  'kept back': 'sale',
  reserved: 'sale',
  wanted: 'sale',
  sold: 'sale',
  'gave away': 'sale',
  spent: 'sale',
  fed: 'feed',
  'culture started': 'culture',
  'culture harvested': 'culture',
  'culture split': 'culture',
  'culture sour': 'culture',
  'hatch set': 'culture',
  note: 'note',
  photo: 'note',
};

/** Every theme, once, for `--kind`. */
export const THEMES: readonly Theme[] = [...new Set(Object.values(THEME))];

export function themeOf(event: Event): Theme {
  return THEME[event.kind];
}

/** The words of a fact that may not stand in its line: theme, sign, stage, measure, how a fish was lost. */
export function wordsOf(event: Event): readonly string[] {
  const theme = themeOf(event);
  switch (event.kind) {
    case 'dispute sign':
      return [theme, event.sign];
    case 'stage seen':
      return [theme, event.stage];
    case 'measure begun':
    case 'measure undone':
    case 'measure stays':
      return [theme, event.measure];
    case 'lost':
      return [theme, event.how];
    default:
      return [theme, event.kind];
  }
}
