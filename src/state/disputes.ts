/** Disputes: lines of trouble no more than 48 h apart, open until the pair makes up, spawns or is separated. */
import type { Homes } from './home.ts';

export const DISPUTES_HOMES: Homes<'dispute sign' | 'calmer' | 'shimmying' | 'made up'> = {
  'dispute sign': () => undefined,
  calmer: () => undefined,
  shimmying: () => undefined,
  'made up': () => undefined,
};
