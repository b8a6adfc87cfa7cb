import v8 from 'node:v8';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { exactly } from '../../src/core/interval.ts';
import { paceOf } from '../../src/science/growth.ts';
import type { GrowthPrior } from '../../src/science/growth.ts';
import { layingDays } from '../../src/science/layingday.ts';
import type { StageLook } from '../../src/science/layingday.ts';
import type { StageTimes } from '../../src/science/stageclocks.ts';
import { bringBackWorked, takeOutWorked, Worked } from '../../src/science/worked.ts';

const isNumber = (value: unknown): value is number => typeof value === 'number';

test('the same inputs are worked out once, others anew', () => {
  const squares = new Worked(isNumber, 'all');
  let times = 0;
  const square = (value: number): number =>
    squares.of([value], () => {
      times += 1;
      return value * value;
    });
  expect([square(3), square(4), square(3), square(-3)]).toEqual([9, 16, 9, 9]);
  expect(times).toBe(3);
});

test('of what changes from day to day only what was asked for is taken along', () => {
  const all = new Worked(isNumber, 'all');
  const asked = new Worked(isNumber, 'asked');
  for (const known of [all, asked]) {
    known.bringBack([
      ['1', 10],
      ['2', 20],
    ]);
    known.of([2], () => 0);
    known.of([3], () => 30);
  }
  expect(all.takeOut().map(([key]) => key)).toEqual(['1', '2', '3']);
  expect(asked.takeOut()).toEqual([
    ['2', 20],
    ['3', 30],
  ]);
});

test('no value of an input is taken for another, or for one that is missing', () => {
  const inputs = fc.array(
    fc.oneof(fc.double(), fc.integer(), fc.constantFrom(null, Infinity, -Infinity, 'none', 'quiet')),
    { minLength: 3, maxLength: 3 },
  );
  fc.assert(
    fc.property(inputs, inputs, (one, other) => {
      const known = new Worked(isNumber, 'all');
      const same = one.every((value, index) => value === other[index] || Object.is(value, other[index]));
      known.of(one, () => 1);
      expect(known.of(other, () => 2)).toBe(same ? 1 : 2);
    }),
  );
});

test('what is brought back is what was taken out; what is no result is not taken', () => {
  const prior: GrowthPrior = {
    startAge: exactly(9),
    startSize: { low: 4, likely: 5, high: 6 },
    laterAge: { low: 80, likely: 100, high: 130 },
    laterSize: 28,
    grown: 75,
  };
  const readings = [{ age: 60, mean: 17, error: 1.5 }];
  const pace = paceOf(prior, readings);
  const taken: unknown = v8.deserialize(v8.serialize(takeOutWorked()));
  bringBackWorked(taken);
  expect(paceOf(prior, readings)).toEqual(pace);
  for (const wrong of [null, 7, 'text', [], [[['key', 'no result']], [['key']]], [[null]]]) bringBackWorked(wrong);
  expect(paceOf(prior, readings)).toEqual(pace);
});

test('the same looks a year later give the same chances a year later', () => {
  const times: StageTimes = {
    hatch: { low: 2, likely: 3, high: 4 },
    swim: { low: 4, likely: 5, high: 7 },
    release: null,
    temperature: exactly(26),
  };
  const looks: StageLook[] = [
    { day: 8, found: 'eggs', beganFrom: null },
    { day: 12, found: 'swimming', beganFrom: 11 },
  ];
  const year = (by: number): ReturnType<typeof layingDays> =>
    layingDays(
      2 + by,
      9 + by,
      times,
      looks.map((look) => ({ ...look, day: look.day + by, beganFrom: look.beganFrom && look.beganFrom + by })),
      [3 + by],
    );
  const [first, later] = [year(0), year(365)];
  expect(later.laid.chances).toEqual(first.laid.chances);
  expect(later.laid.from).toBe(first.laid.from + 365);
  expect(later.swam.from).toBe(first.swam.from + 365);
  expect(later.hatched?.from).toBe((first.hatched?.from ?? 0) + 365);
});
