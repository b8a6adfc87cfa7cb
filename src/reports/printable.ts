/**
 * Journal text made harmless for a terminal. A journal may come from anywhere: an escape sequence in a
 * remark must not move the cursor, and a direction mark must not reorder the line it stands in.
 */

/** Controls, line and paragraph separators, and the marks that override the direction of text. */
const HARMFUL = /[\p{Cc}\p{Zl}\p{Zp}\p{Bidi_Control}]/gu;

/** The text with a blank for every tab and `?` for everything that would act instead of being shown. */
export function printable(text: string): string {
  return text.replace(HARMFUL, (sign) => (sign === '\t' ? ' ' : '?'));
}

const HARMFUL_OR_COLOUR = /\x1b\[[\d;]*m|[\p{Cc}\p{Zl}\p{Zp}\p{Bidi_Control}]/gu;

/** A whole answer made harmless: keeps its line ends, and colours where it may have any. */
export function printableAnswer(text: string, coloured: boolean): string {
  return text.replace(HARMFUL_OR_COLOUR, (sign) => {
    if (sign === '\n') return sign;
    if (sign.length > 1) return coloured ? sign : '';
    return sign === '\t' ? ' ' : '?';
  });
}
