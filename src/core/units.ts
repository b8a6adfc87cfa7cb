/**
 * Units that a journal may use, each with its factor to the unit that everything inside uses.
 * Factors are exact by definition where a definition exists: the international inch and pound, the
 * US gallon (231 cubic inches) and the imperial gallon (4.54609 L), as NIST SP 811 appendix B gives them.
 */
import type { Unit } from './quantity.ts';

/** A unit as the reader has understood it; `gal` alone is none of these, since two gallons are in use. */
export type UnitName =
  | 'mm'
  | 'cm'
  | 'm'
  | 'in'
  | 'ft'
  | 'L'
  | 'mL'
  | 'US gal'
  | 'imp gal'
  | 'L/h'
  | 'US gph'
  | 'imp gph'
  | 'C'
  | 'F'
  | 'mg/L'
  | 'ppm'
  | 'g/L'
  | 'mL/L'
  | 'ppt'
  | 'dH'
  | 'mg/L CaCO3'
  | 'meq/L'
  | 'uS/cm'
  | 'mS/cm'
  | 'mg'
  | 'g'
  | 'kg'
  | 'oz'
  | 'lb'
  | '%'
  | 'minutes'
  | 'hours'
  | 'days'
  | 'weeks'
  | 'months';

interface Factor {
  readonly to: Unit;
  readonly times: number;
  /** Added before the factor: degrees Fahrenheit start elsewhere. */
  readonly plus?: number;
}

/** Litres of a US and of an imperial gallon, exact. */
export const US_GALLON = 3.785411784;
export const IMPERIAL_GALLON = 4.54609;
/**
 * mg/L CaCO3 in one German degree (10 mg/L CaO), and German degrees in 1 meq/L. From atomic weights:
 * IUPAC/CIAAW abridged standard values 2021 (from memory, CaCO3 100.086, CaO 56.077 g/mol).
 */
export const CACO3_PER_DEGREE = 17.847959;
export const DEGREES_PER_MEQ = 2.80385;

const FACTORS: Readonly<Record<UnitName, Factor>> = {
  mm: { to: 'mm', times: 1 },
  cm: { to: 'mm', times: 10 },
  m: { to: 'mm', times: 1000 },
  in: { to: 'mm', times: 25.4 },
  ft: { to: 'mm', times: 304.8 },
  L: { to: 'L', times: 1 },
  mL: { to: 'L', times: 0.001 },
  'US gal': { to: 'L', times: US_GALLON },
  'imp gal': { to: 'L', times: IMPERIAL_GALLON },
  'L/h': { to: 'L/h', times: 1 },
  'US gph': { to: 'L/h', times: US_GALLON },
  'imp gph': { to: 'L/h', times: IMPERIAL_GALLON },
  C: { to: 'C', times: 1 },
  F: { to: 'C', times: 1 / 1.8, plus: -32 },
  'mg/L': { to: 'mg/L', times: 1 },
  // In water as dilute as a tank's a part per million is a milligram in a litre.
  ppm: { to: 'mg/L', times: 1 },
  'g/L': { to: 'g/L', times: 1 },
  'mL/L': { to: 'mL/L', times: 1 },
  ppt: { to: 'ppt', times: 1 },
  dH: { to: 'dH', times: 1 },
  'mg/L CaCO3': { to: 'dH', times: 1 / CACO3_PER_DEGREE },
  'meq/L': { to: 'dH', times: DEGREES_PER_MEQ },
  'uS/cm': { to: 'uS/cm', times: 1 },
  'mS/cm': { to: 'uS/cm', times: 1000 },
  mg: { to: 'g', times: 0.001 },
  g: { to: 'g', times: 1 },
  kg: { to: 'g', times: 1000 },
  oz: { to: 'g', times: 28.349523125 },
  lb: { to: 'g', times: 453.59237 },
  '%': { to: 'share', times: 0.01 },
  minutes: { to: 'minutes', times: 1 },
  hours: { to: 'minutes', times: 60 },
  days: { to: 'days', times: 1 },
  weeks: { to: 'days', times: 7 },
  // A twelfth of the mean Gregorian year of 365.2425 days.
  months: { to: 'days', times: 365.2425 / 12 },
};

/** Pairs of canonical units that are the same thing in another size. */
const RESIZED: Readonly<Partial<Record<Unit, Readonly<Partial<Record<Unit, number>>>>>> = {
  L: { mL: 1000 },
  minutes: { days: 1 / 1440 },
  days: { minutes: 1440 },
  ppt: { 'g/L': 1 },
  'g/L': { ppt: 1, 'mg/L': 1000 },
  'mg/L': { 'g/L': 0.001 },
};

/** The canonical unit that a unit measures in. */
export function canonicalUnit(unit: UnitName): Unit {
  return FACTORS[unit].to;
}

/** A value in `unit` as one in canonical `to`, or null where the two measure different things. */
export function convert(value: number, unit: UnitName, to: Unit): number | null {
  const factor = FACTORS[unit];
  // 12.7 / 1000 must not come out as 0.012699999999999998.
  const canonical = neat((value + (factor.plus ?? 0)) * factor.times);
  if (factor.to === to) return canonical;
  const again = RESIZED[factor.to]?.[to];
  return again === undefined ? null : neat(canonical * again);
}

/** mg/L as N in 1 mg/L of the ion (of NH3 for total ammonia): atomic weights as above. */
export const AS_NITROGEN = { tan: 1 / 1.215892, no2: 1 / 3.284429, no3: 1 / 4.426644 } as const;

/** A number without the noise that binary fractions leave in its last digits. */
export function neat(value: number): number {
  // Nearly all that is written, and exact already; minus nought becomes nought.
  if (Number.isSafeInteger(value) && Math.abs(value) < 1e13) return value + 0;
  return Number(value.toPrecision(13));
}
