/** What a command file exports: its words, its options, examples, and what it does. */
import type { Context } from './context.ts';
import type { Exit } from './exit.ts';
import type { Flag, Get } from './flags.ts';

export interface Command {
  /** As `--help` shows it after the name: `[NAME]`, `WORDS...`; empty where it takes no words. */
  readonly takes: string;
  /** A paragraph for `--help`: what it answers, what to know. */
  readonly about: string;
  /** Its own; the common ones come by themselves. */
  readonly flags: readonly Flag<unknown>[];
  /** Options that would change nothing without one of others: given alone they are wrong use, not silence. */
  readonly only?: readonly { readonly of: readonly Flag<unknown>[]; readonly beside: readonly Flag<unknown>[] }[];
  /** Options that would change nothing beside one of others: given together they are wrong use as well. */
  readonly apart?: readonly { readonly of: readonly Flag<unknown>[]; readonly beside: readonly Flag<unknown>[] }[];
  /** Of a command that takes no words, the option for which one is likely meant: `sale Autumn`. */
  readonly wordFor?: Flag<unknown>;
  /** Whole lines to type. */
  readonly examples: readonly string[];
  run(context: Context, get: Get, words: readonly string[]): Promise<Exit>;
}
