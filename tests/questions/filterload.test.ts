/** What the feed asks of a filter, and which tanks a change of the loop did not reach. */
import { describe, expect, it } from 'vitest';
import { addDays, isoDay } from '../../src/core/day.ts';
import { measure } from '../../src/core/quantity.ts';
import { water } from '../../src/questions/water.ts';
import { waterJson, waterText } from '../../src/reports/water.ts';
import { plainLook } from '../../src/reports/look.ts';
import { day, loop, roomOn, tank, type Line } from '../support/events.ts';
import { begin, change, SET_UP, test } from '../support/waters.ts';

const one = (place: string, lines: readonly Line[], on = '2026-02-20') => {
  const [row] = water(roomOn(on, [...SET_UP, ...lines]), { place, target: null }) ?? [];
  if (row === undefined) throw new Error('no such water');
  return row;
};
const fed = (from: string, days: number, grams: number): Line[] =>
  Array.from({ length: days }, (_, index): Line => [
    isoDay(addDays(day(from), index)),
    loop('Long'),
    { kind: 'fed', food: 'flake', grams: measure('g', grams) },
  ]);
const clear = (on: string): Line => test(on, loop('Long'), { tan: measure('mg/L', 0), no2: measure('mg/L', 0) });

describe('the load of a filter', () => {
  it('50 g of feed with 45 % protein make 2.07 g of ammonia nitrogen a day', () => {
    // Timmons & Ebeling: feed × protein × 0.092; 50 g at 48 % print as 2.208 g, so 45 % are 2.07 g.
    const { load } = one('Long', fed('2026-02-10', 10, 50));
    expect(load.grams).toBeCloseTo(50, 9);
    expect(load.ammonia).toBeCloseTo((2.208 * 45) / 48, 9);
  });

  it('eats KH: 7.145 g of alkalinity as CaCO3 a gram, 17.848 mg/L a degree', () => {
    const row = one('Long', fed('2026-02-10', 10, 50));
    const litres = row.litres?.likely ?? NaN;
    expect(row.load.khEaten).toBeCloseTo((7 * 2.07 * 1000 * 7.1454) / litres / 17.848, 2);
  });

  it('sets the fall that was read beside it, and doubts one that the feed does not explain', () => {
    const kh = (on: string, value: number): Line => test(on, loop('Long'), { kh: measure('dH', value) });
    const lines = [...fed('2026-02-10', 10, 1), kh('2026-01-25', 9), kh('2026-02-08', 7), kh('2026-02-19', 5)];
    const { load } = one('Long', lines);
    // 9, 7, 5 dH on days 0, 14, 25: slopes 1/7, 2/11, 4/25 of a degree a day, median 0.16: 1.12 a week
    expect(load.khFell).toBeCloseTo(1.12, 9);
    expect(load.says.join(' ')).toContain('more than the feed explains');
  });

  it('names the most that was fed before a test without ammonia and nitrite', () => {
    const lines = [...fed('2026-01-10', 8, 8), clear('2026-01-18'), ...fed('2026-02-12', 8, 12)];
    const { load } = one('Long', lines, '2026-02-25');
    expect(load.carried).toEqual({ grams: 8, on: day('2026-01-18') });
    expect(load.says.join(' ')).toContain('more than it has shown, test ammonia and nitrite');
  });

  it('says nothing where feed is not logged in grams', () => {
    expect(one('Long', []).load).toMatchObject({ grams: null, ammonia: null, khEaten: null, says: [] });
  });
});

describe('a change of the loop', () => {
  const off = begin('2026-02-10', tank('A2'), 'off the loop');

  it('is missed by the tanks that are off it that day (trap 16)', () => {
    const row = one('Long', [off, change('2026-02-12', loop('Long'), 20)]);
    expect(row.changes[0]?.missed).toEqual(['A2']);
    const text = waterText([row], plainLook(day('2026-02-20')));
    expect(text).toContain('12 Feb changed 20 %, missed by A2 off the loop');
    expect(JSON.parse(JSON.stringify(waterJson([row])))).toMatchObject({ waters: [{ changes: [{ missed: ['A2'] }] }] });
  });

  it('but not where that tank was changed by itself since, or came off later', () => {
    const own = [off, change('2026-02-12', loop('Long'), 20), change('2026-02-13', tank('A2'), 20)];
    expect(one('Long', own).changes[0]?.missed).toEqual([]);
    const later = [change('2026-02-09', loop('Long'), 20), off];
    expect(one('Long', later).changes[0]?.missed).toEqual([]);
  });

  it('of one tank dilutes the whole loop by its litres, over the tanks on it that day', () => {
    const row = one('Long', [change('2026-02-09', tank('A1'), 50), off]);
    // A1 is 100 × 40 × 40 cm: 160 L, 136 of them water; the loop held 240 + 2 × 136 + 71.4 L that day
    expect(row.changes[0]?.share).toBeCloseTo(68 / (240 + 2 * 136 + 71.4), 6);
  });
});
