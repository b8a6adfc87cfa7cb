/**
 * Every unit that the calculator converts, by kind, with its factor to the kind's base. Factors of NIST
 * SP 811 App. B are exact; those of hardness and nitrogen come from atomic weights (`chemistry.ts`).
 */
import { IMPERIAL_GALLON, US_GALLON } from '../core/units.ts';
import {
  CACO3_PER_CA,
  CACO3_PER_CLARK,
  CACO3_PER_DEGREE,
  CACO3_PER_GRAIN,
  CACO3_PER_HCO3,
  CACO3_PER_MEQ,
  CACO3_PER_MG,
  ION_PER_N,
} from './chemistry.ts';

export type Kind =
  | 'length'
  | 'volume'
  | 'mass'
  | 'temperature'
  | 'pressure'
  | 'flow'
  | 'hardness'
  | 'nitrogen'
  | 'concentration'
  | 'feed'
  | 'time'
  | 'share'
  | 'salinity'
  | 'conductivity';

export interface Scale {
  readonly kind: Kind;
  /** As it is printed. */
  readonly unit: string;
  readonly factor: number;
  /** Added after the factor: only temperatures start elsewhere. */
  readonly offset: number;
}

/** kind: base unit first; then `spelling, other spelling: factor`. */
const TABLE: readonly (readonly [Kind, string, number, number?])[] = [
  ['length', 'mm', 1],
  ['length', 'cm', 10],
  ['length', 'm', 1000],
  ['length', 'in|inch|inches', 25.4],
  ['length', 'ft|foot|feet', 304.8],
  ['volume', 'L|litre|litres|liter|liters', 1],
  ['volume', 'mL|ml', 0.001],
  ['volume', 'm3', 1000],
  ['volume', 'US gal|gallon US|usgal', US_GALLON],
  ['volume', 'imp gal|imperial gal|uk gal|impgal', IMPERIAL_GALLON],
  ['volume', 'US qt', US_GALLON / 4],
  ['volume', 'US pt', US_GALLON / 8],
  ['volume', 'US cup', US_GALLON / 16],
  ['volume', 'US fl oz', US_GALLON / 128],
  ['volume', 'imp pt', IMPERIAL_GALLON / 8],
  ['volume', 'imp fl oz', IMPERIAL_GALLON / 160],
  ['volume', 'tbsp', US_GALLON / 256],
  ['volume', 'tsp', US_GALLON / 768],
  ['volume', 'in3|cubic inch|cubic inches', 0.016387064],
  ['volume', 'ft3|cubic foot|cubic feet', 28.316846592],
  ['mass', 'g|gram|grams', 1],
  ['mass', 'mg', 0.001],
  ['mass', 'kg', 1000],
  ['mass', 'oz|ounce|ounces', 28.349523125],
  ['mass', 'lb|lbs|pound|pounds', 453.59237],
  ['mass', 'grain|grains', 0.06479891],
  ['temperature', 'C|degC|celsius', 1, 0],
  ['temperature', 'F|degF|fahrenheit', 1 / 1.8, -32 / 1.8],
  ['temperature', 'K|kelvin', 1, -273.15],
  ['pressure', 'mmHg|torr', 1],
  ['pressure', 'inHg', 25.4],
  ['pressure', 'Pa', 1 / 133.322387415],
  ['pressure', 'hPa|mbar', 100 / 133.322387415],
  ['pressure', 'kPa', 1000 / 133.322387415],
  ['pressure', 'atm', 101_325 / 133.322387415],
  ['pressure', 'psi', 6894.75729317 / 133.322387415],
  ['flow', 'L/day|L/d', 1],
  ['flow', 'L/h', 24],
  ['flow', 'L/min', 1440],
  ['flow', 'mL/min', 1.44],
  ['flow', 'US gph|gph US', 24 * US_GALLON],
  ['flow', 'imp gph', 24 * IMPERIAL_GALLON],
  ['hardness', 'dH|dGH|dKH|°dH|GH|KH', CACO3_PER_DEGREE],
  ['hardness', 'mg/L CaCO3|ppm CaCO3|mg/L as CaCO3|ppm as CaCO3', 1],
  ['hardness', 'meq/L', CACO3_PER_MEQ],
  ['hardness', 'mmol/L', 2 * CACO3_PER_MEQ],
  ['hardness', 'fH|°fH|dfH', 10],
  ['hardness', 'Clark|°Clark|dClark', CACO3_PER_CLARK],
  ['hardness', 'gpg', CACO3_PER_GRAIN],
  ['hardness', 'mg/L Ca|ppm Ca', CACO3_PER_CA],
  ['hardness', 'mg/L Mg|ppm Mg', CACO3_PER_MG],
  ['hardness', 'mg/L HCO3|ppm HCO3', CACO3_PER_HCO3],
  ['nitrogen', 'mg/L N|ppm N|mg/L TAN|ppm TAN|mg/L as N|mg/L NH3-N|mg/L NH4-N|mg/L NO2-N|mg/L NO3-N', 1],
  ['nitrogen', 'ppm NH3-N|ppm NH4-N|ppm NO2-N|ppm NO3-N', 1],
  ['nitrogen', 'mg/L NH3|ppm NH3', 1 / ION_PER_N.NH3],
  ['nitrogen', 'mg/L NH4|ppm NH4', 1 / ION_PER_N.NH4],
  ['nitrogen', 'mg/L NO2|ppm NO2', 1 / ION_PER_N.NO2],
  ['nitrogen', 'mg/L NO3|ppm NO3', 1 / ION_PER_N.NO3],
  ['concentration', 'mg/L|ppm', 1],
  ['concentration', 'ug/L|µg/L|ppb', 0.001],
  ['concentration', 'g/L', 1000],
  ['concentration', 'lb/US gal|lb/gal', 119_826.427316897],
  ['feed', 'g/day|g/d', 1],
  ['feed', 'mg/day|mg/d', 0.001],
  ['feed', 'kg/day|kg/d', 1000],
  ['time', 'days|day|d', 1],
  ['time', 'h|hours|hour|hr', 1 / 24],
  ['time', 'min|minutes', 1 / 1440],
  ['time', 'weeks|week|wk', 7],
  ['share', '%|percent', 0.01],
  ['salinity', 'ppt|psu', 1],
  ['conductivity', 'uS/cm|µS/cm|us', 1],
  ['conductivity', 'mS/cm', 1000],
];

/** Spellings are compared without case, blanks, degree signs and underscores. */
function plain(text: string): string {
  return text
    .normalize('NFC')
    .replace(/[\s_°º]/g, '')
    .replace(/[\u00b5\u03bc]/g, 'u')
    .replace(/[\u2082]/g, '2')
    .replace(/[\u2083]/g, '3')
    .replace(/[\u2084]/g, '4')
    .toLowerCase();
}

const BY_SPELLING: ReadonlyMap<string, Scale> = new Map(
  TABLE.flatMap(([kind, spellings, factor, offset = 0]) => {
    const names = spellings.split('|');
    return names.map((name): [string, Scale] => [plain(name), { kind, unit: names[0] ?? name, factor, offset }]);
  }),
);

/** The unit that a text spells, or null. `gal` alone is none: it has two sizes. */
export function scaleOf(text: string): Scale | null {
  return BY_SPELLING.get(plain(text)) ?? null;
}

/** Units of a kind, as they are printed. */
export function unitsOf(kind: Kind): readonly string[] {
  return [...new Set(TABLE.filter(([k]) => k === kind).map(([, names]) => names.split('|')[0] ?? ''))];
}

/** A value of a scale in the base unit of its kind. */
export function toBase(value: number, scale: Scale): number {
  // Fifteen figures: 35 × 0.01 must not come out as 0.35000000000000003.
  return Number((value * scale.factor + scale.offset).toPrecision(15));
}

/** A value in the base unit of its kind on a scale. */
export function fromBase(value: number, scale: Scale): number {
  return (value - scale.offset) / scale.factor;
}
