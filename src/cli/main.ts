/**
 * The edge of the process: hands the real world to `program.ts` and ends with its status. A pipe that
 * the reader has closed is no error.
 */
import process from 'node:process';
import { shelfIn } from '../files/cache/shelf.ts';
import { reason } from '../files/trouble.ts';
import type { Context } from './context.ts';
import { EXIT } from './exit.ts';
import { memoryFolder, thisBuild } from './memory/build.ts';
import { keyHere } from './memory/here.ts';
import { run } from './program.ts';
import { optimiseLater } from './shortrun.ts';
import { realContext } from './world.ts';

/** A fault of ours, as sysexits.h numbers it; 1 to 3 mean something to scripts. */
const OUR_FAULT = 70;

/** Commands that are there to write: nothing of theirs could be said again. */
const WRITERS = new Set(['jot', 'settle', 'start', 'tidy']);

optimiseLater();

process.stdout.on('error', (error: NodeJS.ErrnoException) => {
  if (error.code === 'EPIPE') process.exit();
  process.stderr.write(`the answer could not be written: ${reason(error)}\n`);
  process.exit(EXIT.noFile);
});
// Nobody is left to tell.
process.stderr.on('error', () => undefined);

answer(process.argv.slice(2), realContext()).then(
  (status) => {
    process.exitCode = status;
  },
  (error: unknown) => {
    const told = error instanceof Error ? (error.stack ?? error.message) : String(error);
    process.stderr.write(`this is a fault in tankside itself\n${told}\n`);
    process.exitCode = OUR_FAULT;
  },
);

/** Runs the command line; what can be said again is kept for the next time. */
async function answer(argv: readonly string[], context: Context): Promise<number> {
  const [build, folder] = [thisBuild(), memoryFolder()];
  if (build === null || folder === null || argv.some((word) => WRITERS.has(word))) return await run(argv, context);
  const { watch } = await import('./memory/remember.ts');
  const watched = watch(context, shelfIn(folder), keyHere(build), () => new Date());
  const status = await run(argv, watched.context);
  await watched.keep(status);
  return status;
}
