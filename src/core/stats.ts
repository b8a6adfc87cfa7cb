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

/** The z below which a share of a standard normal lies, to about 5e-4; the share strictly between 0 and 1. */
export function normalAt(share: number): number {
  return probit(share);
}
