import { describe, expect, test } from 'vitest';
import { measure } from '../../src/core/quantity.ts';
import type { Price } from '../../src/core/quantity.ts';
import { BROOD, counted, heads, keep, PAIR, reserve, sell, SETTINGS } from '../support/brood.ts';
import { day, room as whole, roomOn, tank } from '../support/events.ts';
import type { Line } from '../support/events.ts';
import { broodRef, groupRef } from '../support/setup.ts';

const C1 = tank('C1');
const each = (amount: number): Price => ({ amount, per: 'each' });

describe('sold', () => {
  test('fish leave the stock, and the sale is kept with its buyer and price', () => {
    const line: Line = [
      '2026-04-20',
      C1,
      { kind: 'sold', fish: broodRef('Rowan-1'), count: heads(12), price: each(4), to: 'Iris', auction: null },
    ];
    const room = roomOn('2026-05-01', [...BROOD, line]);
    expect(room.stock.broods.get('Rowan-1')?.total).toMatchObject({ low: 18, high: 18 });
    expect(room.sale.sales).toMatchObject([
      {
        stock: 'Rowan-1',
        species: 'krib',
        tank: 'C1',
        count: { low: 12 },
        price: { amount: 4 },
        to: 'Iris',
        gift: false,
      },
    ]);
  });

  test('more than the low number but within the high one raises the guess', () => {
    const guess = counted('2026-04-01', { low: 15, likely: 20, high: 25 });
    const room = roomOn('2026-05-01', [...BROOD.slice(0, 9), guess, sell('2026-04-20', 18)]);
    expect(room.problems).toEqual([]);
    expect(room.stock.broods.get('Rowan-1')?.total).toMatchObject({ low: 0, high: 7 });
  });

  test('a fish that is called by its name is one fish, and gone from its pair', () => {
    const male: Line = [
      '2026-02-01',
      tank('A1'),
      {
        kind: 'sold',
        fish: { kind: 'group', group: 'Rowan', member: { sex: 'male', name: null } },
        count: 'unsaid',
        price: each(20),
        to: null,
        auction: null,
      },
    ];
    const rowan = roomOn('2026-02-02', [...SETTINGS, PAIR, male]).stock.groups.get('Rowan');
    expect(rowan?.total).toMatchObject({ low: 1, high: 1 });
    expect(rowan?.members.map(({ sex, gone }) => `${sex ?? ''} ${gone?.how ?? 'here'}`)).toEqual([
      'male sold',
      'female here',
    ]);
  });

  test('given away is a sale without money', () => {
    const line: Line = [
      '2026-04-20',
      C1,
      { kind: 'gave away', fish: broodRef('Rowan-1'), count: heads(6), to: 'Iris' },
    ];
    expect(roomOn('2026-05-01', [...BROOD, line]).sale.sales).toMatchObject([
      { gift: true, price: null, count: { low: 6 } },
    ]);
  });

  test('under an auction it is that auction’s', () => {
    const line: Line = [
      '2026-04-20',
      { kind: 'auction', auction: 'Spring' },
      { kind: 'sold', fish: broodRef('Rowan-1'), count: heads(6), price: null, to: null, auction: null },
    ];
    expect(roomOn('2026-05-01', [...BROOD, line]).sale.sales).toMatchObject([{ auction: 'Spring', tank: 'C1' }]);
  });
});

describe('bought', () => {
  const buy = (count: number, group: string | null, on = '2026-03-01'): Line => [
    on,
    C1,
    { kind: 'bought', count: heads(count), species: 'krib', price: each(4), from: 'a friend', group },
  ];

  test('makes a group under the name of the line, or adds to it', () => {
    const room = roomOn('2026-04-01', [...SETTINGS, buy(6, 'Ash'), buy(4, 'Ash', '2026-03-10')]);
    expect(room.stock.groups.get('Ash')).toMatchObject({
      kind: 'group',
      species: 'krib',
      from: 'a friend',
      total: { low: 10 },
    });
    expect(room.sale.purchases).toHaveLength(2);
  });

  test('without a name each purchase is a group of its own', () => {
    const names = [...roomOn('2026-04-01', [...SETTINGS, buy(6, null), buy(4, null)]).stock.groups.keys()];
    expect(names).toEqual(['krib of 1 Mar', 'krib of 1 Mar 2026']);
  });

  test('without a number it is left out', () => {
    const line: Line = [
      '2026-03-01',
      C1,
      { kind: 'bought', count: 'unsaid', species: 'krib', price: null, from: null, group: null },
    ];
    const room = roomOn('2026-04-01', [...SETTINGS, line]);
    expect(room.problems).toMatchObject([{ kind: 'no-count', weight: 'stops', write: 'C1: bought 6 krib' }]);
    expect(room.stock.groups.size).toBe(0);
  });
});

describe('kept back', () => {
  test('adds up, and none lets go', () => {
    const kept = (lines: readonly Line[]): number => roomOn('2026-05-01', [...BROOD, ...lines]).sale.keptBack.length;
    expect(kept([keep(4), keep(2, '2026-04-10')])).toBe(2);
    expect(kept([keep(4), keep(0, '2026-04-10')])).toBe(0);
  });
});

test('a reservation remembers the lines that met it', () => {
  const room = roomOn('2026-05-01', [
    ...BROOD,
    reserve(6, null, 'Iris'),
    sell('2026-04-20', 2, 'IRIS'),
    sell('2026-04-21', 9, 'Iris'),
  ]);
  expect(room.sale.reservations).toMatchObject([{ met: { low: 6, high: 6 }, metBy: [{ line: 12 }, { line: 13 }] }]);
});

test('an auction is amended line by line', () => {
  const declare = (on: string | null, lots: number | null): Line => [
    '2026-03-01',
    { kind: 'auction', auction: 'Spring' },
    {
      kind: 'auction declared',
      auction: 'Spring',
      on: on === null ? null : day(on),
      lots,
      bagOf: null,
      bagsPerSpecies: null,
      sellerShare: null,
      fast: null,
      minimum: null,
      hours: null,
      boxes: null,
      boxLitres: null,
    },
  ];
  const room = roomOn('2026-04-01', [declare('2026-05-16', null), declare(null, 20)]);
  expect(room.sale.auctions.get('Spring')).toMatchObject({ on: day('2026-05-16'), lots: 20 });
});

test('money spent and the rules of awards are kept', () => {
  const room = roomOn('2026-04-01', [
    ['2026-03-01', whole, { kind: 'spent', amount: 24, text: 'salt' }],
    [
      '2026-03-01',
      whole,
      { kind: 'award rule set', name: 'bronze', young: 6, age: measure('days', 60), from: 'hatched', notice: null },
    ],
  ]);
  expect(room.sale.spent).toMatchObject([{ where: 'room', amount: 24, text: 'salt' }]);
  expect(room.sale.awards.get('bronze')).toMatchObject({ young: 6, from: 'hatched' });
});

test('a pair sold as a whole is gone', () => {
  const line: Line = [
    '2026-02-01',
    tank('A1'),
    { kind: 'sold', fish: groupRef('Rowan'), count: 'all', price: { amount: 60, per: 'all' }, to: null, auction: null },
  ];
  const rowan = roomOn('2026-02-02', [...SETTINGS, PAIR, line]).stock.groups.get('Rowan');
  expect(rowan?.total.high).toBe(0);
  expect(rowan?.members.every(({ gone }) => gone !== null)).toBe(true);
});

test('to "…" means whoever they are reserved for, a few days late too', () => {
  const lines = [...BROOD, reserve(6, '2026-04-20', 'Iris'), sell('2026-04-25', 6, '…')];
  const room = roomOn('2026-05-01', lines);
  expect(room.sale.reservations).toMatchObject([{ met: { low: 6 }, metBy: [{ line: 12 }] }]);
  expect(room.sale.sales).toMatchObject([{ to: 'Iris' }]);
});
