/** What growth is worked out from: where it starts, what is usual, and what each length that was read says of the mean. */
import type { Day } from '../../core/day.ts';
import type { DayWindow, Interval } from '../../core/interval.ts';
import { exactly, middle } from '../../core/interval.ts';
import type { DeepReadonly } from '../../core/readonly.ts';
import { BROOD_CV, EYE_ERROR, meanFromExtreme, topOf, usualRates } from '../../science/growth.ts';
import type { GrowthPrior, MeanReading } from '../../science/growth.ts';
import { guildDefaults } from '../../science/guilds.ts';
import { aliveTotal, isBrood } from '../../state/bodies.ts';
import type { SeenBody, SeenBrood } from '../../state/bodies.ts';
import type { Room } from '../../state/draft.ts';
import { clockOf, guildOf, swimDays } from '../../state/stageclock.ts';
import type { SizeSeen } from '../../state/stock.ts';
import { datesOf } from '../laying.ts';

export interface UsedReading extends MeanReading {
  readonly day: Day;
  readonly seen: DeepReadonly<SizeSeen>;
}

/** Share by which a mean worked out from the largest or smallest fish may be off (ours). */
const EXTREME_ERROR = 0.06;
/** The same where the best, or some of them, had been taken out before (ours). */
const SELECTED_ERROR = 0.15;
/** Grown fish are at least so many times as long as those that sell (ours). */
const GROWN = 2.5;
/** Fish taken for a brood of unknown number. */
const SOME = 30;
/** Length of grown fish of that species, mm: as declared, else of the largest breeder, or so many times the sale size. */
export function adultSize(room: Room, { species }: SeenBody): number {
  return adultSizeOf(room, species);
}

/** Worked out once a room, for each species. */
const grown = new WeakMap<Room, Map<string | null, number>>();

/** The same for a species; null for fish of none that was told. */
export function adultSizeOf(room: Room, species: string | null): number {
  const ofRoom = grown.get(room) ?? new Map<string | null, number>();
  grown.set(room, ofRoom);
  const size = ofRoom.get(species) ?? workOutSize(room, species);
  ofRoom.set(species, size);
  return size;
}

function workOutSize(room: Room, kind: string | null): number {
  const declared = kind === null ? null : (room.stock.species.get(kind)?.traits.adult?.high ?? null);
  if (declared !== null) return declared;
  const breeders = [...room.stock.groups.values()].filter(({ species }) => species === kind);
  const lengths = breeders.flatMap(({ members }) => members.map(({ size }) => size?.high ?? 0));
  const { saleSize } = guildDefaults(guildOf(room, kind));
  return Math.max(GROWN * (saleSize.likely ?? saleSize.low), ...lengths);
}

interface Start {
  readonly born: DayWindow;
  readonly anchor: Day;
  readonly prior: GrowthPrior;
}

/** Where growth starts and what is usual for such fish; null for fish of which neither age nor any length is known. */
export function startOf(room: Room, body: SeenBody): Start | null {
  const usual = guildDefaults(guildOf(room, body.species));
  const later = {
    laterAge: usual.saleAge,
    laterSize: usual.saleSize.likely ?? usual.saleSize.low,
    grown: adultSize(room, body),
  };
  if (isBrood(body)) {
    const { laid, mostLikely } = datesOf(room, body);
    const startAge = exactly(startAgeOf(room, body));
    return from(laid, mostLikely.laid, { startAge, startSize: usual.swimSize, ...later });
  }
  if (body.born !== null) {
    return from(body.born, body.born, { startAge: exactly(7), startSize: usual.swimSize, ...later });
  }
  const first = body.sizes.find((seen) => !seen.replaced);
  if (!first) return null;
  const mean = meanOf(first, aliveTotal(body), false);
  const born: DayWindow = { low: first.day, likely: first.day, high: first.day };
  const size = { low: mean.mean - mean.error, likely: mean.mean, high: mean.mean + mean.error };
  const rates = usualRates({ startAge: exactly(7), startSize: usual.swimSize, ...later });
  const days = (rate: number): number => 20 / rate;
  const laterAge = { low: days(rates.high), likely: days(rates.likely), high: days(rates.low) };
  const grown = Math.max(later.grown, mean.mean + 30);
  return from(born, born, {
    startAge: exactly(0),
    startSize: size,
    laterAge,
    laterSize: mean.mean + 20,
    grown,
  });
}

/** Days from laying to swimming free: as the clock has it, or as both were seen. */
function startAgeOf(room: Room, brood: SeenBrood): number {
  const { mostLikely, swims } = datesOf(room, brood);
  const swam = mostLikely.swam ?? mostLikely.released ?? swims;
  const laid = mostLikely.laid.likely;
  const usual = swimDays(clockOf(room, brood));
  if (laid === null || swam?.likely === null || swam?.likely === undefined) return usual.likely ?? usual.low;
  return Math.max(0, swam.likely - laid);
}

/** Ages count from the likely day; the most likely days say by how much that may be off. */
function from(born: DayWindow, likely: DayWindow, prior: GrowthPrior): Start | null {
  const anchor = likely.likely ?? likely.high ?? likely.low;
  if (anchor === null) return null;
  const off = { low: (likely.low ?? anchor) - anchor, likely: 0, high: (likely.high ?? anchor) - anchor };
  return { born, anchor, prior: off.low === off.high ? prior : { ...prior, bornOff: off } };
}

/** What every length in the journal says of the mean; a length that a later line of that day replaced is left out. */
export function readingsOf(room: Room, body: SeenBody, anchor: Day): UsedReading[] {
  return body.sizes
    .filter((seen) => !seen.replaced)
    .map((seen) => ({
      age: seen.day - anchor,
      day: seen.day,
      seen,
      ...meanOf(seen, partCount(body, seen), isSelected(room, body, seen)),
    }));
}

function partCount(body: SeenBody, seen: DeepReadonly<SizeSeen>): Interval {
  return (seen.tank === null ? undefined : body.parts.get(seen.tank)) ?? aliveTotal(body);
}

/** What a written length says of the mean, and how surely. */
function meanOf(seen: DeepReadonly<SizeSeen>, count: Interval, selected: boolean): { mean: number; error: number } {
  const values = seen.sizes.values.map((value) => middle(value));
  const wide = seen.sizes.values.reduce((most, value) => Math.max(most, value.high - value.low), 0);
  const value = values.reduce((sum, one) => sum + one, 0) / Math.max(1, values.length);
  const number = Number.isFinite(count.high) ? (count.likely ?? (count.low + count.high) / 2) : (count.likely ?? SOME);
  const top = topOf(Math.max(1, Math.round(number)));
  const more = selected ? SELECTED_ERROR * value : 0;
  switch (seen.sizes.of) {
    case 'largest':
    case 'smallest': {
      const mean = meanFromExtreme(value, seen.sizes.of === 'largest' ? top : -top);
      return { mean, error: Math.hypot(EYE_ERROR, wide / 2, EXTREME_ERROR * mean, more) };
    }
    case 'average':
    case 'bulk':
      return { mean: value, error: Math.hypot(EYE_ERROR, more) };
    case 'sample':
      return {
        mean: value,
        error: Math.hypot((EYE_ERROR + BROOD_CV * value) / Math.sqrt(Math.max(1, values.length)), more),
      };
  }
}

/** True where, before a reading, fish had been picked out by size: sold ones are the best. */
export function isSelected(room: Room, body: SeenBody, seen: DeepReadonly<SizeSeen>): boolean {
  const sold = body.gone.some(
    (gone) => (gone.how === 'sold' || gone.how === 'gave away' || gone.how === 'culled') && gone.day <= seen.day,
  );
  return sold || (room.stock.picked.get(body.name) ?? []).some((day) => day < seen.day);
}
