/** Tells the words of a heading apart: `row D`, `A1, A2 and C1`, `all tanks except Q1`, `A1 pair`. */
import type { IToken } from 'chevrotain';
import { retag, spanning, wordOf } from './matching.ts';
import { DECLARING, GROUP_WORDS } from './reserved.ts';
import * as tag from './tags.ts';
import * as t from './tokens.ts';
import { SEX_WORDS } from './words.ts';

/** Tags the tokens from `from` to before `to`, which stand before the colon. */
export function tagHeading(tokens: readonly IToken[], from: number, to: number): IToken[] {
  const out: IToken[] = [];
  let at = from;
  while (at < to) at = tagWord(tokens, at, from, to, out);
  return out;
}

const EXCEPT = new Set(['except', 'but', 'without']);
const ARTICLES = new Set(['the', 'a']);

function tagWord(tokens: readonly IToken[], at: number, from: number, to: number, out: IToken[]): number {
  const token = tokens[at];
  if (token === undefined) return at + 1;
  const word = wordOf(token);
  const more = at + 1 < to;
  const next = more ? wordOf(tokens[at + 1]) : '';
  if ((word === 'all' || word === 'every') && (next === 'tanks' || next === 'tank')) {
    out.push(spanning(tag.AllTanks, tokens, at, at + 2, 'all tanks'));
    return at + 2;
  }
  // Before another word an article says nothing: `the room`, `the male`.
  if (ARTICLES.has(word) && more) return at + 1;
  if (token.tokenType === t.Dash) out.push(retag(token, tag.RangeTo, 'to'));
  else if (word === '') out.push(token.tokenType === t.Ampersand ? retag(token, tag.And, 'and') : token);
  else if (out.at(-1)?.tokenType === tag.Declaring) {
    // Whatever is declared, this is its name: whether it may be one is decided later.
    out.push(retag(token, tag.Name, token.image));
  } else out.push(taggedWord(token, word, at === from, more));
  return at + 1;
}

function taggedWord(token: IToken, word: string, first: boolean, more: boolean): IToken {
  if (first && !more && word === 'room') return retag(token, tag.Room, 'room');
  if (first && more && DECLARING.has(word)) return retag(token, tag.Declaring, word);
  if (!first) {
    const sex = SEX_WORDS.get(word);
    if (word === 'and' || word === '&' || word === 'plus') return retag(token, tag.And, 'and');
    if (word === 'to' && more) return retag(token, tag.RangeTo, 'to');
    if (word === 'tanks') return retag(token, tag.Tanks, 'tanks');
    if (EXCEPT.has(word) && more) return retag(token, tag.Except, 'except');
    if (GROUP_WORDS.has(word)) return retag(token, tag.GroupWord, word);
    if (sex !== undefined) return retag(token, tag.Sex, sex);
  }
  return retag(token, tag.Name, token.image);
}
