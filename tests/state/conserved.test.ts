/** No fish appears or vanishes without a line, in whatever order the lines stand. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { foldRoom } from '../../src/state/fold.ts';
import { day, eventsOf, roomOn, type Line } from '../support/events.ts';
import { about, heads, laid, look, lostSome, move, named, sale, setUp, tally, tankLine } from '../support/fishroom.ts';

const R1 = named('Rowan-1');
const TANKS = ['A1', 'C1', 'D1'] as const;
const begin: Line[] = [...setUp, tankLine('D1'), laid('2026-01-05'), look('2026-01-15', 'free-swimming', heads(200))];

const deed = fc.record({
  what: fc.constantFrom('move', 'die', 'sell', 'guess moved', 'count guessed'),
  from: fc.constantFrom(...TANKS),
  to: fc.constantFrom(...TANKS),
  count: fc.integer({ min: 1, max: 60 }),
});
type Deed = { what: string; from: string; to: string; count: number };

function lineOf(one: Deed, on: string): Line {
  const more = { in: one.from, fish: R1 };
  if (one.what === 'move') return move(on, heads(one.count), one.to, more);
  if (one.what === 'guess moved') return move(on, about(one.count), one.to, more);
  if (one.what === 'die') return lostSome(on, heads(one.count), 'died', more);
  if (one.what === 'sell') return sale(on, heads(one.count), more);
  return tally(on, about(one.count), more);
}
const dated = (deeds: readonly Deed[]): Line[] =>
  deeds.map((one, at) => lineOf(one, `2026-02-${String(at + 1).padStart(2, '0')}`));

describe('the stock', () => {
  it('of surely counted fish is what came less what went', () => {
    const sure = fc.array(
      deed.filter(({ what }) => what !== 'guess moved' && what !== 'count guessed'),
      { maxLength: 20 },
    );
    fc.assert(
      fc.property(sure, (deeds) => {
        const room = roomOn('2026-02-28', [...begin, ...dated(deeds)]);
        const brood = room.stock.broods.get('Rowan-1');
        const gone = brood?.gone.reduce((sum, one) => sum + one.count.low, 0) ?? 0;
        expect(brood?.total).toEqual({ low: 200 - gone, likely: 200 - gone, high: 200 - gone });
        const parts = [...(brood?.parts.values() ?? [])];
        expect(parts.reduce((sum, part) => sum + part.low, 0)).toBe(200 - gone);
        expect(parts.every((part) => part.low === part.high && part.low > 0)).toBe(true);
        // What could not be was told, and changed nothing.
        const counted = [...(brood?.lines ?? [])].length - 2;
        expect(counted + room.problems.filter(({ weight }) => weight === 'stops').length).toBe(deeds.length);
      }),
    );
  });
  it('never has an inverted interval, and its parts never promise more than there are', () => {
    fc.assert(
      fc.property(fc.array(deed, { maxLength: 20 }), (deeds) => {
        const brood = roomOn('2026-02-28', [...begin, ...dated(deeds)]).stock.broods.get('Rowan-1');
        const parts = [...(brood?.parts.values() ?? [])];
        for (const count of [...parts, ...(brood ? [brood.total] : [])]) {
          expect(count.low).toBeLessThanOrEqual(count.likely ?? count.low);
          expect(count.likely ?? count.low).toBeLessThanOrEqual(count.high);
          expect(count.low).toBeGreaterThanOrEqual(0);
        }
        const low = parts.reduce((sum, part) => sum + part.low, 0);
        expect(low).toBeLessThanOrEqual(brood?.total.high ?? 0);
        expect(brood?.total.high).toBeLessThanOrEqual(200);
      }),
    );
  });
  it('is the same for lines of one day that do not touch each other, in any order', () => {
    const lines: Line[] = [
      lostSome('2026-02-10', heads(3), 'died', { fish: R1 }),
      sale('2026-02-10', heads(12), { fish: R1 }),
      move('2026-02-10', heads(30), 'C1', { fish: R1 }),
      move('2026-02-10', heads(20), 'D1', { fish: R1 }),
      lostSome('2026-02-10', heads(1), 'missing', { fish: R1 }),
    ];
    const shown = (order: readonly Line[]) => {
      const brood = roomOn('2026-02-10', [...begin, ...order]).stock.broods.get('Rowan-1');
      return { parts: new Map([...(brood?.parts ?? [])].toSorted()), total: brood?.total };
    };
    fc.assert(
      fc.property(fc.shuffledSubarray(lines, { minLength: lines.length }), (order) => {
        expect(shown(order)).toEqual(shown(lines));
      }),
    );
  });
  it('is total: no events make the fold throw', () => {
    fc.assert(
      fc.property(fc.array(deed, { maxLength: 12 }), (deeds) => {
        expect(() => foldRoom(eventsOf(dated(deeds)), day('2026-02-28'))).not.toThrow();
      }),
    );
  });
});
