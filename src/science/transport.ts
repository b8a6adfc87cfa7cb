/**
 * Bags for an auction. Loads are ours and far below published ones: those are for oxygen-packed farm
 * fish in cool water (Dupree & Huner 1984), limits that no warm-water ornamental in a bag of air should meet.
 */

/** Grams of fish a litre of water for a day at 25 °C, bag closed on air or on oxygen (ours: a setting). */
export const LOAD = { air: 5, oxygen: 10 };
/** A bag is packed for at least a day, however short the way (common practice, no source). */
export const DAY_HOURS = 24;
const LOAD_TEMPERATURE = 25;

/**
 * Load that a bag may carry, and the water and whole volume for `grams` of fish, litres. Metabolism
 * doubles with 10 °C (University of Missouri Extension MX392); cooler water does not allow more than at 25 °C.
 */
export function bagFor(
  grams: number,
  hours: number,
  celsius: number,
  oxygen: boolean,
): { load: number; water: number; whole: number } {
  const warm = 2 ** (Math.max(0, celsius - LOAD_TEMPERATURE) / 10);
  const long = Math.max(DAY_HOURS, hours) / DAY_HOURS;
  const load = (oxygen ? LOAD.oxygen : LOAD.air) / warm / long;
  const water = grams / load;
  return { load, water, whole: 3 * water };
}
