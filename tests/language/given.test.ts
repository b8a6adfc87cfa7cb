/** Fish given to an auction: gone without money, and where they went kept as the remark. */
import { expect, test } from 'vitest';
import { printEntry } from '../../src/language/print.ts';
import { eventsOf, problemsIn } from '../support/lines.ts';

test('gave away … at an auction is read as a gift, with where it went', () => {
  const events = eventsOf('2026-03-10 C1: gave away 6 Ash at Autumn\n');
  expect(events).toMatchObject([{ kind: 'gave away', remark: 'at Autumn', to: null }]);
  expect(printEntry(events)).toBe('2026-03-10 C1: gave away 6 Ash "at Autumn"');
  const [more] = eventsOf('2026-03-10 C1: donated 6 Ash at Autumn to "the raffle" "lot 5"\n');
  expect(more).toMatchObject({ kind: 'gave away', to: 'the raffle', remark: 'at Autumn, lot 5' });
});

test('a price of a gift, and an auction that nobody set up, are asked back', () => {
  expect(problemsIn('2026-03-10 C1: gave away 6 Ash at 4.00')).toHaveLength(1);
  expect(problemsIn('2026-03-10 C1: gave away 6 Ash at Nowhere')).toHaveLength(1);
});
