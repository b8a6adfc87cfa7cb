/** A short run of `npm run calibrate`: the same rooms every time, so that it fails only where the answers change. */
import { describe, expect, it } from 'vitest';
import { CALIBRATIONS } from '../tools/calibration/cases.ts';
import { calibrate, faultsOf } from '../tools/calibration/frame.ts';

/** Rooms each here; `npm run calibrate` takes several hundred. */
const CASES = 80;

describe('80 % windows hold 70 to 90 % of known truths, and are no wider than the default alone', () => {
  it.each(CALIBRATIONS.map((one) => [one.name, one] as const))('%s', (_, calibration) => {
    const outcome = calibrate(calibration, CASES);
    expect(faultsOf(outcome, CASES)).toEqual([]);
    expect(outcome.width).toBeLessThan(outcome.defaultWidth);
  });
  it('would not pass for windows that always, or never, hold the truth', () => {
    const truth = (seed: number, window: { low: number; high: number }) => ({ truth: seed, window, default: window });
    const always = {
      name: 'always',
      unit: 'days' as const,
      trial: (seed: number) => truth(seed, { low: 0, high: 1e6 }),
    };
    const never = { name: 'never', unit: 'days' as const, trial: (seed: number) => truth(seed, { low: -2, high: -1 }) };
    expect(faultsOf(calibrate(always, 20), 20)).not.toEqual([]);
    expect(faultsOf(calibrate(never, 20), 20)).not.toEqual([]);
  });
});
