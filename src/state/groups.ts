/** Groups: pairs, trios, harems, colonies, their bond and their members. */
import type { Homes } from './home.ts';

export const GROUPS_HOMES: Homes<'group declared' | 'bonded' | 'split up' | 'resting' | 'member back' | 'new mate'> = {
  'group declared': () => undefined,
  bonded: () => undefined,
  'split up': () => undefined,
  resting: () => undefined,
  'member back': () => undefined,
  'new mate': () => undefined,
};
