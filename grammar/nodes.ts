/** Nodes from tokens: what every rule assembles its own from. */
import type { IToken } from 'chevrotain';
import type * as s from './syntax.ts';
import { endOf } from './tokens.ts';

/** What a word means where the phrase that it belongs to says so; else the word itself. */
export function sense(token: IToken): string {
  return typeof token.payload === 'string' ? token.payload : token.image;
}

export function word(token: IToken): s.WordNode {
  return { text: token.image, sense: sense(token), from: token.startOffset, to: endOf(token) };
}

/** Where a token stands in its line. */
export function piece(token: IToken): s.Piece {
  return { from: token.startOffset, to: endOf(token) };
}

/** Where the last of some nodes ends; 0 where there is none. */
export function last<T extends s.Piece>(nodes: readonly T[]): number {
  return nodes.at(-1)?.to ?? 0;
}

export function name(token: IToken, numbered: boolean): s.NameNode {
  return { type: 'name', text: token.image, numbered, ...piece(token) };
}

export function date(token: IToken): s.DateNode {
  return { type: 'date', text: token.image, ...piece(token) };
}
