/**
 * The few calls that we make on the file system, as an interface, so that tests can make any one of
 * them fail. Same meaning as in node:fs: synchronous, and an error is thrown with its `code`.
 */
import fs from 'node:fs';

/** What a file is and when it was last touched: enough to tell whether it is still the same. */
export interface Facts {
  readonly kind: 'file' | 'folder' | 'other';
  readonly device: bigint;
  readonly inode: bigint;
  readonly size: number;
  readonly changed: bigint;
  readonly modified: bigint;
  readonly mode: number;
  readonly owner: number;
  readonly group: number;
}

export interface Disk {
  open(path: string, flags: number, mode: number): number;
  close(file: number): void;
  /** Bytes read into `into` from `position` on; 0 at the end. */
  read(file: number, into: Uint8Array, position: number): number;
  /** Bytes written at the end, or at the place where the file stands; perhaps fewer than asked for. */
  write(file: number, bytes: Uint8Array): number;
  truncate(file: number, size: number): void;
  sync(file: number): void;
  factsOf(file: number): Facts;
  /** Follows symbolic links. */
  facts(path: string): Facts;
  setMode(file: number, mode: number): void;
  setOwner(file: number, owner: number, group: number): void;
  link(from: string, to: string): void;
  rename(from: string, to: string): void;
  remove(path: string): void;
  list(folder: string): readonly string[];
  /** Throws where no folder has that name; a link to nothing has one. */
  named(path: string): void;
  /** The path with every symbolic link resolved. */
  real(path: string): string;
}

/** Reading never waits for a pipe's other end, and never makes a terminal ours. Windows knows neither. */
const QUIETLY = (fs.constants.O_NONBLOCK ?? 0) | (fs.constants.O_NOCTTY ?? 0);

export const FOR_READING = fs.constants.O_RDONLY | QUIETLY;
export const FOR_APPENDING = fs.constants.O_RDWR | fs.constants.O_APPEND | QUIETLY;
export const NEW_FILE = fs.constants.O_WRONLY | fs.constants.O_CREAT | fs.constants.O_EXCL;

function toFacts(stats: fs.BigIntStats): Facts {
  return {
    kind: stats.isFile() ? 'file' : stats.isDirectory() ? 'folder' : 'other',
    device: stats.dev,
    inode: stats.ino,
    size: Number(stats.size),
    changed: stats.ctimeNs,
    modified: stats.mtimeNs,
    mode: Number(stats.mode & 0o7777n),
    owner: Number(stats.uid),
    group: Number(stats.gid),
  };
}

export const theDisk: Disk = {
  open: (path, flags, mode) => fs.openSync(path, flags, mode),
  close: (file) => fs.closeSync(file),
  read: (file, into, position) => fs.readSync(file, into, 0, into.length, position),
  write: (file, bytes) => fs.writeSync(file, bytes),
  truncate: (file, size) => fs.ftruncateSync(file, size),
  sync: (file) => fs.fsyncSync(file),
  factsOf: (file) => toFacts(fs.fstatSync(file, { bigint: true })),
  facts: (path) => toFacts(fs.statSync(path, { bigint: true })),
  setMode: (file, mode) => fs.fchmodSync(file, mode),
  setOwner: (file, owner, group) => fs.fchownSync(file, owner, group),
  link: (from, to) => fs.linkSync(from, to),
  rename: (from, to) => fs.renameSync(from, to),
  remove: (path) => fs.unlinkSync(path),
  list: (folder) => fs.readdirSync(folder),
  named: (path) => void fs.lstatSync(path),
  real: (path) => fs.realpathSync.native(path),
};

/** The same file with the same content, as far as the file system tells. */
export function sameFacts(a: Facts, b: Facts): boolean {
  return sameFile(a, b) && a.size === b.size && a.modified === b.modified && a.changed === b.changed;
}

/** True where both are one file, under whatever names. */
export function sameFile(a: Facts, b: Facts): boolean {
  return a.device === b.device && a.inode === b.inode;
}
