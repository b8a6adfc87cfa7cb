import { parse } from 'csv-parse/sync';
import { describe, expect, test } from 'vitest';
import { cultures } from '../../src/questions/cultures.ts';
import { holds } from '../../src/questions/holds.ts';
import { sale } from '../../src/questions/sale.ts';
import { culturesText } from '../../src/reports/cultures.ts';
import { holdsJson, holdsText } from '../../src/reports/holds.ts';
import { plainLook } from '../../src/reports/look.ts';
import { saleText } from '../../src/reports/sale.ts';
import { saleCsv, saleJson } from '../../src/reports/sale-data.ts';
import type { Room } from '../../src/state/draft.ts';
import { BROOD, counted, heads, keep, moved, reserve, sell } from '../support/brood.ts';
import { day, room as whole, roomOn, tank } from '../support/events.ts';
import type { Line } from '../support/events.ts';
import { rigLine } from '../support/setup.ts';

const want: Line = [
  '2026-04-25',
  whole,
  { kind: 'wanted', count: heads(20), species: 'krib', size: null, by: day('2026-06-01'), to: 'Otto' },
];
const ask = (room: Room): ReturnType<typeof sale> => sale(room, { ahead: 0, auction: null, projected: false });

describe('sale', () => {
  const room = roomOn('2026-05-01', [
    ...BROOD,
    counted('2026-04-28', 30),
    keep(8),
    reserve(6, '2026-05-20', 'Iris'),
    want,
  ]);

  test('ready stock reads in a line, from the number to promise to who asked', () => {
    expect(saleText(ask(room), plainLook(room.on)).split('\n')).toEqual([
      'Fri 1 May 2026: 16 fish in 1 lot can be promised',
      '',
      expect.stringMatching(/^ready +where +fish +mm +each +and$/),
      expect.stringMatching(/^Rowan-1, krib +C1 +16 +\d+–\d+\? +6\.00 +8 kept back; 6 reserved; 20 wanted by$/),
      expect.stringMatching(/^ +1 Jun, Otto$/),
      '',
      'a length with ? is what is usual for their age: nobody measured them',
      '',
    ]);
  });

  test('what is not ready shows each thing in its way with its day', () => {
    const held = roomOn('2026-05-01', [
      ...BROOD,
      ['2026-04-20', tank('C1'), { kind: 'hold begun', text: 'velvet' }],
      ['2026-04-21', tank('C1'), { kind: 'treated', product: 'salt', dose: null, every: null, doses: 1, wait: null }],
    ]);
    const text = saleText(ask(held), plainLook(held.on));
    expect(text).toMatch(/^Fri 1 May 2026: nothing can be promised\n/);
    expect(text).toMatch(/Rowan-1, krib +C1 +30 +19 May +on hold: velvet, until 19 May\n +treated: salt/);
  });

  test('what is not ready says of how many the number is that could go', () => {
    const held = roomOn('2026-05-01', [
      ...BROOD,
      counted('2026-04-28', 30),
      keep(8),
      reserve(6, '2026-05-20', 'Iris'),
      ['2026-04-29', tank('C1'), { kind: 'hold begun', text: 'velvet' }],
    ]);
    const answer = ask(held);
    const lots = answer.lots.map((lot) => ({ ...lot, grown: 26, free: 12 }));
    expect(saleText({ ...answer, lots }, plainLook(held.on))).toMatch(
      /Rowan-1, krib +C1 +12 +27 May +on hold: velvet\n +26 of 30 big enough\n +8 kept back\n +6 reserved\n/,
    );
  });

  test('each thing to mind of a lot stands in a line of its own', () => {
    const answer = ask(room);
    const lots = answer.lots.map((lot) => ({ ...lot, cautions: ['one', 'two'] }));
    expect(saleText({ ...answer, lots }, plainLook(room.on))).toContain('    take care: one\n    take care: two\n');
    expect(saleJson({ ...answer, lots }, false)).toMatchObject({ lots: [{ caution: 'one; two' }] });
  });

  test('what is too young shows the share that may be big enough by then', () => {
    const young = roomOn('2026-04-14', BROOD);
    const [lot] = ask(young).lots;
    const text = saleText(ask(young), plainLook(young.on));
    expect(lot?.share?.high).toBeGreaterThan(0);
    expect(text).toMatch(/too young: [^%]*(likely \d+|at most \d+) % big enough/);
  });

  test('a wide count: what to count', () => {
    const wide = roomOn('2026-05-01', [...BROOD.slice(0, 9), counted('2026-04-01', { low: 15, likely: 20, high: 25 })]);
    expect(saleText(ask(wide), plainLook(wide.on))).toMatch(
      /to promise more, count +where +now +at most\nRowan-1 +C1 +15 +25\njot  C1: Rowan-1 counted …\n/,
    );
  });

  test('JSON has the documented keys, and no buyer unless asked for', () => {
    const json = JSON.stringify(saleJson(ask(room), false));
    expect(JSON.parse(json)).toMatchObject({
      lots: [
        {
          id: 'rowan-1-c1-sale',
          stock: 'Rowan-1',
          species: 'krib',
          tank: 'C1',
          count: 30,
          price: 6,
          free: 16,
          ready: true,
          blockers: [],
        },
      ],
    });
    expect(json).not.toMatch(/Otto|Iris/);
    expect(JSON.stringify(saleJson(ask(room), true))).toContain('Otto');
  });

  test('CSV reads back, names nobody, and no cell is run as a formula', () => {
    const plain = { withNames: false, hide: (text: string): string => text.replaceAll('Otto', '…') };
    const rows: unknown = parse(saleCsv(ask(room), plain), { columns: true });
    expect(rows).toMatchObject([{ stock: 'Rowan-1', tank: 'C1', ready: 'yes', free: '16', price: '6', wanted: '20' }]);
    expect(saleCsv(ask(room), plain)).not.toMatch(/Otto|Iris/);
    const evil: Line = ['2026-04-20', tank('C1'), { kind: 'hold begun', text: '=HYPERLINK("x")' }];
    const other = ask(roomOn('2026-05-01', [...BROOD, evil]));
    const lots = other.lots.map((lot) => ({ ...lot, stock: '=1+1' }));
    expect(saleCsv({ ...other, lots }, plain)).toMatch(/^'=1\+1,/m);
    // What to mind stands in the row as well, and a line that is quoted there names nobody.
    const minded = lots.map((lot) => ({ ...lot, cautions: ['flukes of Otto in A2'], blockers: [] }));
    const told: unknown = parse(saleCsv({ ...other, lots: minded }, plain), { columns: true });
    expect(told).toMatchObject([{ 'take care': 'flukes of … in A2' }]);
  });
});

describe('holds', () => {
  const lines: Line[] = [
    ...BROOD,
    rigLine('2026-03-01', 'A2', 'off the loop'),
    moved('2026-04-10', 'C1', 'A1', 12),
    sell('2026-04-18', 4, 'Iris', 'A1'),
    ['2026-04-20', tank('A1'), { kind: 'hold begun', text: 'velvet' }],
  ];
  const room = roomOn('2026-04-21', lines);

  test('names the tanks with their routes, the clean ones, the fish moved and sold, and the day', () => {
    expect(holdsText(holds(room), plainLook(room.on)).split('\n')).toEqual([
      'Tue 21 Apr 2026: 2 tanks on hold, clear on 18 May if no new sign comes (last',
      '  sign 20 Apr)',
      '',
      'A1: velvet, on hold since 20 Apr; followed from 6 Apr; clear on 18 May if no',
      '  new sign comes (last sign 20 Apr)',
      'tank  since  reached',
      'A1    6 Apr  named in the line',
      'C1    6 Apr  Rowan-1 went from it to A1, 10 Apr',
      'clean: A2, off Long since 1 Mar, before it can have come',
      'moved on: 12 Rowan-1 from C1 to A1, 10 Apr',
      'sold or given: 4 Rowan-1 from A1 to Iris, 18 Apr',
      'jot  A1: hold over',
      '',
      'take care: held and sick tanks last, own net, washed hands; what it is, a',
      '  veterinarian says',
      '',
    ]);
  });

  test('buyers stay out of JSON unless asked for', () => {
    expect(JSON.stringify(holdsJson(holds(room), false))).not.toContain('Iris');
    expect(JSON.stringify(holdsJson(holds(room), true))).toContain('Iris');
  });

  test('nothing wrong is one line', () => {
    const well = roomOn('2026-04-01', BROOD);
    expect(holdsText(holds(well), plainLook(well.on))).toBe('Wed 1 Apr 2026: nothing on hold\n');
  });
});

test('cultures read as jars, then what to start', () => {
  const M1 = { kind: 'culture' as const, culture: 'M1' };
  const room = roomOn('2026-01-20', [
    ['2026-01-01', M1, { kind: 'culture declared', culture: 'M1', of: 'microworm' }],
    ['2026-01-01', M1, { kind: 'culture started' }],
    ['2026-01-05', M1, { kind: 'culture harvested' }],
  ]);
  expect(culturesText(cultures(room), plainLook(room.on)).split('\n')).toEqual([
    'Tue 20 Jan 2026: 1 live jar; next microworm jar now, due 15 Jan',
    '',
    'jar  of         state  age      last harvest  sour by',
    'M1   microworm  live   19 days  5 Jan         5 Feb',
    '',
    'microworm: start the next jar now, due 15 Jan; 1 jar alive',
    '',
  ]);
});
