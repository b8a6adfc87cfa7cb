import { describe, expect, test } from 'vitest';
import type { DayWindow } from '../../src/core/interval.ts';
import type { DueItem } from '../../src/questions/due/item.ts';
import { fitMinutes } from '../../src/questions/due/minutes.ts';
import { dueState } from '../../src/questions/due/order.ts';
import type { DueOptions } from '../../src/questions/due.ts';
import { due } from '../../src/questions/due.ts';
import type { Line } from '../support/events.ts';
import { day, room, roomOn, tank } from '../support/events.ts';

const TODAY = '2026-02-15';

function window(low: string | null, high: string | null = low): DayWindow {
  return { low: low === null ? null : day(low), likely: null, high: high === null ? null : day(high) };
}

function item(id: string, place: string, rest: Partial<DueItem> = {}): DueItem {
  return {
    id,
    place,
    what: 'water change',
    kind: 'chore',
    due: window(TODAY),
    weight: 1,
    why: '',
    close: '',
    putOffKey: 'water change',
    pressing: false,
    minutes: null,
    because: { rule: '', source: '', steps: [], lines: [] },
    lines: [],
    ...rest,
  };
}

const ROOM: readonly Line[] = [
  ...['A1', 'A2', 'B1', 'Q1'].map((name): Line => [
    '2026-01-04',
    tank(name),
    {
      kind: 'tank declared',
      tank: name,
      size: null,
      nominal: null,
      live: null,
      plumbing: 'alone',
      filter: null,
      quarantine: null,
      inTank: null,
      heated: null,
      hides: null,
    },
  ]),
  ['2026-01-04', room, { kind: 'walk set', tanks: ['B1', 'Q1', 'A2', 'A1'] }],
];

function ask(items: readonly DueItem[], lines: readonly Line[] = [], options: Partial<DueOptions> = {}) {
  return due(roomOn(TODAY, [...ROOM, ...lines]), { days: 7, minutes: null, ...options }, [() => items]);
}

const ids = (rows: readonly { readonly id: string }[]): readonly string[] => rows.map(({ id }) => id);

test('a row is late after its window, ahead before it, and today inside it', () => {
  const on = day(TODAY);
  expect(dueState({ due: window('2026-02-10', '2026-02-14') }, on)).toBe('late');
  expect(dueState({ due: window('2026-02-10', '2026-02-15') }, on)).toBe('today');
  expect(dueState({ due: window('2026-02-15', '2026-02-20') }, on)).toBe('today');
  expect(dueState({ due: window('2026-02-16', '2026-02-20') }, on)).toBe('ahead');
  expect(dueState({ due: window(null, '2026-02-20') }, on)).toBe('today');
  expect(dueState({ due: window(null, '2026-02-14') }, on)).toBe('late');
  expect(dueState({ due: window('2026-02-10', null) }, on)).toBe('today');
  expect(dueState({ due: window('2026-02-16', null) }, on)).toBe('ahead');
  expect(dueState({ due: window(null) }, on)).toBe('today');
});

describe('the order', () => {
  test('is life at risk, then heavier things, then the walk, then what is ahead', () => {
    const rows = ask([
      item('a1-ahead', 'A1', { due: window('2026-02-17'), weight: 2 }),
      item('a1-plain', 'A1'),
      item('b1-plain', 'B1'),
      item('a2-heavy', 'A2', { weight: 2 }),
      item('a1-now', 'A1', { weight: 3 }),
      item('room-plain', 'room'),
    ]);
    expect(ids(rows.rows)).toEqual(['a1-now', 'a2-heavy', 'room-plain', 'b1-plain', 'a1-plain', 'a1-ahead']);
  });

  test('goes to held, sick and quarantine tanks last, unless a life is at risk there', () => {
    const lines: readonly Line[] = [
      ['2026-02-10', tank('Q1'), { kind: 'quarantine begun', lasts: { unit: 'days', low: 28, likely: 28, high: 28 } }],
      ['2026-02-12', tank('B1'), { kind: 'hold begun', text: 'velvet' }],
      ['2026-02-12', tank('A2'), { kind: 'sick', text: 'white spot', catching: true }],
    ];
    const items = [
      item('b1-heavy', 'B1', { weight: 2 }),
      item('q1-plain', 'Q1'),
      item('a2-plain', 'A2'),
      item('a1-light', 'A1', { weight: 0 }),
    ];
    expect(ids(ask(items, lines).rows)).toEqual(['a1-light', 'b1-heavy', 'q1-plain', 'a2-plain']);
    expect(ids(ask([...items, item('q1-now', 'Q1', { weight: 3 })], lines).rows)[0]).toBe('q1-now');
  });

  test('is by day for what is ahead', () => {
    const ahead = (id: string, place: string, on: string): DueItem => item(id, place, { due: window(on), weight: 2 });
    const items = [ahead('b1', 'B1', '2026-02-18'), ahead('a1', 'A1', '2026-02-16'), ahead('a2', 'A2', '2026-02-18')];
    expect(ids(ask(items).rows)).toEqual(['a1', 'b1', 'a2']);
  });

  test('does not depend on the order of the themes', () => {
    const items = ['c', 'a', 'b'].map((id) => item(id, 'A1'));
    expect(ids(ask(items).rows)).toEqual(ids(ask([...items].reverse()).rows));
  });
});

test('looks ahead no further than it is told', () => {
  const items = [item('near', 'A1', { due: window('2026-02-22') }), item('far', 'A1', { due: window('2026-02-23') })];
  expect(ids(ask(items).rows)).toEqual(['near']);
  expect(ids(ask(items, [], { days: 8 }).rows)).toEqual(['near', 'far']);
});

describe('putting off', () => {
  const putOff = (on: string, until: string, what = 'Water change', place = 'A1'): Line => [
    on,
    tank(place),
    { kind: 'put off', what: { text: what }, until: day(until) },
  ];

  test('counts a row instead of showing it, until the day that was named', () => {
    const found = ask([item('a1-water-change', 'A1')], [putOff('2026-02-14', '2026-02-20')]);
    expect(ids(found.rows)).toEqual([]);
    expect(found.putOff).toEqual([
      { id: 'a1-water-change', place: 'A1', what: 'water change', until: day('2026-02-20') },
    ]);
    expect(ids(ask([item('a1-water-change', 'A1')], [putOff('2026-02-10', TODAY)]).rows)).toEqual(['a1-water-change']);
  });

  test('puts off that one thing in that one place', () => {
    const lines = [putOff('2026-02-14', '2026-02-20')];
    expect(ask([item('b1', 'B1'), item('a1-lights', 'A1', { putOffKey: 'lights off' })], lines).putOff).toEqual([]);
    expect(ask([item('a1', 'A1', { putOffKey: null })], lines).putOff).toEqual([]);
  });

  test('holds for a day at most where it presses', () => {
    const pressing = item('a1', 'A1', { pressing: true });
    expect(ids(ask([pressing], [putOff('2026-02-14', '2026-02-20')]).rows)).toEqual(['a1']);
    expect(ask([pressing], [putOff(TODAY, '2026-02-20')]).putOff[0]?.until).toBe(day('2026-02-16'));
  });
});

describe('being away', () => {
  const away = (on: string, until: string): Line => [on, room, { kind: 'away', until: day(until) }];

  test('lets everything wait but a life at risk, what presses, and what is given daily', () => {
    const kept = [item('a2-feed', 'A2', { daily: true }), item('long-spill', 'Long', { pressing: true })];
    const items = [item('a1', 'A1'), item('a2-now', 'A2', { weight: 3 }), ...kept];
    const found = ask(items, [away('2026-02-13', '2026-03-02')]);
    expect(new Set(ids(found.rows))).toEqual(new Set(['a2-now', 'a2-feed', 'long-spill']));
    expect(found.waiting.map(({ id, until }) => [id, until])).toEqual([['a1', day('2026-03-02')]]);
  });

  test('is over on the day that was named, and earlier where a later line says so', () => {
    expect(ask([item('a1', 'A1')], [away('2026-02-01', TODAY)]).waiting).toEqual([]);
    const cutShort = [away('2026-02-01', '2026-03-02'), away('2026-02-10', '2026-02-12')];
    expect(ask([item('a1', 'A1')], cutShort).waiting).toEqual([]);
  });
});

describe('so many minutes', () => {
  test('are spent on the heavier rows first, and what does not fit is told', () => {
    const rows = [
      { id: 'light', weight: 1, minutes: 10 },
      { id: 'unsaid', weight: 1, minutes: null },
      { id: 'heavy', weight: 2, minutes: 25 },
    ] as const;
    const fitted = fitMinutes(rows, 32);
    expect(ids(fitted.rows)).toEqual(['unsaid', 'heavy']);
    expect(ids(fitted.left)).toEqual(['light']);
    expect(fitted.minutes).toBe(30);
  });

  test('never leave out a life at risk', () => {
    const rows = [{ id: 'now', weight: 3, minutes: 60 }] as const;
    expect(ids(fitMinutes(rows, 10).rows)).toEqual(['now']);
  });

  test('are for what is due, not for what is ahead', () => {
    const items = [item('a1', 'A1', { minutes: 20 }), item('a2', 'A2', { due: window('2026-02-17') })];
    const found = ask(items, [], { minutes: 30 });
    expect(ids(found.rows)).toEqual(['a1']);
    expect(found.fitted).toEqual({ minutes: 20, of: 30, left: [] });
  });
});
