/**
 * What phones do to text, read as meant: curly quotes, long dashes, odd blanks, full-width signs. Every
 * character stays one character, so that a place in the folded line is the same place in the line as
 * written (Unicode's own compatibility folding would move them).
 */

const PLAIN = /^[\t\x20-\x7e]*$/;
const HYPHEN_TO_SETTLE = /(?:^|[\t ])-|-(?:[\t ]|$)/;

/** One character for another. */
const SAME: ReadonlyMap<string, string> = new Map([
  ...pairs('“”„‟«»″〝〞＂', '"'),
  ...pairs('‘’‚‛′`´＇', "'"),
  ...pairs('\u2010\u2011', '-'),
  ...pairs('×✕✖', 'x'),
  ...pairs('°º˚', ' '),
  ...pairs('⁄∕', '/'),
  ...pairs('±～', '~'),
  ...pairs('、', ','),
  ...pairs('。', '.'),
  ...pairs('\r\v\f\u0085\u2028\u2029', ' '),
  // Marks of no width: direction, joining of emoji, byte order, variation selectors after ♂ and ♀.
  ...pairs('\u200b\u200e\u200f\u202a\u202b\u202c\u202d\u202e\u2060\u2066\u2067\u2068\u2069\ufeff\ufe0e\ufe0f', ' '),
  ['℃', 'C'],
  ['℉', 'F'],
]);

function pairs(from: string, to: string): [string, string][] {
  return [...from].map((char) => [char, to]);
}

const LONG_DASH = /[\u2012-\u2015\u2212]/;
const MINUS = /[-\u2212]/;
const BLANK = /[\t ]/;
const NUMBER_END = /[\d½⅓⅔¼¾⅕⅖⅗⅘⅙⅚⅛⅜⅝⅞]/;
const LETTER = /\p{L}/u;

/** A line with its punctuation made plain, of exactly the same length. */
export function foldPunctuation(written: string): string {
  // An arrow of two signs, as keyboards have it.
  const arrows = written.includes('>') ? written.replace(/[-=]>/g, '→ ') : written;
  // `pH=7.4`
  const line = arrows.includes('=') ? arrows.replace(/(?<=\p{L}[\t ]?)=(?=[\t ]?[\d.<>~])/gu, ' ') : arrows;
  if (PLAIN.test(line)) return HYPHEN_TO_SETTLE.test(line) ? settleDashes(line) : line;
  const plain = line.replace(/[^\t\x20-\x7e]/g, plainChar);
  return LONG_DASH.test(plain) || HYPHEN_TO_SETTLE.test(plain) ? settleDashes(plain) : plain;
}

function plainChar(char: string, at: number, line: string): string {
  if (char === '…') return isGap(line, at) ? char : '.';
  const same = SAME.get(char);
  if (same !== undefined) return same;
  const code = char.charCodeAt(0);
  // Full-width forms of ASCII.
  if (code >= 0xff01 && code <= 0xff5e) return String.fromCharCode(code - 0xfee0);
  return /\p{Zs}/u.test(char) ? ' ' : char;
}

/** An ellipsis that hangs on a word trails off, as a full stop does; one that stands by itself is in place of something. */
function isGap(line: string, at: number): boolean {
  return BLANK.test(line[at - 1] ?? ' ') || /[\p{L}\d"“”]/u.test(line[at + 1] ?? ' ');
}

/**
 * Between numbers, evenly spaced, a dash is a range; unspaced between letter and digit a hyphen; any
 * other long dash, or a hyphen with a blank beside it, is a comma; before a digit alone it is a minus.
 */
function settleDashes(line: string): string {
  return line.replace(/[-\u2012-\u2015\u2212]/g, (dash, at: number) => {
    const before = line[at - 1] ?? ' ';
    const after = line[at + 1] ?? ' ';
    const [spacedBefore, spacedAfter] = [BLANK.test(before), BLANK.test(after)];
    if (dash === '-' && !spacedBefore && !spacedAfter) return '-';
    // `counted -3`: a minus, kept as one, so that nobody reads it as 3.
    if (MINUS.test(dash) && spacedBefore && /\d/.test(after) && !NUMBER_END.test(near(line, at, -1))) return '-';
    if (spacedBefore !== spacedAfter) return ',';
    if (NUMBER_END.test(near(line, at, -1)) && NUMBER_END.test(near(line, at, 1))) return '-';
    if (spacedBefore) return ',';
    return isLetterAndDigit(before, after) ? '-' : ',';
  });
}

/** The nearest character that is no blank. A few blanks at most: nobody types ten round a dash. */
function near(line: string, at: number, step: 1 | -1): string {
  let i = at + step;
  for (let tried = 0; tried < 8 && BLANK.test(line[i] ?? ''); tried += 1) i += step;
  return line[i] ?? '';
}

function isLetterAndDigit(before: string, after: string): boolean {
  return (LETTER.test(before) && /\d/.test(after)) || (/\d/.test(before) && LETTER.test(after));
}
