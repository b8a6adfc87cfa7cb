/** Which pH and warmth go with an ammonia reading, and in which water a reading counts. */
import { describe, expect, it } from 'vitest';
import {
  ammoniaOf,
  ammoniaSteps,
  ifIon,
  kitUnit,
  lastOf,
  readingsOf,
  readingWords,
} from '../../src/questions/readings.ts';
import { bodyOfWater } from '../../src/questions/waters.ts';
import type { WaterBody } from '../../src/questions/waters.ts';
import type { Room } from '../../src/state/draft.ts';
import { journalOn } from '../support/journal.ts';

const roomOf = (...lines: readonly string[]): Room =>
  journalOn('2026-03-20', ['01-02 room: nitrogen as N', ...lines].map((line) => `2026-${line}\n`).join(''));
const waterOf = (room: Room, place: string): WaterBody => {
  const body = bodyOfWater(room, place);
  if (body === null) throw new Error(`no water ${place}`);
  return body;
};
const toxic = (place: string, ...lines: readonly string[]) => {
  const room = roomOf(...lines);
  const found = ammoniaOf(room, waterOf(room, place));
  if (found === null) throw new Error('no ammonia read');
  return { ...found, steps: ammoniaSteps(room, found) };
};
const tan = '03-10 C1: test TAN 1';

describe('toxic ammonia', () => {
  it('is worked out by the pH and the warmth of the reading, step by step', () => {
    const { toxic: found, missing, steps } = toxic('C1', '03-10 C1: test TAN 1, pH 8, 25 C');
    // Emerson et al. 1975: pKa 9.2455 at 25 C, 5.38 % at pH 8
    expect(found.likely).toBeCloseTo(0.0538, 3);
    expect(missing).toEqual([]);
    expect(steps).toEqual([
      'TAN 1 mg/L as N on 10 Mar',
      'pH 8 on 10 Mar',
      'temperature 25 C',
      'pKa = 0.09018 + 2729.92 / (273.15 + t); share = 1 / (1 + 10^(pKa − pH))',
      'at 25 C, pH 8: pKa 9.246, share 1 / (1 + 10^1.246); 1 × 0.0537 = 0.0537 mg/L as N',
      'toxic ammonia 0.054 mg/L as N',
    ]);
  });
  it('is a range where pH or warmth is not known, and says which', () => {
    const neither = toxic('C1', tan);
    expect(neither.missing).toEqual(['pH', 'temperature']);
    expect(neither.steps).toEqual([
      'TAN 1 mg/L as N on 10 Mar',
      'pH not known: 6 to 8.5 taken',
      'temperature not known: 22 to 30 C taken',
      'pKa = 0.09018 + 2729.92 / (273.15 + t); share = 1 / (1 + 10^(pKa − pH))',
      'at the least, 22 C, pH 6: pKa 9.339, share 1 / (1 + 10^3.339); 1 × 0.000457 = 0.000457 mg/L as N',
      'at the most, 30 C, pH 8.5: pKa 9.095, share 1 / (1 + 10^0.595); 1 × 0.202 = 0.202 mg/L as N',
      'toxic ammonia 0–0.203 mg/L as N',
    ]);
    expect(neither.toxic.high).toBeGreaterThan(0.15);
    expect(toxic('C1', '03-10 C1: test TAN 1, pH 8').missing).toEqual(['temperature']);
    expect(toxic('C1', '03-10 C1: test TAN 1, 25 C').missing).toEqual(['pH']);
  });
  it('takes a pH of up to two weeks before or after', () => {
    const ph = (on: string): number | undefined => toxic('C1', `${on} C1: test pH 8`, tan).ph?.day;
    expect(ph('02-24')).toBeDefined();
    expect(ph('02-23')).toBeUndefined();
    expect(ph('03-19')).toBeDefined();
    expect(toxic('C1', '03-08 C1: test pH 7', '03-09 C1: test pH 8', tan).ph?.value.likely).toBe(8);
    expect(toxic('C1', '03-09 C2: test pH 8', tan).ph).toBeNull();
  });
  it('takes the warmth of its day, else that of the tank', () => {
    const warm = (...lines: readonly string[]): number | null | undefined =>
      toxic('C1', ...lines, tan).temperature?.value.likely;
    expect(warm('03-10 C1: test 27 C')).toBe(27);
    expect(warm('03-09 C1: test 24 C', '03-10 C1: test 27 C')).toBe(27);
    expect(warm('03-09 C1: test 24 C')).toBe(24);
    expect(warm('03-10 C2: test 27 C')).toBeUndefined();
  });
  it('of a loop takes the warmth of its tank that was tested, else of its first', () => {
    expect(toxic('Long', '03-09 A2: test 27 C', '03-10 A2: test TAN 1').temperature?.value.likely).toBe(27);
    expect(toxic('Long', '03-09 A1: test 27 C', '03-10 Long: test TAN 1').temperature?.value.likely).toBe(27);
  });
  it('of a loop takes the warmth of any of its tanks, as it was on that day', () => {
    const loop = '03-10 Long: test TAN 1';
    expect(toxic('Long', '03-10 A2: test 27 C', loop).temperature?.value.likely).toBe(27);
    expect(toxic('Long', '03-10 A2: test 27 C', '03-11 A2: test 22 C', loop).temperature?.value.likely).toBe(27);
  });
  it('goes by the last test of ammonia', () => {
    expect(toxic('C1', '03-05 C1: test TAN 2', tan).tan.value.likely).toBe(1);
    const room = roomOf('03-10 C1: test pH 8');
    expect(ammoniaOf(room, waterOf(room, 'C1'))).toBeNull();
  });
});

describe('a reading', () => {
  const last = (place: string, ...lines: readonly string[]): number | null => {
    const room = roomOf(...lines);
    return lastOf(readingsOf(room, waterOf(room, place)), 'ph')?.value.likely ?? null;
  };
  it('of a tank is one of its loop, on the days on which it was on it', () => {
    expect(last('Long', '03-10 A1: test pH 7.2')).toBe(7.2);
    expect(last('Long', '03-05 A1: off the loop', '03-10 A1: test pH 7.2', '03-12 A1: back on the loop')).toBeNull();
    expect(last('Long', '03-10 C1: test pH 7.2')).toBeNull();
  });
  it('of a tray is one of the tank that it hangs in', () => {
    expect(last('C1', '02-01 tray T1: in C1', '03-10 T1: test pH 7.2')).toBe(7.2);
    expect(last('C1', '03-10 C2: test pH 7.2')).toBeNull();
  });
  it('that another of its time took the place of counts no more', () => {
    expect(last('C1', '03-10 C1: test pH 7.2', '03-10 C1: test pH 7.6')).toBe(7.6);
    const room = roomOf('03-10 C1: test pH 7.2', '03-10 C1: test pH 7.6');
    expect(readingsOf(room, waterOf(room, 'C1'))).toHaveLength(1);
  });
});

describe('nitrogen', () => {
  const said = (words: string): Room => journalOn('2026-03-20', `2026-01-02 room: ${words}\n`);
  it('is told as the kit counts it', () => {
    const one = { low: 1, likely: 1, high: 1 };
    expect(readingWords(said('nitrogen as N'), 'no3', one)).toBe('NO3 1 mg/L as N');
    expect(readingWords(said('nitrogen as ion'), 'no3', one)).toBe('NO3 4.4 mg/L');
    expect(readingWords(said('nitrogen as ion'), 'tan', one)).toBe('TAN 1.22 mg/L');
    expect(readingWords(said('nitrogen as ion'), 'kh', one)).toBe('KH 1 dH');
    expect(kitUnit(said('nitrogen as ion'), 'no2')).toBe('mg/L');
    expect(kitUnit(said('nitrogen as ion'), 'gh')).toBe('dH');
  });
  it('is told the other way beside it only where nobody said how', () => {
    const one = { low: 1, likely: 1, high: 1 };
    const unsaid = journalOn('2026-03-20', '');
    // 14.007 / 62.004, 14.007 / 17.031 (as NH3, the harsher way) and 14.007 / 46.005
    expect(ifIon(unsaid, 'no3', one)?.likely).toBeCloseTo(0.2259, 4);
    expect(ifIon(unsaid, 'tan', one)?.likely).toBeCloseTo(0.8224, 3);
    expect(ifIon(unsaid, 'no2', one)?.likely).toBeCloseTo(0.3045, 3);
    expect(ifIon(unsaid, 'kh', one)).toBeNull();
    expect(ifIon(said('nitrogen as N'), 'no3', one)).toBeNull();
  });
});
