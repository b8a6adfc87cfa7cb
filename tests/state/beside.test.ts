/** A sex that is counted and one that is told: both are there. */
import { expect, test } from 'vitest';
import { journalRoom } from '../support/journal.ts';

test.each([
  ['male; 3 females', 4, ['male', 'female', 'female', 'female']],
  ['3 females; male Oak 80 mm', 4, ['male', 'female', 'female', 'female']],
  ['2 males; female', 3, ['female', 'male', 'male']],
  ['1 male 3 females', 4, ['male', 'female', 'female', 'female']],
  ['male; females Fern and Lark', 3, ['male', 'female', 'female']],
])('%s', (told, all, sexes) => {
  const room = journalRoom(
    '2026-01-02',
    `2026-01-01 tank A1: 100 L; alone\n2026-01-01 species krib: cave spawner\n2026-01-01 harem Moss: krib; ${told}; in A1\n`,
  );
  const moss = room.stock.groups.get('Moss');
  expect(moss?.total).toMatchObject({ low: all, high: all });
  expect(moss?.members.map(({ sex }) => sex)).toEqual(sexes);
});
