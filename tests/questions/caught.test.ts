/** What a prefilter has caught: load-days by the litres on the loop, or by the grams fed, till today and from then on. */
import { describe, expect, it } from 'vitest';
import { loadClock, type LoadClock } from '../../src/questions/load.ts';
import { day } from '../support/events.ts';
import { journalOn } from '../support/journal.ts';

const FROM = day('2026-02-01');
const ON = day('2026-02-21');
/** The clock of the loop from 1 Feb, asked on the 21st. */
const clock = (...lines: readonly string[]): LoadClock => {
  const room = journalOn('2026-02-21', lines.map((line) => `2026-${line}\n`).join(''));
  const loop = room.plumbing.loops.get('Long');
  if (loop === undefined) throw new Error('no loop');
  return loadClock(room, loop, FROM);
};
const caught = (...lines: readonly string[]): number => clock(...lines).between(FROM, ON);
/** Days from 1 Feb on until so many load-days have gone by. */
const after = (load: number, ...lines: readonly string[]): number => clock(...lines).dayAt(FROM, load) - FROM;
const fed = (from: number, to: number, grams: number, where = 'Long'): string[] =>
  Array.from(
    { length: to - from + 1 },
    (_, at) => `02-${String(from + at).padStart(2, '0')} ${where}: fed flake ${String(grams)} g`,
  );

// 100 x 40 x 40 cm twice and 60 x 40 x 35 cm, 85 % of each: without A1 the loop has 0.604 of its tanks.
const PART = (1600 + 840) / (1600 * 2 + 840);

describe('by the litres on the loop', () => {
  it('a day with all its tanks counts one', () => {
    expect(caught()).toBe(20);
    expect([after(30), after(5)]).toEqual([30, 5]);
    expect(clock().basis).toBe('litres on the loop');
    expect(clock().step(FROM)).toBeNull();
  });
  it('a day without one of them counts less, till it is back', () => {
    const off = '02-11 A1: off the loop';
    expect(caught(off)).toBeCloseTo(10 + 10 * PART, 6);
    expect(caught(off, '02-16 A1: back on the loop')).toBeCloseTo(15 + 5 * PART, 6);
    expect(caught('02-11 A1: off the loop until 2026-02-15')).toBeCloseTo(15 + 5 * PART, 6);
    expect(clock(off).step(FROM)).toBe('load by the litres on the loop; not on it all the time: A1');
    expect(clock(off, '02-16 A1: back on the loop').step(day('2026-02-18'))).toBeNull();
  });
  it('a tank that was retired counts no more', () => {
    expect(caught('02-11 A1: retired')).toBeCloseTo(10 + 10 * PART, 6);
    expect(caught('02-11 C1: retired')).toBe(20);
  });
  it('from today on the load goes on as it is', () => {
    const off = '02-11 A1: off the loop';
    expect(after(30, off)).toBeCloseTo(20 + (30 - 10 - 10 * PART) / PART, 6);
    expect(after(12, off)).toBeCloseTo(10 + 2 / PART, 6);
  });
  it('but not longer than its line says that a tank is off: it is sooner full then', () => {
    const off = '02-11 A1: off the loop until 2026-02-25';
    // Ten days with it, fifteen without, the rest with it again.
    expect(after(30, off)).toBeCloseTo(25 + (30 - 10 - 15 * PART), 6);
    expect(after(17, off)).toBeCloseTo(20 + (17 - 10 - 10 * PART) / PART, 6);
    expect(caught(off)).toBeCloseTo(10 + 10 * PART, 6);
  });
  it('of a tray there is no water but that of its tank', () => {
    expect(caught('02-01 tray T1: in A1', '02-11 A1: off the loop')).toBeCloseTo(10 + 10 * PART, 6);
  });
  it('of a tank that nobody measured some are taken', () => {
    expect(caught('02-01 tank E1: on Long', '02-11 E1: off the loop')).toBeLessThan(20);
  });
});

describe('by the grams fed', () => {
  it('counts each day by its share of the mean, those without an entry as the mean', () => {
    const lines = [...fed(1, 10, 5), ...fed(11, 21, 10)];
    expect(clock(...lines).basis).toBe('grams fed');
    expect(clock(...lines).step(FROM)).toBe('load by the grams fed a day');
    const mean = (10 * 5 + 11 * 10) / 21;
    expect(caught(...lines)).toBeCloseTo((10 * 5 + 10 * 10) / mean, 6);
    expect(after(30, ...lines)).toBeCloseTo(20 + 30 - (10 * 5 + 10 * 10) / mean, 6);
    expect(after(5, ...lines)).toBeCloseTo((5 * mean) / 5, 6);
    const some = [...fed(1, 7, 5), ...fed(11, 17, 10)];
    expect(caught(...some)).toBeCloseTo(6 + (7 * 5 + 7 * 10) / 7.5, 6);
  });
  it('adds up what the tanks of the loop got, and no other', () => {
    const here = fed(1, 20, 5, 'A1');
    expect(clock(...here).basis).toBe('grams fed');
    expect(clock(...fed(1, 20, 5, 'C1')).basis).toBe('litres on the loop');
    const twice = [...here, ...fed(11, 20, 5, 'A2')];
    expect(caught(...twice)).toBeCloseTo((10 * 5 + 10 * 10) / 7.5, 6);
    expect(caught(...here, ...fed(11, 20, 50, 'C1'))).toBeCloseTo(20, 6);
  });
  it('is not taken of fewer than fourteen days, or of days that are rarely logged', () => {
    expect(clock(...fed(1, 14, 5)).basis).toBe('grams fed');
    expect(clock(...fed(1, 13, 5)).basis).toBe('litres on the loop');
    expect(clock(...fed(1, 14, 0)).basis).toBe('litres on the loop');
    const room = journalOn(
      '2026-03-20',
      fed(1, 18, 5)
        .map((line) => `2026-${line}\n`)
        .join(''),
    );
    const loop = room.plumbing.loops.get('Long');
    expect(loop && loadClock(room, loop, FROM).basis).toBe('litres on the loop');
  });
});
