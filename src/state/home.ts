/** How a slice says what it does with the kinds of event that live in it. */
import type { EventKind, EventOf } from '../journal/event.ts';
import type { Draft } from './draft.ts';

/** Applies one kind of event to the draft. */
type Apply<K extends EventKind> = (draft: Draft, event: EventOf<K>) => void;

/** A slice's share of the kinds: every slice exports one, and `homes.ts` joins them all. */
export type Homes<K extends EventKind> = { readonly [P in K]: Apply<P> };
