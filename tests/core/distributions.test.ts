import { describe, expect, test } from 'vitest';
import { chiSquare, normal, poissonLimits, shareOf, studentT } from '../../src/core/distributions.ts';

test('quantiles of t, chi-square and the normal', () => {
  // Source: R qt, qchisq, qnorm.
  const t975 = { 1: 12.706205, 2: 4.302653, 4: 2.776445, 5: 2.570582, 8: 2.306004, 10: 2.228139, 30: 2.042272 };
  for (const [df, value] of Object.entries(t975)) expect(studentT(0.975, Number(df))).toBeCloseTo(value, 5);
  expect(chiSquare(0.025, 2)).toBeCloseTo(0.050636, 6);
  expect(chiSquare(0.975, 10)).toBeCloseTo(20.483177, 5);
  expect(normal(0.975)).toBeCloseTo(1.95996398454, 9);
});

describe('the Wilson interval of a share', () => {
  // Source: Newcombe 1998, Stat. Med. 17:857; SciPy and R prop.test.
  test.each([
    [81, 263, 0.2552885, 0.3662096],
    [15, 148, 0.0623864, 0.1604872],
    [0, 20, 0, 0.1611252],
    [3, 10, 0.1077913, 0.6032219],
    [10, 10, 0.7224672, 1],
    [38, 40, 0.8349612, 0.9861793],
    [1, 100, 0.0017674, 0.0544862],
  ])('of %s in %s', (k, n, low, high) => {
    expect(shareOf(k, n).low).toBeCloseTo(low, 6);
    expect(shareOf(k, n).high).toBeCloseTo(high, 6);
  });

  test('is exactly nothing where nothing was seen', () => {
    expect(shareOf(0, 10).low).toBe(0);
    expect(shareOf(0, 0)).toEqual({ low: 0, likely: 0.5, high: 1 });
  });
});

describe('exact Poisson limits of a count', () => {
  // Source: Garwood 1936; values by R poisson.test and statsmodels.
  test.each([
    [0, 0, 3.688879],
    [1, 0.025318, 5.571643],
    [3, 0.618672, 8.767273],
    [5, 1.623486, 11.668332],
    [10, 4.795389, 18.390356],
    [20, 12.21652, 30.888378],
    [50, 37.110964, 65.918767],
    [137, 115.020534, 161.956405],
  ])('%s seen', (count, low, high) => {
    expect(poissonLimits(count).low).toBeCloseTo(low, 5);
    expect(poissonLimits(count).high).toBeCloseTo(high, 5);
  });

  test('at other levels, and as a rate', () => {
    expect(poissonLimits(10, 0.9).low).toBeCloseTo(5.425406, 5);
    expect(poissonLimits(10, 0.9).high).toBeCloseTo(16.962219, 5);
    expect(poissonLimits(5, 0.99).high).toBeCloseTo(14.149759, 5);
    // R's own example: 137 in 24.19893.
    expect(poissonLimits(137).low / 24.19893).toBeCloseTo(4.753125, 5);
  });

  test('is two-sided and exactly nothing below where nothing was seen', () => {
    expect(poissonLimits(0).low).toBe(0);
    expect(poissonLimits(0).high).toBeGreaterThan(3.6);
  });
});
