/**
 * How an image lies in its bytes. Four blocks: a head in JSON (names of the parts with their cells, all texts,
 * the key lists of all records), padding, the numbers that are no small integers (IEEE 754 binary64), and words
 * of 32 bits in the machine's own byte order. An image never leaves the machine that made it.
 *
 * A cell is one word: a tag in its low bits, the rest a value. A thing (record, list, map, set) is a word that
 * says what it is and its size, then its cells: those of a record in the order of its keys.
 */

/** What the rest of a cell is. */
export const TAG = {
  /** The integer itself. */
  integer: 0,
  /** Where the number stands in the block of numbers. */
  number: 1,
  /** Where the text stands in the head. */
  text: 2,
  /** Which of `CONSTANTS`. */
  constant: 3,
  /** At which word a thing begins. */
  thing: 4,
} as const;
export const TAG_BITS = 3;

export const CONSTANTS = [undefined, null, false, true] as const;

export const KIND = { record: 0, list: 1, map: 2, set: 3 } as const;
const KIND_BITS = 2;
/** Set in the first word of a thing that several cells lead to: opened, it is one thing again. */
export const SHARED = 1 << KIND_BITS;
/** Behind kind and `SHARED`: entries of a map, elements of a list or set, or the number of a record's key list. */
export const SIZE_BITS = KIND_BITS + 1;

/** The kind in the first word of a thing. */
export function kindOf(first: number): number {
  return first & (SHARED - 1);
}

/** The first block. */
export interface Head {
  /** Cells of the parts, by name. */
  readonly parts: Readonly<Record<string, number>>;
  readonly texts: readonly string[];
  readonly shapes: readonly (readonly string[])[];
  /** How many numbers and words follow. */
  readonly numbers: number;
  readonly words: number;
}

/** Bytes before the head: its length. */
export const BEFORE_HEAD = 4;
const ALIGNED = 8;

/** Where the block behind a head of that length begins, so that numbers can be looked at in place. */
export function behindHead(length: number): number {
  return Math.ceil((BEFORE_HEAD + length) / ALIGNED) * ALIGNED;
}
