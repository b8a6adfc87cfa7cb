/** What can be read of water, in the order in which answers tell it. */
import type { Parameter } from './readings.ts';

export const PARAMETERS: readonly Parameter[] = [
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
