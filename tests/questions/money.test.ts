/** Income after the auction's part, and weeks of glass, from a journal's text. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { dayFromIso, toDay } from '../../src/core/day.ts';
import type { Interval } from '../../src/core/interval.ts';
import { readJournal } from '../../src/language/read.ts';
import { money, moneyWhy, type MoneyRow } from '../../src/questions/money.ts';
import { stays, tankWeeks } from '../../src/questions/money/stays.ts';
import { moneyJson, moneyText } from '../../src/reports/money.ts';
import { plainLook } from '../../src/reports/look.ts';
import type { Room } from '../../src/state/draft.ts';
import { foldRoom } from '../../src/state/fold.ts';
import { journalRoom } from '../support/journal.ts';

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

test('since a day those that left before it are not counted as raised', () => {
  const sold = '2026-03-01 B1: sold 10 Rowan-1 at 5.00 each\n2026-04-01 B1: gave away 4 Rowan-1\n';
  const raised = (since: string | null): string => {
    const { raised: young, because } = brood(roomOf(sold), since);
    return `${String(young?.low)}–${String(young?.high)}; ${because.steps.at(-1) ?? ''}`;
  };
  expect(raised(null)).toBe('40–40; raised: 40, those alive, and sold, given away or grown into groups');
  expect(raised('2026-03-01')).toBe(
    '40–40; raised: 40, those alive, and sold, given away or grown into groups since then',
  );
  expect(raised('2026-03-02')).toBe(
    '30–30; raised: 30, those alive, and sold, given away or grown into groups since then',
  );
});

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

  test('a number that left nobody ends a stay as «all» does', () => {
    const gone = '2026-02-26 B1: moved 30 Rowan-1 to A1\n2026-03-12 B1: sold 10 Rowan-1 at 4.00 each\n';
    const back = '2026-03-26 A1: moved 5 Rowan-1 to B1\n';
    const own = (text: string, on?: string): readonly number[] =>
      stays(roomOf(text, on))
        .filter(({ body, tank }) => body === 'Rowan-1' && tank === 'B1')
        .map(({ from, to }) => to - from);
    expect(own(gone)).toEqual([28]);
    expect(own(gone + back)).toEqual([28, 28]);
    expect(brood(roomOf(gone + back, '2026-03-20')).tankWeeks).toBe(brood(roomOf(gone, '2026-03-20')).tankWeeks);
  });

  test('a count of none ends it; more that left than was guessed does not', () => {
    expect(brood(roomOf('2026-03-12 B1: Rowan-1 counted 0\n')).tankWeeks).toBeCloseTo(2 + 4, 9);
    const more = '2026-03-12 B1: moved about 10 Rowan-1 to A1\n2026-03-26 A1: sold 14 Rowan-1 at 4.00 each\n';
    const inA1 = stays(roomOf(more)).filter(({ body, tank }) => body === 'Rowan-1' && tank === 'A1');
    expect(inA1.map(({ from, to }) => to - from)).toEqual([28, 42]);
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

  test('a mix of two pairs belongs to neither, and that is said', () => {
    const room = roomOf(`2026-01-02 tank A2: 100 L; alone
2026-01-02 pair Larch: krib; male; female; in A2
2026-01-16 A2: spawned brood Larch-1
2026-02-12 A2: moved 20 Larch-1 to B1
2026-02-14 B1: mixed Rowan-1 and Larch-1
2026-04-10 B1: sold 6 Rowan-1 at 4.00 each
`);
    const found = money(room) ?? never();
    expect(found.pairs.map(({ income }) => income.high)).toEqual([0, 0]);
    expect(found.species[0]?.income.low).toBe(24);
    expect(moneyText(found, plainLook(room.on))).toContain(
      'of several pairs, and so in no row of a pair: Rowan-1 or Larch-1',
    );
  });

  test('what was sold before a mix was of the one brood, and of its pair', () => {
    const room = roomOf(`2026-01-02 tank A2: 100 L; alone
2026-01-02 pair Larch: krib; male; female; in A2
2026-01-16 A2: spawned brood Larch-1
2026-02-12 A2: moved 20 Larch-1 to B1
2026-02-13 B1: sold 2 Rowan-1 at 5.00 each
2026-02-14 B1: mixed Rowan-1 and Larch-1
2026-04-10 B1: sold 6 Rowan-1 at 4.00 each
`);
    const found = money(room) ?? never();
    const earned = (rows: readonly { readonly name: string; readonly income: Interval }[]) =>
      rows.flatMap(({ name, income }) => (income.low > 0 ? [`${name} ${income.low}`] : [])).toSorted();
    expect(earned(found.pairs)).toEqual(['Rowan 10']);
    expect(earned(found.broods)).toEqual(['Rowan-1 10', 'Rowan-1 or Larch-1 24']);
    expect(found.species[0]?.income.low).toBe(34);
    expect(moneyText(found, plainLook(room.on))).toMatch(/nothing sold of, with their tank-weeks: Larch-1 \d/);
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

/**
 * Reckoned by hand on paper, in weeks from Thursday 1 January: two pairs in one tank, young moved out,
 * an auction with its part, a private sale, fish bought and things spent.
 */
describe('a worked example', () => {
  const JOURNAL = `2026-01-01 room: units metric; currency EUR
2026-01-01 tank A1: 100 L; alone
2026-01-01 tank B1: 100 L; alone
2026-01-01 tank C1: 100 L; alone
2026-01-01 species krib: Pelvicachromis taeniatus; cave spawner
2026-01-01 species limia: Limia nigrofasciata; livebearer
2026-01-01 pair Rowan: krib; male; female; in A1; from "a friend" at 30.00
2026-01-01 colony Pebble: limia; 20; in C1
2026-01-01 auction Spring: on 2026-04-09; seller gets 70 %
2026-01-15 A1: spawned brood Rowan-1
2026-01-29 A1: free-swimming
2026-02-12 A1: moved all Rowan-1 to B1
2026-02-12 B1: counted 40
2026-03-12 Rowan-1: spent 6.00 "brine shrimp"
2026-03-26 C1: sold 5 Pebble at 2.00 each to "Iris"
2026-04-02 room: spent 9.00 "salt"
2026-04-09 B1: sold 12 Rowan-1 for 50.00 at Spring
2026-04-09 Spring: spent 5.00 "entry"
2026-04-16 B1: sold 8 Rowan-1 at 4.50 each to "Otto"
2026-04-23 room: spent 3.00 "salt"
`;
  const at = journalRoom('2026-04-30', JOURNAL);
  const found = money(at) ?? never();
  const row = (rows: readonly MoneyRow[], name: string): MoneyRow => rows.find((one) => one.name === name) ?? never();

  test('the brood: 70 % of 50.00 and 8 times 4.50 in 2 halves and 11 whole weeks', () => {
    // A1 shared with its parents 15 Jan to 12 Feb: 4 weeks / 2. B1 alone 12 Feb to 30 Apr: 11 weeks.
    const brood1 = row(found.broods, 'Rowan-1');
    expect(brood1.tankWeeks).toBeCloseTo(13, 9);
    expect(brood1.income.low).toBeCloseTo(35 + 36, 9);
    expect(brood1.perTankWeek?.low).toBeCloseTo(71 / 13, 9);
    expect(brood1).toMatchObject({ spent: 6, sold: { low: 20, high: 20 }, raised: { low: 40, high: 40 } });
  });

  test('the pair with it: 17 weeks of A1 in all, and what the pair cost', () => {
    // A1 1 Jan to 30 Apr is 17 weeks, the 4 shared ones counted in halves for each: pair 15, brood 2, and B1 11.
    const pair = row(found.pairs, 'Rowan');
    expect(pair.tankWeeks).toBeCloseTo(28, 9);
    expect(pair.spent).toBe(36);
    expect(pair.perTankWeek?.low).toBeCloseTo(71 / 28, 9);
  });

  test('species, and the room: nothing twice, nothing lost', () => {
    expect(row(found.species, 'krib').income.low).toBeCloseTo(71, 9);
    expect(row(found.species, 'limia')).toMatchObject({ income: { low: 10 }, spent: 0 });
    expect(row(found.species, 'limia').tankWeeks).toBeCloseTo(17, 9);
    expect(found.total.income.low).toBeCloseTo(81, 9);
    expect(found.total.tankWeeks).toBeCloseTo(28 + 17, 9);
    expect(found.total.spent).toBe(30 + 6 + 9 + 5 + 3);
    expect(found.general.map(({ place, text, amount }) => [place, text, amount])).toEqual([
      ['room', 'salt', 12],
      ['Spring', 'entry', 5],
    ]);
    expect(moneyText(found, plainLook(at.on))).toContain('12.00 salt (room), 5.00 entry (Spring)');
  });

  test('since 9 April: three weeks of each tank, and only what came in since', () => {
    const later = money(at, dayFromIso('2026-04-09')) ?? never();
    expect(later.total.tankWeeks).toBeCloseTo(9, 9);
    expect(later.total.income.low).toBeCloseTo(71, 9);
    expect(later.total.spent).toBe(8);
    expect(row(later.broods, 'Rowan-1').tankWeeks).toBeCloseTo(3, 9);
    expect(money(at, dayFromIso('2026-04-10'))?.total.income.low).toBe(36);
  });
});

test.each(['2026-04-20', '2026-04-22', '2026-04-24', '2026-04-27', '2026-04-28'])(
  'the weeks that `why` shows on %s add up as they are printed',
  (on) => {
    const room = roomOf('2026-02-27 B1: moved 10 Rowan-1 to A1\n2026-03-11 A1: moved all Rowan-1 to B1\n', on);
    const step = brood(room).because.steps.find((one) => one.startsWith('tank-weeks: ')) ?? never();
    const [parts = '', sum = ''] = step.replace('tank-weeks: ', '').split(' = ');
    const tenths = parts.split(' + ').map((part) => Math.round(parseFloat(part) * 10));
    expect(tenths.length).toBe(2);
    expect(tenths.reduce((all, one) => all + one, 0)).toBe(Math.round(parseFloat(sum) * 10));
    expect(sum).toBe(brood(room).tankWeeks.toFixed(1));
  },
);

test('a room that sold nothing says so, and calls nothing best', () => {
  const said = (text: string, since: string | null = null): string => {
    const room = roomOf(text);
    const answer = money(room, since === null ? null : dayFromIso(since)) ?? never();
    return moneyText(answer, plainLook(room.on)).split('\n')[0] ?? '';
  };
  expect(said('')).toBe('Thu 23 Apr 2026: nothing sold yet');
  expect(said('2026-03-12 room: spent 6.00 "salt"\n')).toBe('Thu 23 Apr 2026: nothing sold yet, 6.00 EUR spent');
  const sold = '2026-03-10 B1: sold 6 Rowan-1 at 4.00 each\n';
  expect(said(sold, '2026-04-01')).toBe('Thu 23 Apr 2026: nothing sold since 1 Apr');
  expect(said(sold)).toContain('best krib');
});

test('sums of JSON add up and hold no noise, printed ones are of whole cents', () => {
  const room = roomOf(
    `2026-02-01 auction Fair: on 2026-04-10; seller gets 75 %
2026-04-10 B1: sold 6 Rowan-1 at Fair for 33.33; sold 2 Rowan-1 at Fair for 22.51; sold 1 Rowan-1 at Fair for 20.01
2026-04-10 room: spent 0.10 "bags"; spent 0.20 "tape"
`,
  );
  const answer = money(room) ?? never();
  expect(moneyJson(answer)).toMatchObject({
    total: { income: 56.8875, spent: 0.3 },
    species: [{ income: 56.8875 }],
  });
  expect(moneyText(answer, plainLook(room.on))).toContain('56.89 EUR for fish, 0.30 spent');
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
