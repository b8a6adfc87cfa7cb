/** What can be read of water, in the order in which answers tell it. */
import type { Reading } from '../journal/event.ts';

export const PARAMETERS: readonly (keyof Reading)[] = [
  'temperature',
  'ph',
  'kh',
  'gh',
  'tan',
  'no2',
  'no3',
  'conductivity',
  'salinity',
  'oxygen',
  'chlorine',
];
