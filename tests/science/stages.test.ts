import { describe, expect, test } from 'vitest';
import { measure } from '../../src/core/quantity.ts';
import { GUILDS } from '../../src/core/guild.ts';
import { degreeDays, q10Factor, stageDays, zebrafishHours } from '../../src/science/stages.ts';

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
