/** Ids of rows: readable, and the same every day. */

/** `rowId('A1', 'water change')` is `a1-water-change`: letters and digits of any script, the rest as hyphens. */
export function rowId(...words: readonly string[]): string {
  const text = words.join('-').toLowerCase();
  // The engine takes a millisecond to make a pattern that knows the letters of all scripts; few names need it.
  const joined = /^[\0-\x7f]*$/.test(text) ? text.replace(/[^a-z0-9]+/g, '-') : text.replace(/[^\p{L}\p{N}]+/gu, '-');
  return joined.replace(/^-+|-+$/g, '');
}
