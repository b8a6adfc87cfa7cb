/** What is kept back, promised, wanted and sold: which sale meets which promise, and what leaves a group. */
import { describe, expect, it } from 'vitest';
import type { Room } from '../../src/state/draft.ts';
import { journalOn } from '../support/journal.ts';

const FORTY = `2026-02-02 A1: spawned
2026-02-12 A1: free-swimming, 40
2026-02-20 A1: Rowan-1 counted 40
`;
const after = (lines: string, on = '2026-08-01'): Room => journalOn(on, FORTY + lines);
const kinds = (room: Room): string[] => room.problems.map(({ kind }) => kind);
/** How many of each promise were met, with how many sales. */
const met = (lines: string): string[] =>
  after(lines).sale.reservations.map(
    ({ met: { low, high }, metBy }) => `${String(low)}-${String(high)} by ${String(metBy.length)}`,
  );
const buyers = (lines: string): (string | null)[] => after(lines).sale.sales.map(({ to }) => to);

describe('kept back', () => {
  const two = '2026-03-02 A1: moved 20 Rowan-1 to C1, rest stay\n';
  const keep = `${two}2026-03-03 A1: kept back 4 Rowan-1
2026-03-03 C1: kept back 5 Rowan-1
2026-03-03 C1: kept back 2 Ash
2026-03-03 Rowan-1: kept back 3
`;
  const left = (lines: string): string[] =>
    after(lines).sale.keptBack.map(({ stock, tank, count }) => `${String(count.low)} ${stock} ${tank ?? 'anywhere'}`);
  it('is of its stock and its tank, or of all of them', () => {
    expect(left(keep)).toEqual(['4 Rowan-1 A1', '5 Rowan-1 C1', '2 Ash C1', '3 Rowan-1 anywhere']);
  });
  it('none lets go of those of that tank, and of those that no tank was said of', () => {
    expect(left(`${keep}2026-03-04 C1: kept back 0 Rowan-1\n`)).toEqual(['4 Rowan-1 A1', '2 Ash C1']);
    expect(left(`${keep}2026-03-04 Rowan-1: kept back 0\n`)).toEqual(['2 Ash C1']);
  });
  it('or promised, of no fish, is of none', () => {
    const room = after('2026-03-04 Q1: kept back 3\n2026-03-04 Q1: reserved 3 until 2026-04-01\n');
    expect(kinds(room)).toEqual(['no-such-fish', 'no-such-fish']);
    expect([room.sale.keptBack, room.sale.reservations]).toEqual([[], []]);
  });
});

describe('what leaves', () => {
  it('is the one that the line names, once', () => {
    const room = after('2026-03-01 A2: sold Fern for 20.00\n2026-03-02 A2: sold Fern for 20.00\n');
    expect(kinds(room)).toEqual(['unknown-member']);
    expect(room.stock.groups.get('Sedge')?.total).toMatchObject({ low: 2, high: 2 });
    expect(room.sale.sales).toHaveLength(1);
    expect(room.stock.groups.get('Sedge')?.members.filter(({ gone }) => gone !== null)).toMatchObject([
      { name: 'Fern' },
    ]);
  });
  it('is nobody where one of two females is sold and the line does not say which', () => {
    const room = after('2026-03-01 A2: sold female for 20.00\n');
    expect(kinds(room)).toEqual(['which-member']);
    expect(room.stock.groups.get('Sedge')?.total).toMatchObject({ low: 3, high: 3 });
    expect(room.sale.sales).toEqual([]);
  });
  it('is nothing where nobody lives', () => {
    const room = after('2026-03-01 Q1: sold 3 at 4.00 each\n');
    expect(kinds(room)).toEqual(['no-such-fish']);
    expect(room.sale.sales).toEqual([]);
  });
  it('is nothing where more are sold than there were', () => {
    const room = after('2026-03-01 C1: sold 20 Ash at 4.00 each\n');
    expect(kinds(room)).toEqual(['more-out-than-in']);
    expect(room.sale.sales).toEqual([]);
  });
  it('is not known of a number of those that can be told apart, unless the line says which', () => {
    const harem = '2026-02-03 harem Heath: krib; male; females Gorse, Ling and Broom; in C2\n';
    const heath = (words: string): Room => after(`${harem}2026-03-01 C2: ${words}\n`);
    const gone = (room: Room, name = 'Heath'): (string | undefined)[] | undefined =>
      room.stock.groups.get(name)?.members.map((fish) => fish.gone?.how);
    for (const words of ['sold 1 Heath for 20.00', 'gave away 1 Heath', 'sold 2 Heath', 'sold half Heath']) {
      const room = heath(words);
      expect([kinds(room), room.sale.sales, room.stock.groups.get('Heath')?.total.low]).toEqual([
        ['which-member'],
        [],
        4,
      ]);
    }
    expect(gone(heath('sold 1 male Heath for 20.00'))).toEqual(['sold', undefined, undefined, undefined]);
    expect(gone(heath('gave away 3 females Heath'))).toEqual([undefined, 'gave away', 'gave away', 'gave away']);
    expect(gone(heath('sold all Heath for 20.00'))).toEqual(['sold', 'sold', 'sold', 'sold']);
    expect(gone(heath('sold 4 Heath for 20.00'))).toEqual(['sold', 'sold', 'sold', 'sold']);
  });
  it('is none of those with a name where there are enough others', () => {
    const elm = '2026-02-03 group Elm: krib; 12; female Bracken; in C2\n';
    const room = after(`${elm}2026-03-01 C2: sold 3 Elm at 4.00 each\n2026-03-02 C2: moved 4 Elm to Q1\n`);
    expect(kinds(room)).toEqual([]);
    expect(room.stock.groups.get('Elm')?.members).toMatchObject([{ name: 'Bracken', gone: null, tank: 'C2' }]);
  });
  it('of a pair in two tanks is the one of its own tank', () => {
    const room = after('2026-03-01 A1: moved male to C2\n2026-03-02 Rowan: male sold for 20.00\n');
    expect([...(room.stock.groups.get('Rowan')?.parts.keys() ?? [])]).toEqual(['A1']);
    const dead = after('2026-03-01 A1: moved male to C2\n2026-03-02 Rowan: all died\n');
    expect(dead.stock.groups.get('Rowan')?.total).toMatchObject({ low: 0, high: 0 });
  });
});

describe('a promise', () => {
  const iris = '2026-03-01 A1: reserved 6 Rowan-1 until 2026-03-10 to "Iris"\n';
  const sold = (on: string, words: string): string => `${on} A1: sold ${words}\n`;
  it('is met by a sale to that buyer, however the name is written, till a fortnight after its last day', () => {
    expect(met(iris + sold('2026-03-09', '6 Rowan-1 to "Iris"'))).toEqual(['6-6 by 1']);
    expect(met(iris + sold('2026-03-24', '4 Rowan-1 to " iris "'))).toEqual(['4-4 by 1']);
    expect(met(iris + sold('2026-03-25', '4 Rowan-1 to "Iris"'))).toEqual(['0-0 by 0']);
    expect(met(iris.replace('"Iris"', '" IRIS"') + sold('2026-03-24', '4 Rowan-1 to "Iris"'))).toEqual(['4-4 by 1']);
  });
  it('of a group is met as well, and no other stock’s is', () => {
    const ash = '2026-03-01 C1: reserved 4 Ash until 2026-04-01 to "Iris"\n';
    expect(met(`${ash}2026-03-02 C1: sold 4 Ash to "Iris"\n`)).toEqual(['4-4 by 1']);
    expect(met(ash + sold('2026-03-02', '4 Rowan-1 to "Iris"'))).toEqual(['0-0 by 0']);
  });
  it('is not met by a sale to another, or to nobody', () => {
    expect(met(iris + sold('2026-03-09', '6 Rowan-1 to "Fen"'))).toEqual(['0-0 by 0']);
    expect(met(iris + sold('2026-03-09', '6 Rowan-1'))).toEqual(['0-0 by 0']);
  });
  it('takes no more than it promised, and the rest meets the next', () => {
    const next = '2026-03-02 A1: reserved 3 Rowan-1 until 2026-03-12 to "Iris"\n';
    expect(met(iris + next + sold('2026-03-09', '8 Rowan-1 to "Iris"'))).toEqual(['6-6 by 1', '2-2 by 1']);
    const twice = sold('2026-03-08', '6 Rowan-1 to "Iris"') + sold('2026-03-09', '2 Rowan-1 to "Iris"');
    expect(met(iris + next + twice)).toEqual(['6-6 by 1', '2-2 by 1']);
  });
  it('is met by a sale to «…» of its own tank and number before an older one that is not', () => {
    const rest = `2026-03-01 A1: Rowan-1 moved 20 to C2
2026-03-02 C2: reserved 6 Rowan-1 until 2026-04-10 to "Iris"
2026-03-03 A1: reserved 4 Rowan-1 until 2026-04-10 to "Fen"
2026-03-04 A1: reserved 6 Rowan-1 until 2026-04-10 to "Otto"
2026-03-05 A1: reserved 2 Rowan-1 until 2026-04-10
2026-03-06 Rowan-1: reserved 3 until 2026-04-10 to "Ode"
`;
    const none = Array.from({ length: 5 }, () => '0-0 by 0');
    const only = (at: number, text: string): string[] => none.map((one, index) => (index === at ? text : one));
    const line = (words: string): string => `${rest}2026-03-09 ${words}\n`;
    expect(met(line('A1: sold 6 Rowan-1 to "…"'))).toEqual(only(2, '6-6 by 1'));
    expect(buyers(line('A1: sold 6 Rowan-1 to "…"'))).toEqual(['Otto']);
    expect(met(line('C2: sold 6 Rowan-1 to "…"'))).toEqual(only(0, '6-6 by 1'));
    expect(met(line('A1: sold 2 Rowan-1 to "…"'))).toEqual(only(3, '2-2 by 1'));
    expect(buyers(line('A1: sold 2 Rowan-1 to "…"'))).toEqual([null]);
    expect(met(line('Rowan-1: sold 3 to "…"'))).toEqual(only(4, '3-3 by 1'));
    // No promise of its tank is of as many: the oldest one of the tank, then of the number, then of all.
    expect(met(line('A1: sold 3 Rowan-1 to "…"'))).toEqual(only(1, '3-3 by 1'));
    expect(met(line('C2: sold 3 Rowan-1 to "…"'))).toEqual(only(0, '3-3 by 1'));
    const twice = '2026-03-09 A1: sold 6 Rowan-1 to "…"\n2026-03-10 A1: sold 4 Rowan-1 to "…"\n';
    expect(buyers(`${rest}${twice}`)).toEqual(['Otto', 'Fen']);
  });
  it('gives its buyer to a sale to «…», and to no other', () => {
    expect(buyers(iris + sold('2026-03-09', '6 Rowan-1 to "…"'))).toEqual(['Iris']);
    expect(buyers(iris + sold('2026-03-09', '6 Rowan-1 to " ... "'))).toEqual(['Iris']);
    expect(buyers(iris + sold('2026-03-09', '6 Rowan-1 to "iris"'))).toEqual(['iris']);
    const open = '2026-03-01 A1: reserved 6 Rowan-1 until 2026-03-10\n';
    expect(buyers(open + sold('2026-03-09', '6 Rowan-1'))).toEqual([null]);
  });
});

describe('a promise to nobody in particular', () => {
  const six = '2026-03-01 A1: reserved 6 Rowan-1 until 2026-03-10\n';
  it('is met by a sale of as many to nobody in particular, while it stands', () => {
    expect(met(`${six}2026-03-10 A1: sold 6 Rowan-1\n`)).toEqual(['6-6 by 1']);
    expect(met(`${six}2026-03-11 A1: sold 6 Rowan-1\n`)).toEqual(['0-0 by 0']);
    expect(met(`${six}2026-03-08 A1: sold 6 Rowan-1\n2026-03-09 A1: sold 6 Rowan-1\n`)).toEqual(['6-6 by 1']);
  });
  it('is not met by another number, a guessed one, or a sale to somebody', () => {
    for (const words of ['5 Rowan-1', '7 Rowan-1', 'about 6 Rowan-1', '6 Rowan-1 to "Iris"'])
      expect([words, ...met(`${six}2026-03-09 A1: sold ${words}\n`)]).toEqual([words, '0-0 by 0']);
    const guess = '2026-03-01 A1: reserved about 6 Rowan-1 until 2026-03-10\n';
    expect(after(`${guess}2026-03-09 A1: sold 6 Rowan-1\n`).sale.reservations).toMatchObject([{ metBy: [] }]);
  });
});

describe('what is wanted', () => {
  const wish = '2026-03-01 room: wanted 6 krib at 20 mm by 2026-03-10 to "Iris"\n';
  const wants = (lines: string): string[] =>
    after(lines).sale.wants.map(
      ({ met: { low, high }, metBy }) => `${String(low)}-${String(high)} by ${String(metBy.length)}`,
    );
  it('is as many as the line says, else one at least', () => {
    expect(after(wish).sale.wants).toMatchObject([
      { species: 'krib', count: { low: 6, high: 6 }, to: 'Iris', metBy: [] },
    ]);
    const [any] = after('2026-03-01 room: wanted krib at 20 mm\n').sale.wants;
    expect(any?.count).toEqual({ low: 1, likely: null, high: Infinity });
  });
  it('is met by a sale of that species to that buyer, till the day by which it was wanted', () => {
    expect(wants(`${wish}2026-03-10 A1: sold 4 Rowan-1 to "iris"\n`)).toEqual(['4-4 by 1']);
    expect(wants(`${wish}2026-03-11 A1: sold 4 Rowan-1 to "Iris"\n`)).toEqual(['0-0 by 0']);
    expect(wants(`${wish}2026-03-10 A1: sold 4 Rowan-1 to "Fen"\n`)).toEqual(['0-0 by 0']);
    expect(wants(`${wish}2026-03-10 A1: sold 4 Rowan-1\n`)).toEqual(['0-0 by 0']);
    expect(wants(`${wish}2026-03-10 B1: sold 4 Pebble to "Iris"\n`)).toEqual(['0-0 by 0']);
    expect(wants(`${wish.replace(' by 2026-03-10', '')}2026-07-10 A1: sold 4 Rowan-1 to "Iris"\n`)).toEqual([
      '4-4 by 1',
    ]);
  });
  it('is met once: what goes to the buyer after that meets nothing', () => {
    const more = '2026-03-08 A1: sold 6 Rowan-1 to "Iris"\n2026-03-09 A1: sold 3 Rowan-1 to "Iris"\n';
    expect(wants(wish + more)).toEqual(['6-6 by 1']);
  });
});
