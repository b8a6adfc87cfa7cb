/** After a cut of the whole room the waters with fish are tested, and one that gets fish later from then on. */
import { expect, test } from 'vitest';
import { watches } from '../../../src/questions/watch.ts';
import { journalOn } from '../../support/journal.ts';

const watched = (on: string, ...lines: readonly string[]): string[] =>
  watches(journalOn(on, `${lines.join('\n')}\n`)).map(({ body, why }) => `${body.name} ${why}`);

// Fish on Long and in C1; nobody in C2, Q1 and 12.
test('a cut of the room sets a watch where there are fish', () => {
  const cut = '2026-02-01 room: power off 9 h';
  expect(watched('2026-02-02', cut)).toEqual(['Long power lost', 'C1 power lost']);
  expect(watched('2026-02-03', cut, '2026-02-03 C1: moved 4 Ash to C2')).toEqual([
    'Long power lost',
    'C1 power lost',
    'C2 power lost',
  ]);
});

test('a cut or a cleaning told of an empty tank itself does so all the same', () => {
  expect(watched('2026-02-02', '2026-02-01 C2: power off 9 h')).toEqual(['C2 power lost']);
  expect(watched('2026-02-02', '2026-02-01 C2: cleaned media', '2026-02-01 room: power off 9 h')).toContain(
    'C2 media cleaned',
  );
});
