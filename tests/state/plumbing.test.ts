import { describe, expect, it } from 'vitest';
import { measure } from '../../src/core/quantity.ts';
import { loopOf, sharers, tanksOn, walkOrder } from '../../src/state/tanks.ts';
import { liveVolume, loopVolume } from '../../src/state/volume.ts';
import { day, loop, room, roomOn, tank, type Line } from '../support/events.ts';
import { bareTank, begin, change, SET_UP, tanksOfLoop, undo } from '../support/waters.ts';

const kinds = (lines: readonly Line[], on = '2026-04-01'): string[] =>
  roomOn(on, lines).problems.map(({ kind, weight }) => `${weight} ${kind}`);

describe('plumbing by date', () => {
  const lines = [
    ...SET_UP,
    begin('2026-02-18', tank('A2'), 'off the loop'),
    undo('2026-02-25', tank('A2'), 'off the loop'),
  ];
  const seen = roomOn('2026-03-01', lines);

  it('knows who shared whose water on each day, not only today (trap 5)', () => {
    expect(tanksOn(seen, 'Long', day('2026-02-17'))).toEqual(['A1', 'A2', 'B1']);
    expect(tanksOn(seen, 'Long', day('2026-02-20'))).toEqual(['A1', 'B1']);
    expect(tanksOn(seen, 'Long', day('2026-02-25'))).toEqual(['A1', 'A2', 'B1']);
    expect(sharers(seen, 'A2', day('2026-02-20'))).toEqual(['A2']);
    expect(sharers(seen, 'A1', day('2026-02-20'))).toEqual(['A1', 'B1']);
  });

  it('keeps times of day apart', () => {
    const off: Line = [
      '2026-02-18',
      tank('A2'),
      { kind: 'measure begun', measure: 'off the loop', until: null, lasts: null, over: false, to: null, minute: 600 },
    ];
    const timed = roomOn('2026-02-18', [...SET_UP, off]);
    expect(loopOf(timed, 'A2', day('2026-02-18'), 599)).toBe('Long');
    expect(loopOf(timed, 'A2', day('2026-02-18'), 600)).toBeNull();
    expect(loopOf(timed, 'A2', day('2026-02-18'))).toBeNull();
  });

  it('is back by itself where the line said for how long', () => {
    const off: Line = [
      '2026-02-18',
      tank('A2'),
      {
        kind: 'measure begun',
        measure: 'off the loop',
        until: null,
        lasts: measure('minutes', 120),
        over: false,
        to: null,
        minute: 600,
      },
    ];
    const timed = roomOn('2026-02-20', [...SET_UP, off]);
    expect(loopOf(timed, 'A2', day('2026-02-18'), 660)).toBeNull();
    expect(loopOf(timed, 'A2', day('2026-02-18'), 720)).toBe('Long');
    expect(loopOf(timed, 'A2', day('2026-02-19'))).toBe('Long');
  });

  it('gives a valved-off tank nothing of the loop’s water change (trap 16)', () => {
    const [fact] = roomOn('2026-02-20', [...lines, change('2026-02-20', loop('Long'), 20)]).water.changes;
    expect(fact?.tanks).toEqual(['A1', 'B1']);
  });

  it('makes one event a tank of `Long tanks`, as the plumbing of that day has them', () => {
    const changes = roomOn('2026-02-20', [...lines, change('2026-02-20', tanksOfLoop('Long', ['B1']), 20)]).water
      .changes;
    expect(changes.map(({ where }) => where)).toEqual(['A1']);
  });

  it('settles a shut valve when the tank is plumbed anew', () => {
    const moved: Line = ['2026-02-20', tank('A2'), { ...bareTank('A2'), plumbing: 'alone' }];
    const anew = roomOn('2026-02-21', [...SET_UP, begin('2026-02-18', tank('A2'), 'off the loop'), moved]);
    expect(anew.measures.rigs[0]?.closed?.day).toBe(day('2026-02-20'));
    expect(loopOf(anew, 'A2')).toBeNull();
  });

  it('lets a tray share the water of its tank', () => {
    const tray: Line = ['2026-01-05', tank('T1'), { ...bareTank('T1'), inTank: 'A1' }];
    const withTray = roomOn('2026-02-20', [...SET_UP, tray, begin('2026-02-18', tank('A1'), 'off the loop')]);
    expect(sharers(withTray, 'A1')).toEqual(['A1', 'T1']);
    expect(sharers(withTray, 'T1', day('2026-02-01'))).toEqual(['A1', 'T1', 'A2', 'B1']);
  });
});

describe('tanks', () => {
  it('takes 10 to 20 % off what the size says (common practice, no source)', () => {
    const { litres, nominal, basis } = liveVolume(roomOn('2026-02-01', SET_UP), 'A1');
    expect(nominal).toEqual(measure('L', 160));
    expect(litres).toEqual({ unit: 'L', low: 128, likely: 136, high: 144 });
    expect(basis).toBe('outside size less 10–20 %');
  });

  it('box 90 x 45 x 45 cm is 182.25 L (MSD Veterinary Manual, as a box)', () => {
    const made: Line = [
      '2026-01-05',
      tank('E1'),
      { ...bareTank('E1'), size: [measure('mm', 900), measure('mm', 450), measure('mm', 450)] },
    ];
    expect(liveVolume(roomOn('2026-02-01', [made]), 'E1').nominal?.likely).toBeCloseTo(182.25, 9);
  });

  it('trusts live litres that are stated, and sums a loop with its sump', () => {
    const stated: Line = ['2026-01-05', tank('A1'), { ...bareTank('A1'), live: measure('L', 130) }];
    const seen = roomOn('2026-02-01', [...SET_UP, stated]);
    expect(liveVolume(seen, 'A1').litres?.likely).toBe(130);
    // 240 + 130 + 136 + 84 × 0.85
    expect(loopVolume(seen, 'Long')?.likely).toBeCloseTo(577.4, 6);
  });

  it('walks as set, then as declared', () => {
    const walk: Line = ['2026-01-05', room, { kind: 'walk set', tanks: ['C1', 'B1'] }];
    expect(walkOrder(roomOn('2026-02-01', [...SET_UP, walk]))).toEqual(['C1', 'B1', 'A1', 'A2']);
  });

  it('forgets nothing that a later line leaves out', () => {
    const amended: Line = ['2026-01-06', tank('C1'), { ...bareTank('C1'), heated: measure('C', 26) }];
    const c1 = roomOn('2026-02-01', [...SET_UP, amended]).plumbing.tanks.get('C1');
    expect(c1?.nominal?.likely).toBe(54);
    expect(c1?.heated?.likely).toBe(26);
    expect(c1?.plumbed).toHaveLength(1);
  });
});

describe('facts of plumbing that cannot be right', () => {
  it('names each', () => {
    const onUnknown: Line = ['2026-01-05', tank('E1'), { ...bareTank('E1'), plumbing: { on: 'Short' } }];
    expect(kinds([...SET_UP, onUnknown])).toEqual(['stops unknown-loop']);
    expect(kinds([...SET_UP, begin('2026-02-01', tank('C1'), 'off the loop')])).toEqual(['stops not-on-a-loop']);
    expect(kinds([...SET_UP, undo('2026-02-01', tank('A1'), 'lights off')])).toEqual(['doubt undo-without-begin']);
  });

  it('leaves out what is said of a tank retired before', () => {
    const retired: Line = ['2026-02-01', tank('C1'), { kind: 'tank retired', tank: 'C1' }];
    const seen = roomOn('2026-03-01', [...SET_UP, retired, change('2026-02-10', tank('C1'), 30)]);
    expect(seen.problems.map(({ kind }) => kind)).toEqual(['retired-tank']);
    expect(seen.water.changes).toEqual([]);
    expect(walkOrder(seen)).toEqual(['A1', 'A2', 'B1']);
  });

  it('counts a tank again once it is set up anew', () => {
    const retired: Line = ['2026-02-01', tank('C1'), { kind: 'tank retired', tank: 'C1' }];
    const again: Line = ['2026-02-09', tank('C1'), { ...bareTank('C1'), plumbing: { on: 'Long' } }];
    const seen = roomOn('2026-03-01', [...SET_UP, retired, again, change('2026-02-10', tank('C1'), 30)]);
    expect(seen.problems).toEqual([]);
    expect(seen.water.changes[0]?.tanks).toContain('A1');
  });
});
