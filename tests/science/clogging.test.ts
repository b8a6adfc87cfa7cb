import { describe, expect, test } from 'vitest';
import { spillForecast, thoroughness } from '../../src/science/clogging.ts';
import { crossing, robustLine } from '../../src/science/trend.ts';

const points = (xs: number[], ys: number[]) => xs.map((x, i) => ({ x, y: ys[i] ?? NaN }));

describe('a robust line', () => {
  test('finds the slope and joint intercept of Sen 1968', () => {
    // Source: Sen 1968, JASA 63:1379, as SciPy's test of theilslopes quotes it: slope 4.
    const line = robustLine(points([1, 2, 3, 4, 10, 12, 18], [9, 15, 19, 20, 45, 55, 78]));
    expect(line?.slope).toBeCloseTo(4, 12);
    expect(line?.intercept).toBeCloseTo(6, 12);
  });

  test('is not bent by one wild reading', () => {
    // Source: own data; slope, intercept and crossing by SciPy 1.10.1 theilslopes.
    const line = robustLine(points([0, 3, 5, 8, 11, 14, 17, 21, 24, 28], [12, 17, 21, 26, 33, 60, 44, 52, 57, 66]));
    expect(line?.slope).toBeCloseTo(1.92857143, 7);
    expect(line?.intercept).toBeCloseTo(11.42857143, 7);
    expect(line && crossing(line, 80)).toBeCloseTo(35.55556, 4);
  });

  test.each([
    ['freeboard', [0, 4, 9, 13, 18, 22, 27], [62, 58, 55, 49, 47, 41, 38], -0.88888889, 62, 0, 69.75],
    ['four readings', [0, 14, 24, 30], [60, 52, 38, 26], -1.26666667, 66.2, 0, 52.26316],
  ])('through %s crosses where SciPy says', (_name, xs, ys, slope, intercept, level, day) => {
    // Source: own data; slope and joint intercept by SciPy 1.10.1 theilslopes.
    const line = robustLine(points(xs, ys));
    expect(line?.slope).toBeCloseTo(slope, 7);
    expect(line?.intercept).toBeCloseTo(intercept, 6);
    expect(line && crossing(line, level)).toBeCloseTo(day, 4);
  });

  test('needs two different days', () => {
    expect(robustLine([])).toBeNull();
    expect(robustLine(points([4, 4], [1, 2]))).toBeNull();
    expect(crossing({ slope: 0, intercept: 3 }, 8)).toBeNull();
  });
});

describe('the spill forecast', () => {
  test('runs from the earliest to the middle of three lines', () => {
    // Worked by hand: freeboard 60, 52, 38, 26 mm on days 0, 14, 24, 30; crossings 52.3, 46, 43.
    const levels = [60, 52, 38, 26].map((freeboard, i) => ({ day: [0, 14, 24, 30][i] ?? NaN, level: 80 - freeboard }));
    const forecast = spillForecast(levels, 80);
    expect(forecast?.spill).toEqual({ low: 43, likely: 45, high: 46 });
    expect(forecast?.cleanBy).toEqual({ low: 36, high: 39 });
    expect(forecast?.rate).toBeCloseTo(2, 12);
  });

  test('says nothing under two readings or while the level does not rise', () => {
    expect(spillForecast([{ day: 0, level: 20 }], 80)).toBeNull();
    expect(
      spillForecast(
        [
          { day: 0, level: 40 },
          { day: 9, level: 30 },
        ],
        80,
      ),
    ).toBeNull();
  });

  test('leaves room for the eye where two readings are all there is', () => {
    const forecast = spillForecast(
      [
        { day: 0, level: 20 },
        { day: 10, level: 30 },
      ],
      80,
    );
    expect(forecast?.spill).toEqual({ low: 58, likely: 60, high: 62 });
  });
});

test('a clean of two of six layers buys four of six weeks', () => {
  // Common practice, no source: all layers last about six weeks, a layer or two about a month.
  expect(42 * thoroughness(2, 6)).toBeCloseTo(28, 9);
  expect(thoroughness(6, 6)).toBe(1);
});
