/** What is wrong with a line, as data: found in any layer, worded once, drawn by the reports. */
import type { ProblemKind } from './problem-kinds.ts';
import type { Place } from './span.ts';

export interface Problem {
  /** Stable kebab-case name of the cause: 'unknown-tank', 'which-fish', 'more-out-than-in' … */
  readonly kind: ProblemKind;
  /** `stops`: that clause or line does not count. `doubt`: it counts, but look at it. */
  readonly weight: 'stops' | 'doubt';
  /** Plain words, what is wrong. No place and no remedy in it. */
  readonly says: string;
  /** A line, or what to do, that would be read. */
  readonly write: string;
  readonly at: Place;
  /** Other lines that belong to it: the earlier count, the other copy. */
  readonly also: readonly Place[];
  /** What mends the words at `at`, where that is all they lack; the rest of their line stays as it is. */
  readonly mend?: Mend;
}

/** Words to put before those of a problem, or in place of one of them. */
export interface Mend {
  readonly words: string;
  /** The word that they take the place of, in any of its forms (`krib`, `kribs`); null: they stand before all. */
  readonly instead: string | null;
}
