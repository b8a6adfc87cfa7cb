/** Bouts of a dispute, how bad its signs are, and signs that are filed late. */
import { describe, expect, it } from 'vitest';
import { isoDay, toDay } from '../../src/core/day.ts';
import type { Sign } from '../../src/journal/event.ts';
import { boutsOf, rankOf } from '../../src/state/quarrel.ts';
import { journalOn } from '../support/journal.ts';

/** `07:40` in minutes after midnight. */
const at = (clock: string): number => Number(clock.slice(0, 2)) * 60 + Number(clock.slice(3));
const sign = (day: number, clock: string | null = null) => ({
  day: toDay(day),
  minute: clock === null ? null : at(clock),
});
/** How many signs each bout has. */
const bouts = (...signs: readonly ReturnType<typeof sign>[]): number[] => boutsOf(signs).map((bout) => bout.length);

describe('a bout', () => {
  // Lines no more than 48 hours apart belong together (common practice, no source).
  it('goes on where the next line is no more than 48 hours later', () => {
    expect(bouts(sign(10, '08:00'), sign(12, '08:00'))).toEqual([2]);
    expect(bouts(sign(10, '08:00'), sign(12, '08:01'))).toEqual([1, 1]);
    expect(bouts(sign(10, '22:00'), sign(12, '07:00'), sign(14, '06:59'))).toEqual([3]);
    expect(bouts(sign(10, '22:00'), sign(13, '07:00'))).toEqual([1, 1]);
  });
  it('is reckoned in whole days where either line has no time', () => {
    expect(bouts(sign(10), sign(12))).toEqual([2]);
    expect(bouts(sign(10), sign(13))).toEqual([1, 1]);
    expect(bouts(sign(10, '08:00'), sign(12))).toEqual([2]);
    expect(bouts(sign(10), sign(12, '23:00'))).toEqual([2]);
    expect(bouts(sign(10, '23:00'), sign(13))).toEqual([1, 1]);
  });
  it('is counted from the line before, not from the first', () => {
    expect(bouts(sign(10), sign(12), sign(14), sign(17), sign(18))).toEqual([3, 2]);
    expect(bouts()).toEqual([]);
  });
});

it.each([
  ['chasing', 1],
  ['hiding', 2],
  ['pinned', 2],
  ['torn fin', 3],
  ['scales missing', 4],
  ['not eating', 4],
  ['wounded', 5],
  ['gasping', 5],
] satisfies (readonly [Sign, number])[])('%s is a sign of rank %i', (one, rank) => {
  expect(rankOf(one)).toBe(rank);
});

describe('a sign that is filed late', () => {
  const disputes = (...lines: readonly string[]): string[] =>
    (journalOn('2026-04-30', `${lines.join('\n')}\n`).stock.groups.get('Rowan')?.disputes ?? []).map(
      ({ from, ended, signs }) =>
        `${isoDay(from)} to ${ended === null ? '?' : isoDay(ended.day)}: ${signs.map((one) => one.sign).join(', ')}`,
    );
  const over = ['2026-02-10 A1: chasing', '2026-02-12 A1: made up'];
  it('counts as if it had been filed on its day', () => {
    const early = '2026-02-10 to 2026-02-12: chasing';
    expect(disputes(...over)).toEqual([early]);
    const told = ['2026-02-03 to 2026-02-12: pinned, chasing'];
    expect(disputes('2026-02-03 A1: pinned', ...over)).toEqual(told);
    expect(disputes(...over, '2026-02-14 A1: pinned 11 days ago')).toEqual(told);
  });
  it('opens none where they made up after it', () => {
    expect(disputes(...over, '2026-02-20 A1: pinned 13 days ago')).toEqual([
      '2026-02-07 to 2026-02-12: pinned, chasing',
    ]);
    expect(disputes(...over, '2026-02-20 A1: pinned 8 days ago')).toEqual([
      '2026-02-10 to 2026-02-12: chasing',
      '2026-02-12 to ?: pinned',
    ]);
  });
  it('belongs to the first dispute that was not over by then', () => {
    const two = ['2026-01-20 A1: torn fin', '2026-01-22 A1: made up', ...over];
    expect(disputes(...two, '2026-02-14 A1: pinned 7 days ago')).toEqual([
      '2026-01-20 to 2026-01-22: torn fin',
      '2026-02-07 to 2026-02-12: pinned, chasing',
    ]);
    expect(disputes(...two, '2026-02-14 A1: pinned 25 days ago')).toEqual([
      '2026-01-20 to 2026-01-22: torn fin, pinned',
      '2026-02-10 to 2026-02-12: chasing',
    ]);
    const open = [...over, '2026-02-15 A1: torn fin'];
    expect(disputes(...open, '2026-02-16 A1: pinned 2 days ago')).toEqual([
      '2026-02-10 to 2026-02-12: chasing',
      '2026-02-14 to ?: pinned, torn fin',
    ]);
  });
});

describe('a dispute whose fish are parted', () => {
  const open = (...lines: readonly string[]): boolean =>
    journalOn('2026-04-30', `${lines.join('\n')}\n`)
      .stock.groups.get('Sedge')
      ?.disputes.at(-1)?.ended === null;
  const fern = '2026-02-11 A2: Fern moved to C2';
  it('is over by those that some sign names, whatever signs name nobody', () => {
    expect(open('2026-02-10 A2: Fern pinned', '2026-02-10 A2: torn fin', fern)).toBe(false);
    expect(open('2026-02-10 A2: torn fin', '2026-02-10 A2: Fern pinned', fern)).toBe(false);
    expect(open('2026-02-10 A2: torn fin', fern)).toBe(true);
  });
  it('goes on while two of those named are together', () => {
    const both = ['2026-02-10 A2: Fern pinned', '2026-02-10 A2: Lark pinned'];
    expect(open(...both, fern)).toBe(true);
    expect(open(...both, fern, '2026-02-12 A2: Lark moved to C1')).toBe(false);
  });
});
