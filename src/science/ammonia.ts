/**
 * Toxic (un-ionised) ammonia out of total ammonia. Everything as mg/L of nitrogen; warmer and more
 * alkaline water makes more of it toxic. Where pH or temperature is not known the answer is a range.
 */
import { clamp, type Interval } from '../core/interval.ts';
import type { Measure } from '../core/quantity.ts';
import { measure } from '../core/quantity.ts';

/** mg/L as N from which toxic ammonia may harm, harms, and kills (UF/IFAS FA-16, "Ammonia in Aquatic Systems"). */
export const AMMONIA_MARKS = { watch: 0.02, harms: 0.05, kills: 2 };

/** What pH and °C are taken to span in a fresh-water fish room where nobody measured (ours: a default). */
export const USUAL_PH: Measure<'pH'> = measure('pH', 6, null, 8.5);
export const USUAL_WATER: Measure<'C'> = measure('C', 22, null, 30);

/**
 * pKa of ammonium in fresh water at `celsius` (0–50 °C).
 * pKa = 0.09018 + 2729.92 / T. Emerson, Russo, Lund & Thurston 1975, J. Fish. Res. Board Can. 32:2379.
 */
export function pKa(celsius: number): number {
  return 0.09018 + 2729.92 / (273.15 + celsius);
}

/**
 * pKa in brackish and sea water, `salinity` in ppt (5–35), by ionic strength:
 * pKa + (0.1552 − 0.0003142 t) · I, I = 19.924 S / (1000 − 1.005 S). Florida DEP procedure after Whitfield 1974.
 */
export function pKaAtSalinity(celsius: number, salinity: number): number {
  const ionicStrength = (19.924 * salinity) / (1000 - 1.005 * salinity);
  return pKa(celsius) + (0.1552 - 0.0003142 * celsius) * ionicStrength;
}

/** Share (0 to 1) of total ammonia that is un-ionised. */
export function unionisedShare(ph: number, celsius: number, salinity = 0): number {
  return 1 / (1 + 10 ** (pKaAtSalinity(celsius, salinity) - ph));
}

/** Toxic ammonia, mg/L as N, with the range that unknown pH, temperature or a kit's colour step leave. */
export function toxicAmmonia(
  tan: Measure<'mg/L'>,
  ph: Measure<'pH'> | null,
  temperature: Measure<'C'> | null,
  salinity = 0,
): Measure<'mg/L'> {
  const alkalinity: Interval = ph ?? USUAL_PH;
  const warmth: Interval = temperature ?? USUAL_WATER;
  const low = tan.low * unionisedShare(alkalinity.low, warmth.low, salinity);
  const high = tan.high * unionisedShare(alkalinity.high, warmth.high, salinity);
  const known = tan.likely !== null && alkalinity.likely !== null && warmth.likely !== null;
  const likely = known
    ? clamp((tan.likely ?? 0) * unionisedShare(alkalinity.likely ?? 7, warmth.likely ?? 26, salinity), low, high)
    : null;
  return measure('mg/L', low, likely, high);
}
