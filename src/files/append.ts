/**
 * Adds lines to a journal so that no kill, full disk or second writer costs a line, old or new. Under
 * the lock: mend, let the caller decide what to write, record the intent, write once, sync, and only
 * then say so. A line counts as saved exactly if it is in the journal or in the record beside it.
 */
import { isGone, isThere, readFrom, readWhole, shortName, syncFolderOf, writeAll } from './bytes.ts';
import { FOR_APPENDING, sameFile } from './disk.ts';
import type { Disk, Facts } from './disk.ts';
import { ending, withEnds } from './ending.ts';
import { intentName, stageIntent, standing } from './intent.ts';
import type { Intent } from './intent.ts';
import { dropLock, takeLock } from './lock.ts';
import type { Lock } from './lock.ts';
import type { Machine } from './machine.ts';
import { mend } from './mend.ts';
import { readText } from './read.ts';
import type { Got } from './read.ts';
import { sweep } from './temporary.ts';
import { codeOf, quietly, reason } from './trouble.ts';

/** What to add, decided while nobody else can write; null to add nothing after all. */
export type Compose = (journal: { read(): Got }) => readonly string[] | null;

export interface Saved {
  readonly saved: true;
  /** What went wrong beside it, or was put right: `saved, but …`. */
  readonly notices: readonly string[];
}

export interface NotSaved {
  readonly saved: false;
  /** Null where the caller decided so. */
  readonly says: string | null;
  readonly notices: readonly string[];
  /** The disk failed so thoroughly that nobody can tell. */
  readonly unsure?: true;
}

export type Appending = Saved | NotSaved;

/** Adds whole lines, without their line ends, at the end of a journal that exists. */
export function appendLines(disk: Disk, machine: Machine, path: string, name: string, compose: Compose): Appending {
  let file: string;
  try {
    file = disk.real(path);
    const { kind } = disk.facts(file);
    if (kind !== 'file') return notSaved(`${name} is ${kind === 'folder' ? 'a folder' : 'no plain file'}`);
  } catch (error) {
    return notSaved(codeOf(error) === 'ENOENT' ? `there is no ${name}` : `${name} cannot be written: ${reason(error)}`);
  }
  const locking = takeLock(disk, machine, file);
  if (!locking.ok) return notSaved(locking.says);
  let dropped: string | null = null;
  let result: Appending;
  try {
    result = underLock({ disk, file, name, lock: locking.lock, notices: [] }, compose);
    sweep(disk, machine, file, locking.lock.holder);
  } finally {
    dropped = dropLock(disk, locking.lock);
  }
  return dropped === null ? result : { ...result, notices: [...result.notices, dropped] };
}

interface Job {
  readonly disk: Disk;
  readonly file: string;
  readonly name: string;
  readonly lock: Lock;
  readonly notices: string[];
}

function notSaved(says: string, notices: readonly string[] = []): NotSaved {
  return { saved: false, says, notices };
}

/** An editor that saves over a new file while we write is seen only afterwards; more often than this is no editor. */
const MOST_REPEATS = 5;

function underLock(job: Job, compose: Compose): Appending {
  const { disk, file, name, notices } = job;
  try {
    const mended = mend(disk, file);
    if (mended !== null) notices.push(mended);
  } catch (error) {
    return notSaved(
      `${name} is unchanged: what an interrupted jot may have left in ${shortName(intentName(file))} could not be seen to (${reason(error)})`,
    );
  }
  const lines = compose({ read: () => readText(disk, file, name) });
  if (lines === null || lines.length === 0) return { saved: false, says: null, notices };
  for (let tries = 1; ; tries += 1) {
    const written = writeOnce(job, lines);
    if (written !== 'again') return written;
    if (tries === MOST_REPEATS)
      return notSaved(`${name} is being replaced again and again by another program`, notices);
  }
}

function writeOnce(job: Job, lines: readonly string[]): Appending | 'again' {
  const { disk, file, name, notices } = job;
  let open: number;
  try {
    open = disk.open(file, FOR_APPENDING, 0);
  } catch (error) {
    return notSaved(`${name} cannot be written: ${reason(error)}`, notices);
  }
  try {
    return writeTo(job, open, lines);
  } finally {
    quietly(() => disk.close(open));
  }
}

function writeTo(job: Job, open: number, lines: readonly string[]): Appending | 'again' {
  const { disk, file, name, lock, notices } = job;
  let before: Facts;
  let intent: Intent;
  let staged: string;
  try {
    before = disk.factsOf(open);
    intent = { offset: before.size, bytes: withEnds(lines, ending(disk, open, before.size)) };
    staged = stageIntent(disk, file, lock.holder, intent, (before.mode & 0o777) | 0o600);
  } catch (error) {
    return notSaved(`nothing was written to ${name}: ${reason(error)}`, notices);
  }
  let recorded = false;
  try {
    disk.rename(staged, intentName(file));
    recorded = true;
    syncFolderOf(disk, file);
    writeAll(disk, open, intent.bytes);
    disk.sync(open);
  } catch (error) {
    return undo(job, open, intent, recorded, error);
  } finally {
    if (!recorded) quietly(() => disk.remove(staged));
  }
  return settle(job, before, intent);
}

/** Takes back what was begun. Where even that fails the record stays, and so the lines are kept after all. */
function undo(job: Job, open: number, intent: Intent, recorded: boolean, cause: unknown): Appending {
  const { disk, file, name, notices } = job;
  const record = intentName(file);
  const failed = quietly(() => takeBack(job, open, intent));
  if (failed === null || isGone(disk, record)) {
    quietly(() => syncFolderOf(disk, file));
    return notSaved(`nothing was written to ${name}: ${reason(cause)}`, notices);
  }
  if (!recorded && !isThere(disk, record)) {
    const says = `nothing can be read or written beside ${name} any more (${failed}): look at its last lines before you write again`;
    return { saved: false, says, notices, unsure: true };
  }
  const why = `${reason(cause)}, then ${failed}`;
  const kept = `saved, but only in ${shortName(record)} so far (${why}); the next jot puts it into ${name}: do not write it again`;
  return { saved: true, notices: [...notices, kept] };
}

function takeBack({ disk, file }: Job, open: number, intent: Intent): void {
  const { size } = disk.factsOf(open);
  const behind = readFrom(disk, open, intent.offset, size - intent.offset);
  if (behind.length > intent.bytes.length || standing(size, behind, intent) === 'foreign') {
    throw new Error('another program wrote to it at the same moment');
  }
  if (size > intent.offset) {
    disk.truncate(open, intent.offset);
    disk.sync(open);
  }
  disk.remove(intentName(file));
}

/** The lines are in the file that was opened: see that this still is the journal, and clear up. */
function settle(job: Job, before: Facts, intent: Intent): Appending | 'again' {
  const { disk, file, name, notices } = job;
  let replaced: boolean;
  try {
    replaced = !sameFile(before, disk.facts(file)) && !isIn(disk, file, intent);
  } catch (error) {
    // The record stays: whatever takes the journal's place, the next write finds the lines there or not.
    const unseen = `saved, but whether ${name} is still in its place could not be seen (${reason(error)})`;
    return { saved: true, notices: [...notices, unseen] };
  }
  const left = quietly(() => disk.remove(intentName(file)));
  if (replaced && left === null) return 'again';
  if (replaced) notices.push(`saved, but ${name} was replaced meanwhile; the next jot puts the lines into the new one`);
  else if (left !== null)
    notices.push(`saved, but ${shortName(intentName(file))} could not be removed (${left}); it does no harm`);
  return { saved: true, notices };
}

/** A new file may have been made from the old one after our line was in it. */
function isIn(disk: Disk, file: string, intent: Intent): boolean {
  const { bytes } = readWhole(disk, file);
  return standing(bytes.length, bytes.subarray(Math.min(intent.offset, bytes.length)), intent) === 'done';
}
