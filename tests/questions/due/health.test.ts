/** Rows about sickness, holds, treatments and quarantine. */
import { describe, expect, test } from 'vitest';
import { measure } from '../../../src/core/quantity.ts';
import { healthDue } from '../../../src/questions/due/health.ts';
import { quarantineDue } from '../../../src/questions/due/quarantine.ts';
import { treatmentDue } from '../../../src/questions/due/treatment.ts';
import { day, roomOn, tank } from '../../support/events.ts';
import type { Line } from '../../support/events.ts';
import { journalOn } from '../../support/journal.ts';
import { loopLine, tankLine } from '../../support/setup.ts';
import { rowOf } from './rows.ts';

const ROOM: Line[] = [
  loopLine('2026-01-01', 'Long'),
  tankLine('2026-01-01', 'A1', 'Long'),
  tankLine('2026-01-01', 'A2', 'Long'),
  tankLine('2026-01-01', 'Q1', null, true),
];

describe('sick', () => {
  const sick = (catching: boolean | null): Line => [
    '2026-03-01',
    tank('A1'),
    { kind: 'sick', text: 'white spot', catching },
  ];

  test('asks whether it is catching until a line says so', () => {
    const [row] = healthDue(roomOn('2026-03-03', [...ROOM, sick(null)]), 7);
    expect(row).toMatchObject({ id: 'a1-sick-white-spot', place: 'A1', what: 'say whether it is catching', weight: 2 });
    expect(row?.close).toMatch(/^A1: catching/);
    expect(row?.why).toContain('1 tank on the same water');
    expect(healthDue(roomOn('2026-03-03', [...ROOM, sick(false)]), 7)).toEqual([]);
  });

  test('catching and not held: asks for the hold; held: looks forward to its end', () => {
    expect(healthDue(roomOn('2026-03-03', [...ROOM, sick(true)]), 7)).toMatchObject([
      { what: 'put it on hold', close: 'A1: hold "white spot"' },
    ]);
    const hold: Line = ['2026-03-02', tank('A1'), { kind: 'hold begun', text: 'white spot' }];
    const rows = healthDue(roomOn('2026-03-03', [...ROOM, sick(true), hold]), 7);
    expect(rows).toMatchObject([{ id: 'a1-hold-white-spot', due: { low: day('2026-03-30') }, close: 'A1: hold over' }]);
    expect(rows[0]?.what).toContain('A1 and A2');
  });
});

describe('what a keeper reads', () => {
  const SICK = '2026-02-01 A1: sick "white spot"\n';

  test('of a sickness: since when, what follows, whose water it shares, and both lines that would answer', () => {
    const row = rowOf(healthDue, '2026-02-05', SICK);
    expect(row.caution).toContain('a veterinarian says');
    expect(row).toMatchObject({
      id: 'a1-sick-white-spot',
      due: '2026-02-01',
      why: 'white spot, seen 1 Feb: not for sale until you say; 2 tanks on the same water; or jot A1: not catching',
      close: 'A1: catching',
      key: null,
      pressing: false,
      lines: [1],
    });
    expect(rowOf(healthDue, '2026-02-05', SICK.replace('A1', 'C1')).why).toBe(
      'white spot, seen 1 Feb: not for sale until you say; or jot C1: not catching',
    );
  });

  test('of one that is catching: no hold is written', () => {
    expect(rowOf(healthDue, '2026-02-05', SICK.replace('"\n', '", catching\n'))).toMatchObject({
      what: 'put it on hold',
      why: 'white spot, seen 1 Feb: catching, and no hold is written; 2 tanks on the same water',
      close: 'A1: hold "white spot"',
    });
  });

  test('of two that are catching in one tank: one hold is asked for, by the last', () => {
    const two = '2026-02-01 A1: sick "clamped fins", catching\n2026-02-03 A1: sick "velvet", catching\n';
    const closes = (lines: string): string[] => healthDue(journalOn('2026-02-05', lines), 7).map(({ close }) => close);
    expect(closes(two)).toEqual(['A1: hold "velvet"']);
    expect(closes(`${two}2026-02-05 A1: hold "velvet"\n`)).toEqual(['A1: hold over']);
    expect(closes(two.replace('03 A1', '03 C1'))).toEqual(['A1: hold "clamped fins"', 'C1: hold "velvet"']);
  });

  test('of two holds in one tank: one line ends both, and is asked for when the last is clear', () => {
    const closes = (lines: string): string[] =>
      healthDue(journalOn('2026-02-10', lines), 7).map(({ id, close }) => `${id} ${close}`);
    const two = '2026-02-01 C1: hold "clamped fins"\n2026-02-03 C1: hold "velvet"\n';
    expect(closes(two)).toEqual(['c1-hold-velvet C1: hold over']);
    expect(closes(two.replace('02-03', '02-01'))).toEqual(['c1-hold-clamped-fins C1: hold over']);
    expect(closes(two.replace('03 C1', '03 C2'))).toHaveLength(2);
    expect(closes(`${two}2026-02-09 C1: hold over\n`)).toEqual([]);
  });

  test('a hold ends no question: whether it is catching is still to be said', () => {
    const rows = healthDue(journalOn('2026-02-05', `${SICK}2026-02-02 A1: hold "white spot"\n`), 7);
    expect(rows.map(({ what }) => what)).toEqual([
      'say whether it is catching',
      'look over every fish in A1, A2 and B1, then end the hold',
    ]);
    expect(rows[1]).toMatchObject({ putOffKey: 'hold', pressing: false, weight: 1 });
    expect(rows[1]?.why).toBe('white spot: no sign since 2 Feb; a new one starts the 28 days again');
  });

  test('up to four tanks of a hold are named, more are counted', () => {
    const what = (tanks: string): string =>
      rowOf(healthDue, '2026-02-05', `${tanks}2026-02-02 A1: hold "velvet"\n`).what;
    const four = '2026-01-01 tank D1: 60 L; on Long\n';
    expect(what(four)).toBe('look over every fish in A1, A2, B1 and D1, then end the hold');
    expect(what(`${four}2026-01-01 tank D2: 60 L; on Long\n`)).toBe(
      'look over every fish in 5 tanks, then end the hold',
    );
  });
});

describe('treatment', () => {
  const treat = (on: string, where = 'Q1', doses: number | null = 3): Line => [
    on,
    tank(where),
    { kind: 'treated', product: 'salt', dose: measure('g/L', 2), every: measure('days', 1), doses, wait: null },
  ];

  test('the next dose by the label, with the water changed since and never a mass', () => {
    const change: Line = ['2026-03-02', tank('Q1'), { kind: 'water changed', amount: measure('share', 0.3) }];
    const [dose] = treatmentDue(roomOn('2026-03-02', [...ROOM, treat('2026-03-01'), change]), 7);
    expect(dose).toMatchObject({
      what: 'dose 2 of salt, by your label',
      due: { low: day('2026-03-02') },
      close: 'Q1: treat "salt"',
    });
    expect(dose?.why).toBe('dose 1 of 3 was on 1 Mar; water changed since: 30 % on 2 Mar');
    expect(JSON.stringify(dose)).not.toMatch(/\d ?g\b|g\/L/);
  });

  test('`dosed` lines of the product count', () => {
    const dosed: Line = ['2026-03-02', tank('Q1'), { kind: 'dosed', dose: measure('g', 108), product: 'Salt' }];
    const rows = treatmentDue(roomOn('2026-03-03', [...ROOM, treat('2026-03-01'), dosed]), 7);
    expect(rows[0]).toMatchObject({ what: 'dose 3 of salt, by your label', due: { low: day('2026-03-03') } });
  });

  test('all doses given: only the clearance is left, fourteen days from the last', () => {
    const course = [treat('2026-03-01'), treat('2026-03-02'), treat('2026-03-03')];
    expect(treatmentDue(roomOn('2026-03-04', [...ROOM, ...course]), 7)).toMatchObject([
      { id: 'q1-treatment-salt', what: 'clear of salt', due: { low: day('2026-03-17') } },
    ]);
    expect(treatmentDue(roomOn('2026-03-18', [...ROOM, ...course]), 7)).toEqual([]);
  });

  test('on a loop the caution names how many tanks are treated with it', () => {
    const [dose] = treatmentDue(roomOn('2026-03-02', [...ROOM, treat('2026-03-01', 'A1')]), 7);
    expect(dose?.caution).toContain('shares water and filter with 1 tank');
    expect(dose?.caution).toContain('not for eating');
  });

  test('a dose that nobody wrote for a week is no longer asked for', () => {
    const rows = treatmentDue(roomOn('2026-03-11', [...ROOM, treat('2026-03-01')]), 7);
    expect(rows.map(({ id }) => id)).toEqual(['q1-treatment-salt']);
  });
});

describe('quarantine', () => {
  const bought: Line = [
    '2026-03-01',
    tank('Q1'),
    {
      kind: 'bought',
      count: { total: { low: 6, likely: 6, high: 6 }, males: null, females: null, young: null, as: 'counted' },
      species: 'krib',
      price: null,
      from: null,
      group: null,
    },
  ];
  const quarantine: Line = ['2026-03-01', tank('Q1'), { kind: 'quarantine begun', lasts: measure('days', 21) }];

  test('ends by its line, or four weeks after the last fish came into a quarantine tank', () => {
    expect(quarantineDue(roomOn('2026-03-05', [...ROOM, bought, quarantine]), 7)).toMatchObject([
      { due: { low: day('2026-03-22') } },
    ]);
    expect(quarantineDue(roomOn('2026-03-05', [...ROOM, bought]), 7)).toMatchObject([
      { due: { low: day('2026-03-29') }, close: 'Q1: quarantine over' },
    ]);
    expect(quarantineDue(roomOn('2026-03-05', ROOM), 7)).toEqual([]);
  });

  test('is asked for until a line ends it', () => {
    const over: Line = ['2026-03-30', tank('Q1'), { kind: 'quarantine over' }];
    expect(quarantineDue(roomOn('2026-04-05', [...ROOM, bought]), 7)).toHaveLength(1);
    expect(quarantineDue(roomOn('2026-04-05', [...ROOM, bought, over]), 7)).toEqual([]);
  });
});
