/**
 * Columns that a text takes on a terminal. Most text is plain: one sign, one column. For the rest there
 * is string-width, which takes as long to load as a whole answer takes to make, so the edge loads it only
 * for an answer that needs it. Until then a sign that is not plain counts as one column.
 */

/** Our own colour codes, which take no room. */
const COLOUR = /\x1b\[[\d;]*m/g;
/** Latin, Greek and Cyrillic letters, punctuation, money and signs of the trade that are one column each. */
const PLAIN =
  /^[\n\x20-\x7e\u00a0-\u00ac\u00ae-\u02ff\u0370-\u0482\u048a-\u052f\u2010-\u2027\u2030-\u205e\u20a0-\u20bf\u2640\u2642]*$/;

let measure: ((text: string) => number) | null = null;

/** Columns of a text, without our own colour codes. */
export function widthOf(text: string): number {
  const bare = text.includes('\x1b') ? text.replaceAll(COLOUR, '') : text;
  if (PLAIN.test(bare)) return bare.length;
  return measure === null ? [...bare].length : measure(bare);
}

/** True where an answer holds text whose width is not known yet: load the widths and draw it again. */
export function needsWidths(answer: string): boolean {
  return measure === null && !PLAIN.test(answer.replaceAll(COLOUR, ''));
}

/** Loads what knows the width of every script, combining sign and pictograph. */
export async function loadWidths(): Promise<void> {
  measure ??= (await import('string-width')).default;
}
