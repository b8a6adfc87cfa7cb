/** How a group of kinds says what it prints: one function a kind, so that the compiler misses none. */
import type { EventKind, EventOf } from '../../journal/event.ts';
import type { Voice } from './words.ts';

/** The clause (for a declaring line: all of its clauses) without heading, `when` and remark. */
export type Print<K extends EventKind> = (event: EventOf<K>, voice: Voice) => string;
export type Prints<K extends EventKind> = { readonly [P in K]: Print<P> };
