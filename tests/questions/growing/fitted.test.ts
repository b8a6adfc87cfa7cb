import { describe, expect, it } from 'vitest';
import { fittedSteps } from '../../../src/questions/growing/fitted.ts';

describe('the readings alone', () => {
  it('say nothing under three, or where they shrink', () => {
    expect(fittedSteps([{ x: 30, y: 10 }])).toEqual([]);
    const shrinking = [30, 60, 90].map((x, i) => ({ x, y: 20 - i }));
    expect(fittedSteps(shrinking)).toEqual([]);
  });
  it('are a straight line from three, and no curve', () => {
    const steps = fittedSteps([30, 65, 100].map((x) => ({ x, y: 10 + x * 0.2 })));
    expect(steps).toEqual(['a straight line through these 3 alone: 1.4 mm a week, standard error 0.0']);
  });
  it('give no curve where they stand on a straight line: nothing bounds how long they get', () => {
    const steps = fittedSteps([10, 30, 50, 70, 90, 110].map((x) => ({ x, y: 5 + 0.2 * x })));
    expect(steps).toHaveLength(1);
  });
  it('find the certified curve of the pine seedlings, and its limits', () => {
    // Source: R datasets Loblolly, seed 301 (Kung 1986), R nls: L∞ 95.666965, K 0.044317196,
    // t0 2.0456533, so 61.08 at 25; residual SD 0.627, and the limits of the mean lie within two of it.
    const points = [
      [3, 4.51],
      [5, 10.89],
      [10, 28.72],
      [15, 41.74],
      [20, 52.7],
      [25, 60.92],
    ].map(([x = 0, y = 0]) => ({ x, y }));
    const [, curve = ''] = fittedSteps(points);
    const [, mean, low, high] = /alone: ([\d.]+) mm at the last of them, 80 % ([\d.]+)–([\d.]+)/.exec(curve) ?? [];
    expect(Number(mean)).toBeGreaterThan(60);
    expect(Number(mean)).toBeLessThan(61.5);
    expect(Number(low)).toBeGreaterThan(59);
    expect(Number(high)).toBeLessThan(62.5);
  });
});
