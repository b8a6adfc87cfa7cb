/** Where no tank is free, what is said of that and the line to jot name the same tank. */
import { expect, it } from 'vitest';
import { moveLine } from '../../../src/questions/due/destination.ts';
import { journalOn } from '../../support/journal.ts';

const ROOM = `2026-04-01 tank A9: 60 L; alone
2026-04-01 tank B9: 60 L; alone
2026-04-01 A1: spawned brood Rowan-1
2026-04-12 A1: free-swimming, 40
`;

function to(lines: string): { close: string; where: string } {
  const room = journalOn('2026-05-21', ROOM + lines);
  const brood = room.stock.broods.get('Rowan-1');
  if (brood === undefined) throw new Error('no brood');
  return moveLine(room, brood, 'A1');
}

/** Tanks with fish of about the young's length. */
const full = (...tanks: readonly string[]): string =>
  tanks.map((tank) => `2026-05-20 ${tank}: bought 6 krib at 4.00 each from "a friend", 15 mm\n`).join('');

it('a tank that is free is said to be', () => {
  expect(to(full('tank 12', 'C1', 'C2'))).toMatchObject({ close: 'A1: moved all Rowan-1 to A9', where: 'A9 is free' });
});

it('one with nothing but fish to grow on is named with the reason', () => {
  expect(to(full('tank 12', 'C1', 'C2', 'A9', 'B9'))).toMatchObject({
    close: 'A1: moved all Rowan-1 to tank 12',
    where: 'no tank is free, but 12 has only young and grow-outs',
  });
});

it('so is the one where some of them are', () => {
  const { close, where } = to(`2026-05-01 A1: moved 10 Rowan-1 to B9\n${full('tank 12', 'C1', 'C2', 'A9')}`);
  expect({ close, where }).toEqual({
    close: 'A1: moved all Rowan-1 to B9',
    where: 'B9 has some of them already',
  });
});

it('one whose fish are of no known length is never offered: they may be grown, and eat the young', () => {
  const unknown = full('tank 12', 'C1', 'C2', 'A9', 'B9').replaceAll(', 15 mm', '');
  expect(to(unknown)).toMatchObject({ close: 'A1: moved all Rowan-1 to …', where: 'no tank is free' });
  expect(to(`${unknown}2026-05-21 B9: size 15 mm\n`).close).toBe('A1: moved all Rowan-1 to B9');
  // Nor where some of them live already, with fish that came later.
  const some = '2026-05-01 A1: moved 10 Rowan-1 to B9\n';
  expect(to(`${some}${unknown}`).close).toBe('A1: moved all Rowan-1 to …');
});
