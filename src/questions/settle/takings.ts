/** What an auction brought, as the lines of its results are reckoned wherever money is: the same sums as `money` tells. */
import type { Day } from '../../core/day.ts';
import { NONE, plus, type Interval } from '../../core/interval.ts';
import type { LineRef } from '../../core/span.ts';
import type { Room } from '../../state/draft.ts';
import { incomes } from '../money/income.ts';

export interface Takings {
  readonly auction: string;
  readonly on: Day;
  readonly sold: Interval;
  /** What the lots fetched together, and what is left of it after the auction's part. */
  readonly fetched: Interval;
  readonly net: Interval;
  readonly currency: string | null;
}

/** Of the sales in one file from a line on. */
export function takings(
  room: Room,
  auction: string,
  on: Day,
  { file, from }: { file: string; from: LineRef['line'] },
): Takings {
  const sales = incomes(room, null).filter(({ place }) => place.file === file && place.line >= from);
  const sum = (all: readonly (Interval | null)[]): Interval =>
    all.reduce<Interval>((total, one) => plus(total, one ?? NONE), NONE);
  return {
    auction,
    on,
    sold: sum(sales.map(({ count }) => count)),
    fetched: sum(sales.map(({ gross }) => gross)),
    net: cents(sum(sales.map(({ net }) => net))),
    currency: room.settings.currency,
  };
}

/** A part of a sum has more places than any coin. */
function cents({ low, likely, high }: Interval): Interval {
  const round = (value: number): number => Math.round(value * 100) / 100;
  return { low: round(low), likely: likely === null ? null : round(likely), high: round(high) };
}
