import { describe, expect, test } from 'vitest';
import { measure } from '../../src/core/quantity.ts';
import { GUILDS } from '../../src/core/guild.ts';
import { degreeDays, Q10, q10Between, q10Factor, stageDays, zebrafishHours } from '../../src/science/stages.ts';

describe('stage clocks', () => {
  test('scale by Q10', () => {
    // Worked: 72 h at 26 °C and Q10 2.5 is 59.9438 h at 28 °C.
    expect(72 * q10Factor(2.5, 26, 28)).toBeCloseTo(59.9438, 4);
    // Source: Oreochromis karongae incubation, 14.7 d at 25 °C and 7.3 d at 29 °C: Q10 5.7542.
    expect(14.7 * q10Factor(5.7542, 25, 29)).toBeCloseTo(7.3, 3);
  });

  test('have the zebrafish formula as their published anchor', () => {
    // Source: Kimmel et al. 1995, Dev. Dyn. 203:253: h / (0.055 T − 0.57), 48 h at three temperatures.
    expect(zebrafishHours(48, 28.5)).toBeCloseTo(48.1203, 4);
    expect(zebrafishHours(48, 25)).toBeCloseTo(59.6273, 4);
    expect(zebrafishHours(48, 33)).toBeCloseTo(38.5542, 4);
  });

  test('a warmer tank never hatches later', () => {
    for (const guild of GUILDS) {
      const cool = stageDays(guild, 'hatch', measure('C', 24));
      const warm = stageDays(guild, 'hatch', measure('C', 28));
      if (guild === 'livebearer') expect(cool).toBeNull();
      else expect(warm?.likely).toBeLessThan(cool?.likely ?? 0);
    }
  });

  test('put the swim-up of a dwarf cave spawner at about ten days', () => {
    // Common practice, no source.
    const swim = stageDays('cave spawner', 'swim', measure('C', 26));
    expect(swim?.low).toBeLessThanOrEqual(8);
    expect(swim?.likely).toBeGreaterThan(8);
    expect(swim?.high).toBeGreaterThanOrEqual(10);
  });
});

test('degree-days sum what is above the base', () => {
  // Source: Dictionary of Ichthyology: 30 days at 20 °C over base 10 make 300; tench, 10 days at 20.2 °C make 202.
  expect(
    degreeDays(
      Array.from({ length: 30 }, () => 20),
      10,
    ),
  ).toBe(300);
  expect(
    degreeDays(
      Array.from({ length: 10 }, () => 20.2),
      0,
    ),
  ).toBeCloseTo(202, 9);
  expect(degreeDays([22, 23, 24, 25, 26], 10)).toBe(70);
});

test('further published values', () => {
  // Source: trout-egg guide (10 °C × 10 days = 100); Kubu & Kouril 1985 (tench egg 62, larva 140 degree-days).
  expect(degreeDays(Array<number>(10).fill(10), 0)).toBe(100);
  expect(degreeDays([20, 20, 20], 0)).toBe(60);
  expect(degreeDays([22, 23, 24, 25, 26], 0)).toBe(120);
  expect(degreeDays(Array<number>(10).fill(20.2), 0) - 62).toBeCloseTo(140, 9);
  expect(degreeDays([8, 9], 10)).toBe(0);
  // Oreochromis karongae: 14.7 days at 25 °C, 7.3 at 29 °C; zebrafish between 25 and 30 °C: about 1.8.
  expect(q10Between({ days: 14.7, at: 25 }, { days: 7.3, at: 29 })).toBeCloseTo(5.7542, 4);
  expect(Q10).toEqual({ low: 1.8, likely: 2.5, high: 5.8 });
  expect(q10Between({ days: 72, at: 26 }, { days: 59.9438, at: 28 })).toBeCloseTo(2.5, 4);
  // Twice as fast 10 °C warmer (University of Missouri Extension MX392).
  expect(q10Factor(2, 18, 28)).toBe(0.5);
  expect(q10Factor(2.5, 26, 26)).toBe(1);
});
