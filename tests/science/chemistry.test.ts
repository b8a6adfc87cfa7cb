import { describe, expect, test } from 'vitest';
import {
  ammoniaFromFeed,
  CACO3_PER_CLARK,
  CACO3_PER_DEGREE,
  CACO3_PER_GRAIN,
  CACO3_PER_HCO3,
  CACO3_PER_MEQ,
  COMPOUNDS,
  degreesFrom,
  gramsToRaise,
  hardness,
  ION_PER_N,
  MEQ_PER_DEGREE,
  PER_GRAM_NITRIFIED,
} from '../../src/science/chemistry.ts';

/** Relative error. */
const off = (value: number | null, expected: number): number => Math.abs((value ?? NaN) / expected - 1);

describe('hardness and alkalinity', () => {
  // Sources: degree definitions (10 mg/L CaO; grain per imperial and US gallon), CIAAW 2021 weights; the
  // CaCO3-equivalent factors agree with Aqua-Chem's "CaCO3 equivalents" table to its two figures.
  test.each([
    ['mg/L CaCO3 a degree', CACO3_PER_DEGREE, 17.847959],
    ['meq/L a degree', MEQ_PER_DEGREE, 0.3566525],
    ['mg/L CaCO3 a meq/L', CACO3_PER_MEQ, 50.043],
    ['degrees a meq/L', 1 / MEQ_PER_DEGREE, 2.80385],
    ['Clark degrees a degree', CACO3_PER_DEGREE / CACO3_PER_CLARK, 1.252157],
    ['US grains a degree', CACO3_PER_DEGREE / CACO3_PER_GRAIN, 1.042639],
    ['mg/L CaCO3 a mg/L HCO3', CACO3_PER_HCO3, 0.820162],
    ['72 mg/L Ca and 26 mg/L Mg', hardness(72, 26), 286.87],
    ['70 mg/L Mg', hardness(0, 70), 288.25],
    ['a degree as calcium', hardness(7.14696, 0), 17.847959],
    ['a degree as magnesium', hardness(0, 4.33422), 17.847959],
    ['72 mg/L Ca and 26 mg/L Mg in degrees', hardness(72, 26) / CACO3_PER_DEGREE, 16.073],
    ['mmol/L a degree', MEQ_PER_DEGREE / 2, 0.1783262],
    ['French degrees a degree', CACO3_PER_DEGREE / 10, 1.784796],
  ])('%s', (_name, value, expected) => {
    expect(off(value, expected)).toBeLessThan(3e-4);
  });

  test('Clark degrees and grains are exact', () => {
    // Source: NIST Handbook 44 App. C factors for the grain and both gallons.
    expect(off(CACO3_PER_CLARK, 14.253768)).toBeLessThan(1e-6);
    expect(off(CACO3_PER_GRAIN, 17.118061)).toBeLessThan(1e-6);
  });
});

describe('dosing', () => {
  // Source: stoichiometry with CIAAW weights, g per 100 L per degree, computed by two routes.
  test.each([
    ['NaHCO3', 'kh', 2.9961],
    ['Na2CO3', 'kh', 1.89],
    ['CaCO3', 'kh', 1.7848],
    ['CaCl2', 'gh', 1.979],
    ['CaCl2.2H2O', 'gh', 2.6215],
    ['MgSO4', 'gh', 2.1464],
    ['MgSO4.7H2O', 'gh', 4.3951],
    ['CaSO4.2H2O', 'gh', 3.0701],
  ] as const)('%s raises %s by a degree in 100 L with %s g', (compound, what, grams) => {
    expect(off(gramsToRaise(compound, what, 1, 100), grams)).toBeLessThan(5e-4);
    expect(degreesFrom(compound, what, grams, 100)).toBeCloseTo(1, 3);
  });

  test('worked examples', () => {
    expect(off(gramsToRaise('NaHCO3', 'kh', 4, 180), 21.572)).toBeLessThan(5e-4);
    expect(off(gramsToRaise('CaCl2.2H2O', 'gh', 1.5, 200), 7.865)).toBeLessThan(5e-4);
    expect(off(gramsToRaise('MgSO4.7H2O', 'gh', 1.5, 200), 13.185)).toBeLessThan(5e-4);
  });

  test('refuses a compound that does not raise it', () => {
    expect(gramsToRaise('CaCl2', 'kh', 1, 100)).toBeNull();
    expect(gramsToRaise('NaHCO3', 'gh', 1, 100)).toBeNull();
    expect(COMPOUNDS.NaHCO3.mass).toBeCloseTo(84.006, 3);
  });
});

describe('nitrogen', () => {
  test('as its ions', () => {
    // Source: molar masses; Hach TE387 prints 4.427 for nitrate.
    expect(off(ION_PER_N.NH3, 1.215892)).toBeLessThan(3e-4);
    expect(off(ION_PER_N.NH4, 1.287856)).toBeLessThan(3e-4);
    expect(off(ION_PER_N.NO2, 3.284429)).toBeLessThan(3e-4);
    expect(off(ION_PER_N.NO3, 4.426644)).toBeLessThan(3e-4);
    expect(off(20 / ION_PER_N.NO3, 4.5181)).toBeLessThan(3e-4);
  });

  test('from feed', () => {
    // Source: Timmons & Ebeling; Ebeling, Timmons & Bisogni 2006, Aquaculture 257:346, Eq. 1.
    expect(ammoniaFromFeed(100, 0.35)).toBeCloseTo(3.22, 9);
    expect(ammoniaFromFeed(1000, 0.32)).toBeCloseTo(29.44, 9);
    expect(ammoniaFromFeed(50, 0.48)).toBeCloseTo(2.208, 9);
  });

  test('nitrified takes oxygen and alkalinity', () => {
    // Source: US EPA 1975: 4.57 g oxygen and 7.14 g alkalinity a gram, growth left out.
    expect(off(PER_GRAM_NITRIFIED.oxygen, 4.5689)).toBeLessThan(2e-3);
    expect(off(PER_GRAM_NITRIFIED.alkalinity, 7.1454)).toBeLessThan(2e-3);
    expect(off(PER_GRAM_NITRIFIED.bicarbonate, 11.995)).toBeLessThan(2e-3);
    // 1 g in 100 L: KH falls by 4.0035 degrees; 10 g of feed a day at 45 % eats 4.9659 g of bicarbonate.
    expect(off((PER_GRAM_NITRIFIED.alkalinity * 10) / CACO3_PER_DEGREE, 4.0035)).toBeLessThan(2e-3);
    expect(off(ammoniaFromFeed(10, 0.45) * PER_GRAM_NITRIFIED.bicarbonate, 4.9659)).toBeLessThan(2e-3);
    expect(off((ammoniaFromFeed(10, 0.45) * 1000 * ION_PER_N.NO3) / 200, 9.1632)).toBeLessThan(2e-3);
  });
});
