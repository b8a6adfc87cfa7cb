import { describe, expect, it } from 'vitest';
import { isoDay } from '../../../src/core/day.ts';
import { measure } from '../../../src/core/quantity.ts';
import { faultsDue } from '../../../src/questions/due/faults.ts';
import { measuresDue } from '../../../src/questions/due/measures.ts';
import { day, loop, room, roomOn, tank, type Line } from '../../support/events.ts';
import { begin, change, SET_UP, undo } from '../../support/waters.ts';

const rows = (on: string, lines: readonly Line[]) => measuresDue(roomOn(on, [...SET_UP, ...lines]));
const fault: Line = ['2026-02-18', tank('A2'), { kind: 'fault', text: 'valve weeping' }];
const offLoop = [begin('2026-02-18', tank('A2'), 'off the loop'), begin('2026-02-18', tank('A2'), 'air filter')];

describe('temporary measures', () => {
  it('the open fault, the tank off its loop and the air filter, each with what undoes it', () => {
    const lines = [fault, ...offLoop];
    const all = [...faultsDue(roomOn('2026-02-19', [...SET_UP, ...lines])), ...rows('2026-02-19', lines)];
    expect(all.map(({ id, close }) => [id, close])).toEqual([
      ['a2-fault-valve-weeping', 'A2: fixed'],
      ['a2-off-the-loop', 'A2: back on the loop, air filter out'],
    ]);
    expect(all.every(({ why }) => why.includes('since 18 Feb'))).toBe(true);
    expect(all.every(({ because }) => because.lines.length > 0)).toBe(true);
  });

  it('a temporary air filter is not called mature (trap 20)', () => {
    const [air] = rows('2026-02-25', offLoop);
    expect(air?.why).toContain('off the loop on an air filter since 18 Feb');
    expect(air?.why).toContain('not mature');
    expect(air?.caution).toContain('2 to 6 weeks');
  });

  it('counts the loop’s water changes that a tank off it missed, and no others (trap 16)', () => {
    const lines = [
      ...offLoop,
      change('2026-02-10', loop('Long'), 20),
      change('2026-02-20', loop('Long'), 20),
      change('2026-02-27', loop('Long'), 20),
    ];
    const off = rows('2026-02-28', lines).find(({ id }) => id === 'a2-off-the-loop');
    expect(off?.why).toContain('missed 2 water changes of Long');
    expect(off?.lines).toHaveLength(4);
  });

  it('each kind has its patience', () => {
    const due = (kind: Parameters<typeof begin>[2]): string | null => {
      const likely = rows('2026-02-18', [begin('2026-02-18', tank('A1'), kind)])[0]?.due.likely ?? null;
      return likely === null ? null : isoDay(likely);
    };
    expect(due('pump off')).toBe('2026-02-18');
    expect(due('rocks out')).toBe('2026-02-19');
    expect(due('lights off')).toBe('2026-02-20');
  });

  it('a line that says until when has the last word about it', () => {
    const until: Line = [
      '2026-02-14',
      tank('A1'),
      { kind: 'measure begun', measure: 'rocks out', until: day('2026-02-18'), lasts: null, over: false, to: null },
    ];
    expect(rows('2026-02-15', [until])[0]?.due.likely).toBe(day('2026-02-18'));
    expect(rows('2026-02-19', [until])).toEqual([]);
  });

  it('nothing of it is left after the undo', () => {
    const [left] = rows('2026-02-25', [...offLoop, undo('2026-02-20', tank('A2'), 'off the loop')]);
    expect(left?.close).toBe('A2: air filter out');
    expect(rows('2026-02-25', [...offLoop, ['2026-02-20', tank('A2'), { kind: 'everything undone' }]])).toEqual([]);
  });

  it('a pump that is off overnight presses', () => {
    const [row] = rows('2026-02-15', [begin('2026-02-14', loop('Long'), 'pump off')]);
    expect(row?.weight).toBe(3);
    expect(row?.pressing).toBe(true);
  });
});

describe('measures that calm a pair', () => {
  const pair: Line = [
    '2026-01-04',
    tank('A1'),
    {
      kind: 'group declared',
      group: 'Rowan',
      groupKind: 'pair',
      species: null,
      heads: null,
      members: [
        { member: { sex: 'male', name: null }, size: null },
        { member: { sex: 'female', name: null }, size: null },
      ],
      tank: 'A1',
      age: null,
      size: null,
      line: null,
      from: null,
      price: null,
      parentsFrom: [],
    },
  ];
  const rowan = { kind: 'group', group: 'Rowan', member: null } as const;
  const chasing: Line = [
    '2026-02-14',
    tank('A1'),
    {
      kind: 'dispute sign',
      fish: rowan,
      sign: 'chasing',
      doer: { sex: 'male', name: null },
      sufferer: { sex: 'female', name: null },
    },
  ];
  const off = begin('2026-02-14', tank('A1'), 'lights off');

  it('are not asked back while the dispute is open, and are once it ended', () => {
    const [open] = rows('2026-02-18', [pair, chasing, off]);
    expect(open?.due.likely).toBe(day('2026-02-19'));
    expect(open?.why).toContain('leave it so while the dispute is open');
    const madeUp: Line = ['2026-02-17', tank('A1'), { kind: 'made up', fish: rowan }];
    expect(rows('2026-02-18', [pair, chasing, off, madeUp])[0]?.due.likely).toBe(day('2026-02-16'));
  });
});

describe('faults', () => {
  it('a leak, an overflow and lost power come before all, with a caution', () => {
    const lines: Line[] = [
      ['2026-02-18', tank('A1'), { kind: 'leak' }],
      ['2026-02-18', loop('Long'), { kind: 'overflowed' }],
      ['2026-02-18', room, { kind: 'power off', lasts: null }],
      ['2026-02-18', tank('C1'), { kind: 'heater stuck', at: measure('C', 31) }],
    ];
    const all = faultsDue(roomOn('2026-02-18', [...SET_UP, ...lines]));
    expect(all.map(({ weight, pressing }) => [weight, pressing])).toEqual(Array(4).fill([3, true]));
    expect(all[0]?.caution).toContain('dry place');
    expect(all[2]?.close).toBe('room: power on');
    expect(all[2]?.caution).toContain('indoors');
    expect(all[3]?.what).toContain('heater stuck at 31 C');
  });

  it('of two open in one place each names itself in its closing line', () => {
    const other: Line = ['2026-02-19', tank('A2'), { kind: 'fault', text: 'glass chipped' }];
    const all = faultsDue(roomOn('2026-02-20', [...SET_UP, fault, other]));
    expect(all.map(({ close }) => close)).toEqual(['A2: fixed "valve weeping"', 'A2: fixed "glass chipped"']);
  });
});
