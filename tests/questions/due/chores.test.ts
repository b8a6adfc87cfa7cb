import { describe, expect, it } from 'vitest';
import { measure } from '../../../src/core/quantity.ts';
import { isoDay } from '../../../src/core/day.ts';
import { choresDue } from '../../../src/questions/due/chores.ts';
import { day, loop, room, roomOn, tank, type Line } from '../../support/events.ts';
import { begin, change, cleaned, level, SET_UP } from '../../support/waters.ts';

const setOn = (on: string): Line => [
  on,
  loop('Long'),
  {
    kind: 'chore set',
    action: { kind: 'clean prefilter', text: null },
    every: measure('days', 42),
    monthly: null,
    levelAbove: measure('mm', 65),
    amount: null,
    takes: null,
  },
];
const prefilter = setOn('2026-01-04');
const weekly = (where: ReturnType<typeof tank>, percent = 30): Line => [
  '2026-01-04',
  where,
  {
    kind: 'chore set',
    action: { kind: 'water change', text: null },
    every: measure('days', 7),
    monthly: null,
    levelAbove: null,
    amount: measure('share', percent / 100),
    takes: measure('minutes', 20),
  },
];
const monthly: Line = [
  '2026-01-31',
  room,
  {
    kind: 'chore set',
    action: { kind: 'own', text: 'press the test button' },
    every: null,
    monthly: 1,
    levelAbove: null,
    amount: null,
    takes: null,
  },
];

const rows = (on: string, lines: readonly Line[]) => choresDue(roomOn(on, [...SET_UP, ...lines]), 60);
const dueOf = (on: string, lines: readonly Line[], id: string): string | null => {
  const likely = rows(on, lines).find((row) => row.id === id)?.due.likely ?? null;
  return likely === null ? null : isoDay(likely);
};

const LEVELS = [level('2026-01-11', 20), level('2026-01-25', 28), level('2026-02-04', 42), level('2026-02-10', 54)];

describe('the prefilter', () => {
  it('the full clean falls due six weeks after the last full one, and its level is named', () => {
    const [row] = rows('2026-02-15', [prefilter, cleaned('2026-01-11', 6), ...LEVELS]);
    expect(row?.id).toBe('long-clean-prefilter');
    expect(row?.due.likely).toBe(day('2026-02-22'));
    expect(row?.why).toContain('last full clean 11 Jan');
    expect(row?.why).toContain('level 54 mm on 10 Feb');
    expect(row?.close).toBe('Long: cleaned 6 of 6 layers');
    expect(row?.lines.map(({ line }) => line)).toContain(7);
  });

  it('a clean of two layers of six never resets the full clean, and buys 28 of 42 days (trap 3)', () => {
    const lines = [prefilter, cleaned('2026-01-11', 6), cleaned('2026-02-01', 2)];
    const [row] = rows('2026-02-15', lines);
    expect(row?.due.likely).toBe(day('2026-02-22'));
    // ½ + ½ · 2/6 of 42 days is 28 (rule of ours; a layer or two last about a month: common practice, no source)
    expect(row?.why).toContain('2 of 6 layers on 1 Feb buys till 1 Mar');
    expect(row?.because.steps.join(' ')).toContain('42 days × 0.67 = 28, so it buys till 1 Mar');
  });

  it('levels after both cleans teach how much a partial one is worth', () => {
    const lines = [
      prefilter,
      cleaned('2026-01-11', 6),
      level('2026-01-11', 20),
      cleaned('2026-02-01', 2),
      level('2026-02-01', 35),
    ];
    // freeboard won 80 − 35 = 45 of 80 − 20 = 60 mm: three quarters of 42 days
    expect(rows('2026-02-15', lines)[0]?.because.steps.join(' ')).toContain(
      '42 days × 0.75 = 32, so it buys till 5 Mar',
    );
  });

  it('a level over its mark makes it due whatever the date, until it is cleaned', () => {
    const over = [prefilter, cleaned('2026-01-11', 6), level('2026-01-20', 66)];
    const [row] = rows('2026-01-21', over);
    expect(row?.due.high).toBe(day('2026-01-20'));
    expect(row?.weight).toBe(2);
    expect(row?.pressing).toBe(true);
    expect(dueOf('2026-01-22', [...over, cleaned('2026-01-22', 6)], 'long-clean-prefilter')).toBe('2026-03-05');
  });

  it('never done counts from the day it was set', () => {
    expect(dueOf('2026-02-01', [prefilter], 'long-clean-prefilter')).toBe('2026-02-15');
  });

  it('is not late before it was asked for', () => {
    const old = setOn('2026-03-20');
    expect(dueOf('2026-03-21', [cleaned('2026-01-11', 6), old], 'long-clean-prefilter')).toBe('2026-03-20');
  });
});

describe('water changes', () => {
  it('run from the last one', () => {
    expect(dueOf('2026-02-15', [weekly(tank('C1')), change('2026-02-10', tank('C1'), 30)], 'c1-water-change')).toBe(
      '2026-02-17',
    );
  });

  it('nearly all of what was asked is all of it, half of it buys half the interval', () => {
    expect(dueOf('2026-02-15', [weekly(tank('C1')), change('2026-02-10', tank('C1'), 25)], 'c1-water-change')).toBe(
      '2026-02-17',
    );
    const part = [weekly(tank('C1')), change('2026-02-03', tank('C1'), 30), change('2026-02-10', tank('C1'), 15)];
    expect(dueOf('2026-02-11', part, 'c1-water-change')).toBe('2026-02-14');
  });

  it('two on one day count together', () => {
    const twice = [weekly(tank('C1')), change('2026-02-10', tank('C1'), 15), change('2026-02-10', tank('C1'), 15)];
    expect(dueOf('2026-02-11', twice, 'c1-water-change')).toBe('2026-02-17');
  });

  it('of the loop reach the tanks on it, and not the one on air (trap 16)', () => {
    const lines = [
      weekly(tank('A1')),
      weekly(tank('A2')),
      begin('2026-02-01', tank('A2'), 'off the loop'),
      change('2026-02-10', loop('Long'), 30),
    ];
    expect(dueOf('2026-02-11', lines, 'a1-water-change')).toBe('2026-02-17');
    expect(dueOf('2026-02-11', lines, 'a2-water-change')).toBe('2026-01-11');
  });

  it('are told in litres of live water, not of the glass box (trap 16)', () => {
    const [row] = rows('2026-02-15', [weekly(tank('C1'))]);
    // 30 % of 54 L × 0.85
    expect(row?.what).toBe('water change 30 % (about 14 L)');
    expect(row?.minutes).toBe(20);
    expect(row?.caution).toContain('chlorine');
  });

  it('stop where they are stopped', () => {
    const stopped: Line = [
      '2026-02-01',
      tank('C1'),
      { kind: 'chore stopped', action: { kind: 'water change', text: null } },
    ];
    expect(rows('2026-02-15', [weekly(tank('C1')), stopped])).toEqual([]);
    expect(rows('2026-01-31', [weekly(tank('C1')), stopped])).toHaveLength(1);
  });
});

describe('chores by the calendar and tasks', () => {
  it('every month is a calendar month, cut to the month’s length', () => {
    expect(dueOf('2026-02-15', [monthly], 'room-press-the-test-button')).toBe('2026-02-28');
    const did: Line = ['2026-02-28', room, { kind: 'did', action: { kind: 'own', text: 'Press the test button' } }];
    expect(dueOf('2026-03-01', [monthly, did], 'room-press-the-test-button')).toBe('2026-03-28');
  });

  const todo: Line = ['2026-02-01', tank('A1'), { kind: 'to do', text: 'new air stone', by: day('2026-02-10') }];
  const did = (text: string): Line => ['2026-02-09', tank('A1'), { kind: 'did', action: { kind: 'own', text } }];

  it('a task is open until it was done', () => {
    expect(dueOf('2026-02-05', [todo], 'a1-new-air-stone')).toBe('2026-02-10');
    expect(rows('2026-02-09', [todo, did('new air stone')])).toEqual([]);
  });

  it('`did` of something else is doubted, and offers what is open', () => {
    const seen = roomOn('2026-02-10', [...SET_UP, todo, did('new airstone')]);
    expect(seen.problems.map(({ kind, weight }) => [kind, weight])).toEqual([['nothing-to-do', 'doubt']]);
    expect(seen.problems[0]?.write).toBe('A1: did "new air stone"');
  });
});
