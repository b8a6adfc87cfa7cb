/** A count that broke what was known of other tanks, and was mended the same day: what it broke stands again. */
import { expect, it } from 'vitest';
import { journalOn } from '../support/journal.ts';
import { doubtsTold } from '../support/told.ts';

const TWO = `2026-02-02 A1: spawned
2026-02-10 A1: free-swimming, 52
2026-03-01 A1: Rowan-1 moved 20 to A2
`;

const doubts = (...lines: readonly string[]): readonly string[] =>
  doubtsTold(journalOn('2026-04-30', `${TWO}${lines.join('\n')}\n`));
const MENDED = ['2026-03-02 A1: Rowan-1 counted 60', '2026-03-02 A1: Rowan-1 died 2'];
const RIGHT = '2026-03-02 A1: Rowan-1 counted 30';

it('the other tank holds no more than surely went there', () => {
  expect(doubts(...MENDED, RIGHT, '2026-03-03 A2: Rowan-1 counted 20')).toEqual([]);
  expect(doubts(...MENDED, RIGHT, '2026-03-03 A2: Rowan-1 counted 21')).toEqual(['counts-contradict 7 3']);
});

it('less those that died there since', () => {
  const lost = [...MENDED, '2026-03-02 A2: Rowan-1 died 4', RIGHT];
  expect(doubts(...lost, '2026-03-03 A2: Rowan-1 counted 16')).toEqual([]);
  expect(doubts(...lost, '2026-03-03 A2: Rowan-1 counted 17')).toEqual(['counts-contradict 8 3']);
});

it('all of them are no more than were counted, less those that died', () => {
  expect(doubts(...MENDED, RIGHT, '2026-03-03 Rowan-1: counted 50')).toEqual([]);
  expect(doubts(...MENDED, RIGHT, '2026-03-03 Rowan-1: counted 51')).toEqual(['counts-contradict 7 2']);
});

it('not where fish came there in between', () => {
  const came = [...MENDED, '2026-03-02 A1: Rowan-1 moved 5 to A2', '2026-03-02 A1: Rowan-1 counted 25'];
  expect(doubts(...came, '2026-03-03 A2: Rowan-1 counted 25')).toEqual([]);
});
