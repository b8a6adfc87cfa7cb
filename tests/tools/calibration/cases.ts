/** Every calibration that is run: one file each. */
import type { Calibration } from './frame.ts';
import { LAYING_DAY } from './laying.ts';

export const CALIBRATIONS: readonly Calibration[] = [LAYING_DAY];
