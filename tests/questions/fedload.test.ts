/** Which feed counts for which filter, over which days, and what a test shows that it carries. */
import { describe, expect, it } from 'vitest';
import { addDays, isoDay } from '../../src/core/day.ts';
import { filterLoad, type FilterLoad } from '../../src/questions/nitrogen.ts';
import { readingsOf } from '../../src/questions/readings.ts';
import { water } from '../../src/questions/water.ts';
import { bodyOfWater } from '../../src/questions/waters.ts';
import { day } from '../support/events.ts';
import { journalOn } from '../support/journal.ts';

const days = (from: string, many: number, words: string): string[] =>
  Array.from({ length: many }, (_, index) => `${isoDay(addDays(day(from), index))} ${words}`);
const load = (place: string, ...lines: readonly string[]): FilterLoad => {
  const text = ['2026-01-02 room: nitrogen as N', ...lines].join('\n');
  const room = journalOn('2026-02-25', `${text}\n`);
  const body = bodyOfWater(room, place);
  const [row] = water(room, { place, target: null }) ?? [];
  if (row === undefined || body === null) throw new Error(`no water ${place}`);
  return filterLoad(room, body, row.litres, readingsOf(room, body));
};
const lately = days('2026-02-12', 8, 'C1: fed flake 5 g');
const zero = '2026-02-25 C1: test TAN 0, NO2 0';

describe('the feed of a filter', () => {
  it('is what went into its own tanks', () => {
    const both = [...lately, ...days('2026-02-12', 8, 'A1: fed flake 12 g')];
    expect([load('C1', ...both).grams, load('Long', ...both).grams]).toEqual([5, 12]);
    const off = '2026-02-01 A1: off the loop';
    expect([load('A1', off, ...both).grams, load('Long', off, ...both).grams]).toEqual([12, null]);
  });
  it('of a tray goes to the tank that it hangs in', () => {
    const tray = ['2026-01-03 tray T1: in C1', ...days('2026-02-12', 8, 'T1: fed flake 2 g')];
    expect(load('C1', ...tray).grams).toBe(2);
  });
  it('of one day adds up, and a feed without grams is none', () => {
    expect(load('C1', ...lately, ...days('2026-02-12', 8, 'C1: fed pellets 1 g')).grams).toBe(6);
    expect(load('C1', ...lately, ...days('2026-02-20', 4, 'C1: fed microworm')).grams).toBe(5);
  });
  it('is told from three logged days of the last four weeks on', () => {
    expect(load('C1', ...lately.slice(0, 2)).grams).toBeNull();
    expect(load('C1', ...lately.slice(0, 3)).grams).toBe(5);
    // The room is asked on 25 Feb: its four weeks begin on 29 Jan.
    expect(load('C1', ...days('2026-01-26', 3, 'C1: fed flake 9 g'), ...lately).grams).toBe(5);
    expect(load('C1', ...days('2026-01-29', 3, 'C1: fed flake 5 g')).grams).toBe(5);
    expect(load('C1', ...days('2026-01-28', 3, 'C1: fed flake 5 g')).grams).toBeNull();
    expect(load('C1', ...days('2026-02-23', 3, 'C1: fed flake 5 g')).grams).toBe(5);
  });
  it('is told with its days, its protein and its lines', () => {
    const { steps, places, says } = load('C1', ...lately);
    // 5 g × 0.45 × 0.092 = 0.207 g (Timmons & Ebeling); 7 × 207 mg × 7.145 in the 46 L that are water of 54
    expect(steps).toEqual([
      '5 g fed a day (8 days logged since 12 Feb) × protein 0.45 × 0.092 = 0.21 g of ammonia N a day (Timmons & Ebeling)',
      'each gram nitrified eats 7.15 g of alkalinity as CaCO3, in 46 L: 13 dH a week',
    ]);
    expect(places).toHaveLength(8);
    expect(says).toEqual([
      'feed 5 g a day makes about 0.21 g of ammonia N a day; what the filter carries is not tested yet',
      'nitrifying that eats KH 13 dH a week, changes apart',
    ]);
  });
  it('eats no KH that could be told where it is next to none, or nobody knows how much water there is', () => {
    expect(load('C1', ...days('2026-02-12', 8, 'C1: fed flake 0.01 g')).says).toHaveLength(1);
    const unknown = ['2026-02-01 tank Z1: alone', ...days('2026-02-12', 8, 'Z1: fed flake 5 g')];
    const { khEaten, steps, says } = load('Z1', ...unknown);
    expect([khEaten, steps.length, says.length]).toEqual([null, 1, 1]);
  });
});

describe('what a filter carries', () => {
  it('is what was fed before a test that shows neither ammonia nor nitrite', () => {
    const { carried, says, places } = load('C1', ...lately, zero);
    expect(carried).toEqual({ grams: 5, on: day('2026-02-25') });
    expect(says[0]).toMatch(/carried at zero ammonia: 5 g a day \(25 Feb\)$/u);
    expect(places).toHaveLength(9);
  });
  it.each([
    ['ammonia was there', '2026-02-25 C1: test TAN 0.25, NO2 0'],
    ['nitrite was there', '2026-02-25 C1: test TAN 0, NO2 0.25'],
    ['nobody tested for ammonia', '2026-02-25 C1: test NO2 0'],
    ['nobody tested for nitrite', '2026-02-25 C1: test TAN 0'],
    ['nobody had logged what was fed', '2026-02-05 C1: test TAN 0, NO2 0'],
    ['it was the water of others', '2026-02-25 C2: test TAN 0, NO2 0'],
  ])('is not known where %s', (_, line) => {
    expect(load('C1', ...lately, line).carried).toBeNull();
  });
  it('is the most of several, whichever came first', () => {
    const early = [...days('2026-01-04', 8, 'C1: fed flake 9 g'), '2026-01-12 C1: test TAN 0, NO2 0'];
    expect(load('C1', ...early, ...lately, zero).carried?.grams).toBe(9);
    const less = [...days('2026-01-04', 8, 'C1: fed flake 2 g'), '2026-01-12 C1: test TAN 0, NO2 0'];
    expect(load('C1', ...less, ...lately, zero).carried?.grams).toBe(5);
  });
  it('is doubted from a tenth more on', () => {
    const shown = [...days('2026-01-04', 8, 'C1: fed flake 5 g'), '2026-01-12 C1: test TAN 0, NO2 0'];
    const now = (grams: number): string | undefined =>
      load('C1', ...shown, ...days('2026-02-12', 8, `C1: fed flake ${String(grams)} g`)).says[0];
    expect(now(5.4)).not.toContain('more than it has shown');
    expect(now(5.8)).toContain('5 g a day (12 Jan): more than it has shown, test ammonia and nitrite');
  });
});

describe('the KH that was read to fall', () => {
  const kh = (on: string, value: number): string => `${on} C1: test KH ${String(value)} dH`;
  it('stands beside what the feed explains, of the last two months alone', () => {
    const low = days('2026-02-12', 8, 'C1: fed flake 0.5 g');
    const falling = [kh('2026-02-04', 7), kh('2026-02-11', 6), kh('2026-02-18', 5)];
    expect(load('C1', ...low, ...falling).says[1]).toBe(
      'nitrifying that eats KH 1.3 dH a week, changes apart; its 3 readings fell 1 a week',
    );
    expect(load('C1', ...low, ...falling).khFell).toBeCloseTo(1, 9);
    const old = ['2025-11-01 tank W1: 54 L; alone', '2025-12-01 W1: test KH 15 dH'];
    const moved = [...low, ...falling].map((line) => line.replace('C1:', 'W1:'));
    expect(load('W1', ...old, ...moved).khFell).toBeCloseTo(1, 9);
  });
  it('is none where it rose', () => {
    const rising = [kh('2026-02-04', 5), kh('2026-02-11', 6), kh('2026-02-18', 7)];
    expect(load('C1', ...lately, ...rising).says[1]).toMatch(/its 3 readings fell 0 a week$/u);
  });
  it('is more than the feed explains where it is more than twice that and a half', () => {
    const low = days('2026-02-12', 8, 'C1: fed flake 0.2 g');
    const by = (step: number): string | undefined =>
      load('C1', ...low, kh('2026-02-04', 12), kh('2026-02-11', 12 - step), kh('2026-02-18', 12 - 2 * step)).says[1];
    // 0.2 g eat 0.51 dH a week: 1.5 is the most that they explain
    expect(by(1.2)).not.toContain('more than');
    expect(by(2)).toContain('fell 2 a week, more than the feed explains');
  });
});
