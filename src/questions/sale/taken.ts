/** What promises take from one tank of a stock. */
import { less, type Interval } from '../../core/interval.ts';
import type { SeenBody } from '../../state/bodies.ts';
import type { Blocker } from './blockers.ts';
import { mostOf, type Promised } from '../../state/promised.ts';
import type { Saleable } from '../saleable.ts';

/** A stock in one tank before its promises are taken off. */
export interface DraftLot {
  readonly body: SeenBody;
  readonly tank: string;
  readonly count: Interval;
  /** Of these, how many surely have their sale size or age. */
  readonly grown: number;
  /** The number to promise from: those that are grown, or all that are surely there while none is. */
  readonly sized: number;
  readonly ripe: Saleable | null;
  readonly blockers: readonly Blocker[];
  readonly promised: Promised;
}

export interface Taken {
  readonly kept: number;
  readonly reserved: number;
  /** Set where more of the stock is promised than there is, of the size to promise: all of both, wherever they are. */
  readonly short: { readonly kept: number; readonly reserved: number; readonly there: number } | null;
}

/**
 * What promises take from this tank. Each fish is taken once: first for promises that name the tank, as
 * far as fish are surely there, then for the others, from the lots that are ready first and then from
 * the largest, so that what is left in any of them is surely free.
 */
export function takenHere(draft: DraftLot, all: readonly DraftLot[]): Taken {
  const { kept, reserved, keptCount, reservedCount } = draft.promised;
  const lots = all.filter(({ body }) => body === draft.body).toSorted(takenFirst);
  const left = new Map(lots.map(({ tank, sized }) => [tank, sized]));
  const keptHere = spread(
    mostOf(keptCount),
    kept.map(({ tank, count }) => ({ tank, amount: mostOf(count) })),
    left,
  );
  const reservedHere = spread(
    mostOf(reservedCount),
    reserved.map(({ tank, count, met }) => ({ tank, amount: mostOf(less(count, met)) })),
    left,
  );
  const asked = { kept: mostOf(keptCount), reserved: mostOf(reservedCount) };
  const there = lots.reduce((sum, { sized }) => sum + sized, 0);
  return {
    kept: keptHere.get(draft.tank) ?? 0,
    reserved: reservedHere.get(draft.tank) ?? 0,
    short: asked.kept + asked.reserved > there ? { ...asked, there } : null,
  };
}

/** Takes `total` from what is left in each tank: named tanks first, then in the order of `left`. */
function spread(
  total: number,
  named: readonly { readonly tank: string | null; readonly amount: number }[],
  left: Map<string, number>,
): ReadonlyMap<string, number> {
  const taken = new Map<string, number>();
  let open = total;
  const take = (tank: string, wish: number): void => {
    const there = left.get(tank) ?? 0;
    const here = Math.min(there, wish, open);
    left.set(tank, there - here);
    taken.set(tank, (taken.get(tank) ?? 0) + here);
    open -= here;
  };
  for (const { tank, amount } of named) if (tank !== null && left.has(tank)) take(tank, amount);
  for (const tank of left.keys()) take(tank, open);
  return taken;
}

function takenFirst(a: DraftLot, b: DraftLot): number {
  return a.blockers.length - b.blockers.length || b.sized - a.sized;
}
