import { describe, expect, test } from 'vitest';
import { measure } from '../../src/core/quantity.ts';
import { day, roomOn, tank } from '../support/events.ts';
import type { Line } from '../support/events.ts';
import type { Subject } from '../../src/journal/subject.ts';
import { loopLine, rigLine, tankLine } from '../support/setup.ts';

const Q1 = tank('Q1');
const A1 = tank('A1');
const declared = (name: string): Line => [
  '2026-01-01',
  tank(name),
  {
    kind: 'tank declared',
    tank: name,
    size: null,
    nominal: measure('L', 54),
    live: null,
    plumbing: 'alone',
    filter: null,
    quarantine: null,
    inTank: null,
    heated: null,
    hides: null,
  },
];
const dose = measure('g/L', 2);
const treat = (on: string, doses: number | null = 3): Line => [
  on,
  Q1,
  { kind: 'treated', product: 'salt', dose, every: measure('days', 1), doses, wait: null },
];

describe('sick', () => {
  test('waits for an answer, and the answer counts', () => {
    const lines: Line[] = [
      declared('A1'),
      ['2026-03-01', A1, { kind: 'sick', text: 'white spot', catching: null }],
      ['2026-03-02', A1, { kind: 'catching', catching: true }],
    ];
    expect(roomOn('2026-03-01', lines).health.sick[0]).toMatchObject({ catching: null, answered: null });
    expect(roomOn('2026-03-02', lines).health.sick[0]).toMatchObject({ catching: true, answered: { line: 3 } });
  });

  test('a second answer corrects the first, and an answer to nothing is left out', () => {
    const room = roomOn('2026-03-05', [
      declared('A1'),
      ['2026-03-01', A1, { kind: 'sick', text: 'white spot', catching: true }],
      ['2026-03-02', A1, { kind: 'catching', catching: false }],
      ['2026-03-02', Q1, { kind: 'catching', catching: false }],
    ]);
    expect(room.health.sick[0]?.catching).toBe(false);
    expect(room.problems).toMatchObject([{ kind: 'nothing-sick', weight: 'stops', at: { line: 4 } }]);
  });
});

describe('treat', () => {
  test('the line itself is the first dose, later lines of the product the next ones', () => {
    const room = roomOn('2026-03-09', [declared('Q1'), treat('2026-03-01'), treat('2026-03-02'), treat('2026-03-03')]);
    expect(room.health.treatments).toHaveLength(1);
    expect(room.health.treatments[0]?.given.map((one) => one.day)).toEqual(
      ['2026-03-01', '2026-03-02', '2026-03-03'].map(day),
    );
  });

  test('a course that is complete or long past is not gone on with', () => {
    const complete = [declared('Q1'), treat('2026-03-01', 1), treat('2026-03-02', 1)];
    expect(roomOn('2026-03-09', complete).health.treatments).toHaveLength(2);
    const past = [declared('Q1'), treat('2026-03-01', null), treat('2026-04-01', null)];
    expect(roomOn('2026-04-09', past).health.treatments).toHaveLength(2);
  });
});

describe('hold', () => {
  test('lasts from its line to `hold over`', () => {
    const lines: Line[] = [
      declared('A1'),
      ['2026-03-01', A1, { kind: 'hold begun', text: 'velvet' }],
      ['2026-03-04', A1, { kind: 'hold begun', text: 'Velvet' }],
      ['2026-04-10', A1, { kind: 'hold over' }],
      ['2026-04-11', A1, { kind: 'hold over' }],
    ];
    expect(roomOn('2026-04-09', lines).health.holds).toMatchObject([{ over: null, again: [{ place: { line: 3 } }] }]);
    const after = roomOn('2026-04-11', lines);
    expect(after.health.holds).toMatchObject([{ over: { place: { line: 4 } } }]);
    expect(after.problems).toMatchObject([{ kind: 'nothing-to-end', weight: 'doubt', at: { line: 5 } }]);
  });
});

describe('quarantine', () => {
  test('runs its days, or to `quarantine over`', () => {
    const lines: Line[] = [
      declared('Q1'),
      ['2026-03-01', Q1, { kind: 'quarantine begun', lasts: measure('days', 28) }],
      ['2026-03-20', Q1, { kind: 'quarantine over' }],
    ];
    expect(roomOn('2026-03-10', lines).health.quarantines).toMatchObject([{ until: day('2026-03-29'), ended: null }]);
    expect(roomOn('2026-03-20', lines).health.quarantines).toMatchObject([{ ended: { day: day('2026-03-20') } }]);
    expect(roomOn('2026-03-20', lines).problems).toEqual([]);
  });
});

test('`hold over` under the loop ends a loop’s hold, whoever is off it by then', () => {
  const long: Subject = { kind: 'loop', loop: 'Long' };
  const room = roomOn('2026-05-01', [
    loopLine('2026-01-01', 'Long'),
    tankLine('2026-01-01', 'A1', 'Long'),
    tankLine('2026-01-01', 'A2', 'Long'),
    ['2026-03-01', A1, { kind: 'sick', text: 'velvet', catching: true }],
    ['2026-03-01', long, { kind: 'hold begun', text: 'velvet' }],
    rigLine('2026-03-10', 'A1', 'off the loop'),
    ['2026-04-10', long, { kind: 'hold over' }],
  ]);
  expect(room.health.holds).toMatchObject([{ over: { place: { line: 7 } } }]);
  expect(room.health.sick).toMatchObject([{ over: { place: { line: 7 } } }]);
});
