/** What a line about a group tells beside its fish, what a second line changes, and who comes, goes and parts. */
import { describe, expect, it } from 'vitest';
import { isoDay } from '../../src/core/day.ts';
import type { SeenGroup } from '../../src/state/bodies.ts';
import type { Room } from '../../src/state/draft.ts';
import { journalOn } from '../support/journal.ts';

const after = (lines: string): Room => journalOn('2026-08-01', lines);
function group(room: Room, name = 'Birch'): SeenGroup {
  const found = room.stock.groups.get(name);
  if (!found) throw new Error(`${name} is missing`);
  return found;
}
const kinds = (room: Room): string[] => room.problems.map(({ kind }) => kind);
/** Its fish as `male 70 C2`, `Fern gone`. */
const fish = (room: Room, name = 'Birch'): string[] =>
  group(room, name).members.map(({ sex, name: own, size, tank, gone }) =>
    [own ?? sex ?? 'one', size?.low, gone === null ? tank : 'gone'].filter((word) => word !== undefined).join(' '),
  );
const moves = (room: Room): string[] =>
  room.stock.moves.map(({ body, from, to, count }) => `${String(count.low)} ${body} ${from ?? ''} to ${to}`);
const born = (room: Room, name: string): (string | null)[] => {
  const { low, likely, high } = group(room, name).born ?? { low: null, likely: null, high: null };
  return [low, likely, high].map((day) => day && isoDay(day));
};

const ASH =
  '2026-03-01 group Elm: krib; 8; size 20 mm; in Q1; age 8 weeks; line "Moss river"; from "a friend" at 3.00\n';

describe('a line about a group', () => {
  it('tells its age, line, origin, size and price', () => {
    const room = after(ASH);
    expect(group(room, 'Elm')).toMatchObject({ line: 'Moss river', from: 'a friend', species: 'krib', home: 'Q1' });
    expect(born(room, 'Elm')).toEqual(['2026-01-04', '2026-01-04', '2026-01-04']);
    expect(group(room, 'Elm').sizes).toMatchObject([{ tank: 'Q1', sizes: { values: [{ low: 20 }] }, replaced: false }]);
    expect(room.sale.purchases).toMatchObject([
      { group: 'Elm', species: 'krib', tank: 'Q1', from: 'a friend', count: { low: 8, high: 8 }, price: { amount: 3 } },
    ]);
  });
  it('of an age that is not certain gives a window of days', () => {
    expect(born(after('2026-03-01 group Elm: krib; 8; in Q1; age 8-10 weeks\n'), 'Elm')).toEqual([
      '2025-12-21',
      '2025-12-28',
      '2026-01-04',
    ]);
  });
  it('that tells nothing of the kind leaves it open', () => {
    const room = after('2026-03-01 group Elm: krib; 8; in Q1\n');
    expect(group(room, 'Elm')).toMatchObject({ line: null, from: null, born: null, sizes: [] });
    expect(room.sale.purchases).toEqual([]);
  });
  it('said again keeps what it does not say, and replaces what it does', () => {
    const kept = after(`${ASH}2026-04-01 group Elm: krib; in Q1\n`);
    expect(group(kept, 'Elm')).toMatchObject({ line: 'Moss river', from: 'a friend', total: { low: 8, high: 8 } });
    expect(born(kept, 'Elm')[0]).toBe('2026-01-04');
    const other = after(`${ASH}2026-04-01 group Elm: limia; in Q1; line "Fen"; from "a club"; age 20 weeks\n`);
    expect(group(other, 'Elm')).toMatchObject({ line: 'Fen', from: 'a club', species: 'limia' });
    expect(born(other, 'Elm')[0]).toBe('2025-11-12');
  });
  it('that gives no number means those it names, three and more of a harem, one and more of the others', () => {
    const total = (words: string): unknown => group(after(`2026-03-01 ${words}; in C2\n`)).total;
    expect(total('harem Birch: krib; male; females Gorse and Ling')).toEqual({ low: 3, likely: 3, high: 3 });
    expect(total('harem Birch: krib; male; females Gorse, Ling and Broom')).toMatchObject({ low: 4, high: 4 });
    expect(total('harem Birch: krib; male; female Gorse')).toEqual({ low: 3, likely: null, high: Infinity });
    expect(total('group Birch: krib; male; females Gorse and Ling')).toEqual({ low: 3, likely: null, high: Infinity });
    expect(total('group Birch: krib')).toEqual({ low: 1, likely: null, high: Infinity });
    expect(total('pair Birch: krib; male; female')).toEqual({ low: 2, likely: 2, high: 2 });
  });
});

describe('fish that a later line tells more of', () => {
  const birch = '2026-02-01 pair Birch: krib; male 70 mm; female 55 mm; in C2\n';
  it('keep their size unless it says another, and get their names', () => {
    const room = after(`${birch}2026-03-01 pair Birch: krib; male Bran 74 mm; female Fay; in C2\n`);
    expect(fish(room)).toEqual(['Bran 74 C2', 'Fay 55 C2']);
    expect(fish(after(`${birch}2026-03-01 pair Birch: krib; male; female; in C2\n`))).toEqual([
      'male 70 C2',
      'female 55 C2',
    ]);
  });
  it('that have a name are known by it', () => {
    const named = '2026-02-01 trio Birch: krib; male; female Fay 50 mm; female Gorse 52 mm; in C2\n';
    const room = after(`${named}2026-03-01 trio Birch: krib; female Gorse 58 mm; in C2\n`);
    expect(fish(room)).toEqual(['male C2', 'Fay 50 C2', 'Gorse 58 C2']);
  });
  it('are never those that died: a new name is a new fish', () => {
    const room = after(`${birch}2026-02-10 C2: male died\n2026-03-01 pair Birch: krib; male Bran; female; in C2\n`);
    expect(fish(room)).toEqual(['male 70 gone', 'female 55 C2', 'Bran C2']);
    const again = after(
      `2026-02-01 pair Birch: krib; male Bran; female; in C2\n2026-02-10 C2: Bran died\n2026-03-01 pair Birch: krib; male Bran; female; in C2\n`,
    );
    expect(fish(again)).toEqual(['Bran gone', 'female C2', 'Bran C2']);
  });
  it('of a sex that the group had none of are added, of one that it has are the same', () => {
    const elm = '2026-02-01 group Birch: krib; 3; male; in C2\n';
    expect(fish(after(`${elm}2026-03-01 group Birch: krib; male; female; in C2\n`))).toEqual(['male C2', 'female C2']);
    const named = '2026-02-01 group Birch: krib; 3; male Bran; in C2\n';
    expect(fish(after(`${named}2026-03-01 group Birch: krib; male; in C2\n`))).toEqual(['Bran C2']);
  });
});

describe('a group that a later line puts into another tank', () => {
  const birch = '2026-02-01 trio Birch: krib; male; females Fay and Gorse; in C2\n';
  it('moves there with those that were at home, and no others', () => {
    const room = after(`${birch}2026-02-10 C2: moved Fay to Q1\n2026-03-01 trio Birch: krib; in A1\n`);
    expect(fish(room)).toEqual(['male A1', 'Fay Q1', 'Gorse A1']);
    expect(moves(room)).toEqual(['1 Birch C2 to Q1', '2 Birch C2 to A1']);
    expect(Object.fromEntries(group(room).parts)).toMatchObject({ A1: { low: 2 }, Q1: { low: 1 } });
  });
  it('stays where the line says the same tank, or none', () => {
    for (const words of ['in C2', 'line "Fen"']) {
      const room = after(`${birch}2026-03-01 trio Birch: krib; ${words}\n`);
      expect(moves(room)).toEqual([]);
      expect(group(room)).toMatchObject({ home: 'C2', upset: null, total: { low: 3, high: 3 } });
    }
  });
});

describe('fish that change tanks without a word of a move', () => {
  const swim = '2026-02-02 A1: Rowan spawned\n2026-02-12 A1: free-swimming, 40\n2026-02-20 A1: Rowan-1 counted 40\n';
  it('are told as moved: a new group from a brood, a new mate from another group', () => {
    const made = after(`${swim}2026-06-01 group Elm: krib; 6; from Rowan-1; in C2\n`);
    expect(moves(made)).toEqual(['6 Elm A1 to C2']);
    expect(group(made, 'Elm').parentsFrom).toEqual(['Rowan-1']);
    const again = `${swim}2026-06-01 group Elm: krib; 6; from Rowan-1; in C2\n2026-06-02 group Elm: krib; in C2\n`;
    expect(group(after(again), 'Elm').parentsFrom).toEqual(['Rowan-1']);
    const here = after(`${swim}2026-06-01 group Elm: krib; 6; from Rowan-1; in A1\n`);
    expect(moves(here)).toEqual([]);
    const mate = after('2026-03-01 A1: male died\n2026-03-02 A1: new male from Sedge\n');
    expect(moves(mate)).toEqual(['1 Rowan A2 to A1']);
  });
  it('of which there are too few are not taken: nothing moved', () => {
    const room = after(`${swim}2026-06-01 group Elm: krib; 60; from Rowan-1; in C2\n`);
    expect(kinds(room)).toEqual(['more-out-than-in']);
    expect(moves(room)).toEqual([]);
  });
});

describe('the bond of a pair', () => {
  const bond = (lines: string): unknown[] => {
    const { bond: now, bonded, disputes } = group(after(lines), 'Rowan');
    return [now, bonded !== null, disputes.map(({ ended }) => ended?.how ?? 'open')];
  };
  it('outlives a rest, and no split', () => {
    expect(bond('2026-03-01 A1: bonded\n2026-03-05 A1: resting\n')).toEqual(['resting', true, []]);
    expect(bond('2026-03-01 A1: bonded\n2026-03-05 A1: split up\n')).toEqual(['split up', false, []]);
    expect(bond('2026-03-05 A1: resting\n')).toEqual(['resting', false, []]);
  });
  it('that rests or splits up ends the dispute', () => {
    expect(bond('2026-03-01 A1: chasing\n2026-03-02 A1: resting\n')).toEqual(['resting', false, ['separated']]);
    expect(bond('2026-03-01 A1: chasing\n2026-03-02 A1: split up\n')).toEqual(['split up', false, ['separated']]);
    expect(bond('2026-03-01 A1: chasing\n2026-03-02 A1: bonded\n')).toEqual(['bonded', true, ['open']]);
  });
  it('of nobody is told and changes nothing', () => {
    const lines = ['bonded', 'split up', 'resting', 'male back', 'new male'].map((word) => `2026-03-01 Q1: ${word}\n`);
    expect(kinds(after(lines.join('')))).toEqual(lines.map(() => 'no-such-fish'));
  });
});

describe('a fish that comes back', () => {
  const two = '2026-03-01 A2: moved Fern to Q1\n2026-03-02 A2: moved Lark to C2\n';
  it('is the one that the line names, from where it was', () => {
    const room = after(`${two}2026-03-05 A2: Fern back\n`);
    expect(fish(room, 'Sedge').sort()).toEqual(['Fern A2', 'Lark C2', 'male A2']);
    expect(moves(room).at(-1)).toBe('1 Sedge Q1 to A2');
    expect(group(room, 'Sedge').upset).toMatchObject({ how: 'member back' });
  });
  it('that was at home all the time moves nowhere', () => {
    const room = after('2026-03-05 A2: Fern back\n');
    expect(moves(room)).toEqual([]);
    expect(Object.fromEntries(group(room, 'Sedge').parts)).toMatchObject({ A2: { low: 3, high: 3 } });
  });
  it('without a name must be one of a sex that is away alone', () => {
    const room = after('2026-03-01 A2: moved Fern to Q1\n2026-03-05 A2: female back\n');
    expect(kinds(room)).toEqual([]);
    expect(fish(room, 'Sedge').sort()).toEqual(['Fern A2', 'Lark A2', 'male A2']);
  });
});

describe('a new mate', () => {
  const widowed = '2026-03-01 A1: female died\n';
  it('leaves the group that it came from, one of its sex alone', () => {
    const heath = '2026-02-03 harem Heath: krib; male; 2 females; in C2\n';
    const room = after(`${heath}${widowed}2026-03-02 A1: new female from Heath\n`);
    expect(fish(room, 'Heath')).toEqual(['male C2', 'female gone', 'female C2']);
    expect(group(room, 'Rowan').members.at(-1)).toMatchObject({ sex: 'female', joined: { from: 'Heath' } });
    const male = after('2026-03-01 A1: male died\n2026-03-02 A1: new male from Sedge\n');
    expect(fish(male, 'Sedge')).toEqual(['male gone', 'Fern A2', 'Lark A2']);
  });
  it('of several with names must be told by name: nobody is taken by chance', () => {
    const room = after(`${widowed}2026-03-02 A1: new female from Sedge\n`);
    expect(kinds(room)).toEqual(['which-member']);
    expect(fish(room, 'Sedge')).toEqual(['male A2', 'Fern A2', 'Lark A2']);
    expect(group(room, 'Rowan').total).toMatchObject({ low: 1, high: 1 });
    const lark = after(`${widowed}2026-03-02 A1: new female Lark from Sedge\n`);
    expect(kinds(lark)).toEqual([]);
    expect(fish(lark, 'Sedge')).toEqual(['male A2', 'Fern A2', 'Lark gone']);
    expect(fish(lark, 'Rowan').at(-1)).toBe('Lark A1');
  });
  it('of a brood leaves the brood', () => {
    const swim = '2026-02-02 A2: Fern spawned\n2026-02-12 A2: free-swimming, 40\n2026-02-20 A2: Sedge-1 counted 40\n';
    const room = after(`${swim}2026-06-01 A1: female died\n2026-06-02 A1: new female from Sedge-1\n`);
    expect(room.stock.broods.get('Sedge-1')?.total).toMatchObject({ low: 39, high: 39 });
    expect(group(room, 'Rowan').total).toMatchObject({ low: 2, high: 2 });
  });
  it('beside one of that sex is a doubt in a pair, while that one is at home', () => {
    expect(kinds(after('2026-03-02 A1: new female\n'))).toEqual(['two-mates']);
    expect(kinds(after('2026-03-01 A1: moved the female to Q1\n2026-03-02 A1: new female\n'))).toEqual([]);
    expect(kinds(after('2026-03-02 A2: new female\n'))).toEqual([]);
  });
});
