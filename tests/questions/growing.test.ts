/** Lengths on a day: what is usual, what was read, and what readings must not be taken for. */
import { describe, expect, it } from 'vitest';
import { growthOf, sizeOn } from '../../src/questions/growing.ts';
import { saleableFrom } from '../../src/questions/saleable.ts';
import type { Room } from '../../src/state/draft.ts';
import { roomOn, type Line } from '../support/events.ts';
import { group, heads, laid, look, move, named, sale, setUp, sizes, soldAt, tankLine } from '../support/fishroom.ts';

const R1 = { fish: named('Rowan-1') };
const young: Line[] = [...setUp, laid('2026-01-05'), look('2026-01-15', 'free-swimming', heads(60))];
const brood = (room: Room, name = 'Rowan-1') => {
  const found = room.stock.broods.get(name);
  if (!found) throw new Error(`no ${name}`);
  return found;
};
const size = (room: Room): number => sizeOn(room, brood(room))?.likely ?? 0;
const rate = (room: Room): number => (growthOf(room, brood(room))?.line.rate.likely ?? 0) * 7;

describe('the length of a brood', () => {
  it('is what is usual where nothing was read, and said so', () => {
    const room = roomOn('2026-05-07', young);
    // 122 days: 25 mm (common practice, no source).
    expect(size(room)).toBeCloseTo(25, 0);
    expect(growthOf(room, brood(room))?.basis).toBe('no reading, usual for cave spawners');
  });
  it('is none before they swim', () => {
    expect(sizeOn(roomOn('2026-01-07', young), brood(roomOn('2026-01-07', young)))).toBeNull();
  });
  it('follows what was read', () => {
    const slow = roomOn('2026-04-11', [
      ...young,
      sizes('2026-03-01', 'average', [10], R1),
      sizes('2026-04-11', 'average', [14], R1),
    ]);
    const fast = roomOn('2026-04-11', [
      ...young,
      sizes('2026-03-01', 'average', [18], R1),
      sizes('2026-04-11', 'average', [28], R1),
    ]);
    expect(size(slow)).toBeLessThan(18);
    expect(size(fast)).toBeGreaterThan(24);
    expect(sizeOn(fast, brood(fast))?.high).toBeLessThan(32);
  });
  it('takes the largest for what it is, and not for the average', () => {
    // trap: averaging "biggest 30" with "about 25"
    const of = (what: 'largest' | 'average') =>
      size(roomOn('2026-04-11', [...young, sizes('2026-04-11', what, [30], R1)]));
    expect(of('largest')).toBeLessThan(of('average'));
    const both = size(
      roomOn('2026-04-11', [
        ...young,
        sizes('2026-04-11', 'largest', [30], R1),
        sizes('2026-04-11', 'average', [25], R1),
      ]),
    );
    expect(both).toBeLessThan(25.5);
    expect(both).toBeGreaterThan(22);
  });
  it('takes the mean of a sample, and the middle of a bulk', () => {
    const sample = roomOn('2026-04-11', [...young, sizes('2026-04-11', 'sample', [18, 20, 22], R1)]);
    expect(growthOf(sample, brood(sample))?.readings[0]?.mean).toBe(20);
  });
  it('of the same day is the one filed later', () => {
    const room = roomOn('2026-04-11', [
      ...young,
      sizes('2026-04-11', 'average', [40], R1),
      sizes('2026-04-11', 'average', [20], R1),
    ]);
    expect(growthOf(room, brood(room))?.readings.map(({ mean }) => mean)).toEqual([20]);
  });
});

describe('selling or moving the largest', () => {
  // trap: calling the sold-out best fish "negative growth"
  it('is no shrinkage', () => {
    const before: Line[] = [...young, sizes('2026-04-11', 'average', [28], R1)];
    const after: Line[] = [...before, sale('2026-04-12', heads(20), R1), sizes('2026-04-25', 'average', [24], R1)];
    const room = roomOn('2026-04-25', after);
    expect(rate(room)).toBeGreaterThan(1);
    expect(size(room)).toBeGreaterThan(size(roomOn('2026-04-11', before)) - 1);
  });
  it('to another tank neither', () => {
    const after: Line[] = [
      ...young,
      sizes('2026-04-11', 'average', [28], R1),
      move('2026-04-12', heads(20), 'C1', { ...R1, which: 'largest' }),
      sizes('2026-04-25', 'average', [22], R1),
    ];
    expect(rate(roomOn('2026-04-25', after))).toBeGreaterThan(1);
  });
});

describe('the room', () => {
  const earlier: Line[] = [1, 2].flatMap((number): Line[] => {
    const name = `Rowan-${String(number)}`;
    const year = 2023 + number;
    return [
      laid(`${String(year)}-01-01`),
      look(`${String(year)}-01-11`, 'free-swimming', heads(40)),
      sizes(`${String(year)}-04-01`, 'average', [32], { fish: named(name) }),
      sale(`${String(year)}-05-01`, 'all', { fish: named(name) }),
    ];
  });
  const old = setUp.map(([, subject, fact]) => ['2023-01-01', subject, fact]);
  it('teaches what its earlier broods of that species did', () => {
    const lines = [...old, ...earlier, laid('2026-01-01'), look('2026-01-11', 'free-swimming', heads(60))].filter(
      isLine,
    );
    const room = roomOn('2026-05-03', lines);
    expect(room.problems).toEqual([]);
    const growth = growthOf(room, brood(room, 'Rowan-3'));
    expect(growth?.basis).toBe('no reading, 2 broods of this room');
    expect(sizeOn(room, brood(room, 'Rowan-3'))?.likely).toBeGreaterThan(32);
  });
});

describe('sale', () => {
  it('of bought fish goes by what was read of them', () => {
    const bought: Line[] = [
      ...setUp,
      soldAt('krib', 30, 52),
      tankLine('B1'),
      group('Ash', 'group', 'B1', { count: heads(12) }),
      sizes('2026-02-01', 'average', [20], { in: 'B1' }),
    ];
    const room = roomOn('2026-02-01', bought);
    const ash = room.stock.groups.get('Ash');
    const sold = ash ? saleableFrom(room, ash) : null;
    expect(sold?.window.low).toBeGreaterThan(room.on);
    expect(sold?.share.likely).toBeLessThan(0.1);
  });
});

function isLine(line: readonly unknown[]): line is Line {
  return line.length === 3;
}
