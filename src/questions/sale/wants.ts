/** Wants that a stock would meet: its species, its size by the day, and the day itself. */
import type { Day } from '../../core/day.ts';
import { less, NONE, plus, type Interval } from '../../core/interval.ts';
import type { Measure } from '../../core/quantity.ts';
import type { DeepReadonly } from '../../core/readonly.ts';
import { lineOf, type LineRef } from '../../core/span.ts';
import type { Room } from '../../state/draft.ts';
import { stockNamed } from '../../state/promised.ts';
import type { Want } from '../../state/sale.ts';
import { sameName, stands } from '../../state/selling.ts';

export interface WantRow {
  readonly count: Interval;
  readonly size: Measure<'mm'> | null;
  readonly by: Day | null;
  /** Who asked. Only told where the keeper asks for names. */
  readonly to: string | null;
  readonly line: LineRef;
}

/** How many of a want are neither sold to that buyer nor reserved since, for nobody else by name. */
export function openWant(room: Room, want: DeepReadonly<Want>): Interval {
  const reserved = room.sale.reservations
    .filter(({ day, to }) => day >= want.day && (to === null || sameName(want.to, to) || to === '…'))
    .filter((promise) => stockNamed(room, promise.stock)?.species === want.species)
    .filter((promise) => stands(promise, room.on))
    .reduce((sum, { count, met }) => plus(sum, less(count, met)), NONE);
  return less(less(want.count, want.met), reserved);
}

/** Open wants of that species which these fish meet on a day. */
export function wantsFor(room: Room, species: string | null, mean: Measure<'mm'> | null, at: Day): readonly WantRow[] {
  return room.sale.wants
    .filter((want) => want.species === species && stands({ ...want, until: want.by }, at))
    .filter(({ size }) => size === null || (mean !== null && (mean.likely ?? mean.low) >= size.low))
    .map((want) => ({ want, count: openWant(room, want) }))
    .filter(({ count }) => count.high > 0)
    .map(({ want: { size, by, to, place }, count }) => ({ count, size, by, to, line: lineOf(place) }));
}
