/** The words of one clause that is not read, as whoever looks for what they may mean has them. */
import { cut } from '../../grammar/cut.ts';
import { parseClausesAfresh } from '../../grammar/parse.ts';
import type { clausesUnder, HeadingKind } from '../../grammar/phrases.ts';
import type { Piece } from '../../grammar/syntax.ts';
import { Word } from '../../grammar/tokens.ts';
import { NUMBER_WORDS, SEX_WORDS } from '../../grammar/words.ts';
import type { LineContext } from './line.ts';
import { singular } from './line.ts';
import { isStranger } from './otherwords.ts';
import { foldPunctuation } from './punctuation.ts';

/** The words of one clause, and where they stand. */
export interface Said {
  readonly line: LineContext;
  readonly at: Piece;
  readonly text: string;
  readonly heading: HeadingKind;
  readonly has: ReturnType<typeof clausesUnder>;
  /** Whether words are clauses of this heading. */
  readonly reads: (words: string) => boolean;
}

/** A number of fish, as part of a pattern that minds no case. */
export const NUMBER = `(?:(?:about|around|~)\\s*)?(?:\\d+|${[...NUMBER_WORDS.keys()].join('|')})`;

/** A pattern that minds no case, made when it is first asked for: most runs refuse nothing, and a hundred words take their time. */
export function pattern(source: string): Pick<RegExp, 'exec' | 'test'> {
  let made: RegExp | null = null;
  const get = (): RegExp => (made ??= new RegExp(source, 'iu'));
  return { exec: (text) => get().exec(text), test: (text) => get().test(text) };
}

/** Whether words are clauses, as far as the grammar says. */
export function isClauses(line: LineContext, words: string, heading: HeadingKind): boolean {
  const { clauses, unread, faults } = parseClausesAfresh(cut(foldPunctuation(words)), 0, heading, line.names);
  return clauses.length > 0 && unread.length === 0 && faults.length === 0;
}

/** `krib`, `kribs`. */
export function isSpecies(line: LineContext, word: string): boolean {
  return (line.names.find(word, line.day) ?? singular(line, word))?.kind === 'species';
}

/** Words of which none names anything here, or fish. */
export function isSomebody({ names }: LineContext, words: string): boolean {
  const each = words.split(/\s+/u).filter((word) => !/^(?:the|a|an|my|from|of)$/iu.test(word));
  return each.every((image) => !SEX_WORDS.has(image.toLowerCase()) && isStranger(names, { image, tokenType: Word }));
}
