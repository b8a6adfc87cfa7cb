/** General statistics from simple-statistics, named in the words used here; the only file that imports it. */
import { errorFunction, median as medianOf, medianAbsoluteDeviation, probit } from 'simple-statistics';

/** Middle value; null for none. */
export function median(values: readonly number[]): number | null {
  return values.length === 0 ? null : medianOf([...values]);
}

/** Median absolute deviation from the median; null for none. */
export function mad(values: readonly number[]): number | null {
  return values.length === 0 ? null : medianAbsoluteDeviation([...values]);
}

/** Share of a standard normal below z, to about 1e-7. */
export function normalBelow(z: number): number {
  return (1 + errorFunction(z / Math.SQRT2)) / 2;
}

/** The z below which a share of a standard normal lies, to about 1e-5; the share strictly between 0 and 1. */
export function normalAt(share: number): number {
  // The library reads a table in steps of 0.01: Newton's steps from there.
  let z = probit(share);
  for (let step = 0; step < 2; step += 1) {
    const density = Math.exp(-(z ** 2) / 2) / Math.sqrt(2 * Math.PI);
    z -= (normalBelow(z) - share) / density;
  }
  return z;
}

/**
 * How far two samples differ by rank, as a standard score: below 0 where the first tends to be smaller.
 * Mann & Whitney 1947, normal approximation with the correction for ties; null where either is empty or all are alike.
 */
export function rankScore(a: readonly number[], b: readonly number[]): number | null {
  const [n, m] = [a.length, b.length];
  const wins = a.reduce((sum, x) => sum + b.reduce((won, y) => won + (x > y ? 1 : x === y ? 0.5 : 0), 0), 0);
  const alike = new Map<number, number>();
  for (const value of [...a, ...b]) alike.set(value, (alike.get(value) ?? 0) + 1);
  const ties = [...alike.values()].reduce((sum, t) => sum + (t ** 3 - t), 0);
  const total = n + m;
  const variance = ((n * m) / 12) * (total + 1 - ties / (total * (total - 1)));
  return n === 0 || m === 0 || !(variance > 0) ? null : (wins - (n * m) / 2) / Math.sqrt(variance);
}
