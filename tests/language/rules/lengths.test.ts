/** A bare number behind `male` or `female` is a length, unless no grown fish is so short in the room's own units. */
import { expect, test } from 'vitest';
import { readJournal } from '../../../src/language/read.ts';
import { NO_FILES } from '../../support/lines.ts';

const kinds = (units: string, told: string): readonly string[] =>
  readJournal(
    'fishroom.txt',
    `2026-01-01 room: units ${units}\n2026-01-01 tank A1: 100 L; alone\n2026-01-01 species krib: cave spawner\n2026-01-01 harem Moss: krib; ${told}; in A1\n`,
    NO_FILES,
  ).problems.map(({ kind }) => kind);

test.each([
  ['metric', 'male 80; female 60', []],
  ['metric', 'male 80 mm; females 3', ['count-or-length']],
  ['metric', 'male 80 mm; females 3 cm', []],
  ['US', 'male 3; female 2.5', []],
])('units %s: %s', (units, told, expected) => {
  expect(kinds(units, told)).toEqual(expected);
});
