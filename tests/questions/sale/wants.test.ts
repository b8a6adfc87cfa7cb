/** Who is promised what, and what is still wanted: by the lines of the journal, up to the last day of each. */
import { describe, expect, test } from 'vitest';
import { isoDay } from '../../../src/core/day.ts';
import { promises } from '../../../src/questions/promises.ts';
import { sale } from '../../../src/questions/sale.ts';
import { journalRoom } from '../../support/journal.ts';
import { ROOM } from '../../support/lines.ts';

/** Thirty young in C2, old enough on 24 April. */
const BROOD = `${ROOM}2026-01-02 species krib: sale at 35 mm or 16 weeks
2026-01-02 A1: spawned
2026-01-12 A1: free-swimming, 30
2026-02-01 A1: Rowan-1 moved all to C2
`;
const roomOf = (...lines: readonly string[]) => journalRoom('2026-05-10', `${BROOD}${lines.join('\n')}\n`);
const count = ({ low, high }: { low: number; high: number }): string =>
  low === high ? String(low) : `${String(low)}–${String(high)}`;
/** What the lot offers, and to whom: `24 free, 6 reserved, 0 kept, Otto wants 14`. */
function lot(...lines: readonly string[]): string {
  const { lots } = sale(roomOf(...lines), { ahead: 0, auction: null, projected: false });
  const [found, ...more] = lots.filter(({ stock }) => stock === 'Rowan-1');
  if (found === undefined || more.length > 0) throw new Error(`${String(more.length)} more lots`);
  const wants = found.wants.map((want) => `, ${want.to ?? 'one'} wants ${count(want.count)}`);
  return `${String(found.free)} free, ${String(found.reserved)} reserved, ${String(found.keptBack)} kept${wants.join('')}`;
}
const wanted = (...lines: readonly string[]): string[] =>
  promises(roomOf(...lines)).wanted.map(
    (row) => `${count(row.count)} ${row.species}: ${row.matches.map(({ stock, tank }) => `${stock} ${tank}`).join()}`,
  );
const reserved = (...lines: readonly string[]): string[] =>
  promises(roomOf(...lines)).reserved.map(
    (row) => `${count(row.count)} ${row.until === null ? '' : isoDay(row.until)}${row.lapsed ? ' lapsed' : ''}`,
  );

describe('a want', () => {
  const otto = '2026-04-01 room: wanted 20 krib by 2026-06-01 to "Otto"';
  test.each([
    ['falls by what is reserved since for that buyer, in any letters', 'until 2026-06-01 to "otto"', '14'],
    ['and for nobody by name', 'until 2026-06-01', '14'],
    ['not by what is reserved for another', 'until 2026-06-01 to "Iris"', '20'],
    ['nor by what lapsed', 'until 2026-05-01 to "Otto"', '20'],
  ])('%s', (_, more, left) => {
    expect(wanted(otto, `2026-04-02 C2: reserved 6 Rowan-1 ${more}`)).toEqual([`${left} krib: Rowan-1 C2`]);
  });
  test('falls by what is reserved since for whoever the list leaves open', () => {
    expect(wanted(otto, '2026-04-02 C2: reserved 6 Rowan-1 until 2026-06-01 to "…"')).toEqual(['14 krib: Rowan-1 C2']);
  });
  test('does not fall by what was reserved before it, nor by fish of another species', () => {
    expect(wanted(otto, '2026-03-30 C2: reserved 6 Rowan-1 to "Otto"')).toEqual(['20 krib: Rowan-1 C2']);
    expect(wanted(otto, '2026-04-01 C2: reserved 6 Rowan-1 to "Otto"')).toEqual(['14 krib: Rowan-1 C2']);
    expect(wanted(otto, '2026-04-02 B1: reserved 6 Pebble to "Otto"')).toEqual(['20 krib: Rowan-1 C2']);
  });
  test('falls by what was sold or given to that buyer, and is over when it is met', () => {
    expect(wanted(otto, '2026-04-05 C2: sold 6 Rowan-1 at 4.00 each to "OTTO"')).toEqual(['14 krib: Rowan-1 C2']);
    expect(wanted(otto, '2026-04-05 C2: gave away 6 Rowan-1 to "Otto"')).toEqual(['14 krib: Rowan-1 C2']);
    expect(wanted(otto, '2026-04-05 C2: sold 6 Rowan-1 at 4.00 each to "Iris"')).toEqual(['20 krib: Rowan-1 C2']);
    expect(wanted(otto, '2026-04-05 C2: sold 20 Rowan-1 at 4.00 each to "Otto"')).toEqual([]);
    expect(lot(otto, '2026-04-05 C2: sold 20 Rowan-1 at 4.00 each to "Otto"')).toBe('10 free, 0 reserved, 0 kept');
  });
  test('that is promised in full and fetched is not counted twice', () => {
    const promise = '2026-04-02 C2: reserved 6 Rowan-1 until 2026-06-01 to "Otto"';
    expect(wanted(otto, promise, '2026-04-05 C2: sold 6 Rowan-1 at 4.00 each to "Otto"')).toEqual([
      '14 krib: Rowan-1 C2',
    ]);
  });
  test('stands to its last day', () => {
    expect(wanted('2026-04-01 room: wanted 20 krib by 2026-05-10')).toEqual(['20 krib: Rowan-1 C2']);
    expect(wanted('2026-04-01 room: wanted 20 krib by 2026-05-09')).toEqual([]);
  });
  test('of a size is met by fish that likely have it', () => {
    const size = '2026-05-01 C2: Rowan-1 average 39 mm';
    expect(lot('2026-04-01 room: wanted 20 krib at 30 mm to "Otto"', size)).toContain('Otto wants 20');
    expect(lot('2026-04-01 room: wanted 20 krib at 60 mm to "Otto"', size)).not.toContain('wants');
  });
  test('of no number is one at least; of another species it is told without a lot', () => {
    expect(wanted('2026-04-01 room: wanted krib')).toEqual(['1–Infinity krib: Rowan-1 C2']);
    expect(wanted('2026-04-01 room: wanted 4 limia')).toEqual(['4 limia: ']);
    expect(lot('2026-04-01 room: wanted 4 limia')).toBe('30 free, 0 reserved, 0 kept');
  });
});

describe('a reservation', () => {
  const iris = '2026-04-02 C2: reserved 6 Rowan-1 until 2026-04-20 to "Iris"';
  test('is met by a sale to its buyer, up to a fortnight after its last day', () => {
    expect(reserved(iris, '2026-05-04 C2: sold 6 Rowan-1 at 4.00 each to "Iris"')).toEqual([]);
    const open = '2026-04-02 C2: reserved 6 Rowan-1 until 2026-06-01 to "Iris"';
    expect(lot(open, '2026-04-05 C2: sold 6 Rowan-1 at 4.00 each to "Iris"')).toBe('24 free, 0 reserved, 0 kept');
    expect(lot(open, '2026-04-05 C2: sold 6 Rowan-1 at 4.00 each to "…"')).toBe('24 free, 0 reserved, 0 kept');
  });
  test('is not met by a sale to another, or to nobody by name', () => {
    const open = '2026-04-02 C2: reserved 6 Rowan-1 until 2026-06-01 to "Iris"';
    for (const to of ['', ' to "Otto"'])
      expect(lot(open, `2026-04-05 C2: sold 6 Rowan-1 at 4.00 each${to}`)).toBe('18 free, 6 reserved, 0 kept');
  });
  test('of one buyer after another: the oldest is met first', () => {
    const two = ['2026-04-02 C2: reserved 6 Rowan-1 to "Iris"', '2026-04-03 C2: reserved 4 Rowan-1 to "Iris"'];
    expect(reserved(...two, '2026-04-05 C2: sold 8 Rowan-1 at 4.00 each to "Iris"')).toEqual(['2 ']);
    expect(lot(...two, '2026-04-05 C2: sold 8 Rowan-1 at 4.00 each to "Iris"')).toBe('20 free, 2 reserved, 0 kept');
  });
  test('of all, of which some died, is more than there are', () => {
    const all = '2026-04-02 C2: reserved all Rowan-1 until 2026-06-01 to "Iris"';
    const { over } = promises(roomOf(all, '2026-04-03 C2: Rowan-1 died 2'));
    expect(over.map(({ stock, sure, promised }) => [stock, sure, promised])).toEqual([['Rowan-1', 28, 30]]);
    expect(lot(all, '2026-04-03 C2: Rowan-1 died 2')).toBe('0 free, 28 reserved, 0 kept');
  });
});

describe('fish kept back', () => {
  test('add up, are let go by none, and go with the group that is made of them', () => {
    const six = '2026-04-02 C2: kept back 6 Rowan-1';
    expect(lot(six, '2026-04-03 C2: kept back 2 Rowan-1')).toBe('22 free, 0 reserved, 8 kept');
    expect(lot(six, '2026-04-03 C2: kept back 0 Rowan-1')).toBe('30 free, 0 reserved, 0 kept');
    expect(lot(six, '2026-04-03 group Elm: krib; 4; in A1; from Rowan-1')).toBe('24 free, 0 reserved, 2 kept');
  });
});
