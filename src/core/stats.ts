/** General statistics from simple-statistics, named in the words used here; the only file that imports it. */
import { median as medianOf, medianAbsoluteDeviation } from 'simple-statistics';

/** Middle value; null for none. */
export function median(values: readonly number[]): number | null {
  return values.length === 0 ? null : medianOf([...values]);
}

/** Median absolute deviation from the median; null for none. */
export function mad(values: readonly number[]): number | null {
  return values.length === 0 ? null : medianAbsoluteDeviation([...values]);
}
