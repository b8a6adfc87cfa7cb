/** How far a hold goes. Traps 4 and 5 of holds: not reaching the loop or moved fish, and reaching too far. */
import { describe, expect, test } from 'vitest';
import { openHolds } from '../../../src/questions/holds/reach.ts';
import { isoDay } from '../../../src/core/day.ts';
import type { Room } from '../../../src/state/draft.ts';
import { measure } from '../../../src/core/quantity.ts';
import { roomOn, tank } from '../../support/events.ts';
import type { Line } from '../../support/events.ts';
import { journalOn } from '../../support/journal.ts';
import { loopLine, rigLine, tankLine, undoLine } from '../../support/setup.ts';

const ROOM: Line[] = [
  loopLine('2026-01-01', 'Long'),
  tankLine('2026-01-01', 'A1', 'Long'),
  tankLine('2026-01-01', 'A2', 'Long'),
  tankLine('2026-01-01', 'B1', 'Long'),
  tankLine('2026-01-01', 'C1'),
];
const hold = (on: string, where: string): Line => [on, tank(where), { kind: 'hold begun', text: 'velvet' }];
const sick = (on: string, where: string, catching: boolean | null = true): Line => [
  on,
  tank(where),
  { kind: 'sick', text: 'velvet', catching },
];

function reached(room: Room): string[] {
  return openHolds(room).flatMap(({ tanks }) => tanks.map((one) => one.tank));
}

describe('reach of a hold', () => {
  test('trap 4: a hold on one tank reaches every tank that shares its water', () => {
    const room = roomOn('2026-05-01', [...ROOM, hold('2026-05-01', 'A1')]);
    expect(reached(room)).toEqual(['A1', 'A2', 'B1']);
    expect(openHolds(room)[0]?.tanks[1]?.route).toMatchObject([{ from: 'A1', to: 'A2', how: 'water', by: 'Long' }]);
  });

  test('a tank that is valved off until a day to come is not reached before it', () => {
    const line = (on: string): Room =>
      journalOn(on, '2026-03-01 A2: off the loop until 2026-05-10\n2026-05-01 A1: hold "velvet"\n');
    expect(reached(line('2026-05-09'))).toEqual(['A1', 'B1']);
    expect(reached(line('2026-05-11'))).toEqual(['A1', 'A2', 'B1']);
  });

  test('trap 5: a tank valved off before the look-back is clean, one valved off after it is not', () => {
    const lines = [...ROOM, rigLine('2026-04-10', 'A2', 'off the loop'), rigLine('2026-04-25', 'B1', 'off the loop')];
    const room = roomOn('2026-05-01', [...lines, hold('2026-05-01', 'A1')]);
    expect(reached(room)).toEqual(['A1', 'B1']);
    expect(openHolds(room)[0]?.clean).toMatchObject([{ tank: 'A2', loop: 'Long', place: { line: 6 } }]);
  });

  test('trap 5: the plumbing of those days counts, not that of today', () => {
    const off = rigLine('2026-04-01', 'A1', 'off the loop');
    const room = roomOn('2026-05-20', [
      ...ROOM,
      off,
      hold('2026-05-01', 'A1'),
      undoLine('2026-05-10', 'A1', 'off the loop'),
    ]);
    expect(reached(room)).toEqual(['A1', 'A2', 'B1']);
    expect(openHolds(room)[0]?.tanks.map(({ since }) => isoDay(since))).toEqual([
      '2026-04-17',
      '2026-05-10',
      '2026-05-10',
    ]);
    const before = roomOn('2026-05-09', [...ROOM, off, hold('2026-05-01', 'A1')]);
    expect(reached(before)).toEqual(['A1']);
  });

  test('a tank that comes back on the loop after the sick one left still meets its water', () => {
    const lines = [...ROOM, rigLine('2026-04-01', 'B1', 'off the loop'), rigLine('2026-04-28', 'A1', 'off the loop')];
    const room = roomOn('2026-05-20', [
      ...lines,
      hold('2026-05-01', 'A1'),
      undoLine('2026-05-10', 'B1', 'off the loop'),
    ]);
    expect(reached(room)).toEqual(['A1', 'A2', 'B1']);
  });

  test('the look-back counts from the first sign, not from the line of the hold', () => {
    const lines = [
      ...ROOM,
      rigLine('2026-04-10', 'A2', 'off the loop'),
      sick('2026-04-20', 'A1'),
      hold('2026-05-01', 'A1'),
    ];
    const [found] = openHolds(roomOn('2026-05-01', lines));
    expect(found?.lookBack).toBe(roomOn('2026-04-06', []).on);
    expect(found?.tanks.map((one) => one.tank)).toEqual(['A1', 'A2', 'B1']);
  });
});

describe('when a hold is clear', () => {
  test('28 days after the last sign, and a new sign in the reach restarts them', () => {
    const lines = [...ROOM, sick('2026-04-20', 'A1'), hold('2026-05-01', 'A1')];
    expect(clear(roomOn('2026-05-02', lines))).toEqual(['2026-05-29']);
    expect(clear(roomOn('2026-05-12', [...lines, sick('2026-05-10', 'B1', null)]))).toEqual(['2026-06-07']);
    expect(clear(roomOn('2026-05-12', [...lines, sick('2026-05-10', 'B1', false)]))).toEqual(['2026-05-29']);
    expect(clear(roomOn('2026-05-12', [...lines, sick('2026-05-10', 'C1')]))).toEqual(['2026-05-29']);
  });

  test('28 days after the last dose anywhere in the reach, planned ones included', () => {
    const treat: Line = [
      '2026-05-08',
      tank('B1'),
      { kind: 'treated', product: 'salt', dose: null, every: measure('days', 2), doses: 3, wait: null },
    ];
    const room = roomOn('2026-05-09', [...ROOM, hold('2026-05-01', 'A1'), treat]);
    expect(clear(room)).toEqual(['2026-06-09']);
    expect(openHolds(room)[0]?.lastDose).toMatchObject({ place: { line: 7 } });
  });

  test('`hold over` ends it for good, or for one reached tank alone', () => {
    const lines = [...ROOM, hold('2026-05-01', 'A1')];
    const over = (where: string): Line => ['2026-06-01', tank(where), { kind: 'hold over' }];
    expect(reached(roomOn('2026-06-01', [...lines, over('B1')]))).toEqual(['A1', 'A2']);
    expect(reached(roomOn('2026-06-01', [...lines, over('A1')]))).toEqual([]);
  });
});

function clear(room: Room): string[] {
  return openHolds(room).map((one) => isoDay(one.clear));
}
