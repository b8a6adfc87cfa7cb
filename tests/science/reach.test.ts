import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { reach, routeTo } from '../../src/science/reach.ts';
import type { Link } from '../../src/science/reach.ts';

function water(a: string, b: string, from: number, until = Infinity): Link<string> {
  return { a, b, from, until, bothWays: true, label: `${a}~${b}` };
}
function fish(a: string, b: string, at: number): Link<string> {
  return { a, b, from: at, until: at + 1, bothWays: false, label: `${a}>${b}` };
}

describe('reach', () => {
  test('water carries both ways while it is shared, and no longer', () => {
    const links = [water('A', 'loop', 0, 50), water('B', 'loop', 0, 9), water('C', 'loop', 40)];
    const found = reach([{ node: 'A', at: 10 }], links);
    expect([...found.keys()].sort()).toEqual(['A', 'C', 'loop']);
    expect(found.get('C')?.at).toBe(40);
  });

  test('a fish carries one way, and only after it was exposed', () => {
    const links = [fish('A', 'B', 9), fish('A', 'C', 10), fish('D', 'A', 12), fish('C', 'E', 11), fish('C', 'F', 9)];
    expect([...reach([{ node: 'A', at: 10 }], links).keys()].sort()).toEqual(['A', 'C', 'E']);
  });

  test('the route lists the steps in order', () => {
    const links = [water('A', 'loop', 0), water('B', 'loop', 0), fish('B', 'C', 20)];
    const route = routeTo(reach([{ node: 'A', at: 10 }], links), 'C');
    expect(route.map((step) => step.by?.link.label)).toEqual(['A~loop', 'B~loop', 'B>C']);
    expect(routeTo(reach([{ node: 'A', at: 10 }], links), 'Z')).toEqual([]);
  });

  test('never reaches a node whose links all ended before the start (any graph)', () => {
    const node = fc.integer({ min: 0, max: 7 }).map((n) => `T${n}`);
    const link = fc.record({
      a: node,
      b: node,
      from: fc.integer({ min: 0, max: 60 }),
      lasts: fc.nat(40),
      both: fc.boolean(),
    });
    fc.assert(
      fc.property(fc.array(link, { maxLength: 40 }), fc.integer({ min: 0, max: 80 }), (drawn, start) => {
        const links = drawn.map(({ a, b, from, lasts, both }) => ({
          a,
          b,
          from,
          // T7 is valved off: each of its links is over when the trouble starts.
          until: a === 'T7' || b === 'T7' ? Math.min(from + lasts, start) : from + lasts,
          bothWays: both,
          label: '',
        }));
        const found = reach([{ node: 'T0', at: start }], links);
        expect(found.has('T7')).toBe(false);
        for (const arrival of found.values()) {
          expect(arrival.at).toBeGreaterThanOrEqual(start);
          if (arrival.by) expect(arrival.at).toBeLessThan(arrival.by.link.until);
        }
      }),
    );
  });

  test('agrees with trying every path (small graphs)', () => {
    const node = fc.integer({ min: 0, max: 3 }).map((n) => `T${n}`);
    const link = fc.record({
      a: node,
      b: node,
      from: fc.nat(20),
      lasts: fc.integer({ min: 1, max: 10 }),
      both: fc.boolean(),
    });
    fc.assert(
      fc.property(fc.array(link, { maxLength: 6 }), fc.nat(15), (drawn, start) => {
        const links = drawn.map((l) => ({
          a: l.a,
          b: l.b,
          from: l.from,
          until: l.from + l.lasts,
          bothWays: l.both,
          label: '',
        }));
        const found = reach([{ node: 'T0', at: start }], links);
        const best = new Map<string, number>();
        const walk = (at: string, time: number, used: readonly number[]): void => {
          if (time < (best.get(at) ?? Infinity)) best.set(at, time);
          links.forEach((l, index) => {
            const then = Math.max(time, l.from);
            if (used.includes(index) || then >= l.until) return;
            if (l.a === at) walk(l.b, then, [...used, index]);
            if (l.bothWays && l.b === at) walk(l.a, then, [...used, index]);
          });
        };
        walk('T0', start, []);
        expect(new Map([...found].map(([key, arrival]) => [key, arrival.at]))).toEqual(best);
      }),
    );
  });
});
