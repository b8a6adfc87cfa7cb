/** An image gives back what was put in: the same values, the same things where several cells lead to one. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { openImage as openPages } from '../../../src/files/cache/image/open.ts';
import type { Image, Leaf } from '../../../src/files/cache/image/open.ts';
import { Pages } from '../../../src/files/cache/pages.ts';
import { imageOf } from '../../../src/files/cache/image/make.ts';
import { plain } from '../../support/plain.ts';

const openImage = (bytes: Uint8Array, leaves: readonly Leaf[] = []): Image => openPages(Pages.of(bytes), leaves);
const again = (value: unknown): unknown => openImage(imageOf({ part: value }))('part');

const leaf = fc.oneof(
  fc.integer(),
  fc.double(),
  fc.maxSafeInteger(),
  fc.constantFrom(2 ** 28, 2 ** 28 - 1, -(2 ** 28), -(2 ** 28) - 1, -0, Infinity, -Infinity),
  fc.boolean(),
  fc.constantFrom(null, undefined),
  fc.string({ unit: 'binary' }),
);
const { tree } = fc.letrec<{ tree: unknown }>((tie) => ({
  tree: fc.oneof(
    { maxDepth: 4 },
    leaf,
    fc.array(tie('tree'), { maxLength: 20 }),
    fc.array(tie('tree'), { maxLength: 20 }).map((all) => new Set(all)),
    fc.array(fc.tuple(tie('tree'), tie('tree')), { maxLength: 20 }).map((all) => new Map(all)),
    fc.dictionary(fc.string(), tie('tree'), { maxKeys: 8 }),
  ),
}));

describe('what is put in comes out', () => {
  test('for any plain data', () => {
    fc.assert(
      fc.property(tree, (value) => {
        expect(plain(again(value))).toStrictEqual(plain(value));
      }),
      { numRuns: 400 },
    );
  });

  test('with names that objects have of their own', () => {
    const value: unknown = JSON.parse('{"__proto__": {"constructor": 1}, "toString": [2]}');
    expect(JSON.stringify(again(value))).toBe(JSON.stringify(value));
  });

  test('with what leads back to itself, and what two lead to', () => {
    const fish: Record<string, unknown> = { name: 'Fern' };
    const room = { broods: new Map([['Fern', fish]]), living: [fish], back: {} };
    room.back = room;
    fish['room'] = room;
    const got = again(room);
    if (!isRoom(got)) throw new Error('no room came out');
    expect(got.broods.get('Fern')).toBe(got.living[0]);
    expect(got.back).toBe(got);
  });

  test('with records that are values, each by itself', () => {
    const day = { low: 1, high: 2 };
    const image = openImage(imageOf({ part: [day, day, [day]] }, [['low', 'high'], ['from']]));
    const got = image('part');
    expect(got).toEqual([day, day, [day]]);
    expect(Array.isArray(got) && got[0] === got[1]).toBe(false);
  });

  test('with leaves, shared ones as one', () => {
    const place = { file: 'room.txt', line: 4, from: 0, to: 9.5 };
    const window = { low: null, high: -3 };
    const one = { size: 2 };
    const bytes = imageOf({ part: [place, window, window, one, { low: 1, high: 2, likely: 1 }] });
    const leaves = [
      { keys: ['low', 'high'], make: (low: unknown, high: unknown) => ({ low, high }) },
      { keys: ['size'], make: (size: unknown) => ({ size }) },
      {
        keys: ['file', 'line', 'from', 'to'],
        make: (file: unknown, line: unknown, from: unknown, to: unknown) => ({ file, line, from, to }),
      },
    ];
    const got = openImage(bytes, leaves)('part');
    expect(got).toStrictEqual(openImage(bytes)('part'));
    expect(got).toStrictEqual([place, window, window, one, { low: 1, high: 2, likely: 1 }]);
    expect(Array.isArray(got) && got[1] === got[2]).toBe(true);
  });

  test('by its part, each look for itself', () => {
    const image = openImage(imageOf({ one: { list: [1] }, two: 'two' }));
    expect(image('two')).toBe('two');
    expect(image('one')).toEqual({ list: [1] });
    expect(image('one')).not.toBe(image('one'));
    expect(image('three')).toBeUndefined();
  });

  test('from bytes that begin anywhere', () => {
    const made = imageOf({ part: [0.5, 'half'] });
    const moved = new Uint8Array(made.length + 3);
    moved.set(made, 3);
    expect(openImage(moved.subarray(3))('part')).toEqual([0.5, 'half']);
  });
});

test.each([() => 1, Symbol('x'), 1n])('what is no plain data is refused', (value) => {
  expect(() => imageOf({ part: [value] })).toThrow(TypeError);
});

/** Long enough to be opened late. */
const LONG = Array.from({ length: 40 }, (_, index) => [`tank ${index}`, { index }] as const);

describe('a long map, opened late', () => {
  const long = (): Map<unknown, unknown> => {
    const got = again(new Map(LONG));
    if (!(got instanceof Map)) throw new Error('no map came out');
    return got;
  };
  type Step = (map: Map<unknown, unknown>) => unknown;
  const key = fc.integer({ min: 35, max: 45 }).map((index) => `tank ${index}`);
  const step: fc.Arbitrary<Step> = fc.oneof(
    key.map(
      (one): Step =>
        (map) =>
          map.get(one),
    ),
    key.map(
      (one): Step =>
        (map) =>
          map.has(one),
    ),
    key.map(
      (one): Step =>
        (map) =>
          map.delete(one),
    ),
    fc.tuple(key, fc.integer()).map(
      ([one, value]): Step =>
        (map) =>
          [...map.set(one, value).keys()].length,
    ),
    // Set and not looked at.
    fc.tuple(key, fc.integer()).map(
      ([one, value]): Step =>
        (map) =>
          void map.set(one, value),
    ),
    fc.constant<Step>((map) => map.size),
    fc.constant<Step>((map) => [...map]),
    fc.constant<Step>((map) => [...map.values()]),
    fc.constant<Step>((map) => [...map.keys()]),
    fc.constant<Step>((map) => [...map.entries()]),
    fc.constant<Step>((map) => {
      const all: unknown[] = [];
      map.forEach((...each) => all.push(each[0], each[1]));
      return all;
    }),
    fc.constant<Step>((map) => {
      map.clear();
    }),
  );

  test('does what any map does', () => {
    fc.assert(
      fc.property(fc.array(step, { maxLength: 12 }), (steps) => {
        const [late, usual] = [long(), new Map<unknown, unknown>(LONG)];
        for (const one of steps) expect(one(late)).toEqual(one(usual));
        expect([...late]).toEqual([...usual]);
      }),
      { numRuns: 300 },
    );
  });

  test('gives one thing for one key, changed or not', () => {
    const map = long();
    const got = map.get('tank 7');
    expect([...map.values()][7]).toBe(got);
    expect(new Map(map).get('tank 7')).toBe(got);
  });
});

describe('a long list, opened late', () => {
  const room = (): Record<string, unknown> => {
    const got = again({ lines: LONG.map(([, value]) => value), name: 'A1' });
    if (!isRecord(got)) throw new Error('no record came out');
    return got;
  };
  const listOf = (one: Record<string, unknown>): unknown[] => {
    if (!Array.isArray(one['lines'])) throw new Error('no list came out');
    return one['lines'];
  };
  type Step = (list: unknown[]) => unknown;
  const index = fc.integer({ min: 0, max: 45 });
  const is = (asked: number) => (value: unknown) => isRecord(value) && value['index'] === asked;
  const step: fc.Arbitrary<Step> = fc.oneof(
    index.map(
      (at): Step =>
        (list) =>
          list[at],
    ),
    index.map(
      (at): Step =>
        (list) =>
          list.at(-at),
    ),
    index.map(
      (at): Step =>
        (list) =>
          list.findLast(is(at)),
    ),
    index.map(
      (at): Step =>
        (list) =>
          list.findLastIndex(is(at)),
    ),
    index.map(
      (at): Step =>
        (list) =>
          list.push({ index: at }, 'more'),
    ),
    index.map(
      (at): Step =>
        (list) =>
          list.splice(at, 1, 'put', 'in'),
    ),
    index.map(
      (at): Step =>
        (list) =>
          (list[at] = 'set') && list.length,
    ),
    index.map(
      (at): Step =>
        (list) =>
          (list.length = Math.min(at, list.length)),
    ),
    index.map(
      (at): Step =>
        (list) =>
          list.slice(at),
    ),
    index.map(
      (at): Step =>
        (list) =>
          at in list,
    ),
    fc.constantFrom<Step>(
      (list) => list.length,
      (list) => list.pop(),
      (list) => list.shift(),
      (list) => [...list],
      (list) => list.filter(is(3)),
      (list) => [{}].concat(list),
      (list) => Object.keys(list),
      (list) => Object.entries({ ...list }),
      (list) => JSON.stringify(list),
      (list) => list.toReversed(),
      (list) => list.reverse(),
      (list) => list.includes('more'),
    ),
  );

  test('does what any list does, held or got again', () => {
    fc.assert(
      fc.property(fc.array(fc.tuple(step, fc.boolean()), { maxLength: 12 }), (steps) => {
        const usual: unknown[] = LONG.map(([, value]) => value);
        const late = room();
        const held = listOf(late);
        for (const [one, again] of steps) expect(one(again ? listOf(late) : held)).toEqual(one(usual));
        expect(listOf(late)).toEqual(usual);
        expect([...held]).toEqual(usual);
      }),
      { numRuns: 1_000 },
    );
  });

  test('gives one thing for one place, before all of it is open and after', () => {
    const late = room();
    const last = listOf(late).at(-1);
    expect(listOf(late).filter(is(39))).toEqual([last]);
    expect(listOf(late)[39]).toBe(last);
    expect(Array.isArray(late['lines'])).toBe(true);
  });

  test('can be replaced, and stays so whatever is done with the old one', () => {
    const late = room();
    const held = listOf(late);
    late['lines'] = [];
    expect(held.filter(is(3))).toHaveLength(1);
    expect(late).toEqual({ lines: [], name: 'A1' });
    const other = room();
    other['lines'] = 'none';
    expect(Object.entries(other)).toEqual([
      ['lines', 'none'],
      ['name', 'A1'],
    ]);
  });
});

function isRecord(value: unknown): value is Record<string, unknown> {
  return typeof value === 'object' && value !== null;
}

function isRoom(value: unknown): value is { broods: Map<string, unknown>; living: unknown[]; back: unknown } {
  return isRecord(value) && value['broods'] instanceof Map && Array.isArray(value['living']);
}
