import { describe, expect, it } from 'vitest';
import { measure } from '../../src/core/quantity.ts';
import { openRigs } from '../../src/state/rigs.ts';
import { day, loop, room, roomOn, tank, type Line } from '../support/events.ts';
import { begin, level, SET_UP, undo } from '../support/waters.ts';

const open = (lines: readonly Line[], on: string): string[] =>
  openRigs(roomOn(on, [...SET_UP, ...lines])).map(({ where, kind }) => `${where} ${kind}`);

const pump = (on: string, more: { lasts?: number; over?: boolean; minute?: number }): Line => [
  on,
  loop('Long'),
  {
    kind: 'measure begun',
    measure: 'pump off',
    until: null,
    lasts: more.lasts === undefined ? null : measure('minutes', more.lasts),
    over: more.over ?? false,
    to: null,
    minute: more.minute ?? null,
  },
];

describe('temporary measures', () => {
  it('stay open until their undo, however long', () => {
    const lines = [begin('2026-02-14', tank('A1'), 'lights off'), undo('2026-06-16', tank('A1'), 'lights off')];
    expect(open(lines, '2026-06-15')).toEqual(['A1 lights off']);
    expect(open(lines, '2026-06-16')).toEqual([]);
    expect(open(lines, '2026-02-13')).toEqual([]);
  });

  it('`pump off 1 h` is over, `pump off for 1 h` open till then, `pump off` open', () => {
    expect(open([pump('2026-02-14', { lasts: 60, over: true, minute: 480 })], '2026-02-14')).toEqual([]);
    expect(open([pump('2026-02-14', { lasts: 60, minute: 480 })], '2026-02-14')).toEqual(['Long pump off']);
    expect(open([pump('2026-02-14', { lasts: 60, minute: 480 })], '2026-02-15')).toEqual([]);
    expect(open([pump('2026-02-14', { lasts: 60, minute: 1430 })], '2026-02-15')).toEqual(['Long pump off']);
    expect(open([pump('2026-02-14', {})], '2026-02-20')).toEqual(['Long pump off']);
  });

  it('`until` a date holds through that day', () => {
    const until: Line = [
      '2026-02-14',
      tank('A1'),
      { kind: 'measure begun', measure: 'lights off', until: day('2026-02-18'), lasts: null, over: false, to: null },
    ];
    expect(open([until], '2026-02-18')).toEqual(['A1 lights off']);
    expect(open([until], '2026-02-19')).toEqual([]);
  });

  it('`stays` makes it no longer temporary', () => {
    const stays: Line = ['2026-02-20', tank('A2'), { kind: 'measure stays', measure: 'air filter' }];
    expect(open([begin('2026-02-18', tank('A2'), 'air filter'), stays], '2026-02-21')).toEqual([]);
  });

  it('said again is the same measure', () => {
    const lines = [begin('2026-02-14', tank('A1'), 'rocks out'), begin('2026-02-15', tank('A1'), 'rocks out')];
    const rigs = openRigs(roomOn('2026-02-16', [...SET_UP, ...lines]));
    expect(rigs).toHaveLength(1);
    expect(rigs[0]?.day).toBe(day('2026-02-14'));
    expect(rigs[0]?.again).toHaveLength(1);
  });

  it('`everything undone` closes all of that tank and nothing of another', () => {
    const undone: Line = ['2026-02-20', tank('A2'), { kind: 'everything undone' }];
    const lines = [
      begin('2026-02-18', tank('A2'), 'off the loop'),
      begin('2026-02-18', tank('A2'), 'air filter'),
      begin('2026-02-18', tank('A2'), 'rocks out'),
      begin('2026-02-18', tank('A1'), 'lights off'),
      undone,
    ];
    expect(open(lines, '2026-02-20')).toEqual(['A1 lights off']);
    const seen = roomOn('2026-02-20', [...SET_UP, ...lines]);
    expect(seen.problems).toEqual([]);
    expect(seen.plumbing.tanks.get('A2')?.plumbed.at(-1)?.on).toBe('Long');
  });

  it('a pump that stood for more than six hours disturbs the filter, one that stood for one does not', () => {
    const disturbed = (lasts: number): number =>
      roomOn('2026-02-20', [...SET_UP, pump('2026-02-14', { lasts, over: true, minute: 480 })]).water.disturbed.length;
    expect(disturbed(60)).toBe(0);
    expect(disturbed(420)).toBe(1);
  });

  it('a level read while the pump is off says nothing about clogging', () => {
    const lines = [...SET_UP, pump('2026-02-14', { minute: 480 }), level('2026-02-14', 12)];
    expect(roomOn('2026-02-14', lines).plumbing.loops.get('Long')?.levels[0]?.pumpOff).toBe(true);
  });
});

describe('faults', () => {
  const fault = (on: string, text: string): Line => [on, tank('A2'), { kind: 'fault', text }];
  const fixed = (on: string, text: string | null): Line => [on, tank('A2'), { kind: 'fixed', text }];
  const stillOpen = (lines: readonly Line[]): string[] =>
    roomOn('2026-03-01', [...SET_UP, ...lines]).measures.faults.flatMap((one) =>
      one.fixed === null ? [one.text] : [],
    );

  it('are open until fixed', () => {
    expect(stillOpen([fault('2026-02-18', 'valve weeping')])).toEqual(['valve weeping']);
    expect(stillOpen([fault('2026-02-18', 'valve weeping'), fixed('2026-02-20', 'new seal')])).toEqual([]);
  });

  it('the one that `fixed` names is closed alone; unnamed, all are, with a doubt', () => {
    const two = [fault('2026-02-18', 'valve weeping'), fault('2026-02-19', 'glass chipped')];
    expect(stillOpen([...two, fixed('2026-02-20', 'Valve weeping')])).toEqual(['glass chipped']);
    const seen = roomOn('2026-03-01', [...SET_UP, ...two, fixed('2026-02-20', null)]);
    expect(seen.problems.map(({ kind }) => kind)).toEqual(['several-fixed']);
    expect(seen.problems[0]?.also).toHaveLength(2);
  });

  it('power away for more than six hours disturbs every filter', () => {
    const off = (minute: number): Line => ['2026-02-18', room, { kind: 'power off', lasts: null, minute }];
    const on = (minute: number): Line => ['2026-02-18', room, { kind: 'power on', minute }];
    expect(roomOn('2026-03-01', [...SET_UP, off(480), on(540)]).water.disturbed).toHaveLength(0);
    const [fact] = roomOn('2026-03-01', [...SET_UP, off(480), on(860)]).water.disturbed;
    expect(fact?.what).toBe('power lost');
    expect(fact?.tanks).toEqual(['A1', 'A2', 'B1', 'C1']);
  });

  it('of two untimed lines on one day nobody knows how long it was', () => {
    const lines: Line[] = [
      ['2026-02-18', room, { kind: 'power off', lasts: null }],
      ['2026-02-18', room, { kind: 'power on' }],
    ];
    expect(roomOn('2026-03-01', [...SET_UP, ...lines]).water.disturbed).toHaveLength(0);
  });
});
