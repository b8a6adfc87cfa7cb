/**
 * The raw tokens of one line, and the lexer that cuts a line into them. What a word means depends on
 * the heading and on the words beside it, so words are told apart later, in `tagging.ts`; the token
 * types that it deals out have no pattern of their own.
 *
 * Patterns of our own need the `u` flag for letters of all scripts, with which the lexer cannot work out first
 * characters, hence the hints.
 */
import { createToken, Lexer } from 'chevrotain';
import type { CustomPatternMatcherReturn, IToken, TokenType } from 'chevrotain';
import { byFirstSign, sticky } from './sticky.ts';
import { UNIT_WORDS } from './words.ts';

/** A token, for whoever reads lines without knowing the parser toolkit. */
export type Token = IToken;

type Match = (text: string, offset: number, before: IToken[]) => string | null;

/** A token matched by a pattern; `starts` are all characters that it may begin with. */
function plain(
  name: string,
  label: string,
  starts: readonly string[],
  pattern: RegExp,
  group?: typeof Lexer.SKIPPED,
): TokenType {
  return createToken({ name, label, pattern, start_chars_hint: [...starts], ...(group && { group }) });
}

/** The same by a function. */
function custom(name: string, label: string, starts: readonly (string | number)[], match: Match): TokenType {
  return createToken({
    name,
    label,
    line_breaks: false,
    start_chars_hint: [...starts],
    pattern: { exec: (text, offset, before) => matched(match(text, offset, before)) },
  });
}

function matched(image: string | null): CustomPatternMatcherReturn | null {
  return image === null ? null : [image];
}

function upTo(first: number, last: number, step = 1): number[] {
  return Array.from({ length: Math.floor((last - first) / step) + 1 }, (_, index) => first + index * step);
}

const DIGITS = [...'0123456789'];
const LETTERS = [...'abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ'];
/** One code out of each bucket of 256 that the lexer sorts first characters into, and all of Latin-1. */
const BEYOND_ASCII = [...upTo(128, 255), ...upTo(256, 65_535, 128)];

const FRACTIONS = '½⅓⅔¼¾⅕⅖⅗⅘⅙⅚⅛⅜⅝⅞';

const number = sticky(`\\d+(?:[.,]\\d+)?[${FRACTIONS}]?|\\.\\d+|[${FRACTIONS}]`);
const joined = sticky(String.raw`\d+(?:,\d{3,}|(?:,\d+){2,})(?!\d)`);
const word = sticky(String.raw`[♂♀→]|[\p{L}](?:[\p{L}\p{M}\p{N}_\u200c\u200d]|['\-](?=[\p{L}\p{N}]))*`);
const note = sticky(String.raw`note(?![\p{L}\p{M}\p{N}_'\-])[^]*`, { anyCase: true });
const clock = sticky(String.raw`\d{1,2}:\d{2}(?!\d)`);
const ish = sticky(String.raw`(?:-?ish|or[ \t]+so|-?odd)(?![\p{L}\p{N}])`, { anyCase: true });
const times = sticky(String.raw`[x*](?=[ \t]*[\d½¼¾])`, { anyCase: true });
/** After a number `in` before a word is a place, but before these it is inches. */
const AFTER_INCHES = String.raw`(?:x[ \t]*\d|(?:and|or|by|at|from|until|till|for|with|to|rest|each|every|yesterday|today|on)(?![\p{L}\p{N}_'\-]))`;
const INCHES = String.raw`in(?![\p{L}\p{N}_'/\-])(?![ \t]+(?!${AFTER_INCHES})[\p{L}])`;
/** Units with a rule of their own, by the sign that they begin with. */
const OTHER_UNITS: ReadonlyMap<string, string> = new Map([
  ['i', INCHES],
  ['%', '%'],
]);
const unit = byFirstSign((sign) => {
  const spellings = [...UNIT_WORDS.keys()]
    .filter((spelling) => spelling !== 'in' && spelling !== '%' && (sign === null || spelling.startsWith(sign)))
    .sort((a, b) => b.length - a.length)
    .map((spelling) => spelling.replaceAll(' ', '[ \\t]+').replaceAll('/', '[ \\t]*/[ \\t]*'));
  const words = spellings.length === 0 ? null : String.raw`(?:${spellings.join('|')})(?![\p{L}\p{N}_'/])`;
  const other = OTHER_UNITS.get(sign ?? '');
  return words !== null && other !== undefined ? `${words}|${other}` : (words ?? other ?? null);
});
const anything = sticky('[^]');
const plusNumber = sticky(String.raw`\+[ \t]*[\d${FRACTIONS}]`);

export const Blank = plain('Blank', 'a blank', [' ', '\t'], /[ \t]+/, Lexer.SKIPPED);
export const Comment = createToken({
  name: 'Comment',
  group: Lexer.SKIPPED,
  line_breaks: false,
  start_chars_hint: ['#'],
  pattern: {
    exec: (text: string, offset: number) => {
      const open = (char: string | undefined): boolean => char === undefined || char === ' ' || char === '\t';
      if (text[offset] !== '#' || !open(text[offset - 1]) || !open(text[offset + 1])) return null;
      return matched(text.slice(offset));
    },
  },
});
export const Hash = custom('Hash', '`#`', ['#'], (text, offset) => (text[offset] === '#' ? '#' : null));
/** `12"`: inches, or the start of a remark? Nobody can say. */
export const InchMark = custom('InchMark', 'a quote after a number', ['"'], (text, offset) =>
  text[offset] === '"' && /\d/.test(text[offset - 1] ?? '') ? '"' : null,
);
export const Quote = plain('Quote', 'words in quotes', ['"'], /"[^"]*"/);
export const OpenQuote = plain('OpenQuote', 'an open quote', ['"'], /"[^"]*/);
export const DateToken = plain('Date', 'a date', DIGITS, /\d{4}-\d{1,2}-\d{1,2}(?![\d-])/);
export const Time = custom('Time', 'a time of day', DIGITS, (text, offset, before) =>
  before.length === 1 && before[0]?.tokenType === DateToken ? clock(text, offset) : null,
);
export const Ordinal = plain('Ordinal', 'a day of the month', DIGITS, /\d{1,2}(?:st|nd|rd|th)(?![a-z0-9])/i);
/** `1,500`: a thousand and a half, or one and a half? */
export const Joined = custom('Joined', 'a number', DIGITS, joined);
export const Num = custom('Number', 'a number', [...DIGITS, '.', ...FRACTIONS], number);
const canHaveUnit = (token: IToken | undefined): boolean =>
  token !== undefined && (token.tokenType === Num || token.tokenType === Ish || token.tokenType === Plus);
export const Unit = custom('Unit', 'a unit', [...LETTERS, '%', 'µ', 'μ'], (text, offset, before) =>
  canHaveUnit(before.at(-1)) ? unit(text, offset) : null,
);
export const Times = custom('Times', '`x`', ['x', 'X', '*'], (text, offset, before) => {
  const type = before.at(-1)?.tokenType;
  return type === Num || type === Unit ? times(text, offset) : null;
});
export const Ish = custom('Ish', '`ish`', ['i', 'I', '-', 'o', 'O'], (text, offset, before) =>
  before.at(-1)?.tokenType === Num ? ish(text, offset) : null,
);
export const Note = custom('Note', '`note`', ['n', 'N'], note);
export const Word = custom('Word', 'a word', [...LETTERS, ...BEYOND_ASCII], word);
export const Colon = plain('Colon', '`:`', [':'], /:/);
export const Semicolon = plain('Semicolon', '`;`', [';'], /;/);
export const Comma = plain('Comma', '`,`', [','], /,/);
/** A sign before a number after a blank: nothing in a fish room is less than none. */
export const Minus = custom('Minus', 'a minus', ['-'], (text, offset) =>
  text[offset] === '-' && /[ \t]/.test(text[offset - 1] ?? ' ') && /\d/.test(text[offset + 1] ?? '') ? '-' : null,
);
export const Dash = plain('Dash', '`-`', ['-'], /-/);
export const Plus = plain('Plus', '`+`', ['+'], /\+/);
export const Tilde = plain('Tilde', '`~`', ['~', '≈'], /[~≈]/);
/** `<0.1`, as test kits have it. */
export const Below = plain('Below', '`<`', ['<', '≤'], /[<≤]/);
export const Beyond = plain('Beyond', '`>`', ['>', '≥'], /[>≥]/);
export const Question = plain('Question', '`?`', ['?'], /\?/);
export const Slash = plain('Slash', '`/`', ['/'], /\//);
/** `&`, and a `+` behind a blank, after no number and before none: `flake + bbs`. `40 + eggs` are forty and more. */
export const Ampersand = custom('Ampersand', '`&`', ['&', '+'], (text, offset, before) => {
  if (text[offset] === '&') return '&';
  if (text[offset] !== '+' || !/[ \t]/.test(text[offset - 1] ?? '')) return null;
  return before.at(-1)?.tokenType === Num || plusNumber(text, offset) !== null ? null : '+';
});
const money = sticky('[€£$¥]');
const moneyWord = sticky(String.raw`(?:eur|euros?|usd|gbp|chf|dollars?)(?![\p{L}\p{N}_'\-])`, { anyCase: true });
export const Currency = custom(
  'Currency',
  'a currency',
  ['€', '£', '$', '¥', ...'eugcdEUGCD'],
  (text, offset, before) => money(text, offset) ?? (before.at(-1)?.tokenType === Num ? moneyWord(text, offset) : null),
);
export const At = plain('At', '`@`', ['@'], /@/);
export const Dot = plain('Dot', 'a full stop', ['.', '!'], /[.!]/);
/** Anything else, one character at a time, so that the lexer itself never fails. */
export const Unknown = custom('Unknown', 'a sign', [...upTo(0, 255), ...upTo(256, 65_535, 128)], anything);

/** In the order of matching: the first that fits counts. */
export const RAW_TOKENS: readonly TokenType[] = [
  Blank,
  Comment,
  Hash,
  InchMark,
  Quote,
  OpenQuote,
  DateToken,
  Time,
  Ordinal,
  Joined,
  Num,
  Unit,
  Times,
  Ish,
  Note,
  Currency,
  Word,
  Colon,
  Semicolon,
  Comma,
  Minus,
  Dash,
  Ampersand,
  Plus,
  Tilde,
  Below,
  Beyond,
  Question,
  Slash,
  At,
  Dot,
  Unknown,
];

/** A token type that only tagging deals out. */
export function tagged(name: string, label: string): TokenType {
  return createToken({ name, label, pattern: Lexer.NA });
}

/** Where a token ends in its line. */
export function endOf(token: IToken): number {
  return token.startOffset + token.image.length;
}
