import { describe, expect, test } from 'vitest';
import { measure } from '../../src/core/quantity.ts';
import { pKa, pKaAtSalinity, toxicAmmonia, unionisedShare } from '../../src/science/ammonia.ts';

describe('the un-ionised share of ammonia', () => {
  // Source: UF/IFAS FA-16 table ("calculated from Emerson et al. 1975"), Francis-Floyd et al.
  test.each([
    [7.0, 26, 0.006],
    [7.2, 22, 0.0072],
    [7.4, 24, 0.0131],
    [7.6, 28, 0.0271],
    [7.8, 26, 0.037],
    [8.0, 20, 0.0381],
    [8.0, 24, 0.0502],
    [8.2, 30, 0.1129],
    [8.4, 26, 0.1326],
    [8.6, 22, 0.1541],
  ])('at pH %s and %s °C is %s as printed', (ph, celsius, printed) => {
    expect(Math.abs(unionisedShare(ph, celsius) - printed)).toBeLessThan(5.1e-5);
  });

  test('follows the published equation to its digits', () => {
    // Source: Emerson et al. 1975, J. Fish. Res. Board Can. 32:2379; values computed twice from the equation.
    expect(pKa(25)).toBeCloseTo(9.246377, 6);
    expect(unionisedShare(8, 25)).toBeCloseTo(0.053662, 6);
    expect(unionisedShare(7, 25)).toBeCloseTo(0.005639, 6);
    expect(unionisedShare(pKa(25), 25)).toBeCloseTo(0.5, 12);
  });

  test.each([
    [7.5, 25, 1.39],
    [8.0, 25, 4.28],
    [8.0, 20, 2.98],
    [8.2, 25, 6.61],
    [8.4, 20, 7.17],
    [8.3, 25, 8.18],
  ])('in sea water at pH %s and %s °C is %s %%', (ph, celsius, printed) => {
    // Source: Bower & Bidwell 1978, J. Fish. Res. Board Can. 35:1012, S = 34 (test-kit manual table), within 1.5 %.
    expect(Math.abs((100 * unionisedShare(ph, celsius, 34)) / printed - 1)).toBeLessThan(0.015);
  });

  test('is the fresh-water share at no salinity', () => {
    expect(pKaAtSalinity(25, 0)).toBe(pKa(25));
  });
});

describe('toxic ammonia', () => {
  test('of a full reading is one number', () => {
    // Source: UF/IFAS FA-16 worked example: TAN 1.0 mg/L, 24 °C, pH 8.0 gives 0.0502 mg/L.
    const toxic = toxicAmmonia(measure('mg/L', 1), measure('pH', 8), measure('C', 24));
    expect(toxic.low).toBeCloseTo(0.0502, 4);
    expect(toxic.high).toBe(toxic.low);
  });

  test('without pH or temperature is a range with no likely value', () => {
    // Trap: a verdict without pH and temperature.
    const toxic = toxicAmmonia(measure('mg/L', 0.5), null, null);
    expect(toxic.likely).toBeNull();
    expect(toxic.low).toBeLessThan(0.0005);
    expect(toxic.high).toBeGreaterThan(0.08);
  });
});
