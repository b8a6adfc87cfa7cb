import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { afterChanges, afterDrip, changeNeeded, steadyState } from '../../src/science/dilution.ts';

describe('water changes', () => {
  // Source: mass balance of a mixed tank, values computed by two routes.
  test.each([
    [40, 0, 0.5, 1, 20],
    [40, 5, 0.25, 1, 31.25],
    [40, 5, 0.25, 3, 19.765625],
    [1, 0, 0.1, 5, 0.59049],
    [1, 0, 0.1, 10, 0.3486784401],
    [1, 0, 0.25, 4, 0.31640625],
    [1, 0, 0.3, 7, 0.0823543],
  ])('from %s with %s by %s, %s times, leave %s', (from, source, fraction, times, left) => {
    expect(afterChanges(from, source, fraction, times)).toBeCloseTo(left, 9);
  });

  test('needed to reach a target', () => {
    expect(changeNeeded(40, 20, 5)).toBeCloseTo(0.571429, 6);
    expect(changeNeeded(40, 20, 5, 3)).toBeCloseTo(0.246053, 6);
    expect(changeNeeded(80, 20, 0, 2)).toBeCloseTo(0.5, 12);
  });

  test('cannot go below the source water', () => {
    expect(changeNeeded(40, 5, 5)).toBeNull();
    expect(changeNeeded(40, 4, 5)).toBeNull();
    expect(changeNeeded(40, 50, 5)).toBeNull();
  });

  test('settle between a peak and a trough', () => {
    const steady = steadyState(5, 7, 0.3);
    expect(steady.peak).toBeCloseTo(28.33333, 5);
    expect(steady.trough).toBeCloseTo(21.33333, 5);
    expect(steadyState(0, 10, 0.5)).toEqual({ peak: 20, trough: 10 });
  });

  test('as a drip follow the flush equation', () => {
    // Source: CRAN respirometry flush_water example (after Steffensen 1989): 90 L, 2 L/min, 20 min replace 0.358820.
    expect(1 - afterDrip(1, 0, 2, 20, 90)).toBeCloseTo(0.35882, 5);
    expect(afterDrip(1, 0, 0.5, 1, 1)).toBeCloseTo(0.606531, 6);
  });

  test('that were computed do reach the target', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1, max: 50, noNaN: true }),
        fc.double({ min: 1, max: 100, noNaN: true }),
        fc.double({ min: 0.01, max: 0.99, noNaN: true }),
        fc.integer({ min: 1, max: 12 }),
        (source, above, share, times) => {
          const from = source + above;
          const target = source + above * share;
          const fraction = changeNeeded(from, target, source, times);
          expect(fraction).not.toBeNull();
          expect(afterChanges(from, source, fraction ?? 0, times)).toBeCloseTo(target, 6);
        },
      ),
    );
  });
});

describe('further published values', () => {
  test('changes of one size until little is left', () => {
    // Source: mass balance: 7 changes of 10 %, 4 of 20 % to fall below half; 16 of 18 % to replace over 95 %.
    const needed = (fraction: number, left: number): number => {
      let times = 0;
      while (afterChanges(1, 0, fraction, times) >= left) times += 1;
      return times;
    };
    expect([needed(0.1, 0.5), needed(0.2, 0.5), needed(0.18, 0.05)]).toEqual([7, 4, 16]);
    expect(changeNeeded(1, 0.31640625, 0, 4)).toBeCloseTo(0.25, 12);
    expect(changeNeeded(1, 0.3486784401, 0, 10)).toBeCloseTo(0.1, 12);
    expect(changeNeeded(40, 31.25, 5)).toBeCloseTo(0.25, 12);
  });

  test.each([
    [0.5, 0.60653066],
    [1, 0.36787944],
    [2, 0.13533528],
    [3, 0.04978707],
    [4.60517, 0.01],
    [6.907755, 0.001],
  ])('a drip of %s volumes leaves %s', (volumes, left) => {
    // Source: the exponential; 99.9 % needs 6.90776 volumes (B. Geist).
    expect(afterDrip(1, 0, volumes, 1, 1)).toBeCloseTo(left, 7);
  });

  test('a drip of 0.15 L/s through 10 L has replaced 99 % after 307.011 s', () => {
    // The help page of a respirometry program prints 305 s for it, stepped in time.
    expect(afterDrip(1, 0, 0.15, 307.011, 10)).toBeCloseTo(0.01, 6);
  });

  test('changes go on until they settle at the peak and trough that the formula gives', () => {
    let value = 0;
    for (let i = 0; i < 200; i += 1) value = afterChanges(value, 5, 0.3) + 7;
    expect(value).toBeCloseTo(28.333333, 5);
    expect(afterChanges(value, 5, 0.3)).toBeCloseTo(21.333333, 5);
    const { peak, trough } = steadyState(8, 14, 0.35);
    expect(peak - trough).toBeCloseTo(14, 9);
  });
});
