/**
 * The edge of the process: hands the real world to `program.ts` and ends with its status. A pipe that
 * the reader has closed is no error.
 */
import process from 'node:process';
import { reason } from '../files/trouble.ts';
import { EXIT } from './exit.ts';
import { run } from './program.ts';
import { optimiseLater } from './shortrun.ts';
import { realContext } from './world.ts';

/** A fault of ours, as sysexits.h numbers it; 1 to 3 mean something to scripts. */
const OUR_FAULT = 70;

optimiseLater();

process.stdout.on('error', (error: NodeJS.ErrnoException) => {
  if (error.code === 'EPIPE') process.exit();
  process.stderr.write(`the answer could not be written: ${reason(error)}\n`);
  process.exit(EXIT.noFile);
});
// Nobody is left to tell.
process.stderr.on('error', () => undefined);

run(process.argv.slice(2), realContext()).then(
  (status) => {
    process.exitCode = status;
  },
  (error: unknown) => {
    const told = error instanceof Error ? (error.stack ?? error.message) : String(error);
    process.stderr.write(`this is a fault in tankside itself\n${told}\n`);
    process.exitCode = OUR_FAULT;
  },
);
