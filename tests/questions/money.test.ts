/** Income after the auction's part, and weeks of glass, from a journal's text. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { dayFromIso, toDay } from '../../src/core/day.ts';
import { readJournal } from '../../src/language/read.ts';
import { money, moneyWhy, type MoneyRow } from '../../src/questions/money.ts';
import { stays, tankWeeks } from '../../src/questions/money/stays.ts';
import { moneyJson, moneyText } from '../../src/reports/money.ts';
import { plainLook } from '../../src/reports/look.ts';
import type { Room } from '../../src/state/draft.ts';
import { foldRoom } from '../../src/state/fold.ts';

const SETUP = `2026-01-01 room: units metric; currency EUR
2026-01-01 tank A1: 100 L; alone
2026-01-01 tank B1: 100 L; alone
2026-01-01 species krib: Pelvicachromis taeniatus; cave spawner
2026-01-01 pair Rowan: krib; male; female; in A1
2026-01-01 auction Spring: on 2026-04-09; bags of 6; seller gets 70 %
2026-01-15 A1: spawned, about 60 eggs
2026-01-26 A1: free-swimming, about 50
2026-02-12 A1: moved all Rowan-1 to B1
2026-02-13 B1: counted 40
`;

function roomOf(more: string, on = '2026-04-23'): Room {
  const reading = readJournal('fishroom.txt', SETUP + more, () => ({ ok: false, says: 'no' }));
  const room = foldRoom(reading.events, dayFromIso(on) ?? toDay(0));
  expect([...reading.problems, ...room.problems].filter(({ weight }) => weight === 'stops')).toEqual([]);
  return room;
}

function brood(room: Room, since: string | null = null): MoneyRow {
  const found = money(room, since === null ? null : dayFromIso(since))?.broods.find(({ name }) => name === 'Rowan-1');
  if (!found) throw new Error('no Rowan-1');
  return found;
}

describe('tank-weeks', () => {
  test('a tank that two stocks share counts half for each, from laying on', () => {
    // 15 Jan to 12 Feb with the pair, 28 days of half a tank; then ten weeks alone.
    expect(brood(roomOf('')).tankWeeks).toBeCloseTo(2 + 10, 9);
  });

  test('they end when the last fish is gone, and begin with --since', () => {
    const room = roomOf('2026-03-12 B1: gave away all Rowan-1\n');
    expect(brood(room).tankWeeks).toBeCloseTo(2 + 4, 9);
    expect(brood(room, '2026-03-05').tankWeeks).toBeCloseTo(1, 9);
  });

  test('a stock that comes back has two stays', () => {
    const room = roomOf('2026-02-26 B1: moved all Rowan-1 to A1\n2026-03-12 A1: moved all Rowan-1 to B1\n');
    const own = stays(room).filter(({ body, tank }) => body === 'Rowan-1' && tank === 'A1');
    expect(own.map(({ from, to }) => to - from)).toEqual([28, 14]);
  });

  test('the parts of all stocks add up to the days on which a tank held any', () => {
    const stay = fc
      .tuple(fc.constantFrom('a', 'b', 'c', 'd'), fc.constantFrom('T1', 'T2'), fc.nat(60), fc.nat(60))
      .map(([body, tank, from, days]) => ({ body, tank, from: toDay(from), to: toDay(from + days) }));
    fc.assert(
      fc.property(fc.array(stay, { maxLength: 12 }), fc.nat(130), (all, on) => {
        const total = [...tankWeeks(all, null, toDay(on)).values()].flat().reduce((sum, { weeks }) => sum + weeks, 0);
        const held = new Set<string>();
        for (const { tank, from, to } of all)
          for (let d = from + 0; d < Math.min(to, on); d += 1) held.add(`${tank} ${d}`);
        expect(total * 7).toBeCloseTo(held.size, 6);
      }),
    );
  });
});

describe('income', () => {
  test('at the auction less its part, elsewhere whole', () => {
    const room = roomOf(`2026-04-09 B1: sold 12 Rowan-1 at 5.00 each to "the auction table"
2026-04-09 B1: sold 2 Rowan-1 for 8.00 to "R. by the harbour"
2026-04-10 B1: sold 6 Rowan-1 at 4.00 each
`);
    expect(brood(room).income).toEqual({ low: 74, likely: 74, high: 74 });
    expect(brood(room).because.steps).toContain('9 Apr: 12 × 5.00 less 30 % kept at Spring: 42.00');
    expect(brood(room).perTankWeek?.likely).toBeCloseTo(74 / 12, 9);
    expect(brood(room).raised).toMatchObject({ low: 40, high: 40 });
  });

  test('a sale without a price and a gift add nothing, and the first is told', () => {
    const room = roomOf('2026-04-10 B1: sold 6 Rowan-1\n2026-04-11 B1: gave away 4 Rowan-1\n');
    expect(brood(room)).toMatchObject({ income: { high: 0 }, unpriced: 1, raised: { low: 40, high: 40 } });
    expect(moneyText(money(room) ?? never(), plainLook(room.on))).toContain('1 sale without a price');
  });

  test('a guessed number makes a range', () => {
    expect(brood(roomOf('2026-04-10 B1: sold about 12 Rowan-1 at 4.00 each\n')).income).toEqual({
      low: 36,
      likely: 48,
      high: 60,
    });
  });

  test('spending goes to the stock whose line it is, else to the room', () => {
    const room = roomOf('2026-03-01 Rowan-1: spent 12.50 "brine shrimp"\n2026-03-02 room: spent 5.00 "bags"\n');
    expect(brood(room).spent).toBe(12.5);
    expect(money(room)?.general).toMatchObject([{ place: 'room', amount: 5 }]);
    expect(money(room)?.total.spent).toBe(17.5);
  });

  test('species hold their pairs, pairs their broods', () => {
    const found = money(roomOf('2026-04-10 B1: sold 6 Rowan-1 at 4.00 each\n'));
    expect(found?.species[0]).toMatchObject({ name: 'krib', income: { low: 24 } });
    expect(found?.pairs[0]).toMatchObject({ name: 'Rowan', income: { low: 24 } });
    expect(found?.species[0]?.tankWeeks).toBeCloseTo(112 / 7 + 70 / 7, 9);
  });

  test('only what is asked for, and null for a name that nothing has', () => {
    const room = roomOf('');
    expect(money(room, null, 'rowan')?.pairs.map(({ name }) => name)).toEqual(['Rowan']);
    expect(money(room, null, 'Rowan-1')?.broods.map(({ name }) => name)).toEqual(['Rowan-1']);
    expect(money(room, null, 'Nobody')).toBeNull();
  });
});

test("buyers' names are in no answer, and every row can be asked about", () => {
  const room = roomOf('2026-04-10 B1: sold 6 Rowan-1 at 4.00 each to "Iris Quill"\n');
  const answer = money(room) ?? never();
  const why = moneyWhy(room);
  const said = [JSON.stringify(moneyJson(answer)), moneyText(answer, plainLook(room.on)), JSON.stringify(why)];
  for (const text of said) expect(text).not.toContain('Iris');
  const ids = [...answer.species, ...answer.pairs, ...answer.broods].map(({ id }) => id);
  expect(why.map(({ id }) => id)).toEqual(ids);
});

function never(): never {
  throw new Error('no answer');
}
