/** What is promised too often, offered and wanted: each row, its order, and what it rests on. */
import { describe, expect, it } from 'vitest';
import { readJournal } from '../../../src/language/read.ts';
import { promises, promisesWhy } from '../../../src/questions/promises.ts';
import { promisedTooMany } from '../../../src/questions/promises/over.ts';
import { priceList } from '../../../src/questions/promises/pricelist.ts';
import type { Room } from '../../../src/state/draft.ts';
import { foldRoom } from '../../../src/state/fold.ts';
import { day } from '../../support/events.ts';
import { journalOn } from '../../support/journal.ts';
import { NO_FILES, ROOM } from '../../support/lines.ts';

const YOUNG = `2026-01-02 species krib: sale at 12 weeks; price 6.00
2026-02-02 A1: spawned
2026-02-12 A1: free-swimming
2026-03-01 A1: moved all Rowan-1 to C2
2026-04-28 C2: Rowan-1 counted 40
`;
const after = (lines: string, on = '2026-05-01'): Room => journalOn(on, YOUNG + lines);

describe('promised too often', () => {
  const kept = '2026-04-29 C2: kept back 30 Rowan-1\n';
  const reserved = (count: number): string =>
    `2026-04-29 C2: reserved ${String(count)} Rowan-1 until 2026-06-01 to "Iris"\n`;
  const over = (lines: string) => promises(after(lines)).over;
  it('is more than are surely there, of which some are reserved', () => {
    expect(over(kept + reserved(10))).toEqual([]);
    expect(over(kept + reserved(11))).toMatchObject([{ stock: 'Rowan-1', sure: 40, promised: 41 }]);
    expect(over(`${kept}2026-04-29 C2: kept back 20 Rowan-1\n`)).toEqual([]);
  });
  it('is told in numbers', () => {
    const [row] = over(kept + reserved(11));
    expect(row?.because.steps).toEqual(['40 Rowan-1: 40 fish surely', '30 kept back and 11 reserved: 41']);
    expect(row?.because.source).toBe('the journal');
  });
  it('of a mix counts once what was promised of its parts', () => {
    const mixed = `2026-02-02 A2: Fern spawned brood Sedge-1
2026-02-12 A2: free-swimming
2026-04-01 A2: moved all Sedge-1 to C2
2026-04-02 C2: Sedge-1 counted 10
2026-04-03 C2: reserved 45 Rowan-1 until 2026-06-01 to "Iris"
2026-04-03 C2: reserved 5 Sedge-1 until 2026-06-01 to "Fen"
2026-04-04 C2: mixed Rowan-1 and Sedge-1
`;
    const rows = promises(journalOn('2026-05-01', `${YOUNG.replace('2026-04-28', '2026-04-02')}${mixed}`)).over;
    expect(rows.map(({ stock, promised }) => [stock, promised])).toEqual([]);
    const more = `${mixed}2026-04-05 C2: reserved 1 Rowan-1 until 2026-06-01 to "Iris"\n`;
    const [row, ...others] = promises(
      journalOn('2026-05-01', `${YOUNG.replace('2026-04-28', '2026-04-02')}${more}`),
    ).over;
    expect(others).toEqual([]);
    expect([row?.stock, row?.sure, row?.promised]).toEqual(['Rowan-1 or Sedge-1', 50, 51]);
  });
});

describe('a new line that promises too much', () => {
  const tried = (line: string): string[] => {
    const { events } = readJournal('fishroom.txt', ROOM + YOUNG + line, NO_FILES);
    const room = foldRoom(events, day('2026-05-01'));
    const last = Math.max(...events.map(({ place }) => place.line));
    return promisedTooMany(
      room,
      events.filter(({ place }) => place.line === last),
    ).map(({ says }) => says);
  };
  const reserve = (count: number, of = 'Rowan-1', where = 'C2'): string =>
    `2026-05-01 ${where}: reserved ${String(count)} ${of} until 2026-06-01 to "Iris"\n`;
  it('is told with what is kept and reserved already', () => {
    expect(tried(reserve(40))).toEqual([]);
    expect(tried(reserve(41))).toEqual(['with this line 41 reserved of Rowan-1, but surely only 40 are alive']);
    expect(tried(`2026-04-29 C2: kept back 5 Rowan-1\n${reserve(36)}`)).toEqual([
      'with this line 36 reserved and 5 kept back of Rowan-1, but surely only 40 are alive',
    ]);
    expect(tried(reserve(13, 'Ash', 'C1'))).toEqual([
      'with this line 13 reserved of Ash, but surely only 12 are alive',
    ]);
  });
  it('is only a line that reserves, of fish that were found', () => {
    expect(tried(`${reserve(41)}2026-05-01 C2: kept back 5 Rowan-1\n`)).toEqual([]);
    expect(tried('2026-05-01 Q1: reserved 5 until 2026-06-01 to "Iris"\n')).toEqual([]);
  });
});

describe('the price list', () => {
  const yew = `2026-01-03 species yew: sale at 8 weeks; price 3.00
2026-04-01 group Elm: yew; 6; in Q1; age 20 weeks; line "Fen"
2026-04-01 group Oak: krib; 9; in C1; age 20 weeks; line "Fen"
`;
  const offered = (lines: string): unknown[] =>
    priceList(after(lines)).offered.map(({ stock, latin, count, price }) => [stock, latin, count, price?.amount]);
  it('has what is ready, by its Latin name, then its own', () => {
    expect(offered(yew)).toEqual([
      ['Oak', 'Pelvicachromis taeniatus', 9, 6],
      ['Rowan-1', 'Pelvicachromis taeniatus', 40, 6],
      ['Elm', null, 6, 3],
    ]);
  });
  it('has nothing that is held, spoken for or too young', () => {
    expect(offered('2026-04-29 C2: kept back 40 Rowan-1\n')).toEqual([]);
    expect(offered('2026-05-01 C2: hold "velvet"\n')).toEqual([]);
    expect(priceList(journalOn('2026-04-20', YOUNG)).offered).toEqual([]);
  });
  it('takes a hold for over on no day but its own: today', () => {
    expect(priceList(after('2026-03-01 C2: hold "velvet"\n')).offered).toEqual([]);
  });
});

describe('what is wanted', () => {
  const wish = (count: number, by: string, on: string, to: string): string =>
    `${on} room: wanted ${String(count)} krib${by} to "${to}"\n`;
  const rows = (lines: string) => promises(after(lines)).wanted;
  it('is met in the order of its days, the soonest first; of one day by who asked first; of no day last', () => {
    const lines =
      wish(10, '', '2026-04-01', 'Fen') +
      wish(30, ' by 2026-06-01', '2026-04-10', 'Iris') +
      wish(8, ' by 2026-05-20', '2026-04-20', 'Otto') +
      wish(5, ' by 2026-06-01', '2026-04-05', 'Yew');
    expect(rows(lines).map(({ to, short }) => [to, short])).toEqual([
      ['Otto', 0],
      ['Yew', 0],
      ['Iris', 3],
      ['Fen', 10],
    ]);
  });
  it('matches no stock of another species, and leaves what earlier wants take', () => {
    const two = wish(30, ' by 2026-05-10', '2026-04-01', 'Fen') + wish(20, ' by 2026-05-20', '2026-04-02', 'Iris');
    expect(
      rows(two).map(({ matches }) => matches.map(({ stock, free, takes, ready }) => [stock, free, takes, ready])),
    ).toEqual([[['Rowan-1', 40, 30, true]], [['Rowan-1', 10, 10, true]]]);
    expect(rows('2026-04-01 room: wanted 5 limia by 2026-06-01\n')).toMatchObject([{ matches: [], short: 5 }]);
    expect(promises(after('')).wanted).toEqual([]);
  });
  it('counts of a lot that is ready in part those as well that will have their size by then', () => {
    const growing = `2026-01-02 species krib: cave spawner; sale at 35 mm
2026-01-10 A1: spawned, about 90 eggs
2026-01-19 A1: free-swimming, about 70
2026-04-20 A1: Rowan-1 counted 60
2026-05-01 A1: Rowan-1 size 30-38 mm
`;
    const met = (by: string) =>
      promises(journalOn('2026-05-09', `${growing}2026-05-02 room: wanted 30 krib by ${by}\n`)).wanted.map(
        ({ matches, short }) => [...matches.map(({ takes, ready }) => [takes, ready]), short],
      );
    // 13 of them have 35 mm today; six weeks on the other 17 are there as well.
    expect(met('2026-06-20')).toEqual([[[13, true], [17, false], 0]]);
    expect(met('2026-05-09')).toEqual([[[13, true], 17]]);
  });
  it('at a length is met by fish that most likely have it', () => {
    const sized = '2026-05-01 C2: Rowan-1 average 26 mm\n';
    const takes = (mm: number): number[] =>
      rows(`${sized}2026-04-01 room: wanted 5 krib at ${String(mm)} mm by 2026-05-02\n`).flatMap(({ matches }) =>
        matches.map((match) => match.takes),
      );
    expect([takes(20), takes(25), takes(40)]).toEqual([[5], [5], []]);
  });
  it('is told as what nothing meets, or what is short', () => {
    const [some] = rows(wish(50, ' by 2026-05-10', '2026-04-01', 'Fen'));
    expect(some?.because.steps).toEqual([
      '50 krib wanted since 1 Apr, by 10 May',
      'Rowan-1 in C2: 40 of 40, from 1 May',
      '10 short',
    ]);
    const [none] = rows('2026-04-01 room: wanted 5 limia at 20 mm\n');
    expect(none?.because.steps).toEqual([
      '5 limia at 20 mm wanted since 1 Apr',
      'nothing in the room meets it in time',
    ]);
  });
  it('is met by what will be ready on its day, and not by what will be later', () => {
    const early = (lines: string) => promises(after(lines, '2026-04-28')).wanted.map(({ matches }) => matches);
    const age =
      '2026-04-10 group Oak: krib; 9; in C1; age 10 weeks; line "Fen"\n2026-01-02 species krib: sale at 14 weeks\n';
    // 14 weeks after birth on 30 January: 8 May.
    expect(early(`${age}${wish(5, ' by 2026-05-08', '2026-04-11', 'Fen')}`)).toMatchObject([
      [{ stock: 'Oak', takes: 5, ready: false, from: day('2026-05-08') }],
    ]);
    expect(early(`${age}${wish(5, ' by 2026-05-07', '2026-04-11', 'Fen')}`)).toEqual([[]]);
    const now = promises(after(`${age}${wish(5, ' by 2026-05-08', '2026-04-11', 'Fen')}`, '2026-04-28'), {
      forecast: false,
    });
    expect(now.wanted).toMatchObject([{ matches: [], short: 5 }]);
  });
});

describe('what `why` prints', () => {
  it('is a row for each reservation, want and stock promised too often', () => {
    const lines = `2026-04-29 C2: reserved 45 Rowan-1 until 2026-06-01 to "Iris"
2026-04-29 C1: reserved 2 Ash until 2026-06-01 to "Iris"
2026-04-29 C2: reserved 1 Rowan-1 until 2026-06-02 to "Fen"
2026-04-30 room: wanted 5 limia
`;
    const rows = promisesWhy(after(lines));
    expect(rows.map(({ id, title }) => [id, title])).toEqual([
      ['rowan-1-reserved-2026-04-29', '45 Rowan-1 reserved'],
      ['ash-reserved-2026-04-29', '2 Ash reserved'],
      ['rowan-1-reserved-2026-04-29-2', '1 Rowan-1 reserved'],
      ['limia-wanted-2026-04-30', 'limia wanted'],
      ['rowan-1-promised-too-often', 'Rowan-1 promised too often'],
    ]);
    for (const { because, lines: places } of rows)
      expect([because.steps.length > 0, places.length > 0]).toEqual([true, true]);
  });
});
