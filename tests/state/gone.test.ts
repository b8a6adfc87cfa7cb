/** A clause about a fish that is gone: who lives that it may mean, in the words of the line; or that none does. */
import { expect, test } from 'vitest';
import { dayFromIso, toDay } from '../../src/core/day.ts';
import { readJournal } from '../../src/language/read.ts';
import { foldRoom } from '../../src/state/fold.ts';

const SETUP = `2026-01-01 room: units metric
2026-01-01 tank A1: 100 L; alone
2026-01-01 tank C1: 100 L; alone
2026-01-01 species krib: Pelvicachromis taeniatus; cave spawner
2026-01-01 trio Sedge: krib; male; females Fern and Lark; in C1
2026-01-01 pair Rowan: krib; male; female; in A1
2026-02-01 C1: Fern died
2026-02-01 A1: female died
`;

function told(clause: string, more = ''): string[] {
  const text = `${SETUP}${more}2026-02-20 ${clause}\n`;
  const reading = readJournal('fishroom.txt', text, () => ({ ok: false, says: 'no' }));
  expect(reading.problems).toEqual([]);
  const { problems } = foldRoom(reading.events, dayFromIso('2026-03-01') ?? toDay(0));
  return problems.flatMap(({ weight, says, write }) => (weight === 'stops' ? [says, write] : []));
}

test.each([
  ['C1: Fern eggs seen', 'C1: Lark eggs seen'],
  ['C1: Fern spawned', 'C1: Lark spawned'],
  ['C1: Fern maybe spawned', 'C1: Lark maybe spawned'],
  ['C1: Fern hiding', 'C1: Lark hiding'],
])('«%s» of a dead female offers the living one', (clause, write) => {
  expect(told(clause)).toEqual(['Fern is no longer one of Sedge', write]);
});

test('says so where no female lives', () => {
  expect(told('C1: Fern eggs seen', '2026-02-02 C1: Lark died\n')).toEqual([
    'Fern is no longer one of Sedge, and no female of it lives on record',
    'first the line that brought one: C1: new female from …',
  ]);
  const [says] = told('A1: female hiding');
  expect(says).toBe('the female is no longer one of Rowan, and no female of it lives on record');
});
