/** The record of moves, and what a room keeps of each so that no answer of today goes through years of them. */
import type { Draft } from './draft.ts';
import type { Move } from './stock.ts';
import { noteStocked } from './tally.ts';

/** Notes that fish changed tanks. */
export function noteMoved(draft: Pick<Draft, 'stock'>, move: Move): void {
  const { stock } = draft;
  const { body, from, to, which, day } = move;
  noteStocked(draft, from, to);
  stock.moves.push(move);
  if (which !== 'any') stock.picked.set(body, [...(stock.picked.get(body) ?? []), day]);
  if (from !== null) stock.broods.get(body)?.left.set(from, day);
}
