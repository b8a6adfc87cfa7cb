/** Promises: their last day, their buyers, and never more than are surely there. */
import { describe, expect, test } from 'vitest';
import { promiseDue } from '../../src/questions/due/promise.ts';
import { promises } from '../../src/questions/promises.ts';
import { promisesJson, promisesText } from '../../src/reports/promises.ts';
import { plainLook } from '../../src/reports/look.ts';
import { BROOD, heads, keep, PAIR, reserve, sell, SETTINGS } from '../support/brood.ts';
import { day, room as whole, roomOn, tank } from '../support/events.ts';
import type { Line } from '../support/events.ts';
import { groupRef } from '../support/setup.ts';

const want = (count: number, by: string | null, size: number | null = null): Line => [
  '2026-04-01',
  whole,
  {
    kind: 'wanted',
    count: heads(count),
    species: 'krib',
    size: size === null ? null : { unit: 'mm', low: size, likely: size, high: size },
    by: by === null ? null : day(by),
    to: 'Otto',
  },
];

describe('reservations', () => {
  test('stand to their last day, then are shown as lapsed for a fortnight', () => {
    const lines = [...BROOD, reserve(6, '2026-04-20', 'Iris')];
    expect(promises(roomOn('2026-04-20', lines)).reserved).toMatchObject([
      { id: 'rowan-1-reserved-2026-04-02', stock: 'Rowan-1', lapsed: false, covered: true, to: 'Iris' },
    ]);
    expect(promises(roomOn('2026-04-21', lines)).reserved).toMatchObject([{ lapsed: true }]);
    expect(promises(roomOn('2026-05-10', lines)).reserved).toEqual([]);
  });

  test('part of it fetched: the rest stands', () => {
    const lines = [...BROOD, reserve(6, '2026-05-20', 'Iris'), sell('2026-04-10', 4, 'Iris')];
    expect(promises(roomOn('2026-04-20', lines)).reserved).toMatchObject([{ count: { low: 2, high: 2 } }]);
  });

  test('without a name on either side only an equal number meets it', () => {
    const lines = [...BROOD, reserve(6, '2026-05-20')];
    expect(promises(roomOn('2026-04-20', [...lines, sell('2026-04-10', 4)])).reserved).toMatchObject([
      { count: { low: 6 } },
    ]);
    expect(promises(roomOn('2026-04-20', [...lines, sell('2026-04-10', 6)])).reserved).toEqual([]);
  });

  test('two on one day have ids of their own', () => {
    const { reserved } = promises(roomOn('2026-04-20', [...BROOD, reserve(6, null, 'Iris'), reserve(6, null, 'Otto')]));
    expect(reserved.map(({ id }) => id)).toEqual(['rowan-1-reserved-2026-04-02', 'rowan-1-reserved-2026-04-02-2']);
  });

  test('more promised than surely there is said, and weighs', () => {
    const room = roomOn('2026-04-20', [...BROOD, keep(20), reserve(12, null, 'Iris')]);
    const { over, reserved } = promises(room);
    expect(over).toMatchObject([{ stock: 'Rowan-1', sure: 30, promised: 32 }]);
    expect(reserved).toMatchObject([{ covered: false }]);
    expect(over[0]?.lines.map(({ line }) => line)).toEqual([11, 12, 10]);
    expect(promiseDue(room, 7)[0]).toMatchObject({ weight: 2, place: 'Rowan-1' });
  });

  test('trap 18: two fish of a pair are a bonded pair only where the journal says so', () => {
    const both: Line = [
      '2026-02-01',
      tank('A1'),
      { kind: 'reserved', fish: groupRef('Rowan'), count: 'all', until: null, to: null, deposit: null },
    ];
    const bonded: Line = ['2026-01-20', tank('A1'), { kind: 'bonded', fish: groupRef('Rowan') }];
    expect(promises(roomOn('2026-02-02', [...SETTINGS, PAIR, both])).reserved).toMatchObject([
      { as: 'not known to be bonded' },
    ]);
    expect(promises(roomOn('2026-02-02', [...SETTINGS, PAIR, bonded, both])).reserved).toMatchObject([
      { as: 'bonded pair' },
    ]);
  });
});

describe('wants', () => {
  test('are matched with what is ready, or will be in time', () => {
    expect(promises(roomOn('2026-05-01', [...BROOD, want(20, '2026-06-01')])).wanted).toMatchObject([
      { species: 'krib', matches: [{ stock: 'Rowan-1', tank: 'C1', free: 30, ready: true }] },
    ]);
    expect(promises(roomOn('2026-04-02', [...BROOD, want(20, '2026-04-05')])).wanted).toMatchObject([{ matches: [] }]);
  });

  test('too small for the want: no match', () => {
    expect(promises(roomOn('2026-05-01', [...BROOD, want(20, null, 90)])).wanted).toMatchObject([{ matches: [] }]);
  });
});

describe('what is due', () => {
  test('on the last day: hand over or let go; for a week after it: fetched after all?', () => {
    const lines = [...BROOD, reserve(6, '2026-04-20', 'Iris')];
    expect(promiseDue(roomOn('2026-04-18', lines), 7)).toMatchObject([
      { what: 'hand over 6 Rowan-1, or let them go', due: { low: day('2026-04-20') }, weight: 1 },
    ]);
    expect(promiseDue(roomOn('2026-04-27', lines), 7)).toMatchObject([
      { what: '6 Rowan-1: fetched after all?', weight: 0 },
    ]);
    expect(promiseDue(roomOn('2026-04-28', lines), 7)).toEqual([]);
  });

  test('a want that can be met now', () => {
    expect(promiseDue(roomOn('2026-05-01', [...BROOD, want(40, '2026-06-01')]), 7)).toMatchObject([
      { place: 'C1', what: 'offer krib: 40 wanted', why: 'ready: 30 Rowan-1 in C1, not all of them', weight: 0 },
    ]);
  });
});

describe('names of buyers', () => {
  const room = roomOn('2026-05-01', [...BROOD, reserve(6, null, 'Iris'), want(20, null)]);

  test('stand in the text, and in no JSON or row of the daily list unless asked for', () => {
    const answer = promises(room);
    expect(promisesText(answer, plainLook(room.on))).toContain('Iris');
    expect(JSON.stringify(promisesJson(answer, false))).not.toMatch(/Iris|Otto/);
    expect(JSON.stringify(promisesJson(answer, true))).toMatch(/Iris.*Otto/);
    expect(JSON.stringify(promiseDue(room, 7))).not.toMatch(/Iris|Otto/);
  });
});

test('fish mixed into another stock take their promises with them, and stay "one or the other"', () => {
  const mix: Line[] = [
    [
      '2026-03-01',
      tank('C1'),
      { kind: 'bought', count: heads(10), species: 'krib', price: null, from: 'a friend', group: 'Ash' },
    ],
    ['2026-04-10', tank('C1'), { kind: 'mixed', a: { kind: 'brood', brood: 'Rowan-1' }, b: groupRef('Ash') }],
  ];
  const room = roomOn('2026-05-01', [...BROOD, reserve(6, null, 'Iris'), ...mix]);
  expect(promises(room)).toMatchObject({ over: [], reserved: [{ stock: 'Rowan-1 or Ash', covered: true }] });
});
