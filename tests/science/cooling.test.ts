import { describe, expect, test } from 'vitest';
import { cooledTo, coolingRate, hoursToCool } from '../../src/science/cooling.ts';

describe('cooling', () => {
  // Source: Stewart, Calculus, the soda pop in the refrigerator (from memory): 72 °F in air of 44 °F, 61 °F
  // after half an hour; 54.3 °F after an hour; 50 °F after 92.6 minutes. The law does not mind the scale.
  const rate = coolingRate(72, 61, 0.5, 44);

  test('finds the rate of a logged cooling, and what follows from it', () => {
    expect((rate ?? NaN) / 60).toBeCloseTo(0.01663, 5);
    expect(cooledTo(72, 44, rate ?? NaN, 1)).toBeCloseTo(54.3, 1);
    expect((hoursToCool(72, 50, 44, rate ?? NaN) ?? NaN) * 60).toBeCloseTo(92.6, 1);
  });

  test('the half-way time is ln 2 over the rate', () => {
    expect(hoursToCool(26, 22, 18, 0.1)).toBeCloseTo(Math.LN2 / 0.1, 9);
  });

  test('says nothing of what cannot be', () => {
    expect(coolingRate(26, 26, 3, 18)).toBeNull();
    expect(coolingRate(26, 27, 3, 18)).toBeNull();
    expect(coolingRate(26, 17, 3, 18)).toBeNull();
    expect(coolingRate(26, 24, 0, 18)).toBeNull();
    expect(hoursToCool(26, 18, 20, 0.1)).toBeNull();
    expect(hoursToCool(20, 22, 18, 0.1)).toBe(0);
  });
});
