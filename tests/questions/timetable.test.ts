/** Counting back from an auction: what the journal says of the fish moves the days. */
import { describe, expect, test } from 'vitest';
import { isoDay } from '../../src/core/day.ts';
import { auctionDue } from '../../src/questions/due/auction.ts';
import { due } from '../../src/questions/due.ts';
import { priceList } from '../../src/questions/promises/pricelist.ts';
import { sale } from '../../src/questions/sale.ts';
import { timetableOf, type Going } from '../../src/questions/timetable.ts';
import { plainLook } from '../../src/reports/look.ts';
import { saleText } from '../../src/reports/sale.ts';
import { day } from '../support/events.ts';
import { journalRoom } from '../support/journal.ts';

const ROOM = `2026-01-01 room: units metric; currency EUR
2026-01-01 tank A1: 100 x 40 x 40 cm; alone
2026-01-01 tank C1: 54 L; alone; sponge filter
2026-01-01 tank D1: 54 L; alone; sponge filter
2026-01-01 species krib: Pelvicachromis taeniatus; cave spawner; sale at 30 mm or 10 weeks
2026-01-01 species nano: Nanochromis parilus; cave spawner; sale at 15 mm; hard to catch
2026-01-01 pair Rowan: krib; male; female; in A1
2026-01-02 A1: spawned, about 90 eggs
2026-01-12 A1: free-swimming, about 70
2026-02-20 A1: moved all Rowan-1 to C1
2026-02-21 C1: counted 30; average 32 mm
2026-03-01 auction Spring: on 2026-05-16; bags of 6; fast 2 days
`;
const NANOS = '2026-04-20 group Ash: nano; 12; in D1; age 12 weeks; line "Moss river"\n2026-04-20 D1: average 17 mm\n';

function steps(on: string, more: string, planned: readonly Going[] | null = null): string[] {
  const room = journalRoom(on, ROOM + more);
  const auction = room.sale.auctions.get('Spring');
  if (auction?.on === undefined || auction.on === null) throw new Error('no auction');
  return timetableOf(room, { ...auction, on: auction.on }, planned).map(
    ({ step, day: at, going }) => `${isoDay(at)} ${step}: ${going.map(({ stock }) => stock).join(', ')}`,
  );
}

describe('before an auction', () => {
  test('fish that are hard to catch are caught a day earlier; young ones fast for a day', () => {
    const found = steps('2026-05-02', NANOS);
    expect(found).toContain('2026-05-12 catch: Rowan-1, Ash');
    expect(found).toContain('2026-05-14 fast: Rowan-1');
    expect(found).toContain('2026-05-15 fast young: Ash');
    expect(steps('2026-05-02', '')).toContain('2026-05-13 catch: Rowan-1');
  });

  test('only what the plan takes is caught', () => {
    const plan: Going[] = [{ stock: 'Ash', tank: 'D1', species: 'nano', count: 6, fastDays: 1, lines: [] }];
    const found = steps('2026-05-02', NANOS, plan);
    expect(found).toContain('2026-05-12 catch: Ash');
    expect(found).toContain('2026-05-15 fast: Ash');
    expect(found.join(' ')).not.toContain('Rowan-1');
  });

  test('a course that is clear in time is looked at again on that day', () => {
    const treated =
      '2026-04-28 C1: treat "salt" 1 g/L, every 24 h, 3 doses, wait 7 days\n2026-04-29 C1: treat "salt"\n2026-04-30 C1: treat "salt"\n';
    expect(steps('2026-05-02', treated).find((one) => one.includes('clearance'))).toMatch(/^2026-05-07 clearance/);
    expect(steps('2026-05-02', '').join(' ')).not.toContain('clearance');
    // On hold beyond the auction they go nowhere, clear of the medicine or not.
    expect(steps('2026-05-02', `${treated}2026-05-01 C1: hold "velvet"\n`).join(' ')).not.toContain('clearance');
  });
});

test('what was counted long ago is to be counted again before it is promised', () => {
  const why = (on: string, more: string): string =>
    auctionDue(journalRoom(on, ROOM.replace('on 2026-05-16', 'on 2026-12-05') + more), 7).find(
      ({ id }) => id === 'spring-check',
    )?.why ?? '';
  expect(why('2026-11-28', '')).toContain('count Rowan-1 in C1 again: some die unseen');
  expect(why('2026-11-28', '2026-11-27 C1: counted 30\n')).not.toContain('again');
});

describe('rocks', () => {
  const out = '2026-05-13 C1: rocks out\n';
  const asked = (on: string, more: string): string[] => auctionDue(journalRoom(on, ROOM + more), 7).map(({ id }) => id);

  test('their own line closes them, and their own row asks for them back', () => {
    expect(asked('2026-05-13', '')).toEqual(expect.arrayContaining(['spring-rocks-out', 'spring-rocks-back']));
    expect(asked('2026-05-14', out)).not.toEqual(expect.arrayContaining(['spring-rocks-out']));
    expect(asked('2026-05-14', out)).not.toContain('spring-rocks-back');
    // Out for weeks and not back yet: they are out for the catch as well.
    expect(asked('2026-05-13', '2026-04-20 C1: rocks out\n')).not.toContain('spring-rocks-out');
    expect(asked('2026-05-13', '2026-04-20 C1: rocks out\n2026-04-21 C1: rocks in\n')).toContain('spring-rocks-out');
    const rows = due(journalRoom('2026-05-14', ROOM + out), { days: 7, minutes: null }).rows;
    expect(rows.map(({ close }) => close)).toContain('C1: rocks in');
    expect(asked('2026-05-14', `${out}2026-05-14 C1: rocks in\n`)).not.toContain('spring-rocks-back');
  });

  test('the lines of one morning, jotted one after the other, leave no rocks out', () => {
    const closing = (more: string): Map<string, string> =>
      new Map(auctionDue(journalRoom('2026-05-13', ROOM + more), 7).map(({ id, close }) => [id, close]));
    expect(closing('').get('spring-rocks-back')).toBe('C1: rocks in');
    expect(asked('2026-05-13', `${out}2026-05-13 C1: rocks in\n`)).not.toContain('spring-rocks-back');
    // Who ticks that off as a task has no rocks to put back by a line of the tank.
    const ticked = closing('2026-05-13 room: did "rocks out for Spring"\n');
    expect(ticked.get('spring-rocks-back')).toBe('room: did "rocks back for Spring"');
  });

  test('once their day is over and no line took any out, a line of the tanks would put nothing back', () => {
    const back = (on: string, more: string): string | undefined =>
      auctionDue(journalRoom(on, ROOM + more), 7).find(({ id }) => id === 'spring-rocks-back')?.close;
    expect(back('2026-05-14', '')).toBe('room: did "rocks back for Spring"');
    expect(back('2026-05-14', '2026-05-14 room: did "rocks back for Spring"\n')).toBeUndefined();
  });

  test('on one day they stand before the catch', () => {
    const rows = due(journalRoom('2026-05-10', ROOM), { days: 7, minutes: null }).rows.map(({ id }) => id);
    const places = ['spring-rocks-out', 'spring-catch', 'spring-rocks-back'].map((id) => rows.indexOf(id));
    expect(places).toEqual(places.toSorted((a, b) => a - b));
    expect(places).not.toContain(-1);
  });
});

test('what a move left behind and nobody counted is no fish that can go, in the list as in `sale` and in the price list', () => {
  const loose = ROOM.replace('counted 30', 'counted 25-60');
  const room = journalRoom('2026-05-02', `${loose}2026-05-01 C1: moved 24 Rowan-1 to D1, rest stay\n`);
  const auction = room.sale.auctions.get('Spring');
  const answer = sale(room, { ahead: 0, auction: auction ?? null, projected: false });
  expect(answer.lots.map(({ tank, free, ready }) => [tank, free, ready])).toEqual([
    ['D1', 24, true],
    ['C1', 1, true],
  ]);
  const rows = auctionDue(room, 28);
  expect(rows.find(({ id }) => id === 'spring-check')?.why).toContain('24 fish in 1 lot can go, 0 lots cannot');
  expect(rows.find(({ id }) => id === 'spring-catch')?.what).toBe('catch what goes: D1');
  expect(rows.find(({ id }) => id === 'spring-bag')?.why).toBe('Spring is on 16 May; 24 fish, bags of 6');
  expect(saleText(answer, plainLook(room.on))).toContain('24 fish in 1 lot can be promised');
  expect(priceList(room).offered.map(({ count }) => count)).toEqual([24]);
});

test('where perhaps nobody was left behind, `sale` does not call it one', () => {
  const said = (more: string): string => {
    const room = journalRoom('2026-05-02', ROOM.replace('counted 30', 'counted about 30') + more);
    return saleText(sale(room, { ahead: 0, auction: null, projected: false }), plainLook(room.on));
  };
  expect(said('2026-05-01 C1: moved 24 Rowan-1 to D1, rest stay\n')).toContain(
    'at least 1 each, nobody knows how many, count first: Rowan-1 in C1',
  );
  expect(said('2026-05-01 C1: moved 24 Rowan-1 to D1\n')).toContain(
    'perhaps some, perhaps none, count first: Rowan-1 in C1',
  );
});

describe('after it', () => {
  const asked = (more: string): string[] => auctionDue(journalRoom('2026-05-17', ROOM + more), 7).map(({ id }) => id);

  test('its results are asked for until they are written', () => {
    expect(asked('')).toEqual(['spring-settle']);
    expect(asked('2026-05-16 room: did "settle for Spring"\n')).toEqual([]);
    expect(asked('2026-05-16 C1: sold 6 Rowan-1 at 5.00 each to "auction table"\n')).toEqual([]);
  });

  test('once settled nothing before it is asked for any more', () => {
    const on = journalRoom('2026-05-16', `${ROOM}2026-05-16 room: did "settle for Spring"\n`);
    expect(auctionDue(on, 7)).toEqual([]);
    expect(on.problems).toEqual([]);
  });
});

test('each row says its day in its reasons', () => {
  const [first] = auctionDue(journalRoom('2026-05-02', ROOM), 28);
  expect(first?.because.steps[0]).toMatch(/^Spring: 16 May, so .* days before$/);
  expect(first?.due.low).toBe(day('2026-05-02'));
});

test('once the catch comes into sight the list says what the plan takes, within the rules of the auction', () => {
  const bags = (on: string): string | undefined =>
    auctionDue(journalRoom(on, `${ROOM}2026-03-02 auction Spring: 3 bags per species; minimum 5.00\n`), 7).find(
      ({ id }) => id === 'spring-bag',
    )?.what;
  expect(bags('2026-04-25')).toBe('bag and label: 30 Rowan-1');
  expect(bags('2026-05-10')).toBe('bag and label: 18 Rowan-1');
});
