import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { learnedLife, lifeWindow, SHAPES, USUAL_LIFE, type LifePrior } from '../../src/science/spill.ts';

/** Freeboard under a lip of 80 mm, by day. */
const below = (rows: readonly (readonly [number, number])[]) =>
  rows.map(([load, mm]) => ({ load, flushes: 0, level: 80 - mm }));
const window = (rows: readonly (readonly [number, number])[], prior = USUAL_LIFE) => {
  const found = lifeWindow(below(rows), 80, prior);
  if (found === null) throw new Error('no window');
  return found;
};

describe('the life of a clean', () => {
  test('without a level is what is usual: six weeks and a week more, eight in ten between 30 and 80 days', () => {
    // The middle 80 % of a log-normal: median × e^(±1.2816 × spread).
    const { low, likely, high } = window([]);
    expect(likely).toBeCloseTo(49, 0);
    expect(low).toBeCloseTo(49 * Math.exp(-1.2816 * 0.38), 0);
    expect(high).toBeCloseTo(49 * Math.exp(1.2816 * 0.38), 0);
  });

  test('60, 52, 38, 26 mm at days 0, 14, 24, 30: about where the three lines say, and no later, since clogging quickens', () => {
    // The worked example of the three-line rule says day 43 to 46 and draws straight on from day 30.
    const { low, likely, high } = window([
      [0, 60],
      [14, 52],
      [24, 38],
      [30, 26],
    ]);
    expect(low).toBeGreaterThan(33);
    expect(likely).toBeLessThanOrEqual(43);
    expect(high).toBeGreaterThan(40);
    expect(high).toBeLessThanOrEqual(46);
  });

  test('a clean curve is found again: the square law reaches 80 mm from 20 mm in 50 days', () => {
    const rows = [0, 10, 20, 30, 40, 46].map((day) => [day, 60 - 60 * (day / 50) ** 2] as const);
    const { low, likely, high } = window(rows);
    expect(likely).toBeGreaterThan(48);
    expect(likely).toBeLessThan(52);
    expect(low).toBeLessThan(50);
    expect(high).toBeGreaterThan(50);
  });

  test('one wild reading bends it little', () => {
    const rows = [0, 10, 20, 30, 40].map((day) => [day, 60 - 60 * (day / 50) ** 2] as const);
    const wild = rows.map(([day, mm]) => [day, day === 20 ? mm - 25 : mm] as const);
    expect(Math.abs(window(wild).likely - window(rows).likely)).toBeLessThan(4);
  });

  test('a flush of the pipes is a load at once, not a faster clogging', () => {
    // Twenty of sixty days' dirt at once on day 20, on a straight line of 1 mm a day.
    const rows = [0, 10, 20, 25, 30].map((load) => ({
      load,
      flushes: load > 20 ? 1 : 0,
      level: 20 + load + (load > 20 ? 10 : 0),
    }));
    const straight: LifePrior = { ...USUAL_LIFE, shapes: SHAPES.map((_, index) => (index === 0 ? 1 : 0)) };
    const told = lifeWindow(rows, 80, straight);
    const silent = lifeWindow(
      rows.map((row) => ({ ...row, flushes: 0 })),
      80,
      straight,
    );
    // Without the flush told, the jump looks like 1.4 mm a day.
    expect(told?.likely).toBeGreaterThan(silent?.likely ?? 0);
  });

  test('a level at the lip has no life left to tell', () => {
    expect(lifeWindow([{ load: 3, flushes: 0, level: 80 }], 80, USUAL_LIFE)).toBeNull();
  });

  test('every shape goes from none of the way to all of it, never slower at the end than at the start', () => {
    for (const shape of SHAPES) {
      expect(shape(0)).toBeCloseTo(0, 12);
      expect(shape(1)).toBeCloseTo(1, 12);
      expect(1 - shape(0.9)).toBeGreaterThanOrEqual(shape(0.1) - 1e-12);
    }
  });

  test('a window is in order, and no wider than the usual one, whatever rises evenly', () => {
    fc.assert(
      fc.property(fc.double({ min: 25, max: 80, noNaN: true }), fc.integer({ min: 2, max: 8 }), (life, count) => {
        const rows = Array.from({ length: count }, (_, index) => {
          const share = (0.8 * index) / (count - 1);
          return [share * life, 60 - 60 * share ** 2] as const;
        });
        const { low, likely, high } = window(rows);
        expect(low).toBeLessThanOrEqual(likely);
        expect(likely).toBeLessThanOrEqual(high);
        expect(Math.log(high / low)).toBeLessThanOrEqual(2 * 1.2816 * 0.38 + 0.02);
      }),
      { numRuns: 60 },
    );
  });
});

describe('what earlier cleans teach', () => {
  const life = (likely: number) => ({ low: likely - 3, likely, high: likely + 3, shapes: USUAL_LIFE.shapes });

  test('their median, and a spread under the usual', () => {
    const learned = learnedLife([30, 31, 33, 90].map(life));
    expect(learned.median).toBeCloseTo(Math.sqrt(31 * 33), 9);
    expect(learned.spread).toBeLessThanOrEqual(USUAL_LIFE.spread);
    expect(learnedLife([30, 31, 33, 32].map(life)).spread).toBeLessThan(0.2);
    expect(learned.shapes.reduce((sum, one) => sum + one, 0)).toBeCloseTo(1, 12);
  });

  test('none of them teaches nothing', () => {
    expect(learnedLife([])).toBe(USUAL_LIFE);
  });
});
