import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { exactly } from '../../src/core/interval.ts';
import { layingDays, mostLikely, within } from '../../src/science/layingday.ts';
import type { StageTimes } from '../../src/science/stageclocks.ts';
import { quantiles, triangular } from '../../src/science/spread.ts';

/** Cave spawners (common practice, no source). */
const cave: StageTimes = {
  hatch: { low: 2.5, likely: 3, high: 4 },
  swim: { low: 4, likely: 6.5, high: 8 },
  release: null,
  temperature: exactly(26),
};
const mouth: StageTimes = {
  ...cave,
  hatch: { low: 5, likely: 6, high: 7 },
  swim: null,
  release: { low: 18, likely: 21, high: 24 },
};
const saw = (day: number, found: 'eggs' | 'held' | 'wrigglers' | 'swimming', beganFrom: number | null = null) => ({
  day,
  found,
  beganFrom,
});

describe('a usual range', () => {
  it('is triangular: the shares of the textbook', () => {
    // F(x) = (x − 2)² / ((4 − 2)(3 − 2)): F(2.5) = 1/8, F(3) = 1/2 (worked by hand).
    const range = { low: 2, likely: 3, high: 4 };
    expect(triangular(range, 1 / 8)).toBeCloseTo(2.5, 12);
    expect(triangular(range, 1 / 2)).toBeCloseTo(3, 12);
    expect(triangular(range, 7 / 8)).toBeCloseTo(3.5, 12);
    expect(quantiles(exactly(5), 9)).toEqual([5]);
  });
});

describe('the likely laying day', () => {
  it('is any day of the window alike where nothing was seen', () => {
    expect(layingDays(10, 13, cave, []).laid.chances.map((chance) => chance.toFixed(6))).toEqual(
      Array(4).fill('0.250000'),
    );
  });
  it('is three or four days before wrigglers that were eggs the day before', () => {
    const { laid } = layingDays(0, 12, cave, [saw(12, 'eggs'), saw(13, 'wrigglers')]);
    const { low, likely, high } = mostLikely(laid);
    expect(likely).toBe(9);
    expect(low).toBeGreaterThanOrEqual(8);
    expect(high).toBeLessThanOrEqual(10);
  });
  it('is drawn back by warmth and forward by cold', () => {
    const at = (celsius: number): number =>
      mostLikely(
        layingDays(0, 20, { ...cave, temperature: exactly(celsius) }, [saw(19, 'wrigglers'), saw(20, 'swimming')]).laid,
      ).likely;
    expect(at(29)).toBeGreaterThan(at(26));
    expect(at(23)).toBeLessThan(at(26));
  });
  it('of a mouthbrooder lies three weeks before the release, not at it', () => {
    const days = layingDays(0, 30, mouth, [saw(28, 'held'), saw(30, 'swimming')]);
    expect(mostLikely(days.laid).likely).toBeGreaterThanOrEqual(6);
    expect(mostLikely(days.laid).likely).toBeLessThanOrEqual(10);
    const released = within(days.swam, 28, 30);
    expect(released && mostLikely(released).low).toBeGreaterThanOrEqual(28);
  });
  it('outlives one look that was misread', () => {
    const looks = [saw(12, 'eggs'), saw(13, 'wrigglers'), saw(13, 'swimming')];
    expect(mostLikely(layingDays(8, 11, cave, looks).laid).likely).toBeGreaterThanOrEqual(8);
  });
  it('takes a stage that began no earlier than a day for that', () => {
    const open = mostLikely(layingDays(0, 20, cave, [saw(20, 'swimming')]).laid);
    const told = mostLikely(layingDays(0, 20, cave, [saw(20, 'swimming', 19)]).laid);
    expect(told.high - told.low).toBeLessThan(open.high - open.low);
  });
  it('adds up to one, and stays in its window, whatever was seen', () => {
    const look = fc.record({
      day: fc.integer({ min: -5, max: 40 }),
      found: fc.constantFrom('eggs' as const, 'wrigglers' as const, 'swimming' as const, 'held' as const),
      beganFrom: fc.constant(null),
    });
    fc.assert(
      fc.property(fc.integer({ min: -3, max: 15 }), fc.array(look, { maxLength: 5 }), (width, looks) => {
        const { laid } = layingDays(10, 10 + width, cave, looks);
        expect(laid.chances.reduce((sum, chance) => sum + chance, 0)).toBeCloseTo(1, 9);
        const { low, likely, high } = mostLikely(laid);
        expect(low).toBeGreaterThanOrEqual(Math.min(10, 10 + width));
        expect(low).toBeLessThanOrEqual(likely);
        expect(likely).toBeLessThanOrEqual(high);
        expect(high).toBeLessThanOrEqual(10 + width);
      }),
      { numRuns: 50 },
    );
  });
});

describe('the most likely days', () => {
  it('are the fewest in a row that hold four in five', () => {
    // 0.3 + 0.4 + 0.15 = 0.85; no two in a row reach 0.8 (worked by hand).
    expect(mostLikely({ from: 100, chances: [0.1, 0.3, 0.4, 0.15, 0.05] })).toEqual({
      low: 101,
      likely: 102,
      high: 103,
    });
  });
  it('cut to a window add up to one again', () => {
    expect(within({ from: 0, chances: [0.5, 0.25, 0.25] }, 1, 9)).toEqual({ from: 1, chances: [0.5, 0.5] });
    expect(within({ from: 0, chances: [1] }, 5, 9)).toBeNull();
  });
});

describe('quiet looks', () => {
  const times = { hatch: interval(3), swim: interval(5), release: null, temperature: interval(26) };
  const looks = [{ day: 20, found: 'swimming', beganFrom: null }] as const;
  const laid = (quiet: readonly number[]) => layingDays(0, 20, times, looks, quiet).laid;

  it('make later days likelier and rule none out', () => {
    const [without, told] = [laid([]), laid([6, 8, 10])];
    expect(mostLikely(told).likely).toBeGreaterThan(mostLikely(without).likely);
    without.chances.forEach((chance, at) => {
      if (chance > 0) expect(told.chances[at]).toBeGreaterThan(0);
    });
  });
  it('after the last day say nothing', () => {
    const plain = laid([]);
    laid([25, 30]).chances.forEach((chance, at) => expect(chance).toBeCloseTo(plain.chances[at] ?? -1, 12));
  });
});

function interval(days: number): { low: number; likely: number; high: number } {
  return { low: days, likely: days, high: days };
}
