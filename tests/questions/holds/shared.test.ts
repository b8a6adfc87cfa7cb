/** What tanks shared without any fish carries a hold: on its day, the way that it went, and no further. */
import { describe, expect, test } from 'vitest';
import { dayFromIso, toDay } from '../../../src/core/day.ts';
import { readJournal } from '../../../src/language/read.ts';
import { printEntry } from '../../../src/language/print.ts';
import { holds } from '../../../src/questions/holds.ts';
import { foldRoom } from '../../../src/state/fold.ts';

const SETUP = `2026-01-01 room: units metric
2026-01-01 loop Long: sump 240 L
2026-01-01 tank A1: 100 L; alone
2026-01-01 tank B1: 100 L; alone
2026-01-01 tank C1: 100 L; alone
2026-01-01 tank L1: 100 L; on Long
2026-01-01 tank L2: 100 L; on Long
`;

function routes(more: string): string[] {
  const reading = readJournal('fishroom.txt', SETUP + more, () => ({ ok: false, says: 'no' }));
  expect(reading.problems).toEqual([]);
  const room = foldRoom(reading.events, dayFromIso('2026-04-01') ?? toDay(0));
  expect(room.problems).toEqual([]);
  return holds(room).holds.flatMap(({ tanks }) =>
    tanks.map(({ tank, route }) => [tank, ...route.map(({ says }) => says)].join(': ')),
  );
}

describe('a hold follows', () => {
  test.each([
    ['a net shared', 'A1: shared net with B1', ['A1', 'B1: by the net shared with A1']],
    ['the same said of the other tank', 'B1: net shared with A1', ['A1', 'B1: by the net shared with A1']],
    [
      'a thing in words of its own',
      'B1: shared "siphon hose" with A1',
      ['A1', 'B1: by the siphon hose shared with A1'],
    ],
    ['a sponge brought over', 'B1: brought sponge from A1', ['A1', 'B1: by the sponge from A1']],
    ['the same in fewer words', 'B1: sponge from A1', ['A1', 'B1: by the sponge from A1']],
    ['the same said of the tank that it left', 'A1: sponge to B1', ['A1', 'B1: by the sponge from A1']],
    [
      'water into a loop',
      'L1: water from A1',
      ['A1', 'L1: by the water from A1', 'L2: by the water from A1: shares the water of Long with L1'],
    ],
    [
      'several tanks',
      'A1: shared net with B1 and C1',
      ['A1', 'B1: by the net shared with A1', 'C1: by the net shared with A1'],
    ],
    [
      'several in the heading',
      'A1 B1 C1: shared net',
      ['A1', 'B1: by the net shared with A1', 'C1: by the net shared with A1'],
    ],
  ])('%s', (_, clause, expected) => {
    expect(routes(`2026-03-10 ${clause}\n2026-03-20 A1: hold "velvet"\n`)).toEqual(expected);
  });

  test('where the things of the sick tank came from', () => {
    expect(routes('2026-03-10 A1: media from B1\n2026-03-20 A1: hold "velvet"\n')).toEqual([
      'A1',
      'B1: its media went to A1',
    ]);
  });
});

describe('a hold does not follow', () => {
  test.each([
    ['a net shared before the look-back', '2026-03-05 A1: shared net with B1'],
    [
      'a net shared first with the clean one, then with the sick one',
      '2026-03-10 B1: shared net with C1\n2026-03-09 C1: all well',
    ],
    ['a sponge that went the other way, before the look-back', '2026-03-01 A1: sponge from B1'],
  ])('%s', (_, lines) => {
    expect(routes(`${lines}\n2026-03-20 A1: hold "velvet"\n`)).toEqual(['A1']);
  });

  test('the order of the net against its use: C1 before A1 carries nothing on to C1', () => {
    const lines = '2026-03-10 08:00 B1: shared net with C1\n2026-03-10 09:00 A1: shared net with B1\n';
    expect(routes(`${lines}2026-03-20 A1: hold "velvet"\n`)).toEqual(['A1', 'B1: by the net shared with A1']);
  });
});

test('the days of «yesterday» and «by» count, not that of the line', () => {
  const on = (clause: string): string[] => routes(`${clause}\n2026-03-20 A1: hold "velvet"\n`);
  expect(on('2026-03-06 A1: shared net with B1 yesterday')).toEqual(['A1']);
  expect(on('2026-03-07 A1: shared net with B1 yesterday')).toEqual(['A1', 'B1: by the net shared with A1']);
});

test('a tank that is called by the first word of such a clause is still a tank', () => {
  const more = '2026-01-02 tank Shells: 54 L; alone\n2026-03-10 Shells: shared net with A1\n';
  expect(routes(`${more}2026-03-20 A1: hold "velvet"\n`)).toEqual(['A1', 'Shells: by the net shared with A1']);
});

describe('read', () => {
  const problems = (clause: string): string[] =>
    readJournal('fishroom.txt', `${SETUP}2026-03-10 ${clause}\n`, () => ({ ok: false, says: 'no' })).problems.map(
      ({ kind }) => kind,
    );

  test('without the other tank, with one that is not there, or with no thing it is refused', () => {
    expect(problems('A1: shared net')).toEqual(['something-missing']);
    expect(problems('A1: sponge from')).not.toEqual([]);
    expect(problems('A1: shared net with Z9')).toEqual(['unknown-tank']);
    expect(problems('A1: shared with B1')).toEqual(['something-missing']);
  });

  test.each([
    ['A1 B1: shared net', 'A1 B1: shared net'],
    ['C1: sponge from A1, all well', 'C1: brought sponge from A1; all well'],
    ['C1: water change 30 %, water from A1', 'C1: water change 30 %; brought water from A1'],
    ['C1: net shared with A1, B1', 'C1: shared net with A1 and B1'],
    ['C1: brought "moss ball" from A1 "after the treatment"', 'C1: brought "moss ball" from A1 "after the treatment"'],
  ])('%s', (line, canonical) => {
    const { events, problems: wrong } = readJournal('fishroom.txt', `${SETUP}2026-03-10 ${line}\n`, () => ({
      ok: false,
      says: 'no',
    }));
    expect(wrong).toEqual([]);
    expect(printEntry(events.filter(({ place }) => place.line === 8))).toBe(`2026-03-10 ${canonical}`);
  });
});
