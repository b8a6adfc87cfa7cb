/** Where a brood stands in its life: what it was seen to have reached, its age, and what it is called by now. */
import type { Day } from '../core/day.ts';
import type { DayWindow, Interval } from '../core/interval.ts';
import type { DeepReadonly } from '../core/readonly.ts';
import type { Stage } from '../journal/event.ts';
import type { Brood } from './stock.ts';

type SeenBrood = DeepReadonly<Brood>;

/** Rank of a stage in a life: a later look never goes back. */
const RANK: { readonly [S in Stage]: number } = {
  eggs: 0,
  holding: 0,
  hatched: 1,
  wrigglers: 1,
  'free-swimming': 2,
  'fry seen': 2,
  released: 2,
  stripped: 2,
  born: 2,
};

/** How far on a stage is: 0 eggs (or held in the mouth), 1 hatched, 2 swimming. */
export function rankOfStage(stage: Stage): number {
  return RANK[stage];
}

/** The furthest that a brood was seen: −1 where nothing of it was seen yet. */
export function rankSeen(brood: SeenBrood): number {
  return brood.looks.reduce((rank, look) => Math.max(rank, RANK[look.stage]), -1);
}

/** True where a brood was seen at that point of its life or past it. */
export function reached(brood: SeenBrood, point: 'hatched' | 'swam'): boolean {
  return point === 'swam'
    ? brood.swam !== null || brood.released !== null
    : brood.hatched !== null || brood.swam !== null || brood.released !== null;
}

/** Days since a window, never below none. */
export function since(window: DayWindow, on: Day): Interval {
  const back = (day: Day | null, open: number): number => (day === null ? open : Math.max(0, on - day));
  return {
    low: back(window.high, 0),
    likely: window.likely === null ? null : Math.max(0, on - window.likely),
    high: back(window.low, Infinity),
  };
}
