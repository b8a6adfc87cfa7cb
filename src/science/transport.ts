/**
 * Bags for an auction. Loads are ours and far below published ones: those are for oxygen-packed farm
 * fish in cool water (Dupree & Huner 1984), limits that no warm-water ornamental in a bag of air should meet.
 */

/** Grams of fish a litre of water for a day at 25 °C, bag closed on air or on oxygen (ours: a setting). */
export const LOAD = { air: 5, oxygen: 10 };
/** A bag is packed for at least a day, however short the way (common practice, no source). */
export const DAY_HOURS = 24;
export const LOAD_TEMPERATURE = 25;
/** Water is a third of a bag, what is above it two thirds (common practice, no source). */
const WHOLE_TO_WATER = 3;
/** Litres of water in the smallest bag that is worth closing (ours). */
const LEAST_WATER = 0.3;

/** g/L = lb/US gal × 119.826427: 453.59237 g a pound, 3.785411784 L a gallon. */
export const GRAMS_A_LITRE = 453.59237 / 3.785411784;

/**
 * What others carried for so many hours, grams a litre, oxygen above the water: ceilings to stay below, never advice.
 * Dupree & Huner 1984 at 18 °C, the low end of each range; zebrafish 30 g/L (laboratory practice, 1997).
 */
export const PUBLISHED_CEILINGS: readonly { readonly hours: number; readonly load: number; readonly of: string }[] = [
  { hours: 1, load: 1.0 * GRAMS_A_LITRE, of: 'fingerlings of 1–2 in, 18 °C' },
  { hours: 24, load: 0.7 * GRAMS_A_LITRE, of: 'fingerlings of 1–2 in, 18 °C' },
  { hours: 12, load: 0.4 * GRAMS_A_LITRE, of: 'swim-up fry, 18 °C' },
  { hours: 48, load: 0.2 * GRAMS_A_LITRE, of: 'swim-up fry, 18 °C' },
  { hours: 24, load: 30, of: 'zebrafish' },
];

/** How many times faster fish breathe at `to` than at `from`: twice for 10 °C (University of Missouri Extension MX392). */
export function breathing(from: number, to: number): number {
  return 2 ** ((to - from) / 10);
}

/**
 * Load that a bag may carry, and the water and whole volume for `grams` of fish, litres. Metabolism
 * doubles with 10 °C; cooler water does not allow more than at 25 °C.
 */
export function bagFor(
  grams: number,
  hours: number,
  celsius: number,
  oxygen: boolean,
): { load: number; water: number; whole: number } {
  const warm = Math.max(1, breathing(LOAD_TEMPERATURE, celsius));
  const long = Math.max(DAY_HOURS, hours) / DAY_HOURS;
  const load = (oxygen ? LOAD.oxygen : LOAD.air) / warm / long;
  const water = grams / load;
  return { load, water, whole: WHOLE_TO_WATER * water };
}

/** How fish that are sold together travel: in so many bags, each with its water and what is above it, litres. */
export interface Packing {
  readonly packs: number;
  readonly fishInPack: number;
  readonly water: number;
  readonly air: number;
  /** Grams a litre that the fullest bag may carry. */
  readonly load: number;
}

/**
 * Bags for `count` fish of `each` grams, none larger than `largest` litres, water and air together. The
 * number in a bag is rounded down, the water up to a tenth of a litre; null where one fish needs a larger bag.
 */
export function packingFor(
  count: number,
  each: number,
  alone: boolean,
  trip: { readonly hours: number; readonly celsius: number; readonly oxygen: boolean },
  largest: number,
): Packing | null {
  const { load } = bagFor(each, trip.hours, trip.celsius, trip.oxygen);
  const most = Math.floor((largest / WHOLE_TO_WATER) * (load / each) + 1e-9);
  if (most < 1) return null;
  const packs = alone ? count : Math.ceil(count / most);
  const fishInPack = Math.ceil(count / packs);
  const water = Math.max(LEAST_WATER, Math.ceil((fishInPack * each * 10) / load - 1e-9) / 10);
  const held = Math.min(water, Math.max(largest / WHOLE_TO_WATER, (fishInPack * each) / load));
  return { packs, fishInPack, water: held, air: (WHOLE_TO_WATER - 1) * held, load };
}
