/** Every calibration that is run: one file each. */
import type { Calibration } from './frame.ts';
import { STOCK_COUNT } from './count.ts';
import { LAYING_DAY } from './laying.ts';
import { SALEABLE_ALL, SALEABLE_FIRST, SALEABLE_HALF } from './saleable.ts';
import { SPILL_DAY } from './spill.ts';

export const CALIBRATIONS: readonly Calibration[] = [
  LAYING_DAY,
  SALEABLE_FIRST,
  SALEABLE_HALF,
  SALEABLE_ALL,
  SPILL_DAY,
  STOCK_COUNT,
];
