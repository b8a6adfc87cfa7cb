/**
 * One writer at a time. The lock is a file that appears complete (written under another name, then
 * linked) and says who holds it. What a dead process left is taken over under a claim, which is a lock
 * of its own: so two that find the same dead holder cannot remove each other's new lock. A claim whose
 * maker died is taken over in the same way, one name further.
 */
import { readFrom, shortName, withFile, writeAll, writeNew } from './bytes.ts';
import { FOR_READING, NEW_FILE } from './disk.ts';
import type { Disk } from './disk.ts';
import type { Holder, Machine } from './machine.ts';
import { temporaryName } from './temporary.ts';
import { codeOf, quietly, reason } from './trouble.ts';

export interface Lock {
  readonly path: string;
  readonly holder: Holder;
}

export type Locking = { readonly ok: true; readonly lock: Lock } | { readonly ok: false; readonly says: string };

/** How long to wait for another writer, in milliseconds. A write takes a few. */
export const PATIENCE = 15_000;

const DEEPEST_CLAIM = 8;

/** Tries without a pause, after which something odd stands in the lock's place. */
const MANY = 1000;

/** The lock that stands beside a journal while one writer has it. */
export function lockName(file: string): string {
  return `${file}.lock`;
}

/** Takes the lock of a file, waiting for a living holder, and past a dead one. */
export function takeLock(disk: Disk, machine: Machine, file: string, patience = PATIENCE): Locking {
  return take(disk, machine, file, lockName(file), patience, 0);
}

/** Gives the lock back; a sentence where that did not work. */
export function dropLock(disk: Disk, lock: Lock): string | null {
  const failed = quietly(() => {
    if (found(disk, lock.path)?.holder?.nonce === lock.holder.nonce) disk.remove(lock.path);
  });
  return failed === null ? null : `${shortName(lock.path)} could not be removed (${failed}); the next write sees to it`;
}

function take(disk: Disk, machine: Machine, file: string, path: string, patience: number, depth: number): Locking {
  const me = machine.me();
  const temporary = temporaryName(file, me);
  const said = Buffer.from(`${JSON.stringify({ ...me, about: 'tankside is writing' })}\n`);
  let waited = 0;
  try {
    writeNew(disk, temporary, said, 0o644, false);
    for (let tries = 0; ; tries += 1) {
      if (place(disk, temporary, path, said)) return { ok: true, lock: { path, holder: me } };
      const other = found(disk, path);
      if (other === null && tries < MANY) continue;
      if (other?.holder?.nonce === me.nonce) return { ok: true, lock: { path, holder: me } };
      const holder = other?.holder ?? null;
      const dead = holder !== null && machine.fate(holder) === 'dead';
      if (dead && depth < DEEPEST_CLAIM && tries < MANY && bury(disk, machine, file, path, holder, depth)) continue;
      if (waited >= patience) return { ok: false, says: busy(file, path, holder) };
      const nap = Math.min(40, 2 + tries) * (0.5 + ((tries * 7 + me.pid) % 10) / 10);
      machine.pause(nap);
      waited += nap;
    }
  } catch (error) {
    // The system may have done what it said had failed.
    dropLock(disk, { path, holder: me });
    return { ok: false, says: noLock(file, error) };
  } finally {
    quietly(() => disk.remove(temporary));
  }
}

/** True if the lock is now ours, false if another's stands there. */
function place(disk: Disk, temporary: string, path: string, said: Uint8Array): boolean {
  try {
    disk.link(temporary, path);
    return true;
  } catch (error) {
    if (codeOf(error) === 'EEXIST') return false;
    if (!hasNoLinks(error)) throw error;
  }
  return placeWithoutLinks(disk, path, said);
}

/**
 * What is said where there are no hard links: on memory cards and some shared folders. Windows says `EISDIR` there (Node
 * issue 65817), a phone with Android `EACCES` in every folder (Termux app issue 837). A folder in which we may write
 * nothing at all is found out at the next call.
 */
const NO_LINKS = new Set(['EPERM', 'EACCES', 'EISDIR', 'ENOSYS', 'ENOTSUP', 'EOPNOTSUPP', 'EMLINK']);

/** True where the file system has no hard links, so that a lock is taken another way. */
export function hasNoLinks(error: unknown): boolean {
  return NO_LINKS.has(codeOf(error) ?? '');
}

function placeWithoutLinks(disk: Disk, path: string, said: Uint8Array): boolean {
  let file: number;
  try {
    file = disk.open(path, NEW_FILE, 0o644);
  } catch (error) {
    if (codeOf(error) === 'EEXIST') return false;
    throw error;
  }
  try {
    writeAll(disk, file, said);
    return true;
  } catch (error) {
    quietly(() => disk.remove(path));
    throw error;
  } finally {
    quietly(() => disk.close(file));
  }
}

interface Found {
  /** Null where the file says nothing that we understand: half written, or not ours. */
  readonly holder: Holder | null;
}

/** Who holds a lock; null where nobody does. */
function found(disk: Disk, path: string): Found | null {
  try {
    return withFile(disk, path, FOR_READING, 0, (file) => ({
      holder: toHolder(readFrom(disk, file, 0, 2000).toString()),
    }));
  } catch (error) {
    if (codeOf(error) === 'ENOENT') return null;
    throw error;
  }
}

/** Removes a dead holder's lock, if it is still that one. True where trying again is worth it. */
function bury(disk: Disk, machine: Machine, file: string, path: string, other: Holder, depth: number): boolean {
  const stale = other.nonce;
  const claim = take(disk, machine, file, `${path}-${stale}`, 200, depth + 1);
  if (!claim.ok) return false;
  try {
    // Only the holder of this claim may remove that lock, so it cannot change between these two lines.
    if (found(disk, path)?.holder?.nonce === stale) disk.remove(path);
    return true;
  } finally {
    dropLock(disk, claim.lock);
  }
}

function toHolder(text: string): Holder | null {
  const said = parsed(text);
  if (said === null) return null;
  const { pid, start, boot, space, host, since, nonce } = said;
  if (typeof pid !== 'number' || typeof since !== 'number' || typeof host !== 'string') return null;
  if (typeof nonce !== 'string' || !/^[0-9a-z]{8,80}$/.test(nonce)) return null;
  return { pid, start: textOrNull(start), boot: textOrNull(boot), space: textOrNull(space), host, since, nonce };
}

function textOrNull(value: unknown): string | null {
  return typeof value === 'string' ? value : null;
}

function parsed(text: string): Readonly<Record<string, unknown>> | null {
  try {
    const value: unknown = JSON.parse(text);
    return typeof value === 'object' && value !== null ? { ...value } : null;
  } catch {
    return null;
  }
}

function busy(file: string, path: string, holder: Holder | null): string {
  const who = holder === null ? 'another program' : `process ${holder.pid} on ${holder.host}`;
  return `${shortName(file)} is being written by ${who}; if nothing is, remove ${shortName(path)} beside it and try again`;
}

function noLock(file: string, error: unknown): string {
  const code = codeOf(error);
  if (code === 'EACCES' || code === 'EROFS' || code === 'EPERM')
    return `the folder of ${shortName(file)} can only be read, and a line is added only where its lock can stand beside it`;
  return `${shortName(file)} could not be locked: ${reason(error)}`;
}
