import { describe, expect, it } from 'vitest';
import { tanks } from '../../src/questions/tanks.ts';
import { tanksJson, tanksText } from '../../src/reports/tanks.ts';
import { plainLook } from '../../src/reports/look.ts';
import { day, roomOn, tank, type Line } from '../support/events.ts';
import { journalOn } from '../support/journal.ts';
import { bareTank, begin, heads, SET_UP } from '../support/waters.ts';

const colony: Line = [
  '2026-01-04',
  tank('B1'),
  {
    kind: 'group declared',
    group: 'Pebble',
    groupKind: 'colony',
    species: null,
    heads: heads(25),
    members: [],
    tank: 'B1',
    age: null,
    size: null,
    line: null,
    from: null,
    price: null,
    parentsFrom: [],
  },
];
const seen = (on: string, free: boolean, lines: readonly Line[] = []) =>
  tanks(roomOn(on, [...SET_UP, colony, ...lines]), { free });

describe('tanks', () => {
  it('walks the room and tells litres, who is there and what is rigged', () => {
    const { rows } = seen('2026-02-19', false, [begin('2026-02-18', tank('A2'), 'off the loop')]);
    expect(rows.map(({ name }) => name)).toEqual(['A1', 'A2', 'B1', 'C1']);
    expect(rows[1]).toMatchObject({ loop: 'Long', onLoop: false, rigs: [{ kind: 'off the loop' }] });
    expect(rows[2]?.fish).toEqual([{ name: 'Pebble', count: { low: 25, likely: 25, high: 25 } }]);
  });

  it('free: those without fish on record, not the home of a colony', () => {
    expect(seen('2026-02-19', true).rows.map(({ name, free }) => [name, free?.low])).toEqual([
      ['A1', day('2026-02-19')],
      ['A2', day('2026-02-19')],
      ['C1', day('2026-02-19')],
    ]);
  });

  it('of one day empty tanks come before those whose fish can all be sold', () => {
    const brood = `2026-01-02 species krib: cave spawner; sale at 10 weeks
2026-01-02 A1: spawned brood Rowan-1
2026-01-12 A1: free-swimming, 30
2026-02-10 A1: moved all Rowan-1 to C2
`;
    const { rows } = tanks(journalOn('2026-04-20', brood), { free: true });
    const names = rows.map(({ name }) => name);
    expect(rows.find(({ name }) => name === 'C2')?.freeWhy).toBe('once Rowan-1 are sold: all of them can be');
    expect(names.indexOf('12')).toBeGreaterThanOrEqual(0);
    expect(names.indexOf('12')).toBeLessThan(names.indexOf('C2'));
  });

  it('the tank that stands for the new water is none to move fish into', () => {
    const tap: Line = ['2026-01-05', tank('Tap'), { ...bareTank('Tap'), plumbing: 'alone' }];
    expect(seen('2026-02-19', false, [tap]).rows.map(({ name }) => name)).toContain('Tap');
    expect(seen('2026-02-19', true, [tap]).rows.map(({ name }) => name)).not.toContain('Tap');
  });

  it('an empty tank in quarantine comes free when that is over', () => {
    const quarantine: Line = [
      '2026-02-10',
      tank('C1'),
      { kind: 'quarantine begun', lasts: { unit: 'days', low: 28, likely: 28, high: 28 } },
    ];
    const row = seen('2026-02-19', true, [quarantine]).rows.find(({ name }) => name === 'C1');
    expect(row?.free?.low).toBe(day('2026-03-10'));
  });

  it('a tank that is kept for quarantine is told last, and never as free to grow young out', () => {
    const kept: Line = ['2026-01-05', tank('A1'), { ...bareTank('A1'), quarantine: true }];
    const answer = seen('2026-02-19', true, [kept]);
    expect(answer.rows.map(({ name }) => name)).toEqual(['A2', 'C1', 'A1']);
    expect(answer.rows[2]?.freeWhy).toBe('no fish on record there; kept for quarantine, not to grow young out');
    const text = tanksText(answer, plainLook(day('2026-02-19')));
    expect(text.split('\n').slice(0, 2).join(' ')).toContain('free now: A2 and C1; empty, but kept for quarantine: A1');
    expect(text).toMatch(/^A1 +quarantine /mu);
    const only = { rows: answer.rows.slice(2), free: true };
    expect(tanksText(only, plainLook(day('2026-02-19')))).toContain('no tank is free or coming free; empty, but kept');
  });

  it('a row shows whether the tank is kept for quarantine, in JSON too', () => {
    const kept: Line = ['2026-01-05', tank('B1'), { ...bareTank('B1'), quarantine: true }];
    const answer = seen('2026-02-19', false, [kept]);
    expect(tanksJson(answer)).toMatchObject({
      tanks: [{ keptForQuarantine: false }, {}, { keptForQuarantine: true }, {}],
    });
    // A colony lives there: nothing is said of coming free.
    expect(answer.rows[2]?.freeWhy).toBe('home of Pebble');
  });

  it('reads as text and JSON', () => {
    const answer = seen('2026-02-19', true);
    const text = tanksText(answer, plainLook(day('2026-02-19')));
    expect(text.split('\n')[0]).toBe('Thu 19 Feb 2026: free now: A1, A2 and C1');
    expect(JSON.parse(JSON.stringify(tanksJson(answer)))).toMatchObject({
      tanks: [{ id: 'a1', free: '2026-02-19', litres: { low: 128, likely: 136, high: 144 } }, {}, {}],
    });
  });
});
