/** Fish change tanks without a `moved` too: what is in their water goes along. */
import { expect, test } from 'vitest';
import { dayFromIso, toDay } from '../../../src/core/day.ts';
import { readJournal } from '../../../src/language/read.ts';
import { openHolds } from '../../../src/questions/holds/reach.ts';
import { foldRoom } from '../../../src/state/fold.ts';

const SETUP = `2026-01-01 room: units metric
2026-01-01 tank A1: 100 L; alone
2026-01-01 tank B1: 100 L; alone
2026-01-01 tank Q1: 40 L; alone; quarantine
2026-01-01 species krib: Pelvicachromis taeniatus; cave spawner
2026-01-01 pair Rowan: krib; male; female; in A1
2026-01-02 group Elm: krib; 6; in Q1
`;

function reached(more: string): string[] {
  const reading = readJournal('fishroom.txt', SETUP + more, () => ({ ok: false, says: 'no' }));
  expect(reading.problems).toEqual([]);
  const room = foldRoom(reading.events, dayFromIso('2026-04-01') ?? toDay(0));
  return openHolds(room).flatMap(({ tanks }) => tanks.map(({ tank, route }) => `${tank} ${String(route.length)}`));
}

test.each([
  ['a pair formed from a group', '2026-03-10 pair Hazel: krib; male; female; in B1; from Elm', ['B1 1', 'Q1 0']],
  ['a new mate', '2026-03-10 A1: male died\n2026-03-11 A1: new male from Elm', ['A1 1', 'Q1 0']],
  ['a group declared in another tank', '2026-03-10 group Elm: krib; in B1', ['B1 1', 'Q1 0']],
  ['before the look-back', '2026-02-20 pair Hazel: krib; male; female; in B1; from Elm', ['Q1 0']],
])('%s', (_, line, tanks) => {
  expect(reached(`${line}\n2026-03-20 Q1: hold "velvet"\n`)).toEqual(tanks);
});

test('a mate that came back brought it along', () => {
  const lines = '2026-02-01 A1: moved the male to B1\n2026-03-10 A1: male back\n2026-03-15 B1: hold "velvet"\n';
  expect(reached(lines)).toEqual(['A1 1', 'B1 0']);
});
