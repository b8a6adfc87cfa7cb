/** Files of the cache: read only where nobody but this user can have written them, and put in place whole. */
import fs from 'node:fs';
import path from 'node:path';
import process from 'node:process';
import { quietly } from '../trouble.ts';

/** The content of such a file, empty where it may be another's or is longer. Throws where it cannot be read. */
export function readOwn(file: string, longest: number): Buffer {
  const open = openOwn(file);
  try {
    const { size, uid, mode } = fs.fstatSync(open);
    return isOurs(uid, mode) && size <= longest ? readAll(open, size) : Buffer.alloc(0);
  } finally {
    fs.closeSync(open);
  }
}

/** Opens a file for reading, if no link leads to it. Throws where it cannot be opened. */
export function openOwn(file: string): number {
  return fs.openSync(file, fs.constants.O_RDONLY | (fs.constants.O_NOFOLLOW ?? 0));
}

/** Whether nobody but this user can have written a file of that owner and mode. */
export function isOurs(owner: number, mode: number): boolean {
  return process.getuid === undefined || (owner === process.getuid() && (mode & 0o022) === 0);
}

/** Up to so many bytes from the beginning of an open file. */
export function readAll(open: number, size: number): Buffer {
  const bytes = Buffer.allocUnsafeSlow(size);
  return bytes.subarray(0, fs.readSync(open, bytes, 0, size, 0));
}

/** Puts a file of these parts in place, in a folder that is made if need be; what cannot be kept is not kept. */
export function putOwn(file: string, ...parts: readonly Uint8Array[]): void {
  const temporary = `${file}.${process.pid}`;
  try {
    fs.mkdirSync(path.dirname(file), { recursive: true, mode: 0o700 });
    const open = fs.openSync(temporary, 'wx', 0o600);
    try {
      for (const part of parts) fs.writeFileSync(open, part);
    } finally {
      fs.closeSync(open);
    }
    fs.renameSync(temporary, file);
  } catch {
    quietly(() => fs.rmSync(temporary, { force: true }));
  }
}
