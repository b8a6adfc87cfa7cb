/**
 * A usual range as a distribution: triangular from its low end over its likely value to its high end, so
 * that nothing beyond the ends is taken for possible (ours: the ranges of the trade say no more).
 */
import type { Interval } from '../core/interval.ts';
import { middle } from '../core/interval.ts';

/** The value below which a share of a triangular distribution lies (inverse of its distribution function). */
export function triangular(range: Interval, share: number): number {
  const { low, high } = range;
  if (high <= low) return low;
  const mode = middle(range);
  const split = (mode - low) / (high - low);
  return share < split
    ? low + Math.sqrt(share * (high - low) * (mode - low))
    : high - Math.sqrt((1 - share) * (high - low) * (high - mode));
}

/** So many equally likely values of a range; one where it is a single value. */
export function quantiles(range: Interval, points: number): number[] {
  if (range.high <= range.low) return [range.low];
  return Array.from({ length: points }, (_, i) => triangular(range, (i + 0.5) / points));
}
