/** A chest in memory that tells how often something was taken out or put in. */
import type { Chest } from '../../src/files/cache/chest.ts';

export interface CountingChest extends Chest {
  readonly kept: Map<string, Uint8Array>;
  found: number;
  put(key: string, bytes: Uint8Array): void;
}

export function chestInMemory(): CountingChest {
  const kept = new Map<string, Uint8Array>();
  const chest: CountingChest = {
    kept,
    found: 0,
    get(key) {
      const bytes = kept.get(key);
      if (bytes !== undefined) chest.found += 1;
      return bytes === undefined ? null : Buffer.from(bytes);
    },
    put: (key, bytes) => void kept.set(key, bytes),
  };
  return chest;
}
