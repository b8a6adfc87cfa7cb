/** A measure that is said again goes on, as long as the later line says. */
import { describe, expect, it } from 'vitest';
import { isoDay } from '../../src/core/day.ts';
import { endsBy, openRigs } from '../../src/state/rigs.ts';
import { loopOf } from '../../src/state/tanks.ts';
import type { Room } from '../../src/state/draft.ts';
import { journalOn } from '../support/journal.ts';

const ROOM = [
  '2026-01-01 loop North: sump 240 L; prefilter 6 layers; spills at 80 mm',
  '2026-01-01 tank N1: 100 L; on North',
  '2026-01-01 tank N2: 100 L; on North',
];
const roomOf = (on: string, lines: readonly string[]): Room => journalOn(on, [...ROOM, ...lines].join('\n'));
const ends = (room: Room): string[] =>
  openRigs(room).map((rig) => {
    const end = endsBy(rig);
    return end === null ? 'open' : `${isoDay(end.day)} ${String(end.minute)}`;
  });

describe('a measure said again', () => {
  it('lasts as long as the later line says, from that line on', () => {
    const pump = ['2026-02-01 10:00 North: pump off for 1 h', '2026-02-01 10:50 North: pump off for 1 h'];
    expect(ends(roomOf('2026-02-01', pump))).toEqual(['2026-02-01 710']);
    const lights = ['2026-02-01 N1: lights off', '2026-02-02 N1: lights off for 2 days'];
    expect(ends(roomOf('2026-02-03', lights))).toEqual(['2026-02-05 null']);
  });

  it('lasts until the day that the later line says, though the first said for how long', () => {
    const lines = ['2026-02-01 N1: lights off for 2 days', '2026-02-02 N1: lights off until 2026-02-08'];
    expect(ends(roomOf('2026-02-05', lines))).toEqual(['2026-02-09 null']);
    expect(ends(roomOf('2026-02-09', lines))).toEqual([]);
  });

  it('without an end leaves the day that was said, but no length of time', () => {
    const lines = ['2026-02-01 N1: lights off until 2026-02-08', '2026-02-02 N1: lights off'];
    expect(ends(roomOf('2026-02-05', lines))).toEqual(['2026-02-09 null']);
    const pump = ['2026-02-01 North: pump off for 1 h', '2026-02-01 North: pump off'];
    expect(ends(roomOf('2026-02-01', pump))).toEqual(['open']);
    expect(ends(roomOf('2026-02-03', [...pump, '2026-02-02 North: pump on']))).toEqual([]);
  });

  it('never ends before the day of its line: that line is left out', () => {
    const room = roomOf('2026-02-05', ['2026-02-05 N1: lights off until 2026-02-03']);
    expect(room.problems.map(({ weight, says, write }) => [weight, says, write])).toEqual([
      [
        'stops',
        'the day that it lasts until is before the day of the line',
        '2026-02-05 N1: lights off until 2026-02-07',
      ],
    ]);
    expect(openRigs(room)).toEqual([]);
    expect(ends(roomOf('2026-02-05', ['2026-02-05 N1: lights off until 2026-02-05']))).toEqual(['2026-02-06 null']);
  });

  it('keeps a tank off its loop till the later end', () => {
    const lines = ['2026-02-01 N2: off the loop until 2026-02-10', '2026-02-09 N2: off the loop until 2026-02-20'];
    expect(loopOf(roomOf('2026-02-12', lines), 'N2')).toBeNull();
    expect(loopOf(roomOf('2026-02-21', lines), 'N2')).toBe('North');
  });
});

describe('an undo of what told that it was over', () => {
  const doubts = (lines: readonly string[]): readonly string[] =>
    roomOf('2026-02-05', lines).problems.map(({ kind }) => kind);

  it('is no doubt on that day or the next', () => {
    expect(doubts(['2026-02-01 North: pump off 1 h', '2026-02-01 North: pump on'])).toEqual([]);
    expect(doubts(['2026-02-01 room: power off 2 h', '2026-02-02 room: power on'])).toEqual([]);
  });
  it('is one later, and where nothing was off', () => {
    expect(doubts(['2026-02-01 North: pump off 1 h', '2026-02-04 North: pump on'])).toEqual(['undo-without-begin']);
    expect(doubts(['2026-02-01 room: power off 2 h', '2026-02-04 room: power on'])).toEqual(['undo-without-begin']);
    expect(doubts(['2026-02-01 North: pump on'])).toEqual(['undo-without-begin']);
    expect(doubts(['2026-02-01 North: pump off 1 h; pump on; pump off', '2026-02-01 N1: pump on'])).toEqual([
      'undo-without-begin',
    ]);
  });
});

describe('everything undone', () => {
  it('leaves a tank off its loop that stays off it', () => {
    const lines = [
      '2026-02-01 N2: off the loop; lights off',
      '2026-02-02 N2: stays off the loop',
      '2026-02-03 N2: everything undone',
    ];
    const after = roomOf('2026-02-04', lines);
    expect(openRigs(after)).toEqual([]);
    expect(loopOf(after, 'N2')).toBeNull();
    expect(loopOf(roomOf('2026-02-04', lines.slice(0, 1)), 'N2')).toBeNull();
    expect(loopOf(roomOf('2026-02-04', [...lines.slice(0, 1), ...lines.slice(2)]), 'N2')).toBe('North');
  });
});
