/** How an answer is to be shown, decided once at the edge and handed to every report. */
import type { Day } from '../core/day.ts';
import type { Paint } from './paint.ts';
import { PLAIN } from './paint.ts';

export interface Look {
  /** Columns that a line may take. */
  readonly width: number;
  readonly paint: Paint;
  /** The reader is a pipe or a file: ISO dates. */
  readonly machine: boolean;
  /** The day that the answer is about; years are left out where they are this day's. */
  readonly on: Day;
  /** That day has not come yet. */
  readonly projected: boolean;
}

/** A terminal's look without colour: for tests, and wherever no terminal asks. */
export function plainLook(on: Day, width = 80): Look {
  return { width, paint: PLAIN, machine: false, on, projected: false };
}
