/** Every calibration that is run: one file each. */
import type { Calibration } from './frame.ts';
import { STOCK_COUNT } from './count.ts';
import { LAYING_DAY } from './laying.ts';
import { SALEABLE_DAY } from './saleable.ts';
import { SPILL_DAY } from './spill.ts';

export const CALIBRATIONS: readonly Calibration[] = [LAYING_DAY, SALEABLE_DAY, SPILL_DAY, STOCK_COUNT];
