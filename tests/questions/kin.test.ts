/** Kin from a journal's text. Trap 18: blank records are not "unrelated", and fish that share a tank are no pair. */
import { describe, expect, test } from 'vitest';
import { dayFromIso } from '../../src/core/day.ts';
import { readJournal } from '../../src/language/read.ts';
import { kin, kinOfOne, kinOfTwo, kinWhy, type KinAnswer } from '../../src/questions/kin.ts';
import type { Room } from '../../src/state/draft.ts';
import { foldRoom } from '../../src/state/fold.ts';

const SETUP = `2026-01-01 room: units metric
2026-01-01 tank A1: 100 L; alone
2026-01-01 tank A2: 100 L; alone
2026-01-01 tank A3: 100 L; alone
2026-01-01 tank B1: 100 L; alone
2026-01-01 tank B2: 100 L; alone
2026-01-01 tank B3: 100 L; alone
2026-01-01 species krib: Pelvicachromis taeniatus; cave spawner
2026-01-01 species thomasi: Anomalochromis thomasi; substrate spawner
2026-01-01 pair Rowan: krib; male; female; in A1
2026-01-01 pair Sedge: krib; male; female; in A2
2026-01-02 A1: spawned, about 90 eggs
2026-01-02 A2: spawned, about 90 eggs
2026-01-12 A1: free-swimming, about 60
2026-01-12 A2: free-swimming, about 60
2026-02-12 A1: moved all Rowan-1 to B1
2026-02-12 A2: moved all Sedge-1 to B2
2026-02-13 B1: counted 40
2026-02-13 B2: counted 30
`;

function roomOf(more: string, on = '2027-03-01'): Room {
  const reading = readJournal('fishroom.txt', SETUP + more, () => ({ ok: false, says: 'no' }));
  const day = dayFromIso(on);
  if (day === null) throw new Error(on);
  const room = foldRoom(reading.events, day);
  expect([...reading.problems, ...room.problems].filter(({ weight }) => weight === 'stops')).toEqual([]);
  return room;
}

const couple = (answer: KinAnswer | null, name: string): KinAnswer['couples'][number]['kin'] | undefined =>
  answer?.couples.find((row) => row.name === name)?.kin;

describe('pairs', () => {
  test('nothing on record is told as that, never as unrelated', () => {
    const found = couple(kin(roomOf('')), 'Rowan');
    expect(found).toMatchObject({ f: { low: 0, high: 0 }, founders: 2, says: 'no shared parents on record' });
    expect(JSON.stringify(kin(roomOf('')))).not.toMatch(/unrelated(?! founders)/);
  });

  test('a pair formed from one brood: full sibs, their young 0.25, theirs again 0.375', () => {
    const room = roomOf(`2026-07-01 pair Alder: krib; male; female; in A3; from Rowan-1
2026-08-01 A3: spawned, about 40 eggs
2026-08-11 A3: free-swimming, about 30
2026-12-01 pair Beech: krib; male; female; in B3; from Alder-1
`);
    expect(couple(kin(room), 'Alder')).toMatchObject({
      f: { low: 0.25, high: 0.25 },
      founders: 2,
      shared: ['the male of Rowan', 'the female of Rowan'],
    });
    expect(couple(kin(room), 'Beech')?.f).toEqual({ low: 0.375, high: 0.375 });
    expect(kinOfOne(room, 'Alder-1')?.trees[0]?.tree.map(({ says }) => says)).toEqual([
      'Alder-1: young of Alder; F ≥ 0.25; 2 unknown founders',
      'the male of Alder: from Rowan-1; F ≥ 0; 2 unknown founders',
      'the male of Rowan: parents not on record',
      'the female of Rowan: parents not on record',
      'the female of Alder: from Rowan-1; F ≥ 0; 2 unknown founders',
      'from Alder-1 came Beech',
    ]);
  });

  test('half sibs over one male: first cousins where the female changes', () => {
    const room = roomOf(`2026-05-01 A1: female died
2026-05-02 A1: new female from Sedge-1
2026-06-01 A1: spawned, about 50 eggs
2026-06-11 A1: free-swimming, about 40
`);
    expect(kinOfTwo(room, 'Rowan-1', 'Rowan-2')?.couples[0]?.kin.f).toEqual({ low: 0.125, high: 0.125 });
    expect(kinOfTwo(room, 'Sedge-1', 'Rowan-2')?.couples[0]?.kin.f.low).toBe(0.125);
    expect(kinOfTwo(room, 'Rowan', 'Rowan-2')?.couples.map(({ kin: { f } }) => f.low)).toEqual([0.25, 0.25]);
  });

  test('a mate that came from another pair stays the same fish, with its earlier young', () => {
    const room = roomOf(`2026-05-01 A1: male died
2026-05-02 A1: new male from Sedge
2026-06-01 A1: spawned, about 50 eggs
2026-06-11 A1: free-swimming, about 40
`);
    expect(kinOfTwo(room, 'Sedge-1', 'Rowan-2')?.couples[0]?.kin).toMatchObject({
      f: { low: 0.125, high: 0.125 },
      shared: ['the male of Sedge'],
    });
  });

  test('a brood of a trio is of one of its females: a bound from below', () => {
    const room = roomOf(`2026-03-01 trio Holly: thomasi; male; females Wren and Pip; in A3
2026-04-01 A3: Wren spawned, about 80 eggs
2026-04-08 A3: Holly-1 free-swimming, about 50
2026-05-01 A3: moved all Holly-1 to B3
2026-06-01 A3: spawned, about 80 eggs
2026-06-08 A3: Holly-2 free-swimming, about 50
`);
    expect(kinOfTwo(room, 'Holly-1', 'Holly-2')?.couples[0]?.kin.f).toEqual({ low: 0.125, high: 0.25 });
  });

  test('fish of one purchase may be sibs, and so may fish of one line', () => {
    const room = roomOf(`2026-03-01 group Elm: thomasi; 6; in A3; from "a friend"
2026-04-01 pair Hazel: thomasi; male; female; in B3; from Elm
2026-04-02 group Oak: krib; 6; in A3; line "Moss river"
2026-04-03 group Ash: krib; 6; in B3; line "Moss river"
`);
    expect(couple(kin(room), 'Hazel')).toMatchObject({ f: { low: 0, high: 0 }, ifSibs: 0.25, founders: 2 });
    const lines = kinOfTwo(room, 'Oak', 'Ash')?.couples[0]?.kin;
    expect(lines).toMatchObject({ f: { low: 0, high: 0 }, ifSibs: 0.25, stems: ['the line "Moss river"'] });
    expect(couple(kin(room), 'Rowan')?.ifSibs).toBeNull();
  });

  test('mixed stocks stay one or the other', () => {
    const room = roomOf(`2026-03-01 B2: moved all Sedge-1 to B1
2026-03-02 B1: mixed Rowan-1 and Sedge-1
`);
    expect(kinOfTwo(room, 'Rowan-1 or Sedge-1', 'Rowan')?.couples[0]?.kin.f).toEqual({ low: 0, high: 0.25 });
  });

  // Wright's paths by hand: Alder and Beech are each one Rowan-1 × one Sedge-1, so their young are double first cousins:
  // four shared grandparents, each ½^(2+2+1) = 1/32, together 0.125; a Rowan-1 of Alder's other side 2 × ½^(1+2+1) = 0.125.
  test('a pair out of two broods is one of each, so crossed', () => {
    const room = roomOf(`2026-07-01 pair Alder: krib; male; female; in A3; from Rowan-1 and Sedge-1
2026-07-01 pair Beech: krib; male; female; in B3; from Rowan-1 and Sedge-1
2026-08-01 A3: spawned, about 40 eggs
2026-08-11 A3: free-swimming, about 30
2026-08-01 B3: spawned, about 40 eggs
2026-08-11 B3: free-swimming, about 30
2026-12-01 pair Cedar: krib; male; female; in A3; from Alder-1 and Beech-1
2026-12-01 pair Damson: krib; male; female; in B3; from Alder-1 and Rowan-1
`);
    expect(couple(kin(room), 'Alder')).toMatchObject({ f: { low: 0, high: 0 }, says: 'no shared parents on record' });
    const bought = roomOf(`2026-01-01 pair Rowan: krib; from "a friend"
2026-01-01 pair Sedge: krib; from "a friend"
2026-07-01 pair Alder: krib; male; female; in A3; from Rowan-1 and Sedge-1
`);
    expect(couple(kin(bought), 'Alder')).toMatchObject({ ifSibs: null, says: 'no shared parents on record' });
    expect(couple(kin(bought), 'Rowan')).toMatchObject({ ifSibs: 0.25 });
    expect(couple(kin(room), 'Cedar')?.f).toEqual({ low: 0.125, high: 0.125 });
    expect(couple(kin(room), 'Damson')?.f).toEqual({ low: 0.125, high: 0.125 });
  });

  test('two of one sex make no couple; an unknown name finds nothing', () => {
    const room = roomOf('2026-03-01 trio Holly: thomasi; male; females Wren and Pip; in A3\n');
    expect(kinOfTwo(room, 'Wren', 'Pip')?.couples).toEqual([]);
    expect(kinOfTwo(room, 'Wren', 'Nobody')).toBeNull();
    expect(kinOfOne(room, 'Nobody')).toBeNull();
  });

  test('what a later line says does not tell on an earlier day', () => {
    const later = '2026-07-01 pair Alder: krib; male; female; in A3; from Rowan-1\n';
    expect(couple(kin(roomOf(later, '2026-06-30')), 'Alder')).toBeUndefined();
  });
});

describe('lines', () => {
  test('a line that ends with either fish comes first; young or holdbacks carry it on', () => {
    const room = roomOf(`2026-03-01 pair Holly: thomasi; male; female; in A3
2026-03-02 B1: kept back 6 Rowan-1
`);
    expect(kin(room).lines.map(({ name, risk }) => [name, risk?.weight, risk?.says])).toEqual([
      ['Holly', 'ends', 'either: the line ends, no young, none kept back'],
      ['Rowan', 'thin', 'either: goes on in 6 kept back of Rowan-1'],
      ['Sedge', 'thin', 'either: goes on in 30 Sedge-1'],
    ]);
  });

  test('a single holdback is told, and breeders are counted over every pair of the line', () => {
    const room = roomOf(`2026-06-01 pair Alder: krib; male; female; in A3; from Rowan-1
2026-06-02 B2: kept back 1 Sedge-1
`);
    const [sedge, rowan] = kin(room).lines;
    expect(sedge?.risk?.says).toContain('a single holdback');
    expect(rowan).toMatchObject({ name: 'Rowan', males: 2, females: 2, ne: 4, deltaF: 0.125, risk: null });
  });
});

describe('pairings', () => {
  test('the least inbred first, one holdback at least, and no pair is broken up', () => {
    const room = roomOf('2026-03-02 B1: kept back 6 Rowan-1\n');
    expect(kin(room).pairings.map(({ one, other, kin: { f } }) => [one, other, f.low])).toEqual([
      ['Rowan-1', 'Sedge-1', 0],
      ['Rowan-1', 'Rowan-1', 0.25],
    ]);
  });

  test('a widowed fish is offered a mate', () => {
    const room = roomOf('2026-03-02 A1: male died\n');
    expect(kin(room).pairings[0]).toMatchObject({ other: 'the female of Rowan', kin: { f: { low: 0 } } });
  });
});

test('every row can be asked about', () => {
  const room = roomOf('2026-03-02 B1: kept back 6 Rowan-1\n');
  const rows = kinWhy(room);
  const { couples, lines, pairings } = kin(room);
  const ids = [...couples, ...lines, ...pairings].map(({ id }) => id);
  expect(rows.map(({ id }) => id)).toEqual(expect.arrayContaining(ids));
  expect(new Set(ids).size).toBe(ids.length);
  for (const { because, lines: refs } of rows) {
    expect(because.steps.length).toBeGreaterThan(0);
    expect(refs.length).toBeGreaterThan(0);
  }
});
