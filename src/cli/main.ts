/**
 * The edge of the process: hands the real world to `program.ts` and ends with its status. A pipe that
 * the reader has closed is no error.
 */
import process from 'node:process';
import { run } from './program.ts';
import { realContext } from './world.ts';

/** A fault of ours, as sysexits.h numbers it; 1 to 3 mean something to scripts. */
const OUR_FAULT = 70;

function onClosedPipe(error: NodeJS.ErrnoException): void {
  if (error.code !== 'EPIPE') throw error;
  process.exit();
}

process.exitCode = 0;
process.stdout.on('error', onClosedPipe);
process.stderr.on('error', onClosedPipe);
run(process.argv.slice(2), realContext()).then(
  (status) => {
    process.exitCode = status;
  },
  (error: unknown) => {
    const told = error instanceof Error ? (error.stack ?? error.message) : String(error);
    process.stderr.write(`this is a fault in tankside itself; the journal was not changed by it\n${told}\n`);
    process.exitCode = OUR_FAULT;
  },
);
