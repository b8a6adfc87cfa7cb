/** What a loop says besides its numbers: how near the spill is, who is off it, which cleans it goes by. */
import { describe, expect, it } from 'vitest';
import { isoDay } from '../../src/core/day.ts';
import { loopRows, loops, within, type LoopRow } from '../../src/questions/loops.ts';
import { day } from '../support/events.ts';
import { journalOn } from '../support/journal.ts';

const roomOn = (on: string, lines: readonly string[]) =>
  journalOn(`2026-${on}`, lines.map((line) => `2026-${line}\n`).join(''));
const long = (on: string, ...lines: readonly string[]): LoopRow => {
  const [row] = loops(roomOn(on, lines));
  if (row === undefined) throw new Error('no loop');
  return row;
};
/** The levels of the sample: by them it spills on 23 to 26 Feb. */
const levels = [
  '01-11 Long: cleaned 6 of 6 layers; level 20 mm',
  '01-18 Long: level 24 mm',
  '01-25 Long: level 28 mm',
  '02-04 Long: level 42 mm',
  '02-10 Long: level 54 mm',
];

describe('the spill', () => {
  it.each([
    ['02-11', []],
    ['02-21', ['near the lip']],
    ['02-23', ['may spill any day']],
    ['02-26', ['may spill any day']],
    ['02-27', ['by its levels it has spilled by now: read it again']],
  ])('is told on %s: %s', (on, notes) => {
    const { spill } = long(on, ...levels);
    expect([spill?.low, spill?.high]).toEqual([day('2026-02-23'), day('2026-02-26')]);
    expect(long(on, ...levels).notes).toEqual(notes);
  });
  it('that was seen, or a flow that fell, is told before it', () => {
    expect(long('02-28', ...levels, '02-15 Long: overflowed').notes).toEqual(['overflowed, not cleaned since']);
    expect(long('02-28', ...levels, '02-15 Long: overflowed').outlook).toBeNull();
    expect(long('02-16', ...levels, '02-15 Long: level 20 mm').notes).toEqual(['flow fell: check pump or drain']);
  });
  it('is told with what it rests on, or why it is not', () => {
    expect(long('02-11', ...levels).because.steps[0]).toBe('last full clean 11 Jan');
    const bare = long('02-11');
    expect(bare).toMatchObject({
      spill: null,
      notes: [],
      whyNoSpill: 'no forecast: fewer than two levels since the clean',
    });
    expect(bare.because.steps).toContain('no forecast: fewer than two levels since the clean');
    expect(bare.because.steps[0]).toBe('no full clean on record');
    expect(bare.because.steps.join()).toContain('drain-down: surface');
  });
});

describe('cleans', () => {
  it('are the last one, and the last full one with what a part of one bought', () => {
    const part = long('02-16', ...levels, '02-12 Long: cleaned 2 of 6 layers; level 30 mm');
    expect(part).toMatchObject({ cleaned: { layers: 2, of: 6 }, lastFull: { layers: 6, of: 6 } });
    expect(part.because.steps[1]).toBe('2 of 6 layers on 12 Feb: freeboard 50 mm of 60 mm after a full clean: 0.83');
    expect(long('02-16', ...levels).because.steps[1]).toMatch(/^levels since the clean/u);
  });
});

describe('the next full clean', () => {
  const weekly = ['02', '09', '16', '23', '30'].map((on) => `01-${on} Long: cleaned 6 of 6 layers; level 20 mm`);
  const next = (...read: readonly string[]): string | null => {
    const likely = long('02-05', ...weekly, ...read).nextClean?.likely ?? null;
    return likely === null ? null : isoDay(likely);
  };
  it("comes by the room's own interval, where the levels leave more time", () => {
    const read = ['02-01 Long: level 22 mm', '02-03 Long: level 25 mm', '02-05 Long: level 28 mm'];
    expect(next(...read)).toBe('2026-02-06');
  });
  it('comes a week before the spill, where that is sooner', () => {
    const read = ['01-31 Long: level 30 mm', '02-02 Long: level 44 mm', '02-04 Long: level 62 mm'];
    expect(next(...read)).toBe('2026-01-30');
  });
});

describe('tanks off a loop', () => {
  it('are told with the day since when', () => {
    const off = long('02-16', '02-12 A1: off the loop', '02-13 A2: lights off', '02-13 C1: heater off');
    expect(off.off.map(({ tank, since }) => `${tank} ${isoDay(since)}`)).toEqual(['A1 2026-02-12']);
    expect(off.tanks).toEqual(['A2', 'B1']);
    expect(long('02-16', '02-12 A1: off the loop', '02-14 A1: back on the loop').off).toEqual([]);
  });
  it('of another loop are told with that one', () => {
    const low = ['01-02 loop Low: sump 90 L', '01-02 tank E1: 54 L; on Low', '02-12 E1: off the loop'];
    expect(long('02-16', ...low).off).toEqual([]);
    expect(loopRows(roomOn('02-16', low)).map(({ title }) => title)).toEqual([
      'loop Long, its level and spill; on it: A1, A2 and B1',
      'loop Low, its level and spill; on it: no tank on it',
    ]);
  });
});

describe('an early guess', () => {
  const days = (low: number | null, likely: number | null, high: number | null) => {
    const on = (at: number | null) => (at === null ? null : day(`2026-02-${String(at).padStart(2, '0')}`));
    return { low: on(low), likely: on(likely), high: on(high) };
  };
  it('is kept inside the wider window', () => {
    expect(within(days(5, 12, 28), days(8, 14, 20))).toEqual(days(8, 12, 20));
    expect(within(days(9, 25, null), days(8, 14, 20))).toEqual(days(9, 20, 20));
    expect(within(days(null, null, 12), days(8, 14, 20))).toEqual(days(8, 14, 12));
  });
  it('is the nearer half of it where it lies outside', () => {
    expect(within(days(20, 22, 25), days(8, 14, 20))).toEqual(days(14, 20, 20));
    expect(within(days(25, null, null), days(8, null, 20))).toEqual(days(8, 20, 20));
    expect(within(days(3, 5, 8), days(8, 14, 20))).toEqual(days(8, 8, 14));
  });
  it('is as it is where the window is open, or there is none', () => {
    expect(within(days(5, 6, 7), days(null, 14, 20))).toEqual(days(5, 6, 7));
    expect(within(days(5, 6, 7), days(8, 14, null))).toEqual(days(5, 6, 7));
    expect(within(null, days(8, 14, 20))).toBeNull();
  });
});
