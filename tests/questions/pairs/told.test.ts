/** A dispute as it is told: its days, what was tried against it, what came before it, its silences, and who on whom. */
import { describe, expect, it } from 'vitest';
import { isoDay } from '../../../src/core/day.ts';
import { pairs } from '../../../src/questions/pairs.ts';
import type { DisputeRow } from '../../../src/questions/pairs/dispute.ts';
import { journalOn } from '../../support/journal.ts';

const told = (group: string, on: string, lines: readonly string[]): DisputeRow => {
  const [row] = pairs(journalOn(`2026-${on}`, lines.map((line) => `2026-${line}\n`).join('')), group).pairs;
  const dispute = row?.disputes.at(-1);
  if (dispute === undefined) throw new Error(`${group} never had a dispute`);
  return dispute;
};
const rowan = (on: string, ...lines: readonly string[]): DisputeRow => told('Rowan', on, lines);
const chased = '02-14 A1: chasing';

describe('a dispute that ended', () => {
  const row = (): DisputeRow =>
    rowan('02-20', chased, '02-15 A1: hiding, torn fin', '02-16 A1: calmer', '02-18 A1: made up');
  it('runs from its first sign to its end, with every line', () => {
    expect(row()).toMatchObject({ days: 5, worst: 'torn fin', rank: 3, by: null, endedBy: 'made up', gaps: [] });
    expect(row().lines.map(({ line }) => line)).toEqual([20, 21, 22, 23]);
    expect(isoDay(row().lastSign)).toBe('2026-02-16');
  });
  it('is told day by day', () => {
    expect(row().because.steps).toEqual([
      '14 Feb: chasing',
      '15 Feb: hiding, torn fin',
      'worst sign: torn fin (3 of 5)',
      'ended 18 Feb: made up; 5 days in all',
    ]);
  });
});

describe('what was tried', () => {
  const tried = (...lines: readonly string[]): string[] =>
    rowan('02-20', ...lines, chased, '02-16 A1: made up').measures.map(
      ({ measure, from, to }) =>
        `${measure} ${isoDay(from).slice(5)}${to === null ? '' : ` to ${isoDay(to).slice(5)}`}`,
    );
  it('is what was rigged in its tank while it ran', () => {
    expect(tried('02-14 A1: rocks out', '02-15 A1: divider in', '02-16 A1: breeder net in')).toEqual([
      'rocks out 02-14',
      'divider 02-15',
      'breeder net 02-16',
    ]);
  });
  it('is what was rigged before and stood open yet', () => {
    expect(tried('02-10 A1: lights off', '02-15 A1: lights on')).toEqual(['lights off 02-10 to 02-15']);
    expect(tried('02-10 A1: divider in', '02-13 A1: divider out')).toEqual([]);
  });
  it('is nothing in another tank, nothing since, and nothing that is not against a quarrel', () => {
    expect(tried('02-14 A2: divider in', '02-17 A1: divider in', '02-14 A1: heater off')).toEqual([]);
  });
});

describe('what came before', () => {
  const laid = (on: string): string => `${on} A1: spawned brood Rowan-1`;
  const after = (...lines: readonly string[]): string | null => rowan('02-20', ...lines, chased).after;
  it('is a spawn of ten days at most', () => {
    expect(after(laid('02-04'))).toBe('10 days after Rowan-1 was laid');
    expect(after(laid('02-03'))).toBeNull();
    expect(after(laid('02-14'))).toBe('on the day that Rowan-1 was laid');
    expect(after('02-10 A1: maybe spawned')).toBeNull();
    expect(rowan('02-20', laid('02-12'), chased).because.steps).toContain('began 2 days after Rowan-1 was laid');
    expect(rowan('02-20', chased).because.steps.join()).not.toContain('began');
  });
  it('is the taking away of young out of their tank, where that came later', () => {
    const swim = [laid('02-05'), '02-11 A1: free-swimming, about 60'];
    expect(after(...swim, '02-12 A1: moved 20 Rowan-1 to C2')).toBe('2 days after young of Rowan-1 were moved out');
    expect(after(...swim, '02-15 A1: moved 20 Rowan-1 to C2')).toBe('9 days after Rowan-1 was laid');
    const on = ['02-11 A1: moved all Rowan-1 to C2', '02-13 C2: moved 20 Rowan-1 to B1'];
    expect(after(...swim, ...on)).toBe('3 days after young of Rowan-1 were moved out');
  });
  it('is nothing of another pair', () => {
    expect(after('02-12 A2: Fern spawned brood Sedge-1')).toBeNull();
  });
});

describe('silence', () => {
  it('of more than two days is told by the words around it, of signs and of calm', () => {
    const row = rowan('02-25', chased, '02-20 A1: calmer', '02-22 A1: chasing');
    expect(row.gaps.map(({ from, to }) => [isoDay(from).slice(5), isoDay(to).slice(5)])).toEqual([['02-14', '02-20']]);
    expect(row.because.steps).toContain('no word from 14 Feb to 20 Feb, but nobody said that it was over');
    expect(row.because.steps.at(-1)).toBe('still open on 25 Feb: day 12');
    expect(isoDay(row.lastSign)).toBe('2026-02-22');
  });
});

describe('who on whom', () => {
  const by = (...lines: readonly string[]): string | null => rowan('02-20', ...lines).by;
  const sedge = (...lines: readonly string[]): string | null => told('Sedge', '02-20', lines).by;
  it('is as the last two lines say', () => {
    expect(by(chased)).toBeNull();
    expect(by('02-14 A1: chasing, male on female', '02-15 A1: chasing')).toBe('male on female');
    expect(by('02-14 A1: chasing, male on female', '02-15 A1: chasing, female on male')).toBe('each on the other');
  });
  it('in a trio is by name where there is one', () => {
    expect(sedge('02-14 A2: Fern chasing', '02-15 A2: Lark hiding')).toBe('Fern on male, then male on Lark');
    expect(sedge('02-14 A2: chasing, male on female')).toBe('male on one of Fern and Lark');
    expect(sedge('02-14 A2: chasing, male on female', '02-15 A2: Fern hiding', '02-16 A2: Lark hiding')).toBe(
      'male on Fern, then male on Lark',
    );
  });
});
