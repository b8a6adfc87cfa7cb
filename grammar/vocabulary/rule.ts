/** The shape of one row of the vocabulary: everything that the language knows of one kind of clause. */
import type { DetailName } from './details.ts';

/** What a line may be about: its kind decides which clauses exist. `new …` is a declaring line. */
export type HeadingKind =
  | 'room'
  | 'loop'
  | 'tank'
  | 'group'
  | 'brood'
  | 'culture'
  | 'auction'
  | 'species'
  | 'row'
  | 'new loop'
  | 'new tank'
  | 'new group'
  | 'new culture'
  | 'new auction'
  | 'new species';

export interface ClauseRule {
  /**
   * Phrases that open the clause, parted by `|`, by what they say of it. The first of each is the
   * canonical one. A clause that needs no phrase (`54 L` in a tank's declaration) has none.
   */
  readonly says: Readonly<Record<string, string>>;
  /** Spellings read since: they give way to a declared name, and no name is refused for them. */
  readonly also?: Readonly<Record<string, string>>;
  /** Headings under which the clause exists; a declaring heading has those of its kind as well. */
  readonly under: readonly HeadingKind[];
  /** Details that may follow, in any order, besides those that every clause takes. */
  readonly takes: readonly DetailName[];
  /** Details that stay with the clause after a comma though the same words could open another. */
  readonly continues?: readonly DetailName[];
  /** Words of counting that may follow a number here and say nothing more: `3 doses`, `80 eggs`. */
  readonly nouns?: string;
  /** The text that it calls for may be bare words, all that follow or those up to a number. */
  readonly text?: 'any' | 'words';
  /** Whose name may stand before the phrase. */
  readonly fish?: 'grown' | 'young' | 'any';
  /** A number may stand before the phrase: `2 died`. */
  readonly counted?: boolean;
  /** Abbreviations that give way to a declared name: a tank may well be called `QT`. */
  readonly yields?: string;
  /** Common words that open it at the start and after `;` only: after a comma they are words like any other. */
  readonly shy?: string;
  /** Two things that keepers mean by the phrase; it is refused, and both are offered. */
  readonly readings?: Readonly<Record<string, readonly [string, string, ...string[]]>>;
  /** The kinds of fact that it states. */
  readonly makes: readonly string[];
}
