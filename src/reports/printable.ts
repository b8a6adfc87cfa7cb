/**
 * Journal text made harmless for a terminal. A journal may come from anywhere: an escape sequence in a
 * remark must not move the cursor, and a direction mark must not reorder the line it stands in.
 */

/**
 * Of a pattern's class of signs: line and paragraph separators and the marks that override the direction of text
 * (Unicode's Zl, Zp and Bidi_Control), spelled out because the engine takes a millisecond to look them up.
 */
export const DIRECTING = String.raw`\u061c\u200e\u200f\u2028-\u202e\u2066-\u2069`;
/** With the controls (Unicode's Cc). */
const ACTING = String.raw`\0-\x1f\x7f-\x9f` + DIRECTING;

const HARMFUL = new RegExp(`[${ACTING}]`, 'g');

/** The text with a blank for every tab and `?` for everything that would act instead of being shown. */
export function printable(text: string): string {
  return text.replace(HARMFUL, (sign) => (sign === '\t' ? ' ' : '?'));
}

const HARMFUL_OR_COLOUR = new RegExp(String.raw`\x1b\[[\d;]*m|[${ACTING}]`, 'g');

/** A whole answer made harmless: keeps its line ends, and colours where it may have any. */
export function printableAnswer(text: string, coloured: boolean): string {
  return text.replace(HARMFUL_OR_COLOUR, (sign) => {
    if (sign === '\n') return sign;
    if (sign.length > 1) return coloured ? sign : '';
    return sign === '\t' ? ' ' : '?';
  });
}
