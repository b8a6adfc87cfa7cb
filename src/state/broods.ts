/** Broods: laying, hatching and swimming windows, stages and names. */
import type { Homes } from './home.ts';

export const BROODS_HOMES: Homes<
  'about to spawn' | 'no eggs' | 'spawned' | 'eggs white' | 'eggs gone' | 'stage seen' | 'parents chase fry'
> = {
  'about to spawn': () => undefined,
  'no eggs': () => undefined,
  spawned: () => undefined,
  'eggs white': () => undefined,
  'eggs gone': () => undefined,
  'stage seen': () => undefined,
  'parents chase fry': () => undefined,
};
