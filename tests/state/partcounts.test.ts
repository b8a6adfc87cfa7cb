/** A sure count of one tank under a sure number: those fish died there unseen, and swim in no other tank. */
import { expect, it } from 'vitest';
import { journalOn } from '../support/journal.ts';

const SPLIT = `2026-02-02 A1: spawned
2026-02-10 A1: free-swimming, about 50
`;

const counts = (...lines: readonly string[]): object => {
  const room = journalOn('2026-04-30', `${SPLIT}${lines.join('\n')}\n`);
  const brood = room.stock.broods.get('Rowan-1');
  return { a1: brood?.parts.get('A1'), c1: brood?.parts.get('C1'), all: brood?.total };
};

it('where the number moved was sure, the tank that they left holds no more for it', () => {
  const moved = '2026-03-01 A1: Rowan-1 moved 40 to C1';
  expect(counts(moved)).toMatchObject({ a1: { low: 0, likely: 10, high: 60 }, all: { likely: 50 } });
  expect(counts(moved, '2026-03-20 C1: Rowan-1 counted 38', '2026-04-20 C1: Rowan-1 counted 8')).toEqual({
    a1: { low: 0, likely: 10, high: 60 },
    c1: { low: 8, likely: 8, high: 8 },
    all: { low: 8, likely: 18, high: 68 },
  });
});

it('where the number moved was guessed, they may never have left', () => {
  expect(counts('2026-03-01 A1: Rowan-1 moved 30-50 to C1', '2026-03-20 C1: Rowan-1 counted 20')).toMatchObject({
    a1: { low: 0, high: 80 },
    all: { low: 20, high: 100 },
  });
});
