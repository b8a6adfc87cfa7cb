import { describe, expect, it } from 'vitest';
import { measure } from '../../../src/core/quantity.ts';
import { loopsDue } from '../../../src/questions/due/loops.ts';
import { readingsDue } from '../../../src/questions/due/readings.ts';
import { silenceDue } from '../../../src/questions/due/silence.ts';
import { watchDue } from '../../../src/questions/due/watch.ts';
import { isOneSponge } from '../../../src/questions/watch.ts';
import { day, loop, room, roomOn, tank, type Line } from '../../support/events.ts';
import { bareTank, begin, cleaned, heads, level, SET_UP, test } from '../../support/waters.ts';

const krib: Line[] = [
  [
    '2026-01-04',
    room,
    {
      kind: 'species declared',
      species: 'krib',
      traits: {
        latin: 'Pelvicachromis taeniatus',
        guild: 'cave spawner',
        saleAt: null,
        price: null,
        siblingSafe: null,
        hardToCatch: null,
        spiny: null,
        adult: null,
        temperature: measure('C', 24, null, 27),
        ph: measure('pH', 6, null, 7.5),
        gh: null,
        regulated: null,
      },
    },
  ],
  colony('A2'),
];

function colony(where: string): Line {
  return [
    '2026-01-04',
    room,
    {
      kind: 'group declared',
      group: 'Ash',
      groupKind: 'group',
      species: 'krib',
      heads: heads(12),
      members: [],
      tank: where,
      age: null,
      size: null,
      line: null,
      from: null,
      price: null,
      parentsFrom: [],
    },
  ];
}

describe('toxic ammonia', () => {
  const rows = (lines: readonly Line[], on = '2026-02-12') => readingsDue(roomOn(on, [...SET_UP, ...lines]));
  const tan = measure('mg/L', 0.5);

  it('depends on pH and temperature: 0.5 mg/L is nothing at pH 7 and harms at 8.2 (trap 15)', () => {
    const at = (ph: number) =>
      rows([test('2026-02-10', tank('C1'), { tan, ph: measure('pH', ph), temperature: measure('C', 26) })]);
    expect(at(7)).toEqual([]);
    // UF/IFAS FA-16: 0.5 mg/L at pH 8.2 and 26 °C is 0.044 mg/L of NH3-N
    expect(at(8.2)[0]?.why).toContain('toxic ammonia 0.044 ');
    expect(at(8.2)[0]?.weight).toBe(2);
    expect(at(9)[0]?.weight).toBe(3);
  });

  it('without pH or temperature is a range, and asks for them first (trap 15)', () => {
    const [row] = rows([test('2026-02-10', tank('C1'), { tan })]);
    expect(row?.why).toContain('pH and temperature not known');
    expect(row?.what).toBe('test pH and temperature with the ammonia');
    expect(row?.weight).toBe(2);
    expect(JSON.stringify(row)).not.toMatch(/\bsafe\b/i);
  });

  it('asks for another test once water was changed, and is gone with a clear one', () => {
    const high = test('2026-02-10', tank('C1'), { tan, ph: measure('pH', 8.2), temperature: measure('C', 26) });
    const changed: Line = ['2026-02-11', tank('C1'), { kind: 'water changed', amount: measure('share', 0.5) }];
    expect(rows([high])[0]?.what).toBe('change water, then test again');
    expect(rows([high, changed])[0]?.what).toBe('test TAN again');
    expect(rows([high, changed, test('2026-02-12', tank('C1'), { tan: measure('mg/L', 0) })])).toEqual([]);
  });
});

describe('readings out of what the fish are kept in', () => {
  const rows = (lines: readonly Line[]) => readingsDue(roomOn('2026-02-12', [...SET_UP, ...krib, ...lines]));

  it('names the species and its water', () => {
    const [row] = rows([test('2026-02-10', tank('A2'), { temperature: measure('C', 21) })]);
    expect(row?.why).toBe('21 C on 10 Feb; krib kept at 24–27 C');
    expect(row?.what).toBe('warm it slowly and read again');
  });

  it('a loop’s pH holds for the tanks on it, and not for one that is off it', () => {
    const acid = test('2026-02-10', loop('Long'), { ph: measure('pH', 5.5) });
    expect(rows([acid]).map(({ id }) => id)).toEqual(['long-ph']);
    expect(rows([begin('2026-02-01', tank('A2'), 'off the loop'), acid])).toEqual([]);
  });

  it('a reading that may be inside is not told', () => {
    expect(rows([test('2026-02-10', tank('A2'), { ph: measure('pH', 7.4, null, 7.8) })])).toEqual([]);
  });

  it('the later-filed reading of a day stands', () => {
    const twice = [
      test('2026-02-10', tank('A2'), { temperature: measure('C', 21), ph: measure('pH', 7) }),
      test('2026-02-10', tank('A2'), { temperature: measure('C', 25) }),
    ];
    expect(rows(twice)).toEqual([]);
    const seen = roomOn('2026-02-12', [...SET_UP, ...twice]);
    expect(seen.water.readings.map(({ reading }) => reading.ph?.likely ?? null)).toEqual([7, null]);
  });
});

describe('the water watch', () => {
  const zero = (on: string, where = loop('Long')): Line =>
    test(on, where, { tan: measure('mg/L', 0), no2: measure('mg/L', 0) });
  const media: Line = ['2026-02-01', loop('Long'), { kind: 'media cleaned' }];
  const watch = (on: string, lines: readonly Line[]) => watchDue(roomOn(on, [...SET_UP, ...lines]));

  it('asks every day until three double zeros, two weeks at least', () => {
    const [row] = watch('2026-02-03', [media, zero('2026-02-02')]);
    expect(row?.id).toBe('long-water-watch');
    expect(row?.due.likely).toBe(day('2026-02-03'));
    expect(row?.why).toContain('day 2 of at least 14, 1 of 3 double zeros');
    const three = ['2026-02-02', '2026-02-03', '2026-02-04'].map((on) => zero(on));
    expect(watch('2026-02-10', [media, ...three])).toHaveLength(1);
    expect(watch('2026-02-15', [media, ...three])).toEqual([]);
    expect(watch('2026-02-20', [media, zero('2026-02-19'), zero('2026-02-20')])).toHaveLength(1);
  });

  it('asks for a year at most, whatever was tested', () => {
    expect(watch('2027-02-01', [media])).toHaveLength(1);
    expect(watch('2027-02-02', [media])).toEqual([]);
    const again: Line = ['2026-09-01', loop('Long'), { kind: 'media cleaned' }];
    expect(watch('2027-02-02', [media, again])[0]?.why).toContain('media cleaned on 1 Sep 2026');
  });

  it('a test that shows some begins the count anew', () => {
    const some = test('2026-02-17', loop('Long'), { tan: measure('mg/L', 0.25), no2: measure('mg/L', 0) });
    const lines = [media, zero('2026-02-14'), zero('2026-02-15'), zero('2026-02-16'), some];
    expect(watch('2026-02-18', lines)[0]?.why).toContain('0 of 3 double zeros');
  });

  it('a rinsed sponge starts it only where it is all the filter there is', () => {
    const rinsed = (where: string): Line => ['2026-02-01', tank(where), { kind: 'sponge rinsed' }];
    expect(watch('2026-02-02', [rinsed('C1')]).map(({ id }) => id)).toEqual(['c1-water-watch']);
    expect(watch('2026-02-02', [rinsed('A1')])).toEqual([]);
    const two: Line = ['2026-01-05', tank('C1'), { ...bareTank('C1'), filter: '2 sponge filters' }];
    expect(watch('2026-02-02', [two, rinsed('C1')])).toEqual([]);
    expect(watch('2026-02-02', [cleaned('2026-02-01', 6)])).toEqual([]);
  });

  it('reads words for one sponge and for more', () => {
    expect(['sponge filter', 'air-driven sponge'].map(isOneSponge)).toEqual([true, true]);
    expect(['2 sponge filters', 'twin sponge', 'sponge and canister', 'canister'].map(isOneSponge)).toEqual([
      false,
      false,
      false,
      false,
    ]);
  });

  it('a tank with fish off the loop on a fresh air filter is watched (trap 20)', () => {
    const off = [begin('2026-02-18', tank('A2'), 'off the loop'), begin('2026-02-18', tank('A2'), 'air filter')];
    expect(watch('2026-02-19', off)).toEqual([]);
    expect(watch('2026-02-19', [...krib, ...off]).map(({ id }) => id)).toEqual(['a2-water-watch']);
  });

  it('power away for hours watches all waters in one row, until they part', () => {
    const cut: Line = ['2026-02-01', room, { kind: 'power off', lasts: measure('minutes', 500) }];
    const [row, other] = watch('2026-02-02', [cut]);
    expect(other).toBeUndefined();
    expect(row?.what).toBe('test ammonia and nitrite in Long and C1');
    expect(watch('2026-02-02', [cut, zero('2026-02-02')])).toHaveLength(2);
  });

  it('offers one line that closes all of a joined row: beside a tank, a tank on the loop speaks for the loop', () => {
    const cut: Line = ['2026-02-01', room, { kind: 'power off', lasts: measure('minutes', 500) }];
    const [row] = watch('2026-02-02', [cut]);
    expect(row?.close).toBe('A1 and C1: test pH …, TAN …, NO2 …, … C');
    expect(row?.why).toContain('A1 speaks for Long, a line each where they read differently');
    const jotted = watch('2026-02-02', [cut, zero('2026-02-02', tank('A1')), zero('2026-02-02', tank('C1'))]);
    expect(jotted.map(({ due, why }) => [due.likely, why.includes('1 of 3 double zeros')])).toEqual([
      [day('2026-02-03'), true],
    ]);
    const alone = watch('2026-02-02', [['2026-02-01', tank('C1'), { kind: 'sponge rinsed' }]])[0];
    expect(alone?.close).toBe('C1: test pH …, TAN …, NO2 …, … C');
    expect(alone?.why).not.toContain('a line each');
  });

  it('leaves a loop that no tank is on a row of its own', () => {
    const declared = SET_UP[0]?.[2];
    if (declared?.kind !== 'loop declared') throw new Error('no loop first');
    const short: Line = ['2026-01-04', loop('Short'), { ...declared, loop: 'Short' }];
    const cut: Line = ['2026-02-01', room, { kind: 'power off', lasts: measure('minutes', 500) }];
    const rows = watch('2026-02-02', [short, cut]);
    expect(rows.map(({ close }) => close)).toEqual([
      'A1 and C1: test pH …, TAN …, NO2 …, … C',
      'Short: test pH …, TAN …, NO2 …, … C',
    ]);
    expect(new Set(rows.map(({ id }) => id)).size).toBe(2);
    const settled = [zero('2026-02-02', tank('C1')), zero('2026-02-02')];
    const parted = watch('2026-02-02', [short, cut, ...settled]);
    expect(parted.map(({ what }) => what)).toEqual([
      'test ammonia and nitrite in Long and C1',
      'test ammonia and nitrite',
    ]);
  });
});

describe('silence', () => {
  const silent = (on: string, lines: readonly Line[]) => silenceDue(roomOn(on, [...SET_UP, ...lines]));

  it('is one row for all tanks, ended by `all well`', () => {
    const [row, other] = silent('2026-01-20', [['2026-01-18', tank('A1'), { kind: 'note', text: 'dug again' }]]);
    expect(other).toBeUndefined();
    expect(row?.what).toBe('look at A2, B1 and C1');
    expect(row?.close).toBe('room: all well');
    expect(silent('2026-01-20', [['2026-01-19', room, { kind: 'all well' }]])).toEqual([]);
    expect(silent('2026-01-27', [['2026-01-19', room, { kind: 'all well' }]])).toHaveLength(1);
  });

  it('a loop’s line looks at pipes, not at fish', () => {
    expect(silent('2026-01-20', [level('2026-01-19', 30)])[0]?.what).toBe('look at A1, A2, B1 and C1');
    expect(silent('2026-01-20', [['2026-01-19', loop('Long'), { kind: 'all well' }]])[0]?.what).toBe('look at C1');
  });

  it('a line that cannot count is no word about its tank', () => {
    expect(silent('2026-01-20', [begin('2026-01-19', tank('C1'), 'off the loop')])[0]?.what).toContain('C1');
  });
});

describe('the loop’s own pipes', () => {
  const rows = (on: string, lines: readonly Line[]) => loopsDue(roomOn(on, [...SET_UP, ...lines]));

  it('a level that falls without a clean means less flow (trap 17)', () => {
    const lines = [cleaned('2026-01-11', 6), level('2026-01-25', 28), level('2026-02-04', 42), level('2026-02-10', 30)];
    const [row] = rows('2026-02-11', lines);
    expect(row?.id).toBe('long-flow-fell');
    expect(row?.what).toContain('check pump or drain');
    expect(rows('2026-02-11', [...lines.slice(0, 3), cleaned('2026-02-09', 6), level('2026-02-10', 30)])).toEqual([]);
  });

  it('a backdated level moves the forecast (trap 20)', () => {
    const lines = [cleaned('2026-01-11', 6), level('2026-01-11', 20), level('2026-02-04', 42), level('2026-02-10', 62)];
    const [row] = rows('2026-02-11', lines);
    const [moved] = rows('2026-02-11', [...lines, level('2026-02-08', 58)]);
    expect(row?.id).toBe('long-spill');
    expect(row?.why).toContain('spills at 80 mm about 15–23 Feb');
    expect(moved?.why).toContain('spills at 80 mm about 15–19 Feb');
  });
});
