/** What fits into the minutes that there are. */
import { expect, test } from 'vitest';
import { fitMinutes } from '../../../src/questions/due/minutes.ts';

const row = (weight: 0 | 1 | 2 | 3, minutes: number | null = null) => ({ weight, minutes });

test('work that takes all of them fits, and a minute more does not', () => {
  const all = [row(1, 10), row(1, 20)];
  expect(fitMinutes(all, 30)).toEqual({ rows: all, left: [], minutes: 30 });
  expect(fitMinutes(all, 29)).toEqual({ rows: all.slice(0, 1), left: all.slice(1), minutes: 10 });
});

test('what presses goes first, five minutes where nothing is said, and the order stays', () => {
  const all = [row(0), row(2, 10), row(1, 12), row(0, 1)];
  expect(fitMinutes(all, 16)).toEqual({ rows: [all[0], all[1], all[3]], left: [all[2]], minutes: 16 });
});

test('a life at risk is seen to whether there is time or not, and leaves none for the rest', () => {
  const all = [row(2, 5), row(3, 60)];
  expect(fitMinutes(all, 10)).toEqual({ rows: [all[1]], left: [all[0]], minutes: 60 });
});
