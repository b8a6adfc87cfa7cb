/** What lines do to temporary measures of a tank, a loop or the room: whose water it is since, how long it stood, what is left open. */
import { describe, expect, it } from 'vitest';
import { isoDay } from '../../src/core/day.ts';
import { openRigs } from '../../src/state/rigs.ts';
import { loopOf } from '../../src/state/tanks.ts';
import { journalOn } from '../support/journal.ts';

const roomOf = (on: string, lines: readonly string[]): ReturnType<typeof journalOn> =>
  journalOn(on, `${lines.join('\n')}\n`);
const open = (on: string, ...lines: readonly string[]): string[] =>
  openRigs(roomOf(on, lines)).map(({ where, kind }) => `${where} ${kind}`);
const loopOn = (on: string, ...lines: readonly string[]): string | null => loopOf(roomOf(on, lines), 'A1');
const said = (...lines: readonly string[]): string[] =>
  roomOf('2026-04-01', lines).problems.map(({ kind, says }) => `${kind}: ${says}`);
const stood = (...lines: readonly string[]): string[] =>
  roomOf('2026-04-01', lines).water.disturbed.map(({ what, where, day }) => `${where} ${what} ${isoDay(day).slice(5)}`);

describe('a tank off its loop', () => {
  const first = ['2026-02-01 A1: off the loop until 2026-02-05', '2026-02-06 A1: back on the loop'];
  const second = '2026-02-20 A1: off the loop until 2026-02-25';
  it('is so until the day that its line says', () => {
    expect(loopOn('2026-02-05', ...first)).toBeNull();
    expect(loopOn('2026-02-06', ...first)).toBe('Long');
    expect(loopOn('2026-02-25', ...first, second)).toBeNull();
    expect(loopOn('2026-02-26', ...first, second)).toBe('Long');
  });
  it('is so for longer where a later line says so, from that time on alone', () => {
    const longer = '2026-02-22 A1: off the loop until 2026-03-01';
    expect(loopOn('2026-03-01', ...first, second, longer)).toBeNull();
    expect(loopOn('2026-03-02', ...first, second, longer)).toBe('Long');
    expect(loopOn('2026-02-15', ...first, second, longer)).toBe('Long');
    const { plumbed } = roomOf('2026-03-02', [...first, second, longer]).plumbing.tanks.get('A1') ?? { plumbed: [] };
    expect(plumbed.flatMap(({ until }) => (until === null ? [] : [isoDay(until.day)]))).toEqual([
      '2026-02-06',
      '2026-03-02',
    ]);
  });
  it('stays off by another measure that is said again', () => {
    const lights = ['2026-02-20 A1: lights off until 2026-02-21', '2026-02-21 A1: lights off until 2026-03-05'];
    expect(loopOn('2026-02-24', second, ...lights)).toBeNull();
    expect(loopOn('2026-02-26', second, ...lights)).toBe('Long');
  });
  it('is so of two openings of one day by that which was said again', () => {
    const day = [
      '2026-02-20 08:00 A1: off the loop for 1 h',
      '2026-02-20 12:00 A1: off the loop for 2 h',
      '2026-02-20 13:00 A1: off the loop for 2 h',
    ];
    const at = (hour: number): string | null => {
      const room = roomOf('2026-02-21', day);
      return loopOf(room, 'A1', roomOf('2026-02-20', []).on, hour * 60);
    };
    expect([8.5, 10, 14.5, 16].map(at)).toEqual([null, 'Long', null, 'Long']);
  });
  it('is nothing that any other measure does', () => {
    expect(loopOn('2026-02-10', '2026-02-01 A1: lights off; rocks out; heater off')).toBe('Long');
  });
  it('comes back by its own undo alone', () => {
    expect(loopOn('2026-02-10', '2026-02-01 A1: off the loop; lights off', '2026-02-03 A1: lights on')).toBeNull();
    expect(loopOn('2026-02-10', '2026-02-01 A1: off the loop', '2026-02-03 A1: back on the loop')).toBe('Long');
  });
  it('comes back with everything undone of the room', () => {
    const off = '2026-02-01 A1: off the loop; lights off';
    expect(loopOn('2026-02-10', off, '2026-02-03 room: everything undone')).toBe('Long');
    expect(open('2026-02-10', off, '2026-02-03 room: everything undone')).toEqual([]);
  });
  it('stays off by everything undone where it is to stay', () => {
    const off = ['2026-02-01 A1: off the loop', '2026-02-02 A1: off the loop stays'];
    expect(loopOn('2026-02-10', ...off, '2026-02-03 A1: everything undone')).toBeNull();
  });
});

describe('a line that undoes nothing', () => {
  it.each([
    ['2026-02-03 A1: back on the loop', 'no «off the loop» is open there, so «back on the loop» undoes nothing'],
    ['2026-02-03 C1: back on the loop', 'no «off the loop» is open there, so «back on the loop» undoes nothing'],
    ['2026-02-03 A1: lights on', 'no «lights off» is open there, so «lights on» undoes nothing'],
    ['2026-02-03 A1: everything undone', 'nothing temporary is open there'],
    ['2026-02-03 A1: air filter stays', 'no «air filter in» is open there that could stay'],
  ])('is doubted: %s', (line, says) => {
    expect(said(line)).toEqual([`undo-without-begin: ${says}`]);
  });
  it('is none where one of several was open', () => {
    expect(said('2026-02-01 A1: air filter in', '2026-02-03 A1: air filter stays')).toEqual([]);
    expect(said('2026-02-01 A1: lights off', '2026-02-03 A1: everything undone')).toEqual([]);
    expect(said('2026-02-01 A1: lights off', '2026-02-03 room: lights on')).toEqual([]);
  });
  it('says once more what was told as over, of that measure and place', () => {
    const over = '2026-02-03 08:00 Long: pump off 1 h';
    expect(said(over, '2026-02-03 09:00 Long: pump on')).toEqual([]);
    expect(said(over, '2026-02-04 Long: pump on')).toEqual([]);
    expect(said(over, '2026-02-05 Long: pump on')).toHaveLength(1);
    expect(said(over, '2026-02-03 09:00 Long: heater on')).toHaveLength(1);
    expect(
      said('2026-02-03 07:00 A1: lights off', '2026-02-03 08:00 A1: lights on', '2026-02-03 09:00 A1: lights on'),
    ).toHaveLength(1);
  });
});

describe('what is said again', () => {
  const heat = (...lines: readonly string[]): (number | null | undefined)[] =>
    openRigs(roomOf('2026-02-10', lines)).map(({ to }) => to?.likely);
  it('is to the warmth that was said last', () => {
    expect(heat('2026-02-01 C1: heat to 30 C', '2026-02-02 C1: heat to 28 C')).toEqual([28]);
  });
  it('lasts as long as it says, from then on', () => {
    const lines = ['2026-02-10 08:00 Long: pump off for 4 h', '2026-02-10 11:00 Long: pump off for 2-3 h'];
    const [rig] = openRigs(roomOf('2026-02-10', lines));
    expect(rig?.lasts).toMatchObject({ low: 300, likely: 330, high: 360 });
    expect(stood(...lines, '2026-02-11 Long: pump on')).toEqual([]);
  });
  it('lasts past midnight, and until the day that was said where it says none', () => {
    const over = ['2026-02-10 23:00 Long: pump off for 4 h', '2026-02-11 01:00 Long: pump off for 3 h'];
    expect(openRigs(roomOf('2026-02-11', over))[0]?.lasts).toMatchObject({ low: 300, high: 300 });
    const dark = ['2026-02-01 A1: lights off until 2026-02-20', '2026-02-03 A1: lights off'];
    expect(open('2026-02-20', ...dark)).toEqual(['A1 lights off']);
    expect(open('2026-02-21', ...dark)).toEqual([]);
  });
  it('is open where it says no end, though it was to last an hour', () => {
    const lines = ['2026-02-10 08:00 Long: pump off for 1 h', '2026-02-10 08:30 Long: pump off'];
    expect(open('2026-02-20', ...lines)).toEqual(['Long pump off']);
  });
  it('begins anew where it was over', () => {
    const lines = ['2026-02-10 08:00 Long: pump off for 1 h', '2026-02-10 10:00 Long: pump off for 1 h'];
    expect(roomOf('2026-02-10', lines).measures.rigs).toHaveLength(2);
  });
});

describe('a pump that stood', () => {
  it('for more than six hours disturbs the filter', () => {
    expect(stood('2026-02-03 08:00 Long: pump off', '2026-02-03 14:01 Long: pump on')).toEqual([
      'Long pump stood 02-03',
    ]);
    expect(stood('2026-02-03 08:00 Long: pump off', '2026-02-03 14:00 Long: pump on')).toEqual([]);
    expect(stood('2026-02-03 Long: pump off 7 h')).toEqual(['Long pump stood 02-03']);
    expect(stood('2026-02-03 Long: pump off 1 h')).toEqual([]);
  });
  it('does by what is the end of it at the latest', () => {
    expect(stood('2026-02-03 20:00 Long: pump off for 8 h', '2026-02-06 Long: pump on')).toEqual([
      'Long pump stood 02-04',
    ]);
  });
  it('is no lamp and no heater', () => {
    expect(stood('2026-02-03 08:00 A1: lights off; heater off', '2026-02-04 A1: everything undone')).toEqual([]);
    expect(stood('2026-02-03 A1: lights off 9 h')).toEqual([]);
  });
});

describe('a tank alone', () => {
  it('cannot be off a loop, and the line that would be read puts it on one', () => {
    const { problems } = roomOf('2026-04-01', ['2026-02-03 C1: off the loop']);
    expect(problems).toMatchObject([
      { kind: 'not-on-a-loop', weight: 'stops', write: '2026-02-03 tank C1: on Long', also: [] },
    ]);
  });
});
