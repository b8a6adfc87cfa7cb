/**
 * The room as the fold builds it. Only `state/` may change a draft; everyone else gets the same thing
 * as a read-only `Room`. Each slice's types live in the slice's own file, beside the code that fills it.
 */
import type { Day } from '../core/day.ts';
import type { Problem } from '../core/problem.ts';
import type { DeepReadonly } from '../core/readonly.ts';
import type { Chores } from './chores.ts';
import type { Cultures } from './cultures.ts';
import type { Health } from './health.ts';
import type { Looks } from './looks.ts';
import type { Measures } from './measures.ts';
import type { Plumbing } from './plumbing.ts';
import type { Resolved } from './meant.ts';
import type { Sale } from './sale.ts';
import type { Settings } from './settings.ts';
import type { Shared } from './shared.ts';
import type { Stock } from './stock.ts';
import type { Water } from './water.ts';

export interface Draft {
  /** The day as of which the room is shown: no event after it has been folded in. */
  on: Day;
  settings: Settings;
  plumbing: Plumbing;
  measures: Measures;
  chores: Chores;
  water: Water;
  looks: Looks;
  stock: Stock;
  health: Health;
  /** What went from tank to tank without any fish, oldest first. */
  shared: Shared[];
  sale: Sale;
  cultures: Cultures;
  /** What the fold found wrong: clauses that could not count (`stops`), and facts to look at (`doubt`). */
  problems: Problem[];
  /** What each clause without a name was found to be about, by event number: for `jot`, `tidy`, `history`. */
  resolved: Map<number, Resolved>;
}

export type Room = DeepReadonly<Draft>;
