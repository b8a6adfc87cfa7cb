/** A chest in memory that tells how often a room was taken out. */
import type { Chest } from '../../src/files/cache/chest.ts';
import { Pages } from '../../src/files/cache/pages.ts';

export interface CountingChest extends Chest {
  readonly kept: Map<string, Uint8Array>;
  found: number;
}

export function chestInMemory(): CountingChest {
  const kept = new Map<string, Uint8Array>();
  const chest: CountingChest = {
    kept,
    found: 0,
    get(kind, key) {
      const bytes = kept.get(`${kind} ${key}`);
      if (kind === 'room' && bytes !== undefined) chest.found += 1;
      return bytes === undefined ? null : Buffer.from(bytes);
    },
    look(kind, key) {
      const bytes = chest.get(kind, key);
      if (bytes === null) return null;
      // Page by page, as a long one is read that was proved before.
      return Pages.from(bytes.length, (into, from) => bytes.copy(into, 0, from, from + into.length));
    },
    put: (kind, key, bytes) => void kept.set(`${kind} ${key}`, bytes),
  };
  return chest;
}
