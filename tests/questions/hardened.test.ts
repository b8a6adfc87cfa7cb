/**
 * A line that takes KH or GH further in a day than 1 to 2 dH (common practice, no source) is told as such.
 * Grams: 30.0 g of NaHCO3 raise 1000 L by 1 dH of KH, 44.0 g of MgSO4·7H2O by 1 dH of GH (molar masses).
 */
import { expect, it } from 'vitest';
import { readJournal } from '../../src/language/read.ts';
import { hardnessLines } from '../../src/questions/hardened.ts';
import { foldRoom } from '../../src/state/fold.ts';
import { day } from '../support/events.ts';
import { NO_FILES, ROOM } from '../support/lines.ts';

const TESTED = `${ROOM}2026-02-01 tank Tap: 10 L; alone
2026-02-01 C1: live volume 100 L
2026-02-01 Tap: test KH 14 dH, GH 8 dH
2026-02-01 C1: test KH 4 dH, GH 7 dH
`;

/** What the last of these lines is said to have done, after the others. */
function told(...lines: readonly string[]): readonly string[] {
  const { events, problems } = readJournal('fishroom.txt', `${TESTED}${lines.join('\n')}\n`, NO_FILES);
  expect(problems).toEqual([]);
  const last = TESTED.split('\n').length - 1 + lines.length;
  const room = foldRoom(events, day('2026-02-04'));
  return hardnessLines(
    room,
    events.filter(({ place }) => place.line === last),
  ).map((says) => says.replace(/; .*/u, ''));
}

it('new water of another hardness, by its share', () => {
  expect(told('2026-02-03 C1: water change 30 %')).toEqual(['C1: KH goes up by about 3.0 dH in one day']);
  expect(told('2026-02-03 C1: water change 30 L')).toEqual(['C1: KH goes up by about 3.0 dH in one day']);
  expect(told('2026-02-03 C1: water change 20 %')).toEqual([]);
  expect(told('2026-02-02 C1: test KH 20 dH', '2026-02-03 C1: water change 50 %')).toEqual([
    'C1: KH goes down by about 3.0 dH in one day',
  ]);
});

it('nothing where one of the two was never tested', () => {
  expect(told('2026-02-03 C2: water change 90 %')).toEqual([]);
});

it('a dose, with the others of that day', () => {
  expect(told('2026-02-03 C1: dosed 9 g "bicarbonate"')).toEqual(['C1: KH goes up by about 3.0 dH in one day']);
  expect(told('2026-02-03 C1: dosed 5 g "bicarbonate"')).toEqual([]);
  expect(told('2026-02-03 C1: dosed 5 g "bicarbonate"', '2026-02-03 C1: dosed 4 g "bicarbonate"')).toEqual([
    'C1: KH goes up by about 3.0 dH in one day',
  ]);
  expect(told('2026-02-02 C1: dosed 5 g "bicarbonate"', '2026-02-03 C1: dosed 4 g "bicarbonate"')).toEqual([]);
  expect(told('2026-02-03 C1: dosed 13.2 g "Epsom salt"')).toEqual(['C1: GH goes up by about 3.0 dH in one day']);
});
