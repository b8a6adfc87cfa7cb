import { expect, test } from 'vitest';
import { AS_NITROGEN, CACO3_PER_DEGREE, convert, DEGREES_PER_MEQ } from '../../src/core/units.ts';
import { CACO3_PER_DEGREE as WORKED, ION_PER_N, MEQ_PER_DEGREE } from '../../src/science/chemistry.ts';

test('units that journals use have the factors of NIST SP 811', () => {
  expect(convert(1, 'in', 'mm')).toBe(25.4);
  expect(convert(1, 'ft', 'mm')).toBe(304.8);
  expect(convert(1, 'US gal', 'L')).toBe(3.785411784);
  expect(convert(1, 'imp gal', 'L')).toBe(4.54609);
  expect(convert(1, 'lb', 'g')).toBe(453.59237);
  expect(convert(78, 'F', 'C')).toBeCloseTo(25.5556, 4);
  expect(convert(-40, 'F', 'C')).toBeCloseTo(-40, 10);
  expect(convert(5, 'kg', 'L')).toBeNull();
});

test('the short factors agree with those worked out from atomic weights', () => {
  expect(CACO3_PER_DEGREE).toBeCloseTo(WORKED, 5);
  expect(DEGREES_PER_MEQ).toBeCloseTo(1 / MEQ_PER_DEGREE, 4);
  expect(AS_NITROGEN.no3).toBeCloseTo(1 / ION_PER_N.NO3, 6);
  expect(AS_NITROGEN.tan).toBeCloseTo(1 / ION_PER_N.NH3, 6);
});
