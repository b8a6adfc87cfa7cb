/** Which readings tell how fast a tank cools in a power cut, and which would flatter it. */
import { describe, expect, it } from 'vitest';
import { coolings, rateFor } from '../../../src/questions/coolings.ts';
import type { Room } from '../../../src/state/draft.ts';
import { journalOn } from '../../support/journal.ts';

const AIR = { low: 18, likely: 18, high: 18 };
const roomOf = (...lines: readonly string[]): Room =>
  journalOn('2026-04-01', lines.map((line) => `2026-03-${line}\n`).join(''));
const cooled = (...lines: readonly string[]): string[] => coolings(roomOf(...lines), AIR).map(({ step }) => step);

const before = '01 C1: test 25 C';
const off = '02 08:00 room: power off';
const read = '02 12:00 C1: test 22 C';
const FOUR_HOURS = 'C1 went from 25 to 22 C in 4.0 hours of a cut';

describe('a reading in a cut', () => {
  it('tells a rate against the last one before it', () => {
    const [one] = coolings(roomOf(before, off, read, '02 13:00 room: power on'), AIR);
    // Newton: ln((25 − 18) / (22 − 18)) / 4 hours
    expect(one?.by[0]?.perHour).toBeCloseTo(Math.log(7 / 4) / 4, 9);
    expect(one).toMatchObject({ tank: 'C1', step: FOUR_HOURS });
    expect(one?.places.map(({ line }) => line)).toEqual([21, 22]);
  });
  it.each([
    ['it has no time', [before, off, '03 C1: test 22 C']],
    ['the cut has none', [before, '02 room: power off', read]],
    ['it came before the cut', [before, '02 07:00 C1: test 22 C', off]],
    ['it came as the cut began', [before, '02 08:00 C1: test 22 C', off]],
    ['it tells no warmth', [before, off, '02 12:00 C1: test pH 7']],
    ['the power of another tank was off', [before, '02 08:00 C2: power off', read]],
    ['the power of a loop was off that the tank is not on', [before, '02 08:00 Long: power off', read]],
    ['a fault was none of the power', [before, '02 08:00 C1: fault "valve weeping"', read]],
    [
      'nobody read the tank in the two days before',
      ['01 C1: test 25 C', '04 08:00 room: power off', '04 12:00 C1: test 22 C'],
    ],
    ['another tank was read before', ['01 C2: test 25 C', off, read]],
  ])('tells none where %s', (_, lines) => {
    expect(cooled(...lines)).toEqual([]);
  });
  it('counts where the power of its own tank or loop was off', () => {
    expect(cooled(before, '02 08:00 C1: power off', read)).toEqual([FOUR_HOURS]);
    expect(cooled('01 A1: test 25 C', '02 08:00 Long: power off', '02 12:00 A1: test 22 C')).toHaveLength(1);
  });
  it('counts from a reading two days before, and by the one that stands', () => {
    expect(cooled('01 C1: test 25 C', '03 08:00 room: power off', '03 12:00 C1: test 22 C')).toEqual([FOUR_HOURS]);
    expect(cooled(before, off, '02 12:00 C1: test 20 C', read)).toEqual([FOUR_HOURS]);
  });
});

describe('the end of a cut', () => {
  it('leaves an hour in which a reading still speaks of it, by the hours till then', () => {
    const on = '02 10:00 room: power on';
    const words = 'C1 went from 25 to 22 C in 2.0 hours of a cut';
    expect(cooled(before, off, on, '02 11:00 C1: test 22 C')).toEqual([words]);
    expect(cooled(before, off, on, '02 11:01 C1: test 22 C')).toEqual([]);
    expect(cooled(before, '02 08:00 room: power off for 2 h', '02 10:30 C1: test 22 C')).toEqual([words]);
    expect(cooled(before, '02 08:00 room: power off for 2 h', '02 11:30 C1: test 22 C')).toEqual([]);
  });
  it('is the start of its day where nobody wrote the time: the water may be warm again', () => {
    expect(cooled(before, '02 20:00 room: power off', '03 room: power on', '03 22:00 C1: test 24 C')).toEqual([]);
  });
});

describe('two readings of one cut', () => {
  it('tell a rate where nobody read before it, half an hour apart or more', () => {
    const two = (at: string): string[] => cooled(off, '02 09:00 C1: test 24 C', `02 ${at} C1: test 22 C`);
    expect(two('10:00')).toEqual(['C1 went from 24 to 22 C in 1.0 hours of a cut']);
    expect(two('09:30')).toEqual(['C1 went from 24 to 22 C in 0.5 hours of a cut']);
    expect(two('09:29')).toEqual([]);
  });
  it('are of one tank, of one cut, and of warmth', () => {
    const last = '02 10:00 C1: test 22 C';
    expect(cooled(off, '02 09:00 C2: test 24 C', last)).toEqual([]);
    expect(cooled(off, '02 09:00 C1: test pH 7', last)).toEqual([]);
  });
});

describe('a tank that has no cooling of its own', () => {
  it('goes by the last of another, faster where it is smaller', () => {
    const room = roomOf(before, off, read);
    const logged = coolings(room, AIR);
    const rate = Math.log(7 / 4) / 4;
    expect(rateFor(logged, 'C1', 45.9)?.from).toBe('its own cut');
    expect(rateFor(logged, 'C2', 45.9 / 8)?.by[0]?.perHour).toBeCloseTo(2 * rate, 6);
    expect(rateFor(logged, 'C2', 45.9 * 8)?.by[0]?.perHour).toBeCloseTo(rate / 2, 6);
    expect(rateFor(logged, 'C2', null)).toBeNull();
    expect(rateFor([], 'C2', 40)).toBeNull();
    const unknown = logged.map((one) => ({ ...one, litres: null }));
    expect(rateFor(unknown, 'C2', 40)).toBeNull();
  });
});
