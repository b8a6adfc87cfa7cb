/**
 * Water changes as dilution of a mixed tank. Concentrations in any one unit; fractions 0 to 1.
 * Mass balance; the flush form after Steffensen 1989 as CRAN respirometry's flush_water has it.
 */

/** Concentration after `times` equal changes of `fraction` with water of `source`. */
export function afterChanges(from: number, source: number, fraction: number, times = 1): number {
  return source + (from - source) * (1 - fraction) ** times;
}

/**
 * Fraction of each of `times` equal changes that brings `from` to `target`; null where no change can
 * (the target is not between the source water and what is there).
 */
export function changeNeeded(from: number, target: number, source: number, times = 1): number | null {
  if (from === target) return 0;
  const left = (target - source) / (from - source);
  if (!Number.isFinite(left) || left <= 0 || left > 1) return null;
  return 1 - left ** (1 / times);
}

/** Peak and trough that regular changes settle at, when the value rises by `rise` between two changes. */
export function steadyState(source: number, rise: number, fraction: number): { peak: number; trough: number } {
  return { peak: source + rise / fraction, trough: source + (rise * (1 - fraction)) / fraction };
}

/**
 * Concentration after `days` of a steady drip of `flow` L/day through `volume` L, with `produced` mg/day
 * made in the tank: s + P/Q + (C0 − s − P/Q) e^(−Qt/V).
 */
export function afterDrip(
  from: number,
  source: number,
  flow: number,
  days: number,
  volume: number,
  produced = 0,
): number {
  const steady = source + (flow === 0 ? 0 : produced / flow);
  if (flow === 0) return from + (produced * days) / volume;
  return steady + (from - steady) * Math.exp((-flow * days) / volume);
}
