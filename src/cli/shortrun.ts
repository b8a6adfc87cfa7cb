/**
 * Most answers are out before the engine's optimiser has earned what it costs: for a journal of up to a
 * megabyte the run takes two thirds of the time when optimising starts later. And it is out before what it made and
 * threw away is worth sweeping up often: a tenth of its time goes into that.
 */
import v8 from 'node:v8';

/** What the engine counts down before it optimises a function, and its own setting (V8 11). */
const LATER = 2_000_000;
const USUAL = 135_168;
/** By what the engine's room for new data grows when it is full: at once to all that it may have, and not by doubling. */
const GROWTH = 16;
/** A text longer than this is worth the optimiser, characters. */
const LONG = 1_000_000;

let later = false;

/** Puts both off, before any of the program is loaded. */
export function tuneForShortRun(): void {
  later = true;
  v8.setFlagsFromString(`--interrupt-budget=${LATER}`);
  v8.setFlagsFromString(`--semi-space-growth-factor=${GROWTH}`);
}

/** Puts the optimiser back to its usual work where so much text is to be read. */
export function optimiseFor(length: number): void {
  if (later && length > LONG) v8.setFlagsFromString(`--interrupt-budget=${USUAL}`);
  if (length > LONG) later = false;
}
