/** A change of more litres than a loop holds is doubted; it counts as all of its water. */
import { expect, it } from 'vitest';
import { journalRoom } from '../support/journal.ts';

const LOOP = `2026-01-01 loop Short: sump 50 L
2026-01-01 tank D1: 60 L; on Short
2026-01-01 D1: live volume 50 L
2026-01-01 tank D2: 60 L; on Short
2026-01-01 D2: live volume 50 L
`;

const doubts = (line: string): readonly string[] =>
  journalRoom('2026-03-10', `${LOOP}${line}\n`).problems.map(({ kind, weight, says }) => `${kind} ${weight}: ${says}`);

const OVER = 'impossible-change doubt: Short held';

it.each([
  ['2026-02-01 Short: water change 150 L', []],
  ['2026-02-01 Short: water change 160 L', [`${OVER} 150 L of water that day, sump and tanks on it together`]],
  ['2026-02-01 Short: water change 140-160 L', []],
])('%s', (line, told) => {
  expect(doubts(line)).toEqual(told);
});

it('goes by the tanks that were on it that day', () => {
  expect(doubts('2026-02-01 D2: off the loop\n2026-02-03 Short: water change 120 L')).toEqual([
    `${OVER} 100 L of water that day, sump and tanks on it together`,
  ]);
});

it('is not doubted where the litres are not known', () => {
  expect(doubts('2026-01-01 tank D3: on Short\n2026-02-01 Short: water change 900 L')).toEqual([]);
});

it('still counts', () => {
  expect(journalRoom('2026-03-10', `${LOOP}2026-02-01 Short: water change 160 L\n`).water.changes).toHaveLength(1);
});
