/** Young of livebearers that are born over some days, or to two females at once: none of them is lost. */
import { describe, expect, it } from 'vitest';
import { twice } from '../../src/checks/twice.ts';
import { twoCounts } from '../../src/checks/two-counts.ts';
import { foldRoom } from '../../src/state/fold.ts';
import { day } from '../support/events.ts';
import { readLines, ROOM } from '../support/lines.ts';

const SETUP = ROOM.split('\n').length;
const FEN = `2026-01-02 species guppy: Poecilia sp; livebearer
2026-01-02 trio Fen: guppy; male; females Ivy and Moss; in C2`;

function after(...lines: readonly string[]) {
  const read = readLines(`${[FEN, ...lines].join('\n')}\n`);
  const room = foldRoom(read.events, day('2026-05-30'));
  const found = [...room.stock.broods.values()].map(({ name, total: { low, high } }) => `${name} ${low}–${high}`);
  const checked = { room, events: read.events, today: day('2026-05-30') };
  const doubts = [...read.problems, ...room.problems, ...twice(checked), ...twoCounts(checked)];
  return {
    room,
    found,
    doubts: doubts.map(({ kind, at, also }) => [kind, ...[at, ...also].map(({ line }) => line - SETUP - 1)].join(' ')),
  };
}

describe('births within days of each other', () => {
  it('are one brood, and add up', () => {
    const { room, found, doubts } = after('2026-02-10 C2: born 18', '2026-02-12 C2: born 5');
    expect([found, doubts]).toEqual([['Fen-1 23–23'], []]);
    expect(room.stock.broods.get('Fen-1')).toMatchObject({ ceiling: { count: 23 }, laid: { low: day('2026-02-10') } });
    expect(after('2026-02-10 C2: born 18', '2026-02-12 Fen: born 5').found).toEqual(['Fen-1 23–23']);
  });
  it('add up on one day too, and are doubted where one may be the other again', () => {
    const two = after('2026-02-10 C2: born 18', '2026-02-10 C2: born 5');
    expect([two.found, two.doubts]).toEqual([['Fen-1 23–23'], []]);
    const same = after('2026-02-10 C2: born 18', '2026-02-10 C2: born 18');
    expect([same.found, same.doubts]).toEqual([['Fen-1 36–36'], ['same-twice 2 1']]);
  });
  it('stay guesses where one of them is', () => {
    expect(after('2026-02-10 C2: born about 20', '2026-02-12 C2: born 5').found).toEqual(['Fen-1 15–45']);
  });
  it('are added to what is left in the tank that they were born in', () => {
    const moved = after('2026-02-10 C2: born 18', '2026-02-11 C2: moved 10 Fen-1 to C1', '2026-02-12 Fen: born 5');
    expect([moved.found, moved.doubts]).toEqual([['Fen-1 23–23'], []]);
    expect(moved.room.stock.broods.get('Fen-1')?.parts.get('C2')).toMatchObject({ low: 13, high: 13 });
  });
  it('are bounded by a count after them', () => {
    const lines = ['2026-02-10 C2: born 18', '2026-02-12 C2: born 5', '2026-02-13 C2: Fen-1 counted 22'];
    expect([after(...lines).found, after(...lines).doubts]).toEqual([['Fen-1 22–22'], []]);
  });
});

describe('a birth without a number', () => {
  it('is the one that a later line numbers, and takes nothing from a number', () => {
    expect(after('2026-02-10 C2: born', '2026-02-11 C2: born 18').found).toEqual(['Fen-1 18–18']);
    expect(after('2026-02-10 C2: born 18', '2026-02-11 C2: born').found).toEqual(['Fen-1 18–18']);
  });
});
