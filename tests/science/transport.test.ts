/**
 * Bags. Published loads: Dupree & Huner 1984, Third Report to the Fish Farmers, as an extension reprint
 * tables them (lb/US gal, 65 °F, oxygen); FAO R1316E ch. 19 (sea-bass fry); laboratory zebrafish practice (1997);
 * metabolism twice for 10 °C: University of Missouri Extension MX392.
 */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { bagFor, breathing, GRAMS_A_LITRE, LOAD, packingFor, PUBLISHED_CEILINGS } from '../../src/science/transport.ts';
import { weightOf } from '../../src/science/weight.ts';

describe('published loads', () => {
  test.each([
    [0.5, 59.91],
    [1.5, 179.74],
    [0.2, 23.97],
    [0.4, 47.93],
    [2.0, 239.65],
    [1.6, 191.72],
    [0.6, 71.9],
    [1.0, 119.83],
    [3.7, 443.36],
    [0.7, 83.88],
    [2.7, 323.53],
  ])('%s lb/gal are %s g/L', (pounds, grams) => {
    expect(pounds * GRAMS_A_LITRE).toBeCloseTo(grams, 2);
  });

  test('zebrafish at 30 g/L and 60 a litre weigh half a gram; sea-bass fry stand at 71 to 83 a litre', () => {
    expect(30 / 60).toBe(0.5);
    // 0.5 g is what our weight gives for 29 mm: the published density is of fish such as we pack.
    expect(weightOf(2.9)).toBeCloseTo(0.5, 1);
    const { water } = bagFor(500 * weightOf(2.5), 24, 25, true);
    expect(500 / water).toBeLessThan(500 / 7);
  });

  test('metabolism doubles with 10 °C: half the load at 35 °C; cooler water allows no more', () => {
    expect(breathing(18, 28)).toBeCloseTo(2, 10);
    expect(bagFor(10, 24, 35, false).load).toBeCloseTo(LOAD.air / 2, 10);
    expect(bagFor(10, 24, 18, false).load).toBe(LOAD.air);
  });

  test('no load of ours comes near one that was published for that time or a longer one', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 96 }), fc.integer({ min: 10, max: 35 }), fc.boolean(), (h, t, oxygen) => {
        const { load } = bagFor(5, h, t, oxygen);
        for (const { hours, load: published } of PUBLISHED_CEILINGS)
          if (h <= hours) expect(load).toBeLessThan(published / 2);
      }),
    );
  });
});

describe('a bag', () => {
  const trip = { hours: 24, celsius: 25, oxygen: false };

  test('six fish of 30 mm: 3.4 g, 0.7 L of water and twice that of air', () => {
    // W = 0.02 · 3^3.03 = 0.558 g; 3.35 g ÷ 5 g/L = 0.67 L, up to a tenth.
    expect(packingFor(6, weightOf(3), false, trip, 6)).toEqual({
      packs: 1,
      fishInPack: 6,
      water: 0.7,
      air: 1.4,
      load: 5,
    });
  });

  test('fish that travel alone have a bag each; fish too many for one bag go in several', () => {
    expect(packingFor(6, 0.5, true, trip, 6)).toMatchObject({ packs: 6, fishInPack: 1 });
    // 2 L of water carry 10 g: two fish of 4 g, rounded down, so three bags for six.
    expect(packingFor(6, 4, false, trip, 6)).toMatchObject({ packs: 3, fishInPack: 2, water: 1.6 });
  });

  test('a fish too heavy for the largest bag has none', () => {
    expect(packingFor(1, 11, true, trip, 6)).toBeNull();
  });

  test('no bag is larger than the largest or more heavily loaded than its load', () => {
    const some = fc.record({
      count: fc.integer({ min: 1, max: 12 }),
      grams: fc.integer({ min: 1, max: 1000 }).map((hundredths) => hundredths / 100),
      alone: fc.boolean(),
      hours: fc.integer({ min: 1, max: 72 }),
      celsius: fc.integer({ min: 18, max: 32 }),
    });
    fc.assert(
      fc.property(some, ({ count, grams, alone, hours, celsius }) => {
        const packed = packingFor(count, grams, alone, { hours, celsius, oxygen: false }, 6);
        if (packed === null) return;
        expect(packed.packs * packed.fishInPack).toBeGreaterThanOrEqual(count);
        expect(packed.water + packed.air).toBeLessThanOrEqual(6 + 1e-9);
        expect((packed.fishInPack * grams) / packed.water).toBeLessThanOrEqual(packed.load + 1e-9);
      }),
    );
  });
});
