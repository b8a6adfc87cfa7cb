/**
 * Hardness, alkalinity, nitrogen and what to weigh out to change them. Stoichiometry with the abridged
 * standard atomic weights of IUPAC/CIAAW 2021 (from memory; compared with two element tables, within 7e-5).
 */

const H = 1.008;
const C = 12.011;
const N = 14.007;
const O = 15.999;
const NA = 22.99;
const MG = 24.305;
const S = 32.06;
const CL = 35.45;
const CA = 40.078;

const WATER = 2 * H + O;
/** g/mol of calcium carbonate and oxide, in which hardness is counted. */
const CACO3 = CA + C + 3 * O;
const CAO = CA + O;

/** mg/L CaCO3 in one German degree: 10 mg/L of CaO. */
export const CACO3_PER_DEGREE = (10 * CACO3) / CAO;
/** mg/L CaCO3 in one meq/L. */
export const CACO3_PER_MEQ = CACO3 / 2;
/** meq/L in one German degree. */
export const MEQ_PER_DEGREE = CACO3_PER_DEGREE / CACO3_PER_MEQ;
/** mg/L CaCO3 in one English (Clark) degree: one grain per imperial gallon. */
export const CACO3_PER_CLARK = 64.79891 / 4.54609;
/** mg/L CaCO3 in one grain per US gallon. */
export const CACO3_PER_GRAIN = 64.79891 / 3.785411784;
/** mg/L CaCO3 for each mg/L of calcium, magnesium and hydrogen carbonate. */
export const CACO3_PER_CA = CACO3 / CA;
export const CACO3_PER_MG = CACO3 / MG;
export const CACO3_PER_HCO3 = CACO3_PER_MEQ / (H + C + 3 * O);

/** mg of each form for one mg of the nitrogen in it. */
export const ION_PER_N = { NH3: (N + 3 * H) / N, NH4: (N + 4 * H) / N, NO2: (N + 2 * O) / N, NO3: (N + 3 * O) / N };

/** Hardness, mg/L as CaCO3, of a water with so many mg/L of calcium and magnesium. */
export function hardness(calcium: number, magnesium: number): number {
  return calcium * CACO3_PER_CA + magnesium * CACO3_PER_MG;
}

/** What can be weighed out: molar mass, and the charge that counts for alkalinity (KH) and hardness (GH). */
interface Compound {
  readonly mass: number;
  readonly kh: number;
  readonly gh: number;
}

export const COMPOUNDS = {
  NaHCO3: { mass: NA + H + C + 3 * O, kh: 1, gh: 0 },
  Na2CO3: { mass: 2 * NA + C + 3 * O, kh: 2, gh: 0 },
  CaCO3: { mass: CACO3, kh: 2, gh: 2 },
  CaCl2: { mass: CA + 2 * CL, kh: 0, gh: 2 },
  'CaCl2.2H2O': { mass: CA + 2 * CL + 2 * WATER, kh: 0, gh: 2 },
  MgSO4: { mass: MG + S + 4 * O, kh: 0, gh: 2 },
  'MgSO4.7H2O': { mass: MG + S + 4 * O + 7 * WATER, kh: 0, gh: 2 },
  'CaSO4.2H2O': { mass: CA + S + 4 * O + 2 * WATER, kh: 0, gh: 2 },
} as const satisfies Record<string, Compound>;

export type CompoundName = keyof typeof COMPOUNDS;

/**
 * Grams that raise KH or GH by `degrees` (German) in `litres`: Δ(meq/L) · V · M / (1000 · z), over the
 * purity (0 to 1). Null where that compound does not raise it. Dose the new water or the live volume, never the nominal one.
 */
export function gramsToRaise(
  compound: CompoundName,
  what: 'kh' | 'gh',
  degrees: number,
  litres: number,
  purity = 1,
): number | null {
  const { mass, [what]: charge } = COMPOUNDS[compound];
  if (charge === 0 || purity <= 0) return null;
  return (degrees * MEQ_PER_DEGREE * litres * mass) / (1000 * charge) / purity;
}

/** Degrees (German) that `grams` of a compound add to `litres`. */
export function degreesFrom(compound: CompoundName, what: 'kh' | 'gh', grams: number, litres: number): number {
  const { mass, [what]: charge } = COMPOUNDS[compound];
  return (grams * 1000 * charge) / (mass * MEQ_PER_DEGREE * litres);
}

/** German degrees a day that a change of KH or GH is spread over (common practice, no source: 1 to 2). */
export const DEGREES_A_DAY = { low: 1, high: 2 };

/**
 * Total ammonia, grams as N a day, that fish make of `grams` of feed with `protein` (0 to 1):
 * feed · protein · 0.092. Timmons & Ebeling, Recirculating Aquaculture; Ebeling, Timmons & Bisogni 2006, Aquaculture 257:346.
 */
export function ammoniaFromFeed(grams: number, protein: number): number {
  return grams * protein * 0.092;
}

/** What oxidising one gram of ammonia nitrogen to nitrate takes, NH4+ + 2 O2 → NO3− + 2 H+ + H2O, growth left out. */
export const PER_GRAM_NITRIFIED = {
  /** g of oxygen. */
  oxygen: (4 * O) / N,
  /** g of alkalinity as CaCO3. */
  alkalinity: (2 * CACO3_PER_MEQ) / N,
  /** g of sodium hydrogen carbonate that makes it good. */
  bicarbonate: (2 * COMPOUNDS.NaHCO3.mass) / N,
};
