/**
 * Keeps large things by key, each in a file of its own: what is torn, foreign or not ours to trust is not
 * there. Apart from the shelf of answers, since proving megabytes takes the engine's own hash.
 */
import crypto from 'node:crypto';
import fs from 'node:fs';
import path from 'node:path';
import { theDisk } from '../disk.ts';
import { quietly } from '../trouble.ts';
import { isOurs, openOwn, putOwn, readAll, readOwn } from './own.ts';
import { Pages } from './pages.ts';
import { settled, stampOf } from './rests.ts';

/** Larger ones are not kept, bytes: reading them back would take longer than they save. */
const LARGEST = 192 << 20;
/** Shorter ones are read whole each time, bytes: that takes no longer than to look for a proof. */
const LONG = 1 << 20;
/** How many of a kind are kept: as many journals as one keeper asks about. */
const MOST = 16;
const HASH = 32;
/** Bytes of the hash of a key that its file is called by. */
const NAME = 8;

/**
 * Rooms of some days ago, how old broods grew and the list of the last line jotted, by journal; results of formulas
 * and shapes of lines, for all of them; what proves a long one of these. Only things of one kind push each other out.
 */
export type Kind = 'room' | 'paces' | 'rows' | 'formulas' | 'shapes' | 'proof';

export interface Chest {
  /** What is kept under a key; null where there is nothing, or nothing to believe. */
  get(kind: Kind, key: string): Buffer | null;
  /** The same, of which only the pages that are looked at need be read. */
  look(kind: Kind, key: string): Pages | null;
  put(kind: Kind, key: string, bytes: Uint8Array): void;
}

/** A chest in that folder, which is made when the first thing is kept. `now` gives milliseconds since 1970. */
export function chestIn(folder: string, now: () => number): Chest {
  const placeOf = (kind: Kind, key: string): string =>
    path.join(folder, `${kind}-${sumOf([key]).toString('hex', 0, NAME)}`);
  const chest: Chest = {
    get(kind, key) {
      try {
        return proved(readOwn(placeOf(kind, key), LARGEST), kind, key);
      } catch {
        return null;
      }
    },
    look(kind, key) {
      try {
        return lookInto(chest, placeOf(kind, key), kind, key, now());
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
  return chest;
}

function proved(whole: Buffer, kind: Kind, key: string): Buffer | null {
  const bytes = whole.subarray(HASH);
  return sumOf([kind, key, bytes]).equals(whole.subarray(0, HASH)) ? bytes : null;
}

/**
 * What was proved by all of its bytes once, well after it was put there, is known by the file's facts from then on
 * and read page by page. The file stays open until the process ends: its name may lead to another one by then.
 */
function lookInto(chest: Chest, place: string, kind: Kind, key: string, seen: number): Pages | null {
  const file = openOwn(place);
  let late = false;
  try {
    const facts = theDisk.factsOf(file);
    if (!isOurs(facts.owner, facts.mode) || facts.size > LARGEST) return null;
    const [stamp, of] = [stampOf(facts), `${kind} ${key}`];
    late = facts.size >= LONG && chest.get('proof', of)?.toString() === stamp.join(' ');
    if (late) return Pages.from(facts.size - HASH, (into, from) => theDisk.read(file, into, HASH + from));
    const bytes = proved(readAll(file, facts.size), kind, key);
    if (bytes !== null && facts.size >= LONG && settled(stamp, seen)) {
      quietly(() => {
        // Facts outlive a loss of power; what they are to prove has to as well. Windows syncs no file that is open for
        // reading, nor replaces one that stays open: it is read whole each time there.
        theDisk.sync(file);
        chest.put('proof', of, Buffer.from(stamp.join(' ')));
      });
    }
    return bytes === null ? null : Pages.of(bytes);
  } finally {
    if (!late) theDisk.close(file);
  }
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
