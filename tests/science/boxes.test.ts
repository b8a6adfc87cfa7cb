/** Bags into boxes. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { FILLING, intoBoxes, largestBag } from '../../src/science/boxes.ts';

function contents(bags: readonly number[], boxes: readonly number[]): number[] {
  const litres: number[] = [];
  boxes.forEach((box, index) => (litres[box] = (litres[box] ?? 0) + (bags[index] ?? 0)));
  return litres;
}

describe('bags into boxes', () => {
  test('the largest first, each into the first box with room', () => {
    expect(intoBoxes([2, 6, 3, 4], 10)).toEqual([1, 0, 1, 0]);
    expect(intoBoxes([], 40)).toEqual([]);
  });

  test('no box is over-full, and bags that a box takes need no more boxes than their litres do at the filling', () => {
    const bag = fc.integer({ min: 1, max: Math.floor(largestBag(40) * 10) }).map((tenths) => tenths / 10);
    fc.assert(
      fc.property(fc.array(bag, { minLength: 1, maxLength: 60 }), (bags) => {
        const boxes = intoBoxes(bags, 40);
        const litres = contents(bags, boxes);
        expect(Math.max(...litres)).toBeLessThanOrEqual(40 + 1e-6);
        const whole = bags.reduce((sum, one) => sum + one, 0);
        expect(litres.length).toBeLessThanOrEqual(Math.ceil(whole / (40 * FILLING) - 1e-9));
      }),
    );
  });
});
