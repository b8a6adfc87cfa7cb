/** What can be promised. Traps 18 and 19: no claim of kinship or bond, and never more than is surely there. */
import { describe, expect, test } from 'vitest';
import { measure } from '../../src/core/quantity.ts';
import { sale, type Lot } from '../../src/questions/sale.ts';
import type { Room } from '../../src/state/draft.ts';
import { BROOD, counted, heads, keep, moved, reserve, sell } from '../support/brood.ts';
import { day, room as whole, roomOn, tank } from '../support/events.ts';
import type { Line } from '../support/events.ts';
import { rigLine } from '../support/setup.ts';

const C1 = tank('C1');

function lotsOf(room: Room, ahead = 0): readonly Lot[] {
  return sale(room, { ahead, auction: null, projected: false }).lots;
}
function lot(room: Room, ahead = 0): Lot {
  const [first] = lotsOf(room, ahead);
  if (first === undefined) throw new Error('no lot');
  return first;
}

describe('what is ready', () => {
  test('the low number alive, at its age, with its price', () => {
    const found = lot(roomOn('2026-05-01', BROOD));
    expect(found).toMatchObject({
      stock: 'Rowan-1',
      tank: 'C1',
      ready: true,
      free: 30,
      blockers: [],
      price: { amount: 6 },
    });
    expect(found.id).toBe('rowan-1-c1-sale');
  });

  test('too young: not ready, and the day from which it is; ahead of that day it is', () => {
    const room = roomOn('2026-03-01', BROOD);
    expect(lot(room)).toMatchObject({ ready: false, free: 30, blockers: [{ kind: 'size' }] });
    expect(lot(room).blockers[0]?.until).toBeLessThanOrEqual(day('2026-04-23'));
    expect(lot(room, 60)).toMatchObject({ ready: true, free: 30 });
  });

  test('kept back and reserved fish are not for sale', () => {
    expect(lot(roomOn('2026-05-01', [...BROOD, keep(8), reserve(6, null)]))).toMatchObject({
      free: 16,
      keptBack: 8,
      reserved: 6,
    });
  });

  test('all spoken for: a blocker says so', () => {
    expect(lot(roomOn('2026-05-01', [...BROOD, keep(30)]))).toMatchObject({
      ready: false,
      free: 0,
      blockers: [{ kind: 'count' }],
    });
  });

  test('every blocker is shown, not the first alone', () => {
    const lines: Line[] = [
      ...BROOD,
      ['2026-02-20', C1, { kind: 'hold begun', text: 'velvet' }],
      ['2026-02-21', C1, { kind: 'treated', product: 'salt', dose: null, every: null, doses: 1, wait: null }],
      ['2026-02-22', C1, { kind: 'quarantine begun', lasts: measure('days', 28) }],
    ];
    const { blockers } = lot(roomOn('2026-03-01', lines));
    expect(blockers.map(({ kind }) => kind)).toEqual(['hold', 'treatment', 'quarantine', 'size']);
    expect(blockers.map(({ until }) => until)).toEqual([
      day('2026-03-21'),
      day('2026-03-07'),
      day('2026-03-22'),
      expect.any(Number),
    ]);
  });
});

describe('trap 19: promises', () => {
  test('an expired reservation no longer counts, and one due that day still does', () => {
    const lines = [...BROOD, reserve(6, '2026-04-30')];
    expect(lot(roomOn('2026-04-30', lines)).free).toBe(24);
    expect(lot(roomOn('2026-05-01', lines)).free).toBe(30);
  });

  test('two reservations are two: neither hides the other', () => {
    expect(lot(roomOn('2026-05-01', [...BROOD, reserve(6, null, 'Iris'), reserve(6, null, 'Otto')])).free).toBe(18);
  });

  test('fish that the buyer fetched are not taken off twice', () => {
    const lines = [...BROOD, reserve(6, null, 'Iris')];
    expect(lot(roomOn('2026-05-01', [...lines, sell('2026-04-20', 6, 'iris')]))).toMatchObject({
      free: 24,
      reserved: 0,
    });
    expect(lot(roomOn('2026-05-01', [...lines, sell('2026-04-20', 6, 'Otto')]))).toMatchObject({
      free: 18,
      reserved: 6,
    });
  });

  test('a guess is promised at its low end, and counting is suggested', () => {
    const guess = counted('2026-04-20', { low: 15, likely: 20, high: 25 });
    const answer = sale(roomOn('2026-05-01', [...BROOD, guess]), { ahead: 0, auction: null, projected: false });
    expect(answer.lots[0]).toMatchObject({ free: 15, ready: true });
    expect(answer.count).toMatchObject([{ tank: 'C1', sure: 15, perhaps: 25 }]);
  });

  test('kept back fish that became a group of their own are gone from both numbers; `kept back 0` lets go', () => {
    expect(lot(roomOn('2026-05-01', [...BROOD, keep(8), keep(0, '2026-04-20')]))).toMatchObject({
      free: 30,
      keptBack: 0,
    });
  });

  test('promises are taken once when the brood lives in two tanks', () => {
    const split = moved('2026-03-01', 'C1', 'A2', 10);
    const found = lotsOf(roomOn('2026-05-01', [...BROOD, split, keep(12), reserve(12, null)]));
    expect(found.reduce((sum, { free }) => sum + free, 0)).toBe(6);
  });

  test('more sold than were surely counted: the line is left out and both lines are named', () => {
    const room = roomOn('2026-05-01', [...BROOD, sell('2026-04-20', 31)]);
    expect(room.problems).toMatchObject([
      { kind: 'more-out-than-in', weight: 'stops', at: { line: 11 }, also: [{ line: 10 }] },
    ]);
    expect(lot(room).free).toBe(30);
  });
});

describe('an old count', () => {
  test('is told as too old to promise on, until they are counted again', () => {
    expect(lot(roomOn('2026-05-01', BROOD)).cautions.join()).toMatch(
      /^last counted 11 Feb, and some die unseen: likely .+ there; count/,
    );
    expect(lot(roomOn('2026-05-01', [...BROOD, counted('2026-04-28', 30)])).cautions).toEqual([]);
  });
});

describe('sick and treated water', () => {
  test('an unanswered sickness blocks its own tank and cautions those on its water', () => {
    const gone = moved('2026-03-01', 'C1', 'A2', 'all');
    const sick = (where: string): Line => [
      '2026-04-28',
      tank(where),
      { kind: 'sick', text: 'white spot', catching: null },
    ];
    const own = lot(roomOn('2026-05-01', [...BROOD, gone, sick('A2')]));
    expect(own).toMatchObject({ ready: false, blockers: [{ kind: 'sick', until: null }] });
    const beside = lot(roomOn('2026-05-01', [...BROOD, gone, sick('A1')]));
    expect(beside).toMatchObject({ ready: true, blockers: [] });
    expect(beside.cautions.join()).toContain('white spot in A1');
    const valved = lot(roomOn('2026-05-01', [...BROOD, gone, rigLine('2026-04-01', 'A2', 'off the loop'), sick('A1')]));
    expect(valved.cautions.join()).not.toContain('white spot');
  });

  test('a hold past its day still blocks until a line ends it, but not on a day still to come', () => {
    const lines: Line[] = [...BROOD, ['2026-04-01', C1, { kind: 'hold begun', text: 'velvet' }]];
    expect(lot(roomOn('2026-05-10', lines))).toMatchObject({ ready: false, blockers: [{ kind: 'hold', until: null }] });
    expect(lot(roomOn('2026-04-20', lines))).toMatchObject({ ready: false });
    expect(lot(roomOn('2026-04-20', lines), 20)).toMatchObject({ ready: true });
    const ahead = sale(roomOn('2026-04-20', lines), { ahead: 20, auction: null, projected: false });
    expect(ahead.assumed).toMatchObject([{ place: 'C1', clear: day('2026-04-29') }]);
  });

  test('treated fish wait as long as the line says', () => {
    const treat = (wait: number | null): Line => [
      '2026-04-20',
      C1,
      {
        kind: 'treated',
        product: 'salt',
        dose: null,
        every: null,
        doses: null,
        wait: wait === null ? null : measure('days', wait),
      },
    ];
    expect(lot(roomOn('2026-05-01', [...BROOD, treat(null)])).blockers).toMatchObject([
      { kind: 'treatment', until: day('2026-05-04') },
    ]);
    expect(lot(roomOn('2026-05-01', [...BROOD, treat(7)])).blockers).toEqual([]);
  });
});

describe('trap 18: what is written and no more', () => {
  test('bought fish make a group; without a source they are not for sale', () => {
    const buy = (from: string | null): Line => [
      '2026-05-02',
      C1,
      { kind: 'bought', count: heads(6), species: 'krib', price: { amount: 4, per: 'each' }, from, group: null },
    ];
    const base = BROOD.slice(0, 5);
    const room = roomOn('2026-05-02', [...base, buy(null)]);
    expect([...room.stock.groups.keys()]).toEqual(['krib of 2 May']);
    expect(lot(room).blockers.map(({ kind }) => kind)).toContain('line');
    expect(lot(roomOn('2026-05-02', [...base, buy('a friend')])).blockers.map(({ kind }) => kind)).not.toContain(
      'line',
    );
    expect(room.sale.purchases).toMatchObject([{ group: 'krib of 2 May', count: { low: 6 } }]);
  });

  test('breeding pairs are not stock', () => {
    expect(lotsOf(roomOn('2026-05-01', BROOD.slice(0, 6)))).toEqual([]);
  });
});

test('a want is matched by species and size, and lapses', () => {
  const want: Line = [
    '2026-04-01',
    whole,
    { kind: 'wanted', count: heads(20), species: 'krib', size: null, by: day('2026-05-10'), to: 'Otto' },
  ];
  expect(lot(roomOn('2026-05-01', [...BROOD, want])).wants).toMatchObject([{ count: { low: 20 }, to: 'Otto' }]);
  expect(lot(roomOn('2026-05-11', [...BROOD, want])).wants).toEqual([]);
});
