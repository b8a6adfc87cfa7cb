/** Wants that a stock would meet: its species, its size by the day, and the day itself. */
import type { Day } from '../../core/day.ts';
import { less, type Interval } from '../../core/interval.ts';
import type { Measure } from '../../core/quantity.ts';
import { lineOf, type LineRef } from '../../core/span.ts';
import type { Room } from '../../state/draft.ts';
import { stands } from '../../state/selling.ts';

export interface WantRow {
  readonly count: Interval;
  readonly size: Measure<'mm'> | null;
  readonly by: Day | null;
  /** Who asked. Only told where the keeper asks for names. */
  readonly to: string | null;
  readonly line: LineRef;
}

/** Open wants of that species which these fish meet on a day. */
export function wantsFor(room: Room, species: string | null, mean: Measure<'mm'> | null, at: Day): readonly WantRow[] {
  return room.sale.wants
    .filter((want) => want.species === species && stands({ ...want, until: want.by }, at))
    .filter(({ size }) => size === null || (mean !== null && (mean.likely ?? mean.low) >= size.low))
    .map(({ count, met, size, by, to, place }) => ({ count: less(count, met), size, by, to, line: lineOf(place) }));
}
