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
  test('in their order, each box with about as much in it', () => {
    expect(intoBoxes([2, 2, 2, 2, 2, 2, 2], 10)).toEqual([0, 0, 0, 1, 1, 1, 1]);
    expect(intoBoxes([2.5, 2.5, 2.5], 10)).toEqual([0, 0, 0]);
    expect(intoBoxes([], 40)).toEqual([]);
  });

  test('one box is one at the filling: 30 L of 40 L, and no more', () => {
    expect(Math.max(...intoBoxes([10, 10, 10], 40))).toBe(0);
    expect(Math.max(...intoBoxes([10, 10, 10, 0.9], 40))).toBe(1);
  });

  test('no box is over-full, and bags that a box takes need no more boxes than their litres do at the filling', () => {
    const bag = fc.integer({ min: 1, max: Math.floor(largestBag(40) * 10) }).map((tenths) => tenths / 10);
    fc.assert(
      fc.property(fc.array(bag, { minLength: 1, maxLength: 60 }), (bags) => {
        const boxes = intoBoxes(bags, 40);
        const litres = contents(bags, boxes);
        expect(Math.max(...litres)).toBeLessThanOrEqual(40 + 1e-6);
        const whole = bags.reduce((sum, one) => sum + one, 0);
        expect(litres).toHaveLength(Math.ceil(whole / (40 * FILLING) - 1e-9));
        expect(litres.every((one) => one > 0)).toBe(true);
        expect(boxes).toEqual(boxes.toSorted((a, b) => a - b));
      }),
    );
  });
});
