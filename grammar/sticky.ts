/**
 * Patterns tried at one place of a line. The engine takes milliseconds over one that knows the letters of all
 * scripts, and most lines have ASCII's alone: for those the same pattern is made with these, when one first comes.
 */

/** What begins at that place of the text; null: nothing that fits. */
export type AtPlace = (text: string, offset: number) => string | null;

/** Lines of ASCII and signs that are no letters, marks or digits, nor another case of one. */
const PLAIN = /^[\0-\x7f€£¥♂♀→≈≤≥]*$/;

/**
 * A pattern, without flags of its own. Letters, marks and digits of all scripts (`\p{L}`, `\p{M}`, `\p{N}`) may
 * stand in it within brackets alone.
 */
export function sticky(source: string, options: { readonly anyCase?: boolean } = {}): AtPlace {
  const flags = options.anyCase === true ? 'iy' : 'y';
  let [plain, whole]: (RegExp | null)[] = [null, null];
  return (text, offset) => {
    const pattern = isPlain(text)
      ? (plain ??= new RegExp(inAscii(source), flags))
      : (whole ??= new RegExp(source, `u${flags}`));
    pattern.lastIndex = offset;
    return pattern.test(text) ? text.slice(offset, pattern.lastIndex) : null;
  };
}

function inAscii(source: string): string {
  return source.replaceAll('\\p{L}', 'a-zA-Z').replaceAll('\\p{M}', '').replaceAll('\\p{N}', '0-9');
}

/** The line that was asked about last: it is asked about for each of its tokens. */
let line = { text: '', plain: true };

function isPlain(text: string): boolean {
  if (line.text !== text) line = { text, plain: PLAIN.test(text) };
  return line.plain;
}

/**
 * One of many words, of which those that begin with the sign at that place are tried: `patternOf` gives the pattern of
 * a sign's, or null for none; of any sign beyond ASCII (null) that of all.
 */
export function byFirstSign(patternOf: (sign: string | null) => string | null): AtPlace {
  const known = new Map<string | null, AtPlace>();
  return (text, offset) => {
    const code = text.charCodeAt(offset);
    // Another case of a sign beyond ASCII may be within it, as that of `ſ` is.
    const sign = code < 0x80 ? String.fromCharCode(code).toLowerCase() : null;
    let own = known.get(sign);
    if (own === undefined) {
      const pattern = patternOf(sign);
      own = pattern === null ? () => null : sticky(pattern, { anyCase: true });
      known.set(sign, own);
    }
    return own(text, offset);
  };
}
