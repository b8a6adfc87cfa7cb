/** The short way past the list of all phrases misses none of those that it stands for. */
import { expect, test } from 'vitest';
import { openersUnder } from '../../grammar/phrases.ts';
import { isTold, mayHoldClause } from '../../src/language/textclause.ts';

test('every phrase of a clause that may hang on the words of another is seen', () => {
  const phrases = [...openersUnder('tank').values()].flat().filter(({ kind }) => isTold(kind));
  expect(phrases.length).toBeGreaterThan(20);
  const missed = phrases.map(({ words }) => words.join(' ')).filter((words) => !mayHoldClause(`bbs and ${words}`));
  expect(missed).toEqual([]);
});

test('usual food needs no look at the phrases', () => {
  for (const food of ['flakes', 'bbs', 'microworm', 'frozen bloodworm', 'pellets', 'live baby brine shrimp'])
    expect(mayHoldClause(food)).toBe(false);
});
