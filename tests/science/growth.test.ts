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
