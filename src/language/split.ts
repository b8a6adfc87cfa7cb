/** Cuts a text into its lines. LF and CRLF end a line; a byte order mark at the start is no part of the first. */

export interface SourceLine {
  /** 1-based. */
  readonly number: number;
  /** Without its line end. */
  readonly text: string;
}

/** Every line of a text, blank ones too; a text that ends in a line end has no further line after it. */
export function* splitLines(text: string): Generator<SourceLine> {
  let from = text.charCodeAt(0) === 0xfeff ? 1 : 0;
  for (let number = 1; from < text.length; number += 1) {
    const newline = text.indexOf('\n', from);
    const end = newline < 0 ? text.length : newline;
    const cr = end > from && text.charCodeAt(end - 1) === 13 ? 1 : 0;
    yield { number, text: text.slice(from, end - cr) };
    from = end + 1;
  }
}
