/**
 * Most answers are out before the engine's optimiser has earned what it costs: for a journal of up to a megabyte
 * the run takes two thirds of the time when optimising starts later. And they are out before what they made and
 * threw away is worth sweeping up often, which takes a tenth of the time.
 */
import process from 'node:process';
import v8 from 'node:v8';

/** What an engine is told for short runs and for long ones; an engine that does not know a setting complains aloud. */
const SETTINGS = [
  // What is counted down before a function is optimised.
  { engines: /./, short: '--interrupt-budget=2000000', long: '--interrupt-budget=135168' },
  { engines: /./, short: '--no-incremental-marking', long: '--incremental-marking' },
  // Sweeping up ahead of need while nothing else is to be done: the run is over then.
  { engines: /^11\./, short: '--no-minor-gc-task', long: '--minor-gc-task' },
  // By what the room for new data grows when it is full: at once to all that it may have.
  { engines: /^11\./, short: '--semi-space-growth-factor=16', long: '--semi-space-growth-factor=2' },
] as const;

/** A text longer than this makes a run long, characters. */
const LONG = 1_000_000;

let short = false;

/** Before any of the program is loaded. */
export function tuneForShortRun(): void {
  short = true;
  tell('short');
}

/** Puts the engine back to its usual work where so much text is to be read. */
export function tuneFor(length: number): void {
  if (length <= LONG) return;
  if (short) tell('long');
  short = false;
}

function tell(run: 'short' | 'long'): void {
  for (const setting of SETTINGS) {
    if (setting.engines.test(process.versions.v8)) v8.setFlagsFromString(setting[run]);
  }
}
