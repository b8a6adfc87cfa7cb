/** One lot's result as the sheet of an auction tells it, and what may be wrong with it. */

/** What became of fish that nobody bought: back into a tank, never taken out of theirs, given, dead. */
export type Unsold =
  { readonly how: 'back'; readonly tank: string } | { readonly how: 'stayed' | 'gave away' | 'died' };

export interface Result {
  /** Line of the sheet on which it begins. */
  readonly line: number;
  /** Number on the table; null where the sheet has none. */
  readonly lot: string | null;
  readonly stock: string;
  /** The tank that they came out of. */
  readonly tank: string;
  readonly fish: number;
  /** What the whole lot fetched, before the auction's part; null where it was not sold. */
  readonly fetched: number | null;
  /** Null where it was sold, or nobody said. */
  readonly unsold: Unsold | null;
}

/** What does not add up, with the line of the sheet; null where it is about all of it. */
export interface Wrong {
  readonly line: number | null;
  readonly says: string;
  /** What to write there, or to do; null where nobody knows better. */
  readonly write: string | null;
}
