import { describe, expect, test } from 'vitest';
import { mad, median, normalAt, normalBelow } from '../../src/core/stats.ts';

describe('the standard normal', () => {
  // Source: R pnorm and qnorm; the quantiles also stand in every printed table.
  test.each([
    [1.64485362695, 0.95],
    [1.95996398454, 0.975],
    [2.57582930355, 0.995],
    [0, 0.5],
    [-1.95996398454, 0.025],
  ])('below %s lies %s, and back', (z, share) => {
    expect(normalBelow(z)).toBeCloseTo(share, 6);
    expect(Math.abs(normalAt(share) - z)).toBeLessThan(1e-5);
  });
});

test('the middle, and how far from it', () => {
  // Source: NIST/SEMATECH e-Handbook 7.2.6.2, gage data: the 50th percentile is 95.1579.
  const gage = [
    95.1772, 95.1567, 95.1937, 95.1959, 95.1442, 95.061, 95.1591, 95.1195, 95.1065, 95.0925, 95.199, 95.1682,
  ];
  expect(median(gage)).toBeCloseTo(95.1579, 9);
  expect(median([15, 20, 35, 40, 50])).toBe(35);
  expect(median([])).toBeNull();
  // Worked: about 35 the deviations are 20, 15, 0, 5, 15.
  expect(mad([15, 20, 35, 40, 50])).toBe(15);
  expect(mad([7])).toBe(0);
  expect(mad([])).toBeNull();
});
