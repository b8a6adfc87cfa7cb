import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import {
  ageAtSize,
  bandAt,
  growthLine,
  meanFromExtreme,
  shareAtLeast,
  topOf,
  usualRates,
} from '../../src/science/growth.ts';
import { fitCurve } from '../../src/science/fit.ts';
import type { GrowthPrior, MeanReading } from '../../src/science/growth.ts';

/** Cave spawners: 5 mm at 9.5 days, 25 mm at 3 to 5 months (common practice, no source). */
const usual: GrowthPrior = {
  startAge: { low: 6.5, likely: 9.5, high: 12 },
  startSize: { low: 4, likely: 5, high: 6 },
  laterAge: { low: 91, likely: 122, high: 152 },
  laterSize: 25,
  grown: 75,
};
/** So wide that only the readings count, and grown so far off that the curve is a straight line. */
const unsaid: GrowthPrior = {
  ...usual,
  startSize: { low: -5000, likely: 5, high: 5000 },
  laterAge: { low: 10, likely: 122, high: 1e6 },
  grown: 1e7,
};
const read = (age: number, mean: number, error = 1.5): MeanReading => ({ age, mean, error });

describe('growth', () => {
  it('is the line through two readings where nothing else is known', () => {
    // 19 mm at day 60 and 26 at day 95 are 1.4 mm a week; 38 mm on day 155 (worked by hand).
    const line = growthLine(unsaid, [read(60, 19, 0.001), read(95, 26, 0.001)]);
    expect((line.rate.likely ?? 0) * 7).toBeCloseTo(1.4, 2);
    expect(line.at(155).mean).toBeCloseTo(38, 1);
  });
  it('believes five readings of a brood at half the usual pace, and the usual where there are none', () => {
    const slow = [40, 54, 68, 82, 96].map((age) => read(age, 5 + (age - 10) * 0.09));
    const { low, high } = bandAt(growthLine(usual, slow), 96);
    // A line through such five readings alone is sure of its end to 1.5 mm × √0.6, so 80 % to 1.5 mm.
    expect(low).toBeGreaterThan(12.74 - 1.5);
    expect(high).toBeLessThan(12.74 + 2 * 1.5);
    expect(bandAt(growthLine(usual, slow.slice(0, 1)), 96).high).toBeGreaterThan(12.74 + 2 * 1.5);
    const { low: first, high: last } = ageAtSize(growthLine(usual, []), 25, 'half');
    expect([first, last].map((age) => Math.round(age / 10) * 10)).toEqual([90, 150]);
  });
  it('spans about 141 to 181 days for 38 mm by the reading error alone', () => {
    const line = growthLine(unsaid, [read(60, 19), read(95, 26)]);
    const half = ageAtSize(line, 38, 'half');
    expect(half.likely).toBeGreaterThanOrEqual(150);
    expect(half.likely).toBeLessThanOrEqual(162);
    expect(half.low).toBeGreaterThan(125);
    expect(half.low).toBeLessThan(146);
    expect(half.high).toBeGreaterThan(175);
  });
  it('without a reading is what is usual', () => {
    const line = growthLine(usual, []);
    expect(bandAt(line, 122).likely).toBeCloseTo(25, 0);
    expect(line.rate.likely).toBeCloseTo(usualRates(usual).likely, 2);
  });
  it('gives 32 % at 38 mm and more where the mean is 36 and lengths spread by 12 %', () => {
    // z = 2 / 4.32 = 0.463; upper tail 0.3217 (tables of the standard normal).
    expect(shareAtLeast(38, 36)).toBeCloseTo(0.3217, 3);
  });
  it('expects the largest of ten 1.54 deviations above the mean', () => {
    // Expected largest of 10 standard normals: 1.5388 (Harter 1961, from memory); Blom gives it to two digits.
    expect(topOf(10)).toBeCloseTo(1.54, 1);
    expect(topOf(1)).toBe(0);
    expect(meanFromExtreme(30, topOf(40))).toBeLessThan(30);
  });
  it('reaches a size by the first before half and by half before all', () => {
    const line = growthLine(usual, [read(60, 15)]);
    const ages = (['first', 'half', 'all'] as const).map((part) => ageAtSize(line, 25, part));
    expect(ages[0]?.likely).toBeLessThan(ages[1]?.likely ?? 0);
    expect(ages[1]?.likely).toBeLessThan(ages[2]?.likely ?? 0);
  });
  it('agrees with least squares where there are many readings', () => {
    // A certified fit (fit.test.ts) of the same curve to the same twelve lengths: 4 to 60 mm, k 0.008 a day, noise of 0.5 mm.
    const noise = [0.3, -0.5, 0.4, 0.1, -0.6, 0.5, -0.2, 0.6, -0.4, 0.2, -0.3, 0.1];
    const truth = (age: number): number => 60 - 56 * Math.exp(-0.008 * (age - 9.5));
    const points = noise.map((off, i) => ({ x: 20 + 12 * i, y: truth(20 + 12 * i) + off }));
    const fit = fitCurve(
      points,
      ([c = 1, l = 1, k = 1]) =>
        (x) =>
          c - (c - l) * Math.exp(-k * (x - 9.5)),
      [70, 5, 0.01],
    );
    const wide = {
      ...usual,
      laterAge: { low: 30, likely: 90, high: 270 },
      startSize: { low: -10, likely: 5, high: 20 },
    };
    const line = growthLine(
      { ...wide, grown: 66.7 },
      points.map(({ x, y }) => read(x, y, 0.5)),
    );
    for (const age of [40, 80, 120, 150]) expect(Math.abs((fit?.at(age) ?? 0) - line.at(age).mean)).toBeLessThan(0.4);
  });
  it('stops at grown size', () => {
    const line = growthLine(usual, [read(60, 15), read(100, 22)]);
    expect(bandAt(line, 3000).high).toBeLessThanOrEqual(1.1 * usual.grown);
    expect(ageAtSize(line, 100, 'half').low).toBe(Infinity);
  });
  it('never inverts an interval, and never shrinks', () => {
    const reading = fc.record({ age: fc.integer({ min: 12, max: 200 }), mean: fc.integer({ min: 4, max: 80 }) });
    fc.assert(
      fc.property(fc.array(reading, { maxLength: 6 }), fc.integer({ min: 10, max: 60 }), (list, size) => {
        const line = growthLine(
          usual,
          list.map(({ age, mean }) => read(age, mean)),
        );
        expect(line.rate.low).toBeGreaterThan(0);
        expect(line.rate.low).toBeLessThanOrEqual(line.rate.high);
        for (const part of ['first', 'half', 'all'] as const) {
          const ages = ageAtSize(line, size, part);
          expect(ages.low).toBeLessThanOrEqual(ages.likely ?? ages.low);
          expect(ages.likely ?? ages.low).toBeLessThanOrEqual(ages.high);
        }
        const band = bandAt(line, 90);
        expect(band.low).toBeLessThanOrEqual(band.high);
      }),
    );
  });
});
