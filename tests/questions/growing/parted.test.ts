/** What the growth of a brood rests on, as it is told, and which lengths count for which side of a sorted one. */
import { describe, expect, it } from 'vitest';
import { isoDay } from '../../../src/core/day.ts';
import { growthIn, growthOf, sizeOn, type Growth } from '../../../src/questions/growing.ts';
import type { Room } from '../../../src/state/draft.ts';
import { broodNamed, journalOn } from '../../support/journal.ts';

const BROOD = ['01-10 A1: spawned brood Rowan-1', '01-20 A1: Rowan-1 free-swimming, about 40'];
const roomOf = (...lines: readonly string[]): Room =>
  journalOn('2026-04-10', [...BROOD, ...lines].map((line) => `2026-${line}\n`).join(''));
const growth = (...lines: readonly string[]): Growth => {
  const room = roomOf(...lines);
  const found = growthOf(room, broodNamed(room, 'Rowan-1'));
  if (found === null) throw new Error('nothing is known of Rowan-1');
  return found;
};

describe('growth', () => {
  it('without a length is what is usual for such fish, a week', () => {
    const { basis, because } = growth();
    expect(basis).toBe('no reading, usual for cave spawners');
    expect(because.source).toBe('usual for cave spawners (common practice, no source), and the journal');
    expect(because.steps).toEqual(['usual for cave spawners: 0.9–1.8 mm a week', 'together: 0.9–1.8 mm a week']);
    expect(because.lines.map(({ line }) => line)).toEqual([20]);
  });
  it('tells each length with the age of the fish, and the mean that it means', () => {
    const { basis, because } = growth('03-01 A1: Rowan-1 average 12 mm', '03-20 A1: Rowan-1 largest 18 mm');
    expect(basis).toBe('2 readings, usual for cave spawners');
    expect(because.steps.slice(1)).toEqual([
      '1 Mar, at 7 weeks: average 12 mm, so the mean is about 12.0 mm, give or take 1.5',
      '20 Mar, at 9 weeks: largest 18 mm, so the mean is about 14.3 mm, give or take 1.7',
      'together: 0.9–1.3 mm a week',
    ]);
    expect(because.lines.map(({ line }) => line)).toEqual([20, 22, 23]);
  });
});

describe('a brood that was sorted', () => {
  const sorted = '03-10 A1: moved 20 largest Rowan-1 to C1';
  const lines = [
    '03-01 A1: Rowan-1 average 12 mm',
    sorted,
    '03-20 A1: Rowan-1 average 15 mm',
    '03-20 C1: Rowan-1 average 21 mm',
  ];
  const side = (tank: string, ...read: readonly string[]): string[] => {
    const room = roomOf(...read);
    return (growthIn(room, broodNamed(room, 'Rowan-1'), tank)?.readings ?? []).map(
      ({ day, mean, error }) => `${isoDay(day).slice(5)} ${mean.toFixed(1)} ± ${error.toFixed(1)}`,
    );
  };
  it('is read on each side by what was read there, as what it says of all of them', () => {
    // The rest are shorter than the mean of all, the largest longer: half of a brood of forty each.
    expect(side('A1', ...lines)).toEqual(['03-01 12.0 ± 1.5', '03-20 16.6 ± 3.0']);
    expect(side('C1', ...lines)).toEqual(['03-01 12.0 ± 1.5', '03-20 19.2 ± 3.2']);
  });
  it('is read on both sides by what was read before, the day of sorting among it', () => {
    expect(side('A1', '03-10 A1: Rowan-1 average 12 mm', sorted)).toEqual(['03-10 12.0 ± 1.5']);
    expect(side('C1', '03-10 A1: Rowan-1 average 12 mm', sorted)).toEqual(['03-10 12.0 ± 1.5']);
  });
  it('has larger fish where the larger went', () => {
    const room = roomOf(...lines);
    const brood = broodNamed(room, 'Rowan-1');
    expect(sizeOn(room, brood, room.on, 'A1')?.likely).toBeCloseTo(17.4, 1);
    expect(sizeOn(room, brood, room.on, 'C1')?.likely).toBeCloseTo(21.8, 1);
  });
});
