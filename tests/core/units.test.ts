import { describe, expect, test } from 'vitest';
import { AS_NITROGEN, CACO3_PER_DEGREE, convert, DEGREES_PER_MEQ } from '../../src/core/units.ts';
import { CACO3_PER_DEGREE as WORKED, ION_PER_N, MEQ_PER_DEGREE } from '../../src/science/chemistry.ts';

describe('units', () => {
  // Source: NIST SP 811 appendix B and NIST Handbook 44 appendix C; GNU units 2.22 prints the same figures.
  test.each([
    [1, 'US gal', 'L', 3.785411784],
    [1, 'imp gal', 'L', 4.54609],
    [1, 'in', 'mm', 25.4],
    [1, 'ft', 'mm', 304.8],
    [1, 'lb', 'g', 453.59237],
    [1, 'oz', 'g', 28.349523125],
    [32, 'F', 'C', 0],
    [-40, 'F', 'C', -40],
    [77, 'F', 'C', 25],
    [81.5, 'F', 'C', 27.5],
  ] as const)('%d %s is %s %d', (value, unit, to, expected) => {
    expect(convert(value, unit, to)).toBeCloseTo(expected, 9);
  });

  test.each([
    [78, 25.5556],
    [76, 24.4444],
  ])('%d F is %d C', (value, expected) => {
    // Source: as above, to the four decimals of the table.
    expect(convert(value, 'F', 'C')).toBeCloseTo(expected, 4);
  });

  test('hardness and alkalinity in German degrees', () => {
    // Source: 10 mg/L CaO is one German degree; factors from CIAAW 2021 atomic weights, agreed to 3e-4.
    expect(convert(17.847959, 'mg/L CaCO3', 'dH')).toBeCloseTo(1, 6);
    expect(convert(1, 'meq/L', 'dH')).toBeCloseTo(2.80385, 5);
    expect(convert(286.87, 'mg/L CaCO3', 'dH')).toBeCloseTo(16.073, 2);
  });

  test('nitrogen species as N', () => {
    // Source: NO3-N to NO3 is 4.427 (Hach, via checks of CIAAW weights); 20 mg/L NO3 is 4.5181 mg/L as N.
    expect(20 * AS_NITROGEN.no3).toBeCloseTo(4.5181, 4);
    expect(1 / AS_NITROGEN.no2).toBeCloseTo(3.284429, 6);
    // NH3 over N: 17.031/14.007.
    expect(1 / AS_NITROGEN.tan).toBeCloseTo(17.031 / 14.007, 4);
  });

  test('what measures something else cannot be converted', () => {
    expect(convert(1, 'L', 'mm')).toBeNull();
    expect(convert(1, 'C', 'dH')).toBeNull();
  });

  test('one quantity in another size', () => {
    expect(convert(12, 'hours', 'days')).toBe(0.5);
    expect(convert(2, 'days', 'minutes')).toBe(2880);
    expect(convert(0.5, 'L', 'mL')).toBe(500);
    expect(convert(2, 'weeks', 'days')).toBe(14);
    // A twelfth of the mean Gregorian year.
    expect(convert(12, 'months', 'days')).toBeCloseTo(365.2425, 9);
  });
});

test('the short factors agree with those worked out from atomic weights', () => {
  expect(CACO3_PER_DEGREE).toBeCloseTo(WORKED, 5);
  expect(DEGREES_PER_MEQ).toBeCloseTo(1 / MEQ_PER_DEGREE, 4);
  expect(AS_NITROGEN.no3).toBeCloseTo(1 / ION_PER_N.NO3, 6);
  expect(AS_NITROGEN.tan).toBeCloseTo(1 / ION_PER_N.NH3, 6);
});
