/** Quantiles of the usual distributions, from jStat; the only file that imports it, since loading it takes a moment. */
import jstat from 'jstat';

/** t that leaves `p` below it at `df` degrees of freedom. */
export function studentT(p: number, df: number): number {
  return jstat.studentt.inv(p, df);
}

/** The χ² that leaves `p` below it at `df` degrees of freedom. */
export function chiSquare(p: number, df: number): number {
  return jstat.chisquare.inv(p, df);
}

/** The z that leaves `p` below it in the standard normal distribution. */
export function normal(p: number): number {
  return jstat.normal.inv(p, 0, 1);
}

/** Share of `k` in `n` with its Wilson limits (Newcombe 1998, Stat. Med. 17:857), at a two-sided level. */
export function shareOf(k: number, n: number, level = 0.95): { low: number; likely: number; high: number } {
  if (n <= 0) return { low: 0, likely: 0.5, high: 1 };
  const z = normal(0.5 + level / 2);
  const p = k / n;
  const middle = p + z ** 2 / (2 * n);
  const spread = z * Math.sqrt((p * (1 - p)) / n + z ** 2 / (4 * n ** 2));
  const scale = 1 + z ** 2 / n;
  // At the ends the formula gives exactly 0 or 1, up to a rounding error that must not show as "-1e-17".
  return { low: k === 0 ? 0 : (middle - spread) / scale, likely: p, high: k === n ? 1 : (middle + spread) / scale };
}

/**
 * Limits of a rate where `count` events were seen: exact Poisson, Garwood 1936, by chi-square quantiles;
 * in events over the same stretch of time. At none seen the lower limit is 0.
 */
export function poissonLimits(count: number, level = 0.95): { low: number; high: number } {
  const tail = (1 - level) / 2;
  return {
    low: count <= 0 ? 0 : chiSquare(tail, 2 * count) / 2,
    high: chiSquare(1 - tail, 2 * count + 2) / 2,
  };
}
