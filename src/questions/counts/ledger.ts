/** What the journal says of the number of a brood, as one list in the order in which it was folded. */
import type { Day } from '../../core/day.ts';
import type { Interval } from '../../core/interval.ts';
import type { DeepReadonly } from '../../core/readonly.ts';
import type { Place } from '../../core/span.ts';
import type { SeenBrood } from '../../state/bodies.ts';
import type { Room } from '../../state/draft.ts';
import type { CountSeen, Gone, Move } from '../../state/stock.ts';

export type Entry =
  | { readonly kind: 'count'; readonly day: Day; readonly of: DeepReadonly<CountSeen> }
  | { readonly kind: 'gone'; readonly day: Day; readonly of: DeepReadonly<Gone> }
  | { readonly kind: 'move'; readonly day: Day; readonly of: DeepReadonly<Move> };

/** Counts, losses, sales and moves of a brood, oldest first; a count that a later one of the same moment replaced is left out. */
export function ledgerOf(room: Room, brood: SeenBrood): readonly Entry[] {
  const order = new Map<DeepReadonly<Place>, number>(brood.lines.map((place, index) => [place, index]));
  const entries: Entry[] = [
    ...brood.counts.filter(({ replaced }) => !replaced).map(entryOfCount),
    ...brood.gone.map((of): Entry => ({ kind: 'gone', day: of.day, of })),
    ...movesOf(room, brood.name).map((of): Entry => ({ kind: 'move', day: of.day, of })),
  ];
  const at = ({ of }: Entry): number => order.get(of.place) ?? brood.lines.length;
  return entries.toSorted((a, b) => a.day - b.day || at(a) - at(b));
}

const MOVES = new WeakMap<Room, ReadonlyMap<string, readonly DeepReadonly<Move>[]>>();

/** The moves of a body, oldest first: a long journal has many, so they are sorted out once a room. */
function movesOf(room: Room, body: string): readonly DeepReadonly<Move>[] {
  let byBody = MOVES.get(room);
  if (!byBody) {
    const sorted = new Map<string, DeepReadonly<Move>[]>();
    for (const move of room.stock.moves) {
      const own = sorted.get(move.body);
      if (own) own.push(move);
      else sorted.set(move.body, [move]);
    }
    MOVES.set(room, sorted);
    byBody = sorted;
  }
  return byBody.get(body) ?? [];
}

function entryOfCount(of: DeepReadonly<CountSeen>): Entry {
  return { kind: 'count', day: of.day, of };
}

/** True where fish left that are alive as far as anybody knows: sold, given away, or now counted elsewhere. */
export function leftAlive({ how }: { readonly how: Gone['how'] }): boolean {
  return how === 'sold' || how === 'gave away' || how === 'joined';
}

/** The middle of a number that is not certain: as stated, else in proportion between its ends, else its low end. */
export function middleOf({ low, likely, high }: Interval): number {
  return likely ?? (Number.isFinite(high) ? Math.sqrt(Math.max(low, 0.5) * high) : low);
}
