/**
 * Most answers are out before the engine's optimiser has earned what it costs: for a journal of up to a megabyte
 * the run takes two thirds of the time when optimising starts later. And they are out before what they made and
 * threw away is worth sweeping up often, which takes a tenth of the time.
 */
import process from 'node:process';
import v8 from 'node:v8';

interface Setting {
  /** The engines that know it, of those that it was tried on. */
  readonly engines: RegExp;
  readonly short: string;
  readonly long: string;
}

/** What an engine is told for short runs and for long ones. Engine 11 is Node 20's, 12 to 14 are those of Node 22 to 25. */
const SETTINGS: readonly Setting[] = [
  // What is counted down before a function is optimised.
  { engines: /^11\./, short: '--interrupt-budget=2000000', long: '--interrupt-budget=67584' },
  // How often a function is called before it is.
  {
    engines: /^1[234]\./,
    short: '--invocation-count-for-turbofan=30000',
    long: '--invocation-count-for-turbofan=3000',
  },
  { engines: /^1[1-4]\./, short: '--no-incremental-marking', long: '--incremental-marking' },
  // Sweeping up ahead of need while nothing else is to be done: the run is over then.
  { engines: /^11\./, short: '--no-minor-gc-task', long: '--minor-gc-task' },
  // By what the room for new data grows when it is full: at once to all that it may have.
  { engines: /^11\./, short: '--semi-space-growth-factor=16', long: '--semi-space-growth-factor=2' },
];

/** What that engine is told: nothing that it might not know, since it would complain of it aloud, to the keeper. */
export function settingsFor(engine: string, run: 'short' | 'long'): readonly string[] {
  return SETTINGS.filter(({ engines }) => engines.test(engine)).map((setting) => setting[run]);
}

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
  for (const setting of settingsFor(process.versions.v8, run)) v8.setFlagsFromString(setting);
}
