/** The best choice under limits: the same as by trying everything, never below greedy, never over a limit. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { chooseBest, greedyWays, within, worthOf, type Choice } from '../../src/science/choose.ts';

const LIMITS = ['a', 'b'] as const;

const choice: fc.Arbitrary<Choice> = fc
  .record({
    worth: fc.integer({ min: 0, max: 4000 }).map((cents) => cents / 100),
    most: fc.integer({ min: 0, max: 4 }),
    a: fc.integer({ min: 0, max: 5 }),
    b: fc.integer({ min: 0, max: 30 }).map((tenths) => tenths / 10),
  })
  .map(({ worth, most, a, b }) => ({ worth, most, takes: new Map(Object.entries({ a, b })) }));

const problem = fc.record({
  choices: fc.array(choice, { minLength: 1, maxLength: 5 }),
  limits: fc
    .record({ a: fc.integer({ min: 0, max: 12 }), b: fc.integer({ min: 0, max: 80 }).map((tenths) => tenths / 10) })
    .map(({ a, b }) => new Map<string, number>(LIMITS.map((name) => [name, { a, b }[name]]))),
});

/** The most that any allowed choice is worth, by trying them all. */
function exhaustive(choices: readonly Choice[], limits: ReadonlyMap<string, number>, amounts: number[] = []): number {
  const next = choices[amounts.length];
  if (next === undefined) return within(amounts, choices, limits) ? worthOf(amounts, choices) : -1;
  let best = -1;
  for (let amount = 0; amount <= next.most; amount += 1)
    best = Math.max(best, exhaustive(choices, limits, [...amounts, amount]));
  return best;
}

describe('the best choice', () => {
  test('is worth what trying everything finds, in whole numbers, within the limits', () => {
    fc.assert(
      fc.property(problem, ({ choices, limits }) => {
        const { amounts: found, proven } = chooseBest(choices, limits);
        expect(proven).toBe(true);
        expect(found.every((amount) => Number.isInteger(amount))).toBe(true);
        expect(within(found, choices, limits)).toBe(true);
        expect(worthOf(found, choices)).toBeCloseTo(exhaustive(choices, limits), 2);
      }),
      { numRuns: 300 },
    );
  });

  test('is never worth less than a greedy one, however many choices there are', () => {
    const many = fc.record({
      choices: fc.array(choice, { minLength: 6, maxLength: 25 }),
      limits: fc.record({ a: fc.nat(40), b: fc.nat(30) }).map((one) => new Map(Object.entries(one))),
    });
    fc.assert(
      fc.property(many, ({ choices, limits }) => {
        const best = worthOf(chooseBest(choices, limits).amounts, choices);
        for (const greedy of greedyWays(choices, limits))
          expect(best).toBeGreaterThanOrEqual(worthOf(greedy, choices) - 0.005);
      }),
      { numRuns: 100 },
    );
  });

  test('beats greed where one dear thing fills what two cheaper ones would share', () => {
    const choices: Choice[] = [
      { worth: 10, most: 1, takes: new Map([['room', 3]]) },
      { worth: 7, most: 2, takes: new Map([['room', 2]]) },
    ];
    const limits = new Map([['room', 4]]);
    expect(chooseBest(choices, limits).amounts).toEqual([0, 2]);
    expect(greedyWays(choices, limits)[0]).toEqual([1, 0]);
  });

  test('of choices of equal worth the earlier goes first; of nothing, nothing', () => {
    const one: Choice = { worth: 5, most: 3, takes: new Map([['room', 1]]) };
    expect(chooseBest([one, one, one], new Map([['room', 4]])).amounts).toEqual([3, 1, 0]);
    expect(chooseBest([], new Map())).toEqual({ amounts: [], proven: true, short: 0 });
  });
});
