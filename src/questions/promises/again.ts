/** Tells apart what the lines of one day say of the same fish, so that each row keeps an id of its own. */
import type { Day } from '../../core/day.ts';

/** Nothing for the first of that day, then 2, 3 … */
export function again<K extends 'stock' | 'species', T extends { readonly day: Day } & Readonly<Record<K, string>>>(
  all: readonly T[],
  one: T,
  key: K,
): string {
  const before = all.slice(0, all.indexOf(one)).filter((other) => other.day === one.day && other[key] === one[key]);
  return before.length === 0 ? '' : String(before.length + 1);
}
