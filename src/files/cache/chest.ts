/**
 * Keeps large things by key, each in a file of its own: what is torn, foreign or not ours to trust is not
 * there. Apart from the shelf of answers, since proving megabytes takes the engine's own hash.
 */
import crypto from 'node:crypto';
import path from 'node:path';
import { putOwn, readOwn } from './own.ts';

/** Larger ones are not kept, bytes: reading them back would take longer than they save. */
const LARGEST = 192 << 20;
/** How many of a kind are kept: as many journals as one keeper asks about. */
const PLACES = 16;
const HASH = 32;

/**
 * Rooms of some days ago and how old broods grew, by journal; results of formulas and shapes of lines, for all of
 * them. Each kind has places of its own, so that none ever takes the place of another.
 */
export type Kind = 'room' | 'paces' | 'formulas' | 'shapes';

export interface Chest {
  /** What is kept under a key; null where there is nothing, or nothing to believe. */
  get(kind: Kind, key: string): Buffer | null;
  put(kind: Kind, key: string, bytes: Uint8Array): void;
}

/** A chest in that folder, which is made when the first thing is kept. */
export function chestIn(folder: string): Chest {
  const placeOf = (kind: Kind, key: string): string => path.join(folder, `${kind}-${(sumOf([key])[0] ?? 0) % PLACES}`);
  return {
    get(kind, key) {
      try {
        const whole = readOwn(placeOf(kind, key), LARGEST);
        const bytes = whole.subarray(HASH);
        return sumOf([kind, key, bytes]).equals(whole.subarray(0, HASH)) ? bytes : null;
      } catch {
        return null;
      }
    },
    put(kind, key, bytes) {
      if (bytes.length + HASH > LARGEST) return;
      putOwn(placeOf(kind, key), Buffer.concat([sumOf([kind, key, bytes]), bytes]));
    },
  };
}

/** SHA-256 (FIPS 180-4) of parts, each behind its length so that no two lists of parts are the same bytes. */
export function sumOf(parts: readonly (string | Uint8Array)[]): Buffer {
  const hash = crypto.createHash('sha256');
  for (const part of parts) {
    hash.update(`${typeof part === 'string' ? Buffer.byteLength(part) : part.length}\n`);
    hash.update(part);
  }
  return hash.digest();
}
