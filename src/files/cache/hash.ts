/** SHA-256 of a file's content. Loaded on demand: Node's crypto takes longer to load than an answer to print. */
import crypto from 'node:crypto';
import { FOR_READING } from '../disk.ts';
import type { Disk } from '../disk.ts';

const BLOCK = 1 << 20;

/** The hash of a plain file, read block by block; null where it cannot be read. */
export function hashFile(disk: Disk, path: string): string | null {
  try {
    const file = disk.open(path, FOR_READING, 0);
    try {
      if (disk.factsOf(file).kind !== 'file') return null;
      return hashOpen(disk, file);
    } finally {
      disk.close(file);
    }
  } catch {
    return null;
  }
}

function hashOpen(disk: Disk, file: number): string {
  const hash = crypto.createHash('sha256');
  const block = Buffer.allocUnsafe(BLOCK);
  for (let at = 0; ;) {
    const got = disk.read(file, block, at);
    if (got === 0) return hash.digest('hex');
    hash.update(block.subarray(0, got));
    at += got;
  }
}
