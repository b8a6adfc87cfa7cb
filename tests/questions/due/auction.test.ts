/** The work before an auction, counted back from it. */
import { describe, expect, test } from 'vitest';
import { isoDay } from '../../../src/core/day.ts';
import { measure } from '../../../src/core/quantity.ts';
import { auctionDue } from '../../../src/questions/due/auction.ts';
import { sale } from '../../../src/questions/sale.ts';
import { BROOD } from '../../support/brood.ts';
import { day, room as whole, roomOn, tank } from '../../support/events.ts';
import type { Line } from '../../support/events.ts';

const auction = (on: string, fast: number | null = null): Line => [
  '2026-03-01',
  { kind: 'auction', auction: 'Spring' },
  {
    kind: 'auction declared',
    auction: 'Spring',
    on: day(on),
    lots: 15,
    bagOf: 6,
    bagsPerSpecies: 3,
    sellerShare: measure('share', 0.7),
    fast: fast === null ? null : measure('days', fast),
    minimum: null,
    hours: null,
    boxes: null,
    boxLitres: null,
  },
];

function rows(on: string, lines: readonly Line[]): string[] {
  return auctionDue(roomOn(on, lines), 7).map(({ id, due }) => `${id} ${due.low === null ? '' : isoDay(due.low)}`);
}

describe('before an auction', () => {
  const lines = [...BROOD, auction('2026-05-16')];

  test('each step on its day', () => {
    expect(rows('2026-04-20', lines)).toEqual([
      'spring-last-dose 2026-05-02',
      'spring-check 2026-05-09',
      'spring-rocks-out 2026-05-13',
      'spring-catch 2026-05-13',
      'spring-rocks-back 2026-05-13',
      'spring-fast 2026-05-14',
      'spring-bag 2026-05-16',
      'spring-load 2026-05-16',
      'spring-settle 2026-05-17',
    ]);
  });

  test('the fast of the auction line counts, and the catch goes before it', () => {
    expect(rows('2026-05-03', [...BROOD, auction('2026-05-16', 4)])).toEqual([
      'spring-check 2026-05-09',
      'spring-rocks-out 2026-05-11',
      'spring-catch 2026-05-11',
      'spring-rocks-back 2026-05-11',
      'spring-fast 2026-05-12',
      'spring-bag 2026-05-16',
      'spring-load 2026-05-16',
      'spring-settle 2026-05-17',
    ]);
  });

  test('nothing more than four weeks before; once it is over its results, for two weeks', () => {
    expect(rows('2026-04-17', lines)).toEqual([]);
    expect(rows('2026-05-17', lines)).toEqual(['spring-settle 2026-05-17']);
    expect(rows('2026-05-31', lines)).toEqual([]);
  });

  test('what is done is gone, and its line is no doubt', () => {
    const did: Line = ['2026-05-09', whole, { kind: 'did', action: { kind: 'own', text: 'check for Spring' } }];
    const room = roomOn('2026-05-10', [...lines, did]);
    expect(auctionDue(room, 7).map(({ id }) => id)).not.toContain('spring-check');
    expect(room.problems).toEqual([]);
  });

  test('nothing ready by then: no bags, only the look at what may change', () => {
    const held: Line = ['2026-04-30', tank('C1'), { kind: 'hold begun', text: 'velvet' }];
    expect(rows('2026-05-03', [...lines, held])).toEqual(['spring-check 2026-05-09']);
    expect(auctionDue(roomOn('2026-05-03', [...lines, held]), 7)[0]?.because.steps.join(' ')).toContain(
      'on hold: velvet',
    );
  });
});

test('sale for an auction projects to its day and counts whole bags', () => {
  const room = roomOn('2026-04-01', [...BROOD, auction('2026-05-16')]);
  const spring = room.sale.auctions.get('Spring') ?? null;
  expect(sale(room, { ahead: 0, auction: null, projected: false }).lots).toMatchObject([{ ready: false, bags: null }]);
  expect(sale(room, { ahead: 0, auction: spring, projected: false })).toMatchObject({
    at: day('2026-05-16'),
    ahead: true,
    auction: { name: 'Spring', past: false },
    lots: [{ ready: true, free: 30, bags: 5 }],
  });
});

test('an auction that is over says so and speaks of today', () => {
  const room = roomOn('2026-06-01', [...BROOD, auction('2026-05-16')]);
  const spring = room.sale.auctions.get('Spring') ?? null;
  expect(sale(room, { ahead: 0, auction: spring, projected: false })).toMatchObject({
    at: day('2026-06-01'),
    auction: { past: true },
    lots: [{ bags: null }],
  });
});
