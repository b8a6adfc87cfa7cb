/** Two stocks that were surely counted and then mixed are no more than both together. */
import { expect, it } from 'vitest';
import { journalOn } from '../support/journal.ts';
import { doubtsTold } from '../support/told.ts';

const TWO = `2026-02-02 A1: spawned
2026-02-10 A1: free-swimming, 52
2026-02-02 A2: Fern spawned
2026-02-10 A2: free-swimming, 30
2026-03-01 A1: Rowan-1 moved 20 to C2
2026-03-01 A2: Sedge-1 moved 10 to C2
`;
const MIXED = `${TWO}2026-03-02 C2: mixed Rowan-1 and Sedge-1\n`;

const problems = (lines: string): readonly string[] => journalOn('2026-04-30', lines).problems.map(({ kind }) => kind);

it('a count above both contradicts one of them', () => {
  expect(doubtsTold(journalOn('2026-04-30', `${MIXED}2026-03-10 C2: counted 30\n`))).toEqual([]);
  expect(doubtsTold(journalOn('2026-04-30', `${MIXED}2026-03-10 C2: counted 31\n`))).toEqual(['counts-contradict 8 7']);
});

it('no more can be sold than both were', () => {
  expect(problems(`${MIXED}2026-03-10 C2: sold 30 Rowan-1 at 2.00 each\n`)).toEqual([]);
  expect(problems(`${MIXED}2026-03-10 C2: sold 31 Rowan-1 at 2.00 each\n`)).toEqual(['more-out-than-in']);
});

it('a guess of one of them leaves the mix without a bound', () => {
  const guessed = MIXED.replace('free-swimming, 30', 'free-swimming, about 30').replace('moved 10', 'moved about 10');
  expect(doubtsTold(journalOn('2026-04-30', `${guessed}2026-03-10 C2: counted 60\n`))).toEqual(['guess-corrected 8 7']);
});
