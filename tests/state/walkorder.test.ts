/** The walking order is kept up as tanks are declared; it must be what making it anew from all of them gives. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { toDay } from '../../src/core/day.ts';
import { readJournal } from '../../src/language/read.ts';
import { foldRoom } from '../../src/state/fold.ts';
import { orderOf } from '../../src/state/tanks.ts';

const NAMES = ['A1', 'A2', 'B1', 'B2', 'N1', 'N2'] as const;

const line = fc.oneof(
  { weight: 4, arbitrary: fc.constantFrom(...NAMES).map((name) => `tank ${name}: 54 L; alone`) },
  {
    weight: 3,
    arbitrary: fc
      .tuple(fc.constantFrom(...NAMES), fc.constantFrom(...NAMES))
      .map(([name, holder]) => `tank ${name}: 2 L; in ${holder}`),
  },
  { weight: 1, arbitrary: fc.constantFrom(...NAMES).map((name) => `tank ${name}: retired`) },
  {
    weight: 1,
    arbitrary: fc
      .uniqueArray(fc.constantFrom(...NAMES), { minLength: 1 })
      .map((names) => `room: walk ${names.join(' ')}`),
  },
);

test('whatever is declared, retired, hung in one another or walked otherwise', () => {
  let trays = 0;
  fc.assert(
    fc.property(fc.array(line, { maxLength: 14 }), (lines) => {
      const text = lines.map((words) => `2026-01-04 ${words}\n`).join('');
      const { events } = readJournal('fishroom.txt', text, () => ({ ok: false, says: '' }));
      const room = foldRoom(events, toDay(20_500));
      expect(room.plumbing.order).toEqual(orderOf(room));
      if ([...room.plumbing.tanks.values()].some(({ inTank }) => inTank !== null)) trays += 1;
    }),
    { numRuns: 300 },
  );
  expect(trays).toBeGreaterThan(30);
});
