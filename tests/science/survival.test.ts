import { describe, expect, test } from 'vitest';
import { medianSurvival, survivalCurve } from '../../src/science/survival.ts';

describe('survival with fish that left alive', () => {
  test('gives the published curve of the 6-MP arm', () => {
    // Source: Freireich et al. 1963, Blood 21:699, as R's MASS::gehan holds it; limits by R survival 3.5-3.
    const died: Record<number, number> = { 6: 3, 7: 1, 10: 1, 13: 1, 16: 1, 22: 1, 23: 1 };
    const left: Record<number, number> = { 6: 1, 9: 1, 10: 1, 11: 1, 17: 1, 19: 1, 20: 1, 25: 1, 32: 2, 34: 1, 35: 1 };
    const days = [...new Set([...Object.keys(died), ...Object.keys(left)].map(Number))];
    const curve = survivalCurve(
      21,
      days.map((day) => ({ day, died: died[day] ?? 0, left: left[day] ?? 0 })),
    );
    const printed = [
      [6, 21, 0.857143, 0.07636, 0.619718, 0.951552],
      [7, 17, 0.806723, 0.086935, 0.563147, 0.922809],
      [10, 15, 0.752941, 0.09635, 0.5032, 0.889362],
      [13, 12, 0.690196, 0.106815, 0.43161, 0.849066],
      [16, 11, 0.627451, 0.114054, 0.367511, 0.804912],
      [22, 7, 0.537815, 0.128234, 0.267779, 0.746791],
      [23, 6, 0.448179, 0.134591, 0.188052, 0.680143],
    ];
    expect(curve).toHaveLength(printed.length);
    curve.forEach((step, i) => {
      const row = [step.day, step.atRisk, step.survival, step.se ?? NaN, step.low ?? NaN, step.high ?? NaN];
      row.forEach((value, k) => expect(value).toBeCloseTo(printed[i]?.[k] ?? NaN, 6));
    });
    expect(medianSurvival(curve)).toBe(23);
  });

  test('counts fish moved out as alive', () => {
    // Worked, agrees with R survival: 50 young, deaths on days 2, 4, 7, 10, six moved out on day 7.
    const curve = survivalCurve(50, [
      { day: 2, died: 5, left: 0 },
      { day: 4, died: 3, left: 0 },
      { day: 7, died: 4, left: 6 },
      { day: 10, died: 2, left: 0 },
    ]);
    expect(curve.map((step) => Number(step.survival.toFixed(4)))).toEqual([0.9, 0.84, 0.76, 0.7125]);
    expect(curve[3]?.low).toBeCloseTo(0.562232, 6);
    expect(medianSurvival(curve)).toBeNull();
  });

  test('tells no spread where nobody or everybody died', () => {
    expect(survivalCurve(10, [{ day: 3, died: 0, left: 4 }])).toEqual([]);
    expect(survivalCurve(10, [{ day: 3, died: 10, left: 0 }])[0]).toMatchObject({
      survival: 0,
      se: null,
      low: null,
      high: null,
    });
  });

  test('takes in fish that are only known of from a later day', () => {
    // Worked by hand: 10 from day 0, 10 more from day 5; 2 of 10 die on day 3, 6 of 18 on day 8.
    const curve = survivalCurve(0, [
      { day: 0, died: 0, left: 0, entered: 10 },
      { day: 3, died: 2, left: 0 },
      { day: 5, died: 0, left: 0, entered: 10 },
      { day: 8, died: 6, left: 0 },
    ]);
    expect(curve.map(({ atRisk, survival }) => [atRisk, Number(survival.toFixed(6))])).toEqual([
      [10, 0.8],
      [18, 0.533333],
    ]);
  });

  test('counts what happens on one day against the same fish at risk', () => {
    const [step] = survivalCurve(10, [
      { day: 4, died: 0, left: 5 },
      { day: 4, died: 2, left: 0 },
    ]);
    expect(step?.survival).toBeCloseTo(0.8, 12);
  });
});
