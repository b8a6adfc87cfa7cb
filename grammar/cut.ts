/**
 * Cuts a line into tokens: at each place the first type of `RAW_TOKENS` that fits. The toolkit's lexer of those
 * types does the same, and `tests/grammar/cut.test.ts` holds this against it on a hundred thousand lines, most of
 * them damaged; but to make that lexer takes longer than to read a day of a journal.
 */
import { Lexer } from 'chevrotain';
import type { IToken, TokenType } from 'chevrotain';
import { RAW_TOKENS } from './tokens.ts';

interface Cutter {
  readonly type: TokenType;
  readonly index: number;
  readonly skipped: boolean;
  /** The text of the token that begins there, or null. */
  readonly match: (text: string, offset: number, before: IToken[]) => string | null;
}

const CUTTERS: readonly Cutter[] = RAW_TOKENS.map((type) => ({
  type,
  index: type.tokenTypeIdx ?? -1,
  skipped: type.GROUP === Lexer.SKIPPED,
  match: matcherOf(type),
}));

function matcherOf({ name, PATTERN: pattern }: TokenType): Cutter['match'] {
  if (pattern instanceof RegExp) {
    const sticky = new RegExp(pattern, `${pattern.flags}y`);
    return (text, offset) => {
      sticky.lastIndex = offset;
      return sticky.test(text) ? text.slice(offset, sticky.lastIndex) : null;
    };
  }
  if (typeof pattern !== 'object') throw new TypeError(`${name} has no pattern`);
  return (text, offset, before) => pattern.exec(text, offset, before, {})?.[0] ?? null;
}

/** First signs that are told apart; behind them every type is tried. */
const ASCII = 128;

/** The types that may begin with a sign, worked out when it is first met: a line has few of them. */
const byFirst: (readonly Cutter[] | undefined)[] = [];

function startingWith(code: number): readonly Cutter[] {
  if (code >= ASCII) return CUTTERS;
  const known = byFirst[code];
  if (known !== undefined) return known;
  const sign = String.fromCharCode(code);
  const fitting = CUTTERS.filter(
    ({ type: { START_CHARS_HINT: hint } }) => !hint || hint.includes(sign) || hint.includes(code),
  );
  byFirst[code] = fitting;
  return fitting;
}

/** The tokens of one line, whose punctuation has been folded. Never fails; what has no meaning is `Unknown`. */
export function cut(line: string): IToken[] {
  const tokens: IToken[] = [];
  let offset = 0;
  while (offset < line.length) offset = cutOne(line, offset, tokens);
  return tokens;
}

function cutOne(line: string, offset: number, tokens: IToken[]): number {
  for (const { type, index, skipped, match } of startingWith(line.charCodeAt(offset))) {
    const image = match(line, offset, tokens);
    if (image === null) continue;
    if (!skipped) tokens.push({ image, startOffset: offset, tokenTypeIdx: index, tokenType: type });
    return offset + image.length;
  }
  throw new TypeError(`nothing fits at ${String(offset)} of a line`);
}
