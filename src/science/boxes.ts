/** Bags into boxes: the largest first, each into the first box with room (first fit decreasing). */

/**
 * Share of a box that bags can fill, the corners lost (ours). Bags no larger than the other share of
 * a box, `LARGEST`, always go into as many boxes as their litres need at this filling: were none free, each
 * would hold more than it.
 */
export const FILLING = 0.75;
const LARGEST = 1 - FILLING;

/** Litres of the largest bag that a box takes. */
export function largestBag(boxLitres: number): number {
  return LARGEST * boxLitres;
}

/** For each bag, by its litres, the box that it goes into, counted from 0. */
export function intoBoxes(bags: readonly number[], boxLitres: number): readonly number[] {
  const free: number[] = [];
  const into = bags.map(() => 0);
  const largestFirst = bags.map((litres, index) => ({ litres, index })).toSorted((a, b) => b.litres - a.litres);
  for (const { litres, index } of largestFirst) {
    const found = free.findIndex((room) => room >= litres - 1e-9);
    const box = found < 0 ? free.push(boxLitres) - 1 : found;
    free[box] = (free[box] ?? 0) - litres;
    into[index] = box;
  }
  return into;
}
