import { describe, expect, it } from 'vitest';
import { measure } from '../../src/core/quantity.ts';
import { water } from '../../src/questions/water.ts';
import { waterJson, waterText } from '../../src/reports/water.ts';
import { plainLook } from '../../src/reports/look.ts';
import { day, loop, room, roomOn, tank, type Line } from '../support/events.ts';
import { journalOn } from '../support/journal.ts';
import { begin, change, SET_UP, test } from '../support/waters.ts';
import type { Target } from '../../src/questions/target.ts';

const one = (place: string, lines: readonly Line[], target: Target | null = null) => {
  const rows = water(roomOn('2026-02-20', [...SET_UP, ...lines]), { place, target });
  const [row] = rows ?? [];
  if (row === undefined) throw new Error('no such water');
  return row;
};
const no3 = (on: string, value: number): Line => test(on, tank('C1'), { no3: measure('mg/L', value) });

describe('water', () => {
  it('is one row a loop and one a tank by itself, a valved-off tank among them', () => {
    const lines = [...SET_UP, begin('2026-02-18', tank('A2'), 'off the loop')];
    const rows = water(roomOn('2026-02-20', lines), { place: null, target: null });
    expect(rows?.map(({ name }) => name)).toEqual(['Long', 'A2', 'C1']);
  });

  it('a tank on the loop asks for the loop’s water; nobody’s water is no answer', () => {
    expect(one('A1', []).name).toBe('Long');
    expect(water(roomOn('2026-02-20', SET_UP), { place: 'Z9', target: null })).toBeNull();
  });

  it('the last reading of each thing stands, with its day', () => {
    const row = one('Long', [
      test('2026-02-01', loop('Long'), { ph: measure('pH', 7), kh: measure('dH', 6) }),
      test('2026-02-10', tank('A1'), { ph: measure('pH', 7.4) }),
    ]);
    expect(row.readings.map(({ words, on }) => [words, on])).toEqual([
      ['pH 7.4', day('2026-02-10')],
      ['KH 6 dH', day('2026-02-01')],
    ]);
  });

  it('toxic ammonia without pH or temperature is a range, and no answer says safe (trap 15)', () => {
    const row = one('C1', [test('2026-02-10', tank('C1'), { tan: measure('mg/L', 0.5) })]);
    expect(row.ammonia?.missing).toEqual(['pH', 'temperature']);
    expect(row.ammonia?.toxic.high).toBeGreaterThan(0.05);
    expect(row.ammonia?.toxic.low).toBeLessThan(0.001);
    const text = waterText([row], plainLook(day('2026-02-20')));
    expect(text.replace(/\s+/g, ' ')).toContain('pH and temperature not known');
    expect(text).not.toMatch(/\bsafe/i);
  });

  it('tells nitrogen as the kit does', () => {
    const ion: Line = ['2026-01-04', room, { kind: 'nitrogen set', as: 'ion' }];
    // 10 mg/L as N is 44.3 as the ion
    expect(one('C1', [ion, no3('2026-02-10', 10)]).readings[0]?.words).toBe('NO3 44.3 mg/L');
    expect(one('C1', [no3('2026-02-10', 10)]).readings[0]?.words).toBe('NO3 10 mg/L as N');
  });

  it('draws a trend through three readings over two weeks, and none through less', () => {
    const lines = [no3('2026-01-20', 4), no3('2026-02-03', 8)];
    expect(one('C1', lines).trends).toEqual([]);
    expect(one('C1', [...lines, no3('2026-02-17', 12)]).trends[0]?.words).toBe(
      'NO3 rises 2.0 a week (3 readings since 20 Jan)',
    );
  });

  it('credits a tank on air with no change of the loop (trap 16)', () => {
    const lines = [begin('2026-02-18', tank('A2'), 'off the loop'), change('2026-02-19', loop('Long'), 20)];
    expect(one('A2', lines).changes).toEqual([]);
    expect(one('Long', lines).changes).toHaveLength(1);
  });
});

describe('what reaches a target', () => {
  it('40 to 20 with 5 in the tap: 57 % once, or in parts of at most a half', () => {
    const row = one('C1', [no3('2026-02-10', 40)], { of: 'no3', value: 20, tap: 5 });
    // 1 − √((20 − 5) / (40 − 5)) = 0.3453 twice, for 0.5714 once (mass balance)
    expect(row.reach?.change?.times).toBe(2);
    expect(row.reach?.change?.share).toBeCloseTo(0.345346, 6);
    // of 54 L × 0.85 live water, not of 54 L
    expect(row.reach?.change?.litres?.likely).toBeCloseTo(45.9 * 0.345346, 3);
    expect(row.reach?.says).toContain('as many kg');
    expect(row.reach?.cautions.join(' ')).toContain('chloramine');
  });

  it('a target under what the tap has cannot be reached', () => {
    const row = one('C1', [no3('2026-02-10', 40)], { of: 'no3', value: 5, tap: 5 });
    expect(row.reach?.change).toBeNull();
    expect(row.reach?.says).toContain('no change');
  });

  it('counts in the kit’s own nitrogen', () => {
    const ion: Line = ['2026-01-04', room, { kind: 'nitrogen set', as: 'ion' }];
    const row = one('C1', [ion, no3('2026-02-10', 40 / 4.426644)], { of: 'no3', value: 20, tap: 0 });
    expect(row.reach?.change?.share).toBeCloseTo(0.5, 6);
  });

  it('raises KH by weight on the live litres, in days of two degrees, and warns of ammonia', () => {
    const kh = test('2026-02-10', tank('C1'), { kh: measure('dH', 3) });
    const reach = one('C1', [kh], { of: 'kh', value: 7, tap: null }).reach;
    // 4 dH × 45.9 L: 2.9961 g of NaHCO3 per 100 L and degree (IUPAC weights)
    expect(reach?.dose[0]?.grams.likely).toBeCloseTo((4 * 45.9 * 2.9961) / 100, 2);
    expect(reach?.dose[0]?.days).toBe(2);
    expect(reach?.cautions.join(' ')).toContain('TAN unknown: test first');
    const tan = test('2026-02-10', tank('C1'), { tan: measure('mg/L', 0.5), temperature: measure('C', 26) });
    expect(one('C1', [kh, tan], { of: 'kh', value: 7, tap: null }).reach?.cautions.join(' ')).toContain(
      'over the mark',
    );
  });

  it('says so where nothing was tested', () => {
    expect(one('C1', [], { of: 'no3', value: 20, tap: null }).reach?.says).toBe('no NO3 on record: test first');
  });

  it('is told in JSON', () => {
    const rows = [one('C1', [no3('2026-02-10', 40)], { of: 'no3', value: 20, tap: 5 })];
    expect(JSON.parse(JSON.stringify(waterJson(rows)))).toMatchObject({
      waters: [
        { id: 'c1-water', readings: [{ of: 'no3', value: 40, on: '2026-02-10' }], reach: { change: { times: 2 } } },
      ],
    });
  });
});

it('asks for no percent more than half where half is enough, whatever the kit counts', () => {
  const lines = '2026-01-02 room: nitrogen as ion\n2026-02-05 C1: test NO3 20\n';
  const [row] = water(journalOn('2026-02-06', lines), { place: 'C1', target: { of: 'no3', value: 10, tap: 0 } }) ?? [];
  expect(row?.reach?.says).toContain('not 50 % at once');
});
