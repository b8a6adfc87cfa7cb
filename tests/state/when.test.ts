import { describe, expect, it } from 'vitest';
import { onDay } from '../../src/core/interval.ts';
import { measure } from '../../src/core/quantity.ts';
import { loopOf } from '../../src/state/tanks.ts';
import { day, loop, roomOn, tank, type Line } from '../support/events.ts';
import { level, SET_UP } from '../support/waters.ts';

const yesterday = { when: onDay(day('2026-02-09')) };

describe('what a line tells of an earlier day', () => {
  it('a change made yesterday was made then, and stands before what was told earlier of today', () => {
    const lines: Line[] = [
      ['2026-02-10', tank('C1'), { kind: 'water changed', amount: measure('share', 0.1) }],
      ['2026-02-10', tank('C1'), { kind: 'water changed', amount: measure('share', 0.3), ...yesterday }],
    ];
    const { changes } = roomOn('2026-02-12', [...SET_UP, ...lines]).water;
    expect(changes.map((one) => [one.day, one.amount.likely])).toEqual([
      [day('2026-02-09'), 0.3],
      [day('2026-02-10'), 0.1],
    ]);
  });

  it('a valve shut yesterday was shut on that day', () => {
    const off: Line = [
      '2026-02-10',
      tank('A2'),
      { kind: 'measure begun', measure: 'off the loop', until: null, lasts: null, over: false, to: null, ...yesterday },
    ];
    const seen = roomOn('2026-02-12', [...SET_UP, off]);
    expect(loopOf(seen, 'A2', day('2026-02-08'))).toBe('Long');
    expect(loopOf(seen, 'A2', day('2026-02-09'))).toBeNull();
    expect(seen.measures.rigs[0]?.day).toBe(day('2026-02-09'));
  });

  it('a clean done yesterday comes before today’s level, whichever was told first', () => {
    const clean: Line = ['2026-02-10', loop('Long'), { kind: 'layers cleaned', layers: 6, of: 6, ...yesterday }];
    const seen = roomOn('2026-02-12', [...SET_UP, level('2026-02-10', 22), clean]).plumbing.loops.get('Long');
    expect(seen?.cleans[0]?.day).toBe(day('2026-02-09'));
    expect(seen?.levels[0]?.superseded).toBe(false);
  });
});
