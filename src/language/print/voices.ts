/** Which units a clause was written in, so that printing it anew keeps them. */
import type { Voice } from './words.ts';

/** Finds the first unit of one system or the other after a number; `in` before a name is a place. */
export const UNITS_WRITTEN =
  /\d\s*(?:(?<metric>mm|cm|m|ml|l|c|l\/h|lph|litres?)|(?<imperial>imp\w*\s+gal\w*)|(?<us>(?:us\s+)?gal\w*|gph|f|ft|foot|feet|inch\w*|in(?!\s+[\p{L}\d])))(?![\p{L}\d/])/iu;

export function unitsOf(groups: Readonly<Record<string, string | undefined>>): Voice {
  const units = groups['metric'] !== undefined ? 'metric' : groups['imperial'] !== undefined ? 'imperial' : 'US';
  return { units, nitrogen: 'N' };
}
