/** Records that most of a kept room consists of: a line has a place, and nearly all else is an interval. */
import type { Leaf } from '../../files/cache/image/open.ts';

const PLACE: Leaf = {
  keys: ['file', 'line', 'from', 'to'],
  make: (file, line, from, to) => ({ file, line, from, to }),
};
const INTERVAL: Leaf = {
  keys: ['low', 'likely', 'high'],
  make: (low, likely, high) => ({ low, likely, high }),
};
const MEASURE: Leaf = {
  keys: ['unit', 'low', 'likely', 'high'],
  make: (unit, low, likely, high) => ({ unit, low, likely, high }),
};

export const LEAVES: readonly Leaf[] = [PLACE, INTERVAL, MEASURE];

/** Those of them of which each may be another: nobody asks whether two are one. */
export const VALUES: readonly (readonly string[])[] = [PLACE.keys, INTERVAL.keys, MEASURE.keys];
