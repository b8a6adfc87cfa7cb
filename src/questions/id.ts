/** Ids of rows: readable, and the same every day. */

/** `rowId('A1', 'water change')` is `a1-water-change`: letters and digits of any script, the rest as hyphens. */
export function rowId(...words: readonly string[]): string {
  return words
    .join('-')
    .toLocaleLowerCase('en')
    .replace(/[^\p{L}\p{N}]+/gu, '-')
    .replace(/^-+|-+$/g, '');
}
