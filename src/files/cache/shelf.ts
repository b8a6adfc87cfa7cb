/**
 * Keeps texts by key in a folder of so many places, each a file of its own. A key may stand at either of
 * two: at one alone, two that are asked for in turn would push each other out for good. What is torn,
 * foreign or not ours to trust is not there; a text that cannot be kept is not kept.
 */
import fs from 'node:fs';
import path from 'node:path';
import { putOwn, readOwn } from './own.ts';

/** How many texts are kept. */
const PLACES = 256;
/** Longer ones are not kept, bytes. */
const LONGEST = 1 << 20;

export interface Shelf {
  /** The text kept under a key; null where there is none, or none to believe. */
  get(key: string): string | null;
  put(key: string, text: string): void;
}

/** A shelf in that folder, which is made when the first text is kept. */
export function shelfIn(folder: string): Shelf {
  return {
    get(key) {
      for (const place of placesOf(folder, key)) {
        const text = textAt(place, key);
        if (text !== null) return text;
      }
      return null;
    },
    put(key, text) {
      const bytes = closed(key, text);
      if (bytes.length <= LONGEST) putOwn(placeToTake(placesOf(folder, key), key), bytes);
    },
  };
}

type Places = readonly [string, string];

/** The two files that may hold a key's text; one and the same for one key in so many. */
export function placesOf(folder: string, key: string): Places {
  const [first, second] = digest(Buffer.from(key));
  return [placeOf(folder, first), placeOf(folder, second)];
}

function placeOf(folder: string, sum: number): string {
  return path.join(folder, `answer-${(sum >>> 0) % PLACES}`);
}

function textAt(place: string, key: string): string | null {
  try {
    return opened(readOwn(place, LONGEST), key);
  } catch {
    return null;
  }
}

/** Where the key stands already, else where nothing stands, else where what stands was put first. */
function placeToTake([first, second]: Places, key: string): string {
  return worth(second, key) < worth(first, key) ? second : first;
}

/** How little a place is to be taken: when what stands there was put, ms since 1970, if it is another's. */
function worth(place: string, key: string): number {
  try {
    const put = fs.statSync(place).mtimeMs;
    return textAt(place, key) === null ? put : -1;
  } catch {
    return 0;
  }
}

/** Key and text with what proves them whole: two sums and the length of the key, each eight hexadecimal digits. */
function closed(key: string, text: string): Buffer {
  const body = Buffer.from(`${key}${text}`);
  const head = [...digest(body), Buffer.byteLength(key)];
  return Buffer.concat([Buffer.from(head.map(hex).join('')), body]);
}

const HEAD = 24;

function opened(bytes: Buffer, key: string): string | null {
  const body = bytes.subarray(HEAD);
  const ours = Buffer.from(key);
  const head = [...digest(body), ours.length].map(hex).join('');
  if (bytes.toString('latin1', 0, HEAD) !== head) return null;
  return body.subarray(0, ours.length).equals(ours) ? body.toString('utf8', ours.length) : null;
}

function hex(value: number): string {
  return (value >>> 0).toString(16).padStart(8, '0');
}

/**
 * Two sums over all bytes (FNV-1a over four bytes at a time, and the same with another factor). They
 * find what is torn or decayed, and are no guard against forgery: that is the folder's own.
 */
function digest(bytes: Buffer): [number, number] {
  const words = new Int32Array((bytes.length + 3) >> 2);
  Buffer.from(words.buffer).set(bytes);
  let a = 0x811c9dc5 ^ bytes.length;
  let b = 0x2545f491;
  for (const word of words) {
    a = Math.imul(a ^ word, 0x01000193);
    a ^= a >>> 15;
    b = Math.imul(b ^ word, 0x5bd1e995);
    b ^= b >>> 13;
  }
  return [a, b];
}
