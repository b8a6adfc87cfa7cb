/** Whole files and whole writes over the port, where the system may do half of what it was asked. */
import { dirname, basename, join } from 'node:path';
import { FOR_READING, NEW_FILE, sameFile } from './disk.ts';
import type { Disk, Facts } from './disk.ts';
import { codeOf, quietly } from './trouble.ts';

/** Opens, runs, and closes whatever happens. */
export function withFile<T>(disk: Disk, path: string, flags: number, mode: number, run: (file: number) => T): T {
  const file = disk.open(path, flags, mode);
  let done = false;
  try {
    const result = run(file);
    done = true;
    return result;
  } finally {
    if (done) disk.close(file);
    else quietly(() => disk.close(file));
  }
}

/** Bytes of an open file from one place on, as many as there are. */
export function readFrom(disk: Disk, file: number, from: number, length: number): Buffer {
  const bytes = Buffer.alloc(Math.max(0, length));
  let at = 0;
  while (at < bytes.length) {
    const got = disk.read(file, bytes.subarray(at), from + at);
    if (got === 0) break;
    at += got;
  }
  return bytes.subarray(0, at);
}

const BLOCK = 1 << 18;

/** The bytes of an open file: those that were read before, where it holds them still, without taking room for them anew. */
function readLike(disk: Disk, file: number, before: Buffer): Buffer {
  const block = Buffer.allocUnsafe(Math.min(BLOCK, before.length));
  for (let at = 0; at < before.length;) {
    const got = disk.read(file, block.subarray(0, before.length - at), at);
    if (got === 0) return before.subarray(0, at);
    if (!block.subarray(0, got).equals(before.subarray(at, at + got))) {
      const rest = readFrom(disk, file, at + got, before.length - at - got);
      return Buffer.concat([before.subarray(0, at), block.subarray(0, got), rest]);
    }
    at += got;
  }
  return before;
}

/** A file's bytes, and its facts when they were read. Only a plain file has them. `like` is given again where it holds that. */
export function readWhole(disk: Disk, path: string, like: Buffer | null = null): { bytes: Buffer; facts: Facts } {
  return withFile(disk, path, FOR_READING, 0, (file) => {
    const facts = disk.factsOf(file);
    if (facts.kind !== 'file')
      throw new NoPlainFile(facts.kind === 'folder' ? 'it is a folder' : 'it is no plain file');
    const bytes = like?.length === facts.size ? readLike(disk, file, like) : readFrom(disk, file, 0, facts.size);
    return { bytes, facts };
  });
}

export class NoPlainFile extends Error {}

/** Writes all of it. A short write is no error of the system until the next one says why. */
export function writeAll(disk: Disk, file: number, bytes: Uint8Array): void {
  let at = 0;
  while (at < bytes.length) {
    const wrote = disk.write(file, bytes.subarray(at));
    if (wrote <= 0) throw new Error('the system wrote nothing and gave no reason');
    at += wrote;
  }
}

/** A new file with this content, under a name that nobody else uses. Removed again where it fails. */
export function writeNew(disk: Disk, path: string, bytes: Uint8Array, mode: number, lasting: boolean): void {
  try {
    withFile(disk, path, NEW_FILE, mode, (file) => {
      writeAll(disk, file, bytes);
      if (lasting) disk.sync(file);
    });
  } catch (error) {
    if (codeOf(error) !== 'EEXIST') quietly(() => disk.remove(path));
    throw error;
  }
}

/** Not every system can sync a folder; where it cannot, there is nothing to be done about it. */
const NO_FOLDER_SYNC = new Set(['EISDIR', 'EPERM', 'EACCES', 'EINVAL', 'ENOTSUP', 'EOPNOTSUPP', 'ENOSYS', 'EBADF']);

/** Makes the names in a file's folder last through a loss of power. */
export function syncFolderOf(disk: Disk, path: string): void {
  try {
    withFile(disk, dirname(path), FOR_READING, 0, (folder) => disk.sync(folder));
  } catch (error) {
    if (!NO_FOLDER_SYNC.has(codeOf(error) ?? '')) throw error;
  }
}

/** Whether this very file stands there: a system may have done what it said had failed. Null: cannot be seen. */
export function inPlace(disk: Disk, made: Facts, path: string): boolean | null {
  try {
    return sameFile(made, disk.facts(path));
  } catch (error) {
    return codeOf(error) === 'ENOENT' ? false : null;
  }
}

/** Surely not there; false also where that could not be seen. */
export function isGone(disk: Disk, path: string): boolean {
  try {
    disk.facts(path);
    return false;
  } catch (error) {
    return codeOf(error) === 'ENOENT';
  }
}

/** Surely there; false also where that could not be seen. */
export function isThere(disk: Disk, path: string): boolean {
  return quietly(() => disk.facts(path)) === null;
}

/** The name of a file without its folders, for messages. */
export function shortName(path: string): string {
  return basename(path);
}

/** Another file in the same folder. */
export function beside(path: string, name: string): string {
  return join(dirname(path), name);
}
