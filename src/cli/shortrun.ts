/**
 * Most answers are out before the engine's optimiser has earned what it costs: for a journal of up to a
 * megabyte the run takes two thirds of the time when optimising starts later.
 */
import v8 from 'node:v8';

/** What the engine counts down before it optimises a function, and its own setting (V8 11). */
const LATER = 2_000_000;
const USUAL = 135_168;
/** A text longer than this is worth the optimiser, characters. */
const LONG = 1_000_000;

let later = false;

/** Puts the optimiser off, before any of the program is loaded. */
export function optimiseLater(): void {
  later = true;
  v8.setFlagsFromString(`--interrupt-budget=${LATER}`);
}

/** Puts the optimiser back to its usual work where so much text is to be read. */
export function optimiseFor(length: number): void {
  if (later && length > LONG) v8.setFlagsFromString(`--interrupt-budget=${USUAL}`);
  if (length > LONG) later = false;
}
