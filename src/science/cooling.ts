/** How fast water cools when the power is away: Newton's law of cooling, T = Ta + (T0 − Ta) e^(−kt). */

/**
 * k per hour, from a water that went from `from` to `to` °C in `hours` in air of `air` °C; null where
 * that cannot be (no time went by, it did not move towards the air, or went past it).
 */
export function coolingRate(from: number, to: number, hours: number, air: number): number | null {
  const left = (to - air) / (from - air);
  return hours > 0 && left > 0 && left < 1 ? -Math.log(left) / hours : null;
}

/** °C after so many hours. */
export function cooledTo(from: number, air: number, rate: number, hours: number): number {
  return air + (from - air) * Math.exp(-rate * hours);
}

/** Hours until the water stands at `to`; 0 where it does already, null where the air never brings it there. */
export function hoursToCool(from: number, to: number, air: number, rate: number): number | null {
  if (from <= to) return 0;
  if (air >= to || rate <= 0) return null;
  return -Math.log((to - air) / (from - air)) / rate;
}
