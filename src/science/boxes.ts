/** Bags into boxes, in the order of their numbers: whoever packs takes them as they stand. */

/**
 * Share of a box that bags can fill, the corners lost (ours). Bags no larger than the other share of
 * a box, `LARGEST`, always go into as many boxes as their litres need at this filling: see `intoBoxes`.
 */
export const FILLING = 0.75;
const LARGEST = 1 - FILLING;

/** Litres of the largest bag that a box takes. */
export function largestBag(boxLitres: number): number {
  return LARGEST * boxLitres;
}

/**
 * For each bag, by its litres, the box that it goes into, counted from 0: as few boxes as the litres need at
 * the filling, each with about as much in it. A bag goes where its middle falls when all are laid in a row and
 * the row is cut into equal parts; so a box holds at most its part and half a bag at either end, which is no
 * more than the whole box.
 */
export function intoBoxes(bags: readonly number[], boxLitres: number): readonly number[] {
  const whole = bags.reduce((sum, litres) => sum + litres, 0);
  const boxes = Math.max(1, Math.ceil(whole / (FILLING * boxLitres) - 1e-6));
  let before = 0;
  return bags.map((litres) => {
    const middle = before + litres / 2;
    before += litres;
    return Math.min(boxes - 1, Math.floor((middle * boxes) / whole));
  });
}
