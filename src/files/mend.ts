/** Completes what an interrupted write left, before anything new is written. Only for the holder of the lock. */
import { beside, isGone, readFrom, shortName, withFile, writeAll } from './bytes.ts';
import { FOR_APPENDING } from './disk.ts';
import type { Disk } from './disk.ts';
import { intentName, leftOver, linesOf, readIntent, standingOf } from './intent.ts';
import type { Intent } from './intent.ts';

/** Brings a journal and its record together. What was done, in words, if anything; throws where it cannot be. */
export function mend(disk: Disk, file: string): string | null {
  const intent = readIntent(disk, file);
  if (intent === null) return null;
  if (intent === 'broken') return setAside(disk, file);
  const stands = standingOf(disk, file, intent);
  if (stands === 'foreign') return setAside(disk, file);
  if (stands === 'finish') finish(disk, file, intent);
  disk.remove(intentName(file));
  if (stands === 'done') return null;
  return `completed what an interrupted jot had left unfinished: ${linesOf(intent).join(' / ')}`;
}

/** Writes what is still missing. Nothing that stands is taken away, so this too may be interrupted. */
function finish(disk: Disk, file: string, intent: Intent): void {
  withFile(disk, file, FOR_APPENDING, 0, (open) => {
    const { size } = disk.factsOf(open);
    const there = readFrom(disk, open, intent.offset, size - intent.offset).length;
    writeAll(disk, open, intent.bytes.subarray(there));
    disk.sync(open);
  });
}

/** Keeps the record under another name, since nobody can tell any more where its lines belong. */
function setAside(disk: Disk, file: string): string {
  for (let number = 1; number < 100; number += 1) {
    const kept = beside(file, `${shortName(file)}.unsaved${number === 1 ? '' : `-${number}`}`);
    if (!isGone(disk, kept)) continue;
    disk.rename(intentName(file), kept);
    return leftOver(file, kept);
  }
  throw new Error(`there is no free name for ${shortName(intentName(file))}`);
}
