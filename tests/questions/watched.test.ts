/** What starts a watch over ammonia and nitrite, in which water, since when, and what ends it. */
import { describe, expect, it } from 'vitest';
import { isoDay } from '../../src/core/day.ts';
import { watches } from '../../src/questions/watch.ts';
import { journalOn } from '../support/journal.ts';

/** `C1 sponge rinsed since 04-01`. */
const watched = (...lines: readonly string[]): string[] =>
  watches(journalOn('2026-04-10', `${lines.join('\n')}\n`)).map(
    ({ body, why, since }) => `${body.name} ${why} since ${isoDay(since).slice(5)}`,
  );

describe('a sponge that is rinsed', () => {
  const rinsed = '2026-04-01 C1: rinsed sponge';
  it('starts one where it is all the filter of a tank, or nobody said what filter it has', () => {
    expect(watched(rinsed)).toEqual(['C1 sponge rinsed since 04-01']);
    expect(watched('2026-04-01 tank 12: rinsed sponge')).toEqual(['12 sponge rinsed since 04-01']);
  });
  it.each([
    ['in tank water', ['2026-04-01 C1: rinsed sponge "in tank water"']],
    ['beside another', ['2026-03-01 tank D1: 54 L; alone; 2 sponge filters', '2026-04-01 D1: rinsed sponge']],
    ['in a tank on a loop', ['2026-04-01 A1: rinsed sponge']],
    ['in the sump, where it is mechanical', ['2026-04-01 Long: rinsed sponge']],
  ])('%s starts none', (_, lines) => {
    expect(watched(...lines)).toEqual([]);
  });
  it('again counts from the last time', () => {
    expect(watched(rinsed, '2026-04-05 C1: rinsed sponge')).toEqual(['C1 sponge rinsed since 04-05']);
  });
  it('and media of other water are two watches', () => {
    expect(watched(rinsed, '2026-04-02 Long: cleaned media').toSorted()).toEqual([
      'C1 sponge rinsed since 04-01',
      'Long media cleaned since 04-02',
    ]);
  });
  it('goes with a tank that left the loop since', () => {
    const left = watched('2026-04-01 Long: cleaned media', '2026-04-03 A1: off the loop');
    expect(left.toSorted()).toEqual(['A1 media cleaned since 04-01', 'Long media cleaned since 04-01']);
    expect(watched('2026-04-01 A1: off the loop', '2026-04-03 Long: cleaned media')).toEqual([
      'Long media cleaned since 04-03',
    ]);
  });
  it('or a pump that stood: the last of them counts', () => {
    const stood = '2026-04-02 Long: pump off for 8 h';
    expect(watched('2026-04-01 Long: cleaned media', stood)).toEqual(['Long pump stood since 04-02']);
    expect(watched(stood, '2026-04-04 Long: cleaned media')).toEqual(['Long media cleaned since 04-04']);
  });
  it('is asked about for a year, ended or not', () => {
    const tank = '2025-04-01 tank Z1: 54 L; alone; sponge filter';
    expect(watched(tank, '2025-04-10 Z1: rinsed sponge')).toEqual(['Z1 sponge rinsed since 04-10']);
    expect(watched(tank, '2025-04-09 Z1: rinsed sponge')).toEqual([]);
  });
});

describe('a return pump that stood for more than six hours', () => {
  const off = (words: string, then?: string): string[] =>
    watched(`2026-04-01 Long: pump off ${words}`, ...(then === undefined ? [] : [then]));
  it('by the hours that its line gives', () => {
    expect(off('for 8 h')).toEqual(['Long pump stood since 04-01']);
    expect(off('8 h')).toEqual(['Long pump stood since 04-01']);
    expect(off('for 6 h')).toEqual([]);
    expect(off('for 5 h')).toEqual([]);
  });
  it('by the day until which it was off', () => {
    expect(off('until 2026-04-03')).toEqual(['Long pump stood since 04-04']);
    expect(off('until 2026-04-01')).toEqual([]);
    expect(off('until 2026-04-13')).toEqual([]);
  });
  it('is watched still when a line puts it on after it was over', () => {
    expect(off('for 8 h', '2026-04-02 Long: pump on')).toEqual(['Long pump stood since 04-01']);
    expect(off('until 2026-04-03', '2026-04-04 Long: pump on')).toEqual(['Long pump stood since 04-04']);
    expect(off('until 2026-04-01', '2026-04-05 Long: pump on')).toEqual([]);
  });
  it('by two lines, where they say so for sure', () => {
    expect(off('', '2026-04-04 Long: pump on')).toEqual(['Long pump stood since 04-04']);
    expect(off('', '2026-04-02 Long: pump on')).toEqual([]);
    expect(watched('2026-04-01 10:00 Long: pump off', '2026-04-01 18:00 Long: pump on')).toEqual([
      'Long pump stood since 04-01',
    ]);
    expect(watched('2026-04-01 08:00 Long: pump off for 8 h', '2026-04-01 10:00 Long: pump on')).toEqual([]);
  });
  it('is watched in its own water, all of it where the room’s pumps stood', () => {
    expect(watched('2026-04-01 room: pump off for 8 h').map((one) => one.split(' ')[0])).toContain('C1');
    expect(off('for 8 h')).toHaveLength(1);
  });
});

describe('an air filter on a tank off its loop', () => {
  it('is watched from the day on which the tank lived on it, if fish are in there', () => {
    expect(watched('2026-04-01 A1: off the loop, air filter in')).toEqual(['A1 fresh air filter since 04-01']);
    expect(watched('2026-04-01 A1: off the loop', '2026-04-03 A1: air filter in')).toEqual([
      'A1 fresh air filter since 04-03',
    ]);
    expect(watched('2026-04-01 A1: air filter in', '2026-04-03 A1: off the loop')).toEqual([
      'A1 fresh air filter since 04-03',
    ]);
  });
  it.each([
    ['of a tank that is on', ['2026-04-01 A1: air filter in']],
    ['that has none', ['2026-04-01 A1: off the loop']],
    ['of a tank that was never on one', ['2026-04-01 C2: air filter in']],
    ['of an empty tank', ['2026-03-30 A1: Rowan moved to C2', '2026-04-01 A1: off the loop, air filter in']],
  ])('%s is not', (_, lines) => {
    expect(watched(...lines)).toEqual([]);
  });
});

describe('a watch is over', () => {
  const rinsed = '2026-03-20 C1: rinsed sponge';
  const tests = (...readings: readonly string[]): string[] =>
    readings.map((reading, index) => `2026-04-0${String(index + 1)} C1: test ${reading}`);
  it('after three tests in a row without ammonia and nitrite, and fourteen days', () => {
    const zero = 'TAN 0, NO2 0';
    expect(watched(rinsed, ...tests(zero, zero, zero))).toEqual([]);
    expect(watched(rinsed, ...tests(zero, zero))).toHaveLength(1);
    expect(watched('2026-03-28 C1: rinsed sponge', ...tests(zero, zero, zero))).toHaveLength(1);
    expect(watched(rinsed, ...tests(zero, 'TAN 0.25, NO2 0', zero, zero))).toHaveLength(1);
    expect(watched(rinsed, ...tests(zero, 'TAN 0, NO2 0.25', zero, zero))).toHaveLength(1);
  });
  it('by no test of one of them alone', () => {
    const zero = 'TAN 0, NO2 0';
    expect(watched(rinsed, ...tests(zero, 'TAN 0', zero))).toHaveLength(1);
    expect(watched(rinsed, ...tests(zero, 'NO2 0', zero))).toHaveLength(1);
    expect(watched(rinsed, ...tests(zero, 'pH 7', zero, zero))).toEqual([]);
    // Nor does it break a row.
    expect(watched(rinsed, ...tests(zero, zero, 'TAN 0', zero))).toEqual([]);
    expect(watched(rinsed, ...tests(zero, zero, 'NO2 0', zero))).toEqual([]);
  });
});
