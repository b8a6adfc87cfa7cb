import { describe, expect, test } from 'vitest';
import { chiSquare, normal, shareOf, studentT } from '../../src/core/distributions.ts';

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
