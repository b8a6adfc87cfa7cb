/** What of a list fits into the time that a keeper has. */
import type { DueItem } from './item.ts';

/** Minutes assumed where the journal does not say (`takes 20 min`). Common practice, no source. */
const USUAL_MINUTES = 5;

interface Fitted<T> {
  readonly rows: readonly T[];
  /** Rows that did not fit, in their order. */
  readonly left: readonly T[];
  /** Minutes that the rows take together, some of them assumed. */
  readonly minutes: number;
}

/**
 * Takes rows by weight, then as they stand, as long as they fit; a row at which a life is at risk
 * (weight 3) is taken whether it fits or not. The order of the rows stays.
 */
export function fitMinutes<T extends Pick<DueItem, 'weight' | 'minutes'>>(
  rows: readonly T[],
  minutes: number,
): Fitted<T> {
  const taken = new Set<T>();
  let used = 0;
  for (const row of [...rows].sort((a, b) => b.weight - a.weight)) {
    const takes = row.minutes ?? USUAL_MINUTES;
    if (row.weight < 3 && used + takes > minutes) continue;
    taken.add(row);
    used += takes;
  }
  return { rows: rows.filter((row) => taken.has(row)), left: rows.filter((row) => !taken.has(row)), minutes: used };
}
