/** What stands in the way of a sale, until which day, on which lines; and from which tank promises are taken. */
import { describe, expect, test } from 'vitest';
import { isoDay } from '../../../src/core/day.ts';
import { sale, type Lot } from '../../../src/questions/sale.ts';
import { journalRoom } from '../../support/journal.ts';
import { ROOM } from '../../support/lines.ts';

/** Thirty young of the pair in A1, old enough on 24 April: 20 in C2, alone, and 10 in A2, on the loop with A1. */
const BROOD = `${ROOM}2026-01-01 tank D1: 54 L; alone
2026-01-01 species krib: sale at 35 mm or 16 weeks
2026-01-02 A1: spawned
2026-01-12 A1: free-swimming, 30
2026-02-01 A1: Rowan-1 moved 20 to C2
2026-02-01 A1: Rowan-1 moved 10 to A2
`;
const BEFORE = BROOD.split('\n').length - 1;

function lotIn(tank: string, on: string, lines = '', ahead = 0): Lot {
  const { lots } = sale(journalRoom(on, BROOD + lines), { ahead, auction: null, projected: false });
  const [lot, ...more] = lots.filter((one) => one.tank === tank && one.stock !== 'Ash');
  if (lot === undefined || more.length > 0) throw new Error(`${String(more.length)} more lots in ${tank}`);
  return lot;
}
/** Why, until when, and the lines after those of the brood. */
const stands = ({ blockers }: Lot): string[] =>
  blockers.map(({ why, until, lines }) =>
    [why, until === null ? '?' : isoDay(until), lines.map(({ line }) => line - BEFORE).join()].join(' | '),
  );
const from = (lot: Lot): string | null => (lot.from === null ? null : isoDay(lot.from));

describe('what stands in the way', () => {
  test('their age, until the day on which the first are surely old enough', () => {
    const [young, ...others] = stands(lotIn('C2', '2026-04-23'));
    expect(others).toEqual([]);
    expect(young).toMatch(/^too young: 35 mm or 16 weeks, the first 24 Apr \| 2026-04-24 \| .*-3$/);
    expect(from(lotIn('C2', '2026-04-01'))).toBe('2026-04-24');
    expect(stands(lotIn('C2', '2026-04-24'))).toEqual([]);
  });

  test('a sickness, asked about until it is answered; then 28 days', () => {
    const sick = '2026-05-09 C2: sick "white spot"\n';
    expect(stands(lotIn('C2', '2026-05-10', sick))).toEqual(['sick: white spot; say whether it is catching | ? | 1']);
    const catching = `${sick}2026-05-09 C2: catching\n`;
    expect(stands(lotIn('C2', '2026-05-10', catching))).toEqual(['sick: white spot, catching | 2026-06-06 | 1']);
    expect(lotIn('C2', '2026-05-10', catching, 26).ready).toBe(false);
    expect(lotIn('C2', '2026-05-10', catching, 27).ready).toBe(true);
  });

  test('a treatment, in every tank on its water', () => {
    const treated = '2026-05-09 A1: treated salt 10 g\n';
    expect(stands(lotIn('A2', '2026-05-10', treated))).toEqual([
      'treated: salt, dosed in A1, 14 days from the last dose | 2026-05-23 | 1',
    ]);
    expect(stands(lotIn('C2', '2026-05-10', treated))).toEqual([]);
    expect(stands(lotIn('C2', '2026-05-10', treated.replace('A1', 'C2')))).toEqual([
      'treated: salt, 14 days from the last dose | 2026-05-23 | 1',
    ]);
  });

  test('a quarantine, until its last day is over', () => {
    const kept = '2026-05-09 C2: quarantine 10 days\n';
    expect(stands(lotIn('C2', '2026-05-18', kept))).toEqual(['in quarantine since 9 May | 2026-05-19 | 1']);
    expect(lotIn('C2', '2026-05-10', kept, 9).ready).toBe(true);
    expect(lotIn('C2', '2026-05-10', kept, 8).ready).toBe(false);
  });

  test('a hold, with the way that it came, and past its days until a line ends it', () => {
    const hold = '2026-05-01 C2: hold "velvet"\n';
    expect(stands(lotIn('C2', '2026-05-28', hold))).toEqual(['on hold: velvet | 2026-05-29 | 1']);
    expect(stands(lotIn('C2', '2026-05-29', hold))).toEqual([
      'on hold: velvet; no sign for 28 days: jot C2: hold over | ? | 1',
    ]);
    expect(lotIn('C2', '2026-05-10', hold, 19).ready).toBe(true);
    expect(lotIn('C2', '2026-05-10', hold, 18).ready).toBe(false);
    const [beside] = stands(lotIn('A2', '2026-05-10', hold.replace('C2', 'A1')));
    expect(beside).toMatch(/^on hold: velvet \(shares the water of Long with A1\) \| 2026-05-29 \| 1(,-\d+)+$/);
  });

  test('all of it: from the latest day, or from none that is known', () => {
    const two = '2026-05-09 C2: treated salt 10 g; quarantine 10 days\n';
    expect(from(lotIn('C2', '2026-05-10', two))).toBe('2026-05-23');
    expect(from(lotIn('C2', '2026-05-10', two.replace('10 days', '20 days')))).toBe('2026-05-29');
    expect(from(lotIn('C2', '2026-05-10', `${two}2026-05-09 C2: sick "white spot"\n`))).toBeNull();
  });

  test('a group of which nobody wrote species, source, age or length', () => {
    expect(stands(lotIn('D1', '2026-05-10', '2026-03-01 group Elm: 12; in D1\n'))).toEqual([
      'no species is named, so no sale size | ? | 1',
      'no line or source written | ? | 1',
    ]);
    expect(stands(lotIn('D1', '2026-05-10', '2026-03-01 group Elm: krib; 12; in D1; from "a friend"\n'))).toEqual([
      'no age or length written | ? | 1',
    ]);
  });

  test('no line or source, unless the group has one: a name of its line, whom it came from, its parents', () => {
    const group = (more: string): string[] =>
      stands(lotIn('D1', '2026-05-10', `2026-03-01 group Elm: krib; 12; in D1; age 16 weeks${more}\n`));
    expect(group('')).toEqual(['no line or source written | ? | 1']);
    expect(group('; line "Moss river"')).toEqual([]);
    expect(group('; from "a friend"')).toEqual([]);
    expect(stands(lotIn('D1', '2026-05-10', '2026-03-01 D1: bought 6 krib at 4.00 each\n'))).toContain(
      'no line or source written | ? | 1',
    );
    const grown = '2026-02-02 C2: Rowan-1 counted 20\n2026-03-01 group Elm: krib; 2; in D1; from Rowan-1\n';
    expect(lotIn('D1', '2026-05-10', grown).blockers.map(({ kind }) => kind)).toEqual(['size']);
  });

  test('nothing where two broods of known parents were mixed; the species, where they are of two', () => {
    const sedge = `2026-01-02 A2: Fern spawned
2026-01-12 A2: Sedge-1 free-swimming, 80
2026-02-01 A2: Sedge-1 moved all to C2
2026-03-01 C2: mixed Rowan-1 and Sedge-1
`;
    const mix = lotIn('C2', '2026-05-10', sedge);
    expect([mix.stock, mix.count.low, mix.free, mix.ready, stands(mix)]).toEqual([
      'Rowan-1 or Sedge-1',
      100,
      100,
      true,
      [],
    ]);
    const two = `2026-03-01 group Elm: limia; 12; in C2; age 16 weeks; line "Moss river"
2026-03-01 C2: mixed Rowan-1 and Elm
`;
    expect(stands(lotIn('C2', '2026-05-10', two))).toEqual(['no species is named, so no sale size | ? | 2']);
  });

  test('of a mix the age of its youngest, and every promise of a brood that went into it whole', () => {
    const young = `2026-02-10 A2: Fern spawned
2026-02-20 A2: Sedge-1 free-swimming, 40
2026-03-20 A2: Sedge-1 moved all to C2
2026-03-21 C2: reserved 5 Sedge-1 until 2026-08-01
2026-03-21 C2: kept back 3 Sedge-1
2026-03-22 C2: mixed Rowan-1 and Sedge-1
`;
    const may = lotIn('C2', '2026-05-10', young);
    expect(may.ready).toBe(false);
    expect(stands(may)[0]).toMatch(/^too young: 35 mm or 16 weeks, the first .* 2 Jun \| 2026-06-02 \| /);
    const june = lotIn('C2', '2026-06-05', young);
    expect([june.count.low, june.keptBack, june.reserved]).toEqual([60, 3, 5]);
  });

  test('a colony of which nobody said how many must stay; it breeds its own and needs no source', () => {
    const colony = (lines = ''): string[] => lotIn('B1', '2026-05-10', lines).blockers.map(({ kind }) => kind);
    expect(colony()).toEqual(['size', 'colony']);
    expect(colony('2026-03-01 B1: kept back 10 Pebble\n')).toEqual(['size']);
  });

  test('none that are surely there to be promised, with the count behind it', () => {
    const all = '2026-04-01 C2: reserved 20 Rowan-1 till 2026-08-01\n';
    expect(stands(lotIn('C2', '2026-05-10', all))[0]).toMatch(/^20 fish surely there, 20 reserved \| \? \| /);
    const unsure = '2026-05-01 C2: Rowan-1 died about 20\n';
    expect(stands(lotIn('C2', '2026-05-10', unsure))[0]).toMatch(/^not one surely there: .+; count them \| \? \| /);
  });
});

describe('promises are taken', () => {
  const taken = (tank: string, lines: string): number[] => {
    const { free, keptBack, reserved } = lotIn(tank, '2026-05-10', lines);
    return [free, keptBack, reserved];
  };
  test('from the tank that their line names', () => {
    const lines = '2026-04-01 A2: kept back 6 Rowan-1\n2026-04-01 C2: reserved 8 Rowan-1 till 2026-08-01\n';
    expect([taken('A2', lines), taken('C2', lines)]).toEqual([
      [4, 6, 0],
      [12, 0, 8],
    ]);
  });
  test('from the others where that one has too few', () => {
    const lines = '2026-04-01 A2: reserved 14 Rowan-1 till 2026-08-01\n';
    expect([taken('A2', lines), taken('C2', lines)]).toEqual([
      [0, 0, 10],
      [16, 0, 4],
    ]);
  });
  test('without a tank, from the fullest first, but first from what is ready', () => {
    const lines = '2026-04-01 Rowan-1: kept back 25\n';
    expect([taken('C2', lines), taken('A2', lines)]).toEqual([
      [0, 20, 0],
      [5, 5, 0],
    ]);
    const held = `${lines}2026-05-09 C2: hold "velvet"\n`;
    expect([taken('C2', held), taken('A2', held)]).toEqual([
      [5, 15, 0],
      [0, 10, 0],
    ]);
  });
  test('of their own stock alone', () => {
    const other = `2026-01-02 A2: Fern spawned
2026-01-12 A2: Sedge-1 free-swimming, 80
2026-02-01 A2: Sedge-1 moved all to D1
2026-04-01 Rowan-1: kept back 25
`;
    expect([taken('C2', other), taken('A2', other), taken('D1', other)]).toEqual([
      [0, 20, 0],
      [5, 5, 0],
      [80, 0, 0],
    ]);
  });
});
