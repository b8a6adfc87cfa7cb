import { describe, expect, it } from 'vitest';
import { fittedSteps } from '../../../src/questions/growing/fitted.ts';

describe('the readings alone', () => {
  it('say nothing under three, or where they shrink', () => {
    expect(fittedSteps([{ x: 30, y: 10 }], 40)).toEqual([]);
    const shrinking = [30, 60, 90].map((x, i) => ({ x, y: 20 - i }));
    expect(fittedSteps(shrinking, 100)).toEqual([]);
  });
  it('are a straight line from three, and no curve', () => {
    const steps = fittedSteps(
      [30, 65, 100].map((x) => ({ x, y: 10 + x * 0.2 })),
      100,
    );
    expect(steps).toEqual(['a straight line through these 3 alone: 1.4 mm a week, standard error 0.0']);
  });
  it('give no curve where they stand on a straight line: nothing bounds how long they get', () => {
    const steps = fittedSteps(
      [10, 30, 50, 70, 90, 110].map((x) => ({ x, y: 5 + 0.2 * x })),
      120,
    );
    expect(steps).toHaveLength(1);
  });
  it('find the certified curve of the pine seedlings, and its limits', () => {
    // Source: R datasets Loblolly, seed 301 (Kung 1986), R nls with investr predFit: at 22, 56.157,
    // mean 95 % [54.8903, 57.4237]; the 80 % limits are narrower about the same middle.
    const points = [
      [3, 4.51],
      [5, 10.89],
      [10, 28.72],
      [15, 41.74],
      [20, 52.7],
      [25, 60.92],
    ].map(([x = 0, y = 0]) => ({ x, y }));
    const [, curve = ''] = fittedSteps(points, 22);
    const [, mean, low, high] = /alone: ([\d.]+) mm today, 80 % ([\d.]+)–([\d.]+)/.exec(curve) ?? [];
    expect(Number(mean)).toBeGreaterThan(55);
    expect(Number(mean)).toBeLessThan(57);
    expect(Number(low)).toBeGreaterThan(54.8);
    expect(Number(high)).toBeLessThan(57.5);
  });
});
