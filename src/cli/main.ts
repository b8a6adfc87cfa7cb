/**
 * The edge of the process: hands the real world to `program.ts` and ends with its status. A pipe that
 * the reader has closed is no error.
 */
import process from 'node:process';
import { chestIn } from '../files/cache/chest.ts';
import type { Chest } from '../files/cache/chest.ts';
import { shelfIn } from '../files/cache/shelf.ts';
import type { Shelf } from '../files/cache/shelf.ts';
import { reason } from '../files/trouble.ts';
import type { Context } from './context.ts';
import { EXIT } from './exit.ts';
import { takeAlong } from './footing/worked.ts';
import { memoryFolder, thisBuild } from './memory/build.ts';
import { keyHere } from './memory/here.ts';
import { run } from './program.ts';
import { tuneForShortRun } from './shortrun.ts';
import { realContext } from './world.ts';

/** A fault of ours, as sysexits.h numbers it; 1 to 3 mean something to scripts. */
const OUR_FAULT = 70;

/** Commands that are there to write: nothing of theirs could be said again. */
const WRITERS = new Set(['jot', 'settle', 'start', 'tidy']);

tuneForShortRun();

process.stdout.on('error', (error: NodeJS.ErrnoException) => {
  if (error.code === 'EPIPE') process.exit();
  process.stderr.write(`the answer could not be written: ${reason(error)}\n`);
  process.exit(EXIT.noFile);
});
// Nobody is left to tell.
process.stderr.on('error', () => undefined);

answer(process.argv.slice(2)).then(
  (status) => {
    process.exitCode = status;
  },
  (error: unknown) => {
    const told = error instanceof Error ? (error.stack ?? error.message) : String(error);
    process.stderr.write(`this is a fault in tankside itself\n${told}\n`);
    process.exitCode = OUR_FAULT;
  },
);

/** Runs the command line; what can be said again, and what can be read on from, is kept for the next time. */
async function answer(argv: readonly string[]): Promise<number> {
  const [build, folder] = [thisBuild(), memoryFolder()];
  if (build === null || folder === null) return await run(argv, realContext(null, null));
  const rooms = roomsOf(build, folder);
  const shelf = shelfIn(folder);
  const status = await remembering(argv, realContext(rooms, shelf), shelf, keyHere(build));
  takeAlong(rooms);
  return status;
}

async function remembering(argv: readonly string[], context: Context, shelf: Shelf, key: string): Promise<number> {
  if (argv.some((word) => WRITERS.has(word))) return await run(argv, context);
  const { watch } = await import('./memory/remember.ts');
  const watched = watch(context, shelf, key, () => new Date());
  const status = await run(argv, watched.context);
  await watched.keep(status);
  return status;
}

/** Rooms kept by this build under this engine: another may hold them in another form. */
function roomsOf(build: string, folder: string): Chest {
  const chest = chestIn(folder, Date.now);
  const key = (name: string): string => `${build} ${process.version} ${name}`;
  return {
    get: (kind, name) => chest.get(kind, key(name)),
    look: (kind, name) => chest.look(kind, key(name)),
    put: (kind, name, bytes) => chest.put(kind, key(name), bytes),
  };
}
