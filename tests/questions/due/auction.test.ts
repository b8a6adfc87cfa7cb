/** The work before an auction, counted back from it. */
import { describe, expect, test } from 'vitest';
import { isoDay } from '../../../src/core/day.ts';
import { measure } from '../../../src/core/quantity.ts';
import { auctionDue } from '../../../src/questions/due/auction.ts';
import { sale } from '../../../src/questions/sale.ts';
import { BROOD } from '../../support/brood.ts';
import { day, room as whole, roomOn, tank } from '../../support/events.ts';
import type { Line } from '../../support/events.ts';
import { rowsOf, type Told } from './rows.ts';

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

  test('the check says how long there is to mend what stands in the way', () => {
    const said = (on: string): string | undefined =>
      auctionDue(roomOn(on, lines), 7)
        .find(({ id }) => id === 'spring-check')
        ?.why.split('; ')
        .at(-1);
    expect(said('2026-05-08')).toBe('7 days leave time to mend it');
    expect(said('2026-05-09')).toBe('7 days leave time to mend it');
    expect(said('2026-05-12')).toBe('4 days are left to mend it');
    expect(said('2026-05-15')).toBe('1 day is left to mend it');
    expect(said('2026-05-16')).toBe('no day is left to mend it');
  });

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

describe('the steps of an auction', () => {
  // Ten young in A1 and twenty in C2, of age; the room's auction Autumn is on 5 September.
  const young = `2026-01-02 species krib: sale at 35 mm or 16 weeks
2026-01-02 A1: spawned
2026-01-12 A1: free-swimming, 30
2026-04-01 A1: Rowan-1 moved 20 to C2
2026-06-01 A1: Rowan-1 counted 10
2026-06-01 C2: Rowan-1 counted 20
`;
  const steps = (on: string, more = '', days = 7): readonly Told[] => rowsOf(auctionDue, on, young + more, days);
  const ids = (on: string, more = '', days = 7): string[] => steps(on, more, days).map(({ id }) => id);

  test('weigh as work, what bags fish with its caution; the last day to dose is only told', () => {
    const rows = steps('2026-08-20', '', 14);
    expect(rows.map(({ id, weight }) => `${id} ${String(weight)}`)).toEqual([
      'autumn-last-dose 0',
      'autumn-check 1',
      'autumn-rocks-out 1',
      'autumn-catch 1',
      'autumn-rocks-back 1',
      'autumn-fast 1',
      'autumn-bag 1',
      'autumn-load 1',
      'autumn-settle 1',
    ]);
    const cautioned = rows.filter(({ caution }) => caution !== null);
    expect(cautioned.map(({ id }) => id)).toEqual(['autumn-bag', 'autumn-load']);
    expect(cautioned[0]?.caution).toContain('never release fish, plants or water');
    expect(rows[1]).toMatchObject({ place: 'room', key: 'check for Autumn', pressing: false });
  });
  test('the last day to dose asks for nothing once it is past', () => {
    expect(ids('2026-08-22')).toContain('autumn-last-dose');
    expect(ids('2026-08-23')).not.toContain('autumn-last-dose');
  });
  test('to put rocks back is asked for apart from those that a line took out', () => {
    expect(ids('2026-09-03')).toContain('autumn-rocks-back');
    expect(ids('2026-09-03', '2026-09-02 A1: rocks out\n')).not.toContain('autumn-rocks-back');
    expect(ids('2026-09-03', '2026-09-02 C1: rocks out\n2026-09-02 A1: lights off\n')).toContain('autumn-rocks-back');
  });
  test('go by the plan from when its catch comes into sight, and on the day itself', () => {
    const bags = (on: string, days = 7): string | undefined =>
      steps(on, '', days).find(({ id }) => id === 'autumn-bag')?.what;
    // Two days of fast and two for the catch before the week that is looked ahead: 11 days before 5 September.
    expect([bags('2026-08-24'), bags('2026-08-25'), bags('2026-09-05')]).toEqual([
      'bag and label: 10 Rowan-1 and 20 Rowan-1',
      'bag and label: 10 Rowan-1 and 18 Rowan-1',
      'bag and label: 10 Rowan-1 and 18 Rowan-1',
    ]);
    expect(ids('2026-09-06')).toEqual(['autumn-settle']);
  });
  test('leave out fish that are treated', () => {
    const treated = steps('2026-08-30', '2026-08-29 A1: treat "salt"\n');
    expect(treated.find(({ id }) => id === 'autumn-catch')?.what).toBe('catch what goes: C2');
    expect(treated.map(({ id }) => id)).not.toContain('autumn-clearance');
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
