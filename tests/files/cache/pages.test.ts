/** Pages give the same bytes as reading all of them, and read only what is looked at. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { imageOf } from '../../../src/files/cache/image/make.ts';
import { openImage } from '../../../src/files/cache/image/open.ts';
import { Pages } from '../../../src/files/cache/pages.ts';

const PAGE = 65_536;

/** Reads of these bytes, `most` at a time, written down. */
function reading(bytes: Uint8Array, most = bytes.length): { pages: Pages; reads: number[] } {
  const reads: number[] = [];
  const pages = Pages.from(bytes.length, (into, from) => {
    const got = Math.min(into.length, most);
    reads.push(from);
    into.set(bytes.subarray(from, from + got));
    return got;
  });
  return { pages, reads };
}

const some = Uint8Array.from({ length: 3 * PAGE + 17 }, (_, at) => (at * 31 + (at >> 8)) & 255);

test('what is looked at is there, whatever is looked at and however little each reading gives', () => {
  const place = fc.nat(some.length - 1);
  fc.assert(
    fc.property(
      fc.array(fc.tuple(place, place), { minLength: 1 }),
      fc.integer({ min: 5_000, max: PAGE }),
      (spans, most) => {
        const { pages } = reading(some, most);
        for (const [from, to] of spans) {
          pages.seeAll(from, to);
          pages.see(from);
          expect(Buffer.compare(pages.bytes.subarray(from, to), some.subarray(from, to))).toBe(0);
          expect(pages.bytes[from]).toBe(some[from]);
        }
      },
    ),
  );
});

test('only pages that were looked at are read, each once', () => {
  const { pages, reads } = reading(some);
  pages.see(PAGE - 1);
  pages.seeAll(PAGE - 1, PAGE);
  expect(reads).toEqual([0]);
  pages.seeAll(PAGE - 1, PAGE + 1);
  pages.see(3 * PAGE + 16);
  pages.see(0);
  expect(reads).toEqual([0, PAGE, 3 * PAGE]);
});

test('nothing is read of bytes that are all there', () => {
  const pages = Pages.of(some);
  pages.seeAll(0, some.length);
  expect(pages.bytes).toBe(some);
});

test('a file that became shorter is no silent nought', () => {
  const pages = Pages.from(2 * PAGE, (into, from) => (from < PAGE ? into.length : 0));
  pages.see(5);
  expect(() => pages.see(PAGE)).toThrow('shorter');
});

test('of a large image a question about one thing reads a few pages', () => {
  const long = (seed: number): unknown =>
    Array.from({ length: 40_000 }, (_, at) => ({ day: at + seed, half: at / 3 + 0.1 }));
  const parts = { one: { list: long(1), name: 'one' }, two: { list: long(2), name: 'two' } };
  const bytes = imageOf(parts);
  const { pages, reads } = reading(bytes);
  const got = openImage(pages)('two');
  const hasList = (value: unknown): value is { list: readonly unknown[]; name: string } =>
    typeof value === 'object' && value !== null && 'list' in value;
  if (!hasList(got)) throw new Error('no part came out');
  expect([got.name, got.list.at(-1), got.list.length]).toEqual([
    'two',
    { day: 40_001, half: 39_999 / 3 + 0.1 },
    40_000,
  ]);
  expect(bytes.length / PAGE).toBeGreaterThan(20);
  expect(reads.length).toBeLessThan(8);
  expect(JSON.stringify(got)).toBe(JSON.stringify(parts.two));
  expect(new Set(reads).size).toBe(reads.length);
});
