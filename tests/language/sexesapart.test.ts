/** A group whose sexes are told in clauses of their own keeps both. */
import { expect, it } from 'vitest';
import { eventsOf } from '../support/lines.ts';

function headsOf(words: string): readonly (number | null)[] {
  const [declared] = eventsOf(`2026-01-02 group Yew: krib; ${words}; in C2\n`).flatMap((event) =>
    event.kind === 'group declared' ? [event] : [],
  );
  const { total, males, females } = declared?.heads ?? { total: null, males: null, females: null };
  return [total, males, females].map((count) => count?.low ?? null);
}

it.each([
  ['one male; one female', [2, 1, 1]],
  ['2 males; 5 females', [7, 2, 5]],
  ['5 females; 2 males', [7, 2, 5]],
  ['2 males, 5 females', [7, 2, 5]],
  ['2 males; 3 males', [3, 3, null]],
  ['12; 5 females', [12, null, 5]],
  ['5 females; 12', [12, null, 5]],
  ['3; 5 females', [5, null, 5]],
])('«%s»', (words, heads) => {
  expect(headsOf(words)).toEqual(heads);
});
