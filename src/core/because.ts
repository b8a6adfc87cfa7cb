/** What stands behind a figure, for the question "why?". */
import type { LineRef } from './span.ts';

export interface Because {
  /** The rule in one plain sentence. */
  readonly rule: string;
  /** Where the rule comes from: "the journal", "usual for cave spawners (common practice, no source)", a publication. */
  readonly source: string;
  /** The inputs and the arithmetic with the numbers put in, one step a string. */
  readonly steps: readonly string[];
  readonly lines: readonly LineRef[];
}
