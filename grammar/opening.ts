/** How a clause opens, as token indexes; and what telling the words apart has to know of the room. */
import type { ClauseKind, HeadingKind } from './phrases.ts';

export interface TagContext {
  readonly heading: HeadingKind;
  /** True for a word that names something declared: it is then no abbreviation. */
  readonly isName: (word: string) => boolean;
  /** True for a word that names fish. */
  readonly isFish: (word: string) => boolean;
}

/** How a clause opens: what stands before its phrase, and the phrase itself, as token indexes. */
export interface Opening {
  readonly kind: ClauseKind;
  readonly sense: string;
  readonly start: number;
  /** First token of the phrase; equal to `end` where the clause needs none. */
  readonly head: number;
  readonly end: number;
  /** The index after all words that speak for this opening; where two openings fit, the longer one counts. */
  readonly reach: number;
}

export function bounds(start: number, head: number, end: number, reach = end): Omit<Opening, 'kind' | 'sense'> {
  return { start, head, end, reach };
}
