import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { kinship } from '../../src/science/kin.ts';
import { ancestry, kinshipBounds, type Couple, type Possible } from '../../src/science/pedigree.ts';

const animals = (...rows: readonly (readonly [string, readonly Couple[], string?])[]): Map<string, Possible> =>
  new Map(rows.map(([id, couples, choice]) => [id, { id, couples, choice: choice ?? id }]));
const couple = (sire: string | null, dam: string | null): Couple => ({ sire, dam });

describe('kinship where the parents are in doubt', () => {
  test('young of one brood are full sibs whichever female laid it', () => {
    const either = [couple('m', 'wren'), couple('m', 'pip')];
    const all = animals(['m', []], ['wren', []], ['pip', []], ['a', either, 'brood'], ['b', either, 'brood']);
    expect(kinshipBounds(all, 'a', 'b')).toEqual({ low: 0.25, high: 0.25 });
  });

  test('two broods of one male by either of two females: half sibs at least, full sibs at most', () => {
    const either = [couple('m', 'wren'), couple('m', 'pip')];
    const all = animals(['m', []], ['wren', []], ['pip', []], ['a', either], ['b', either]);
    expect(kinshipBounds(all, 'a', 'b')).toEqual({ low: 0.125, high: 0.25 });
  });

  test('with too many readings the low bound still holds, and the most is not given', () => {
    const mothers = Array.from({ length: 30 }, (_, n) => `f${String(n)}`);
    const any = mothers.map((dam) => couple('m', dam));
    const all = animals(['m', []], ...mothers.map((id) => [id, []] as const), ['a', any], ['b', any]);
    expect(kinshipBounds(all, 'a', 'b')).toEqual({ low: 0, high: null });
  });

  test('an animal that would be its own ancestor gives no figure above none', () => {
    const all = animals(['a', [couple('b', null)]], ['b', [couple('a', null)]]);
    expect(kinshipBounds(all, 'a', 'b')).toEqual({ low: 0, high: null });
  });

  test('holds the kinship of every reading, and learning who it was never widens it', () => {
    const open = fc
      .array(fc.tuple(fc.nat(20), fc.nat(20), fc.nat(20), fc.constantFrom(0, 1, 2)), { minLength: 4, maxLength: 9 })
      .map((rows) =>
        animals(
          ...rows.map(([s, d, e, couples], i) => {
            const id = (n: number): string => String(n % Math.max(1, i));
            const all = i < 2 ? [] : [couple(id(s), id(d)), couple(id(s), id(e))].slice(0, couples);
            return [String(i), all] as const;
          }),
        ),
      );
    fc.assert(
      fc.property(open, fc.nat(8), fc.nat(8), fc.boolean(), (all, i, j, second) => {
        const [a, b] = [String(i % all.size), String(j % all.size)];
        const wide = kinshipBounds(all, a, b);
        const settled = new Map(
          [...all].map(([id, one]) => [
            id,
            { ...one, couples: one.couples.slice(second ? -1 : 0, second ? undefined : 1) },
          ]),
        );
        const known = kinshipBounds(settled, a, b);
        const table = [...settled.values()].map(({ id, couples }) => ({
          id,
          sire: couples[0]?.sire ?? null,
          dam: couples[0]?.dam ?? null,
        }));
        expect(known.low).toBe(kinship(table)?.of(a, b));
        expect(known.high).toBe(known.low);
        expect(wide.low).toBeLessThanOrEqual(known.low);
        expect(wide.high ?? 1).toBeGreaterThanOrEqual(known.low);
      }),
    );
  });
});

test('ancestry holds the animals themselves and both sides', () => {
  const all = animals(['s', []], ['d', []], ['x', [couple('s', 'd')]], ['y', []]);
  expect([...ancestry(all, ['x'])].toSorted()).toEqual(['d', 's', 'x']);
});
