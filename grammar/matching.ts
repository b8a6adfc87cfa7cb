/** Small questions about a row of tokens: does a phrase stand here, a number, a fish, a date? */
import type { IToken, TokenType } from 'chevrotain';
import { phrasesFor, phrasesInside } from './phrases.ts';
import type { Phrase, Phrases } from './phrases.ts';
import { CountWord, Fuzz } from './tags.ts';
import * as t from './tokens.ts';
import { ARTICLES, MONTHS, NUMBER_WORDS, SCOOPS, SEX_WORDS, WEEKDAYS } from './words.ts';

export interface Match {
  readonly phrase: Phrase;
  readonly length: number;
}

/** A token's text as the vocabulary has it; empty for a token that is no word. */
export function wordOf(token: IToken | undefined): string {
  if (token === undefined) return '';
  const type = token.tokenType;
  // After a number `m` and `f` are cut as units; where fish are counted they are words.
  if (type === t.Word || type === t.Unit) return token.image.toLowerCase();
  return type === t.Question || type === t.Ampersand || type === t.Colon || type === t.Slash || type === t.At
    ? token.image
    : '';
}

/** The longest phrase that stands at a token. */
export function matchPhrase(tokens: readonly IToken[], at: number, phrases: Phrases): Match | null {
  const first = wordOf(tokens[at]);
  const candidates = first === '' ? undefined : phrases.get(first);
  if (candidates === undefined) return null;
  for (const phrase of candidates) {
    const { words } = phrase;
    let i = 1;
    while (i < words.length && wordOf(tokens[at + i]) === words[i]) i += 1;
    if (i === words.length) return { phrase, length: words.length };
  }
  return null;
}

/** A token over several: from the first to before `to`; of no width where the two are equal. */
export function spanning(
  type: TokenType,
  tokens: readonly IToken[],
  from: number,
  to: number,
  payload: string,
): IToken {
  const first = tokens[from];
  const before = tokens[from - 1];
  const startOffset = first?.startOffset ?? (before ? t.endOf(before) : 0);
  const last = tokens[to - 1];
  const end = to > from && last !== undefined ? t.endOf(last) : startOffset;
  // Only the place of the text matters: whoever needs the words takes them from the line.
  const image = to - from === 1 && first !== undefined ? first.image : ' '.repeat(Math.max(0, end - startOffset));
  return { image, startOffset, tokenType: type, tokenTypeIdx: type.tokenTypeIdx ?? 0, payload };
}

/** The same word as another token, with what it means there. */
export function retag(token: IToken, type: TokenType, payload: string): IToken {
  return {
    image: token.image,
    startOffset: token.startOffset,
    tokenType: type,
    tokenTypeIdx: type.tokenTypeIdx ?? 0,
    payload,
  };
}

function isNumber(token: IToken | undefined): boolean {
  return token?.tokenType === t.Num || NUMBER_WORDS.has(wordOf(token));
}

const COUNTING = phrasesInside('counted');
/** `both parents`. */
const PAIRS = phrasesFor('sex');

/** The index after the number of fish that stands at a token (`about 3`, `2-4`, `a few`); `at` where none does. */
export function numberEnd(tokens: readonly IToken[], at: number): number {
  const match = matchPhrase(tokens, at, COUNTING);
  if (match?.phrase.token === CountWord) {
    // `all 6 sponges`: how many all are stands after the word.
    const all = match.phrase.sense === 'all' && isNumber(tokens[at + match.length]);
    return at + match.length + (all ? 1 : 0);
  }
  if (isTwoOf(tokens, at)) return at + 1;
  let i = match?.phrase.token === Fuzz ? at + match.length : at;
  const sign = tokens[i]?.tokenType;
  if (sign === t.Tilde || sign === t.Below || sign === t.Beyond) i += 1;
  if (!isNumber(tokens[i])) return isOneOf(tokens, i) ? i + 1 : at;
  i += 1;
  const between = wordOf(tokens[i]);
  const joins = tokens[i]?.tokenType === t.Dash || between === 'to' || between === 'or';
  if (joins && isNumber(tokens[i + 1])) i += 2;
  while (tokens[i]?.tokenType === t.Plus || tokens[i]?.tokenType === t.Ish) i += 1;
  return i;
}

/** The index after the sexes that stand behind a number: `m, 1 f` of `2 m, 1 f`; `at` where none do. */
export function sexesEnd(tokens: readonly IToken[], at: number): number {
  let end = at;
  for (let i = at; SEX_WORDS.has(wordOf(tokens[i]));) {
    end = i + 1;
    const next = isJoint(tokens[end]) ? end + 1 : end;
    i = numberEnd(tokens, next);
    if (i === next) break;
  }
  return end;
}

/** What may stand between fish that are told apart by sex. */
export function isJoint(token: IToken | undefined): boolean {
  const type = token?.tokenType;
  return type === t.Comma || type === t.Plus || type === t.Ampersand || wordOf(token) === 'and';
}

/** What may stand between two clauses as a comma does: `and`, `&`, `then`. */
export function isJoining(token: IToken | undefined): boolean {
  if (token?.tokenType === t.Ampersand) return true;
  const word = wordOf(token);
  return word === 'and' || word === 'then' || word === 'plus';
}

/** `shrimp and eggs`: behind a feed they are food, and nobody spawned. */
export function isEaten(token: IToken | undefined): boolean {
  return /^eggs?$/u.test(wordOf(token));
}

/** `a bucket`, `a spoon`: one of them. A net is hardly a measure. */
export function isOneOf(tokens: readonly IToken[], at: number): boolean {
  const word = wordOf(tokens[at]);
  if (word !== 'a' && word !== 'an') return false;
  const measure = wordOf(tokens[at + 1]);
  return measure !== 'net' && SCOOPS.has(measure);
}

/** `both females`: two of them; `both` alone, or with a word for grown fish, is the pair. */
export function isTwoOf(tokens: readonly IToken[], at: number): boolean {
  const sex = wordOf(tokens[at]) === 'both' ? SEX_WORDS.get(wordOf(tokens[at + 1])) : undefined;
  return sex === 'male' || sex === 'female' || sex === 'young';
}

/** Lengths of the words at a token that may name a fish before a phrase: `Fern`, `the male`, `Rowan male`, `krib of 2 May`. */
export function fishBefore(tokens: readonly IToken[], at: number, isName: (word: string) => boolean): number[] {
  const first = tokens[at];
  const word = wordOf(first);
  if (word === '' || first?.tokenType === t.Question) return [];
  // `some eggs` counts them: no fish is called «some».
  if (numberEnd(tokens, at) > at && !isName(first?.image ?? '')) return [];
  const pair = matchPhrase(tokens, at, PAIRS)?.length ?? 0;
  if (pair > 1) return [pair];
  const bought = wordOf(tokens[at + 1]) === 'of' && isName(first?.image ?? '') ? dateLength(tokens, at + 2) : 0;
  if (bought > 0) return [2 + bought];
  const second = SEX_WORDS.has(wordOf(tokens[at + 1]));
  if (second && (ARTICLES.has(word) || isName(first?.image ?? ''))) return [1, 2];
  return [1];
}

/** True for `X on Y` where both are fish: by sex, or by name. */
export function fishOnFish(tokens: readonly IToken[], at: number, isName: (word: string) => boolean): boolean {
  const isFish = (token: IToken | undefined): boolean =>
    SEX_WORDS.has(wordOf(token)) || (token?.tokenType === t.Word && isName(token.image));
  return wordOf(tokens[at + 1]) === 'on' && isFish(tokens[at]) && isFish(tokens[at + 2]);
}

/** How many tokens at a token make a date: `2026-02-14`, `14 Feb 2026`, `Feb 14`, `friday`, `the 20th`. */
export function dateLength(tokens: readonly IToken[], at: number): number {
  const first = tokens[at];
  const [word, next] = [wordOf(first), wordOf(tokens[at + 1])];
  if (first === undefined) return 0;
  if (first.tokenType === t.DateToken) return 1;
  const year = (i: number): number => (tokens[i]?.tokenType === t.Num && /^\d{4}$/.test(tokens[i].image) ? 1 : 0);
  if (first.tokenType === t.Ordinal || (first.tokenType === t.Num && MONTHS.has(next))) {
    const of = next === 'of' ? 1 : 0;
    return MONTHS.has(wordOf(tokens[at + 1 + of])) ? 2 + of + year(at + 2 + of) : 1;
  }
  if (word === 'the' && tokens[at + 1]?.tokenType === t.Ordinal) return 1 + dateLength(tokens, at + 1);
  const dated = tokens[at + 1]?.tokenType;
  if (MONTHS.has(word) && (dated === t.Num || dated === t.Ordinal)) return 2 + year(at + 2);
  return WEEKDAYS.has(word) ? 1 : 0;
}
