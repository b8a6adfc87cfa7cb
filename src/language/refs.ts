/** What a name stands for in events. A journal names the same broods in thousands of lines: all of them hold one thing. */
import type { Named } from './names.ts';

export interface BroodRef {
  readonly kind: 'brood';
  readonly brood: string;
}

const broods = new WeakMap<Named, BroodRef>();

/** The brood that a name names. */
export function broodRef(named: Named): BroodRef {
  const before = broods.get(named);
  if (before !== undefined) return before;
  const made: BroodRef = { kind: 'brood', brood: named.name };
  broods.set(named, made);
  return made;
}
