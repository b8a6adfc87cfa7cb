/**
 * Keeps large things by key, each in a file of its own: what is torn, foreign or not ours to trust is not
 * there. Apart from the shelf of answers, since proving megabytes takes the engine's own hash.
 */
import crypto from 'node:crypto';
import fs from 'node:fs';
import path from 'node:path';
import { quietly } from '../trouble.ts';
import { putOwn, readOwn } from './own.ts';

/** Larger ones are not kept, bytes: reading them back would take longer than they save. */
const LARGEST = 192 << 20;
/** How many of a kind are kept: as many journals as one keeper asks about. */
const MOST = 16;
const HASH = 32;
/** Bytes of the hash of a key that its file is called by. */
const NAME = 8;

/**
 * Rooms of some days ago, how old broods grew and the list of the last line jotted, by journal; results of formulas and shapes of lines, for all of
 * them. Only things of one kind push each other out.
 */
export type Kind = 'room' | 'paces' | 'rows' | 'formulas' | 'shapes';

export interface Chest {
  /** What is kept under a key; null where there is nothing, or nothing to believe. */
  get(kind: Kind, key: string): Buffer | null;
  put(kind: Kind, key: string, bytes: Uint8Array): void;
}

/** A chest in that folder, which is made when the first thing is kept. */
export function chestIn(folder: string): Chest {
  const placeOf = (kind: Kind, key: string): string =>
    path.join(folder, `${kind}-${sumOf([key]).toString('hex', 0, NAME)}`);
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
      putOwn(placeOf(kind, key), sumOf([kind, key, bytes]), bytes);
      quietly(() => {
        leaveLatest(folder, kind);
      });
    },
  };
}

/** Removes those of a kind that were put longest ago, and what a killed writer left, beyond as many as are kept. */
function leaveLatest(folder: string, kind: Kind): void {
  const files = fs.readdirSync(folder).filter((name) => name.startsWith(`${kind}-`));
  if (files.length <= MOST) return;
  const dated = files.map((name) => path.join(folder, name)).map((file) => ({ file, at: fs.statSync(file).mtimeMs }));
  for (const { file } of dated.toSorted((a, b) => b.at - a.at).slice(MOST)) fs.rmSync(file, { force: true });
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
