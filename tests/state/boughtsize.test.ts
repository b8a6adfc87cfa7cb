/** The length that a line of bought fish tells, and what else it says of them. */
import { expect, it } from 'vitest';
import { journalOn } from '../support/journal.ts';

function told(line: string): readonly string[] {
  const room = journalOn('2026-03-10', `2026-02-01 C2: bought 4 krib as Reed\n2026-02-11 ${line}\n`);
  expect(room.problems).toEqual([]);
  return [...room.stock.groups.values()]
    .filter(({ parts }) => parts.has('C2'))
    .map(({ name, total, sizes }) => {
      const lengths = sizes.map((seen) => `${seen.sizes.of} ${seen.sizes.values.map(({ low }) => low).join()}`);
      return [`${name} ${String(total.low)}`, ...lengths].join(': ');
    });
}

it.each([
  ['C2: bought 6 krib as Elm, 3 cm', 'Elm 6: bulk 30'],
  ['C2: got 6 krib, 3cm, from a friend', 'krib of 11 Feb 6: bulk 30'],
  ['C2: bought 6 krib as Elm at 4.00 each, average 32 mm', 'Elm 6: average 32'],
  ['C2: bought 6 krib as Elm, 2 died', 'Elm 4'],
])('%s', (line, words) => {
  expect(told(line)).toEqual(['Reed 4', words]);
});
