/** Rule 11: one name, one group, overlapping days are one brood; a number that some line writes is never given to another. */
import { describe, expect, test } from 'vitest';
import { dayFromIso, toDay } from '../../src/core/day.ts';
import { readJournal } from '../../src/language/read.ts';
import type { Room } from '../../src/state/draft.ts';
import { foldRoom } from '../../src/state/fold.ts';

const SETUP = `2026-01-01 room: units metric
2026-01-01 tank A1: 100 L; alone
2026-01-01 tank A2: 100 L; alone
2026-01-01 species krib: Pelvicachromis taeniatus; cave spawner
2026-01-01 pair Rowan: krib; male; female; in A1
2026-01-01 pair Ash: krib; male; female; in A2
`;

function roomOf(lines: readonly string[], on = '2026-06-01'): Room {
  const text = `${SETUP}${lines.join('\n')}\n`;
  const reading = readJournal('fishroom.txt', text, () => ({ ok: false, says: 'no' }));
  expect(reading.problems).toEqual([]);
  return foldRoom(reading.events, dayFromIso(on) ?? toDay(0));
}

/** `Rowan-1: 2, 1`: each brood with the lines that speak of it, counted from the first after the set-up. */
function broods(lines: readonly string[], on?: string): string[] {
  const first = SETUP.split('\n').length;
  return [...roomOf(lines, on).stock.broods.values()].map(
    (brood) => `${brood.name}: ${brood.lines.map(({ line }) => line - first + 1).join(', ')}`,
  );
}

const problems = (lines: readonly string[]): string[] => roomOf(lines).problems.map(({ kind }) => kind);

describe('the same name and group on overlapping days is one brood', () => {
  test.each([
    ['a spawn and its eggs', ['2026-02-02 A1: spawned brood Rowan-1', '2026-02-03 A1: eggs seen brood Rowan-1']],
    ['filed the other way round', ['2026-02-03 A1: eggs seen brood Rowan-1', '2026-02-02 A1: spawned brood Rowan-1']],
    ['in other letters', ['2026-02-02 A1: spawned brood rowan-1', '2026-02-03 A1: eggs seen brood ROWAN-1']],
    ['a later stage', ['2026-02-02 A1: spawned brood Rowan-1', '2026-02-12 A1: free-swimming brood Rowan-1']],
    ['a name of its own', ['2026-02-02 A1: spawned brood R7', '2026-02-03 A1: eggs seen brood R7']],
    [
      'one that was suspected',
      ['2026-02-02 A1: maybe spawned brood Rowan-1', '2026-02-03 A1: eggs seen brood Rowan-1'],
    ],
    ['one suspected without a name', ['2026-02-02 A1: maybe spawned', '2026-02-03 A1: eggs seen brood Rowan-4']],
    ['one suspected, seen later', ['2026-02-02 A1: maybe spawned', '2026-02-06 A1: wrigglers brood Rowan-4']],
  ])('%s', (_, lines) => {
    expect(broods(lines)).toHaveLength(1);
    expect(roomOf(lines).problems).toEqual([]);
  });

  test.each([
    ['on days that cannot be one', '2026-04-03 A1: spawned brood Rowan-1', 'brood Rowan-2'],
    ['of another group', '2026-02-02 A2: spawned brood Rowan-1', 'brood Ash-1'],
  ])('%s it is refused, with a free number', (_, second, free) => {
    const { problems: told, stock } = roomOf(['2026-02-02 A1: spawned brood Rowan-1', second]);
    expect(told.map(({ kind, weight }) => [kind, weight])).toEqual([['brood-name-taken', 'stops']]);
    expect(told[0]?.write).toContain(free);
    expect([...stock.broods.keys()]).toEqual(['Rowan-1']);
  });
});

describe('a spawn without a name', () => {
  const before = '2026-02-02 A1: spawned';
  const named = '2026-03-10 A1: spawned brood Rowan-1';

  test('takes no number that another line writes, later or earlier in the file', () => {
    expect(broods([before, named])).toEqual(['Rowan-2: 1', 'Rowan-1: 2']);
    expect(broods([named, before])).toEqual(['Rowan-2: 2', 'Rowan-1: 1']);
  });

  test('is called the same before that line was written of', () => {
    expect(broods([before, named], '2026-02-05')).toEqual(['Rowan-2: 1']);
  });

  test('takes the next number that is free, in order of date', () => {
    const later = '2026-04-20 A1: spawned brood Rowan-2';
    expect(broods([later, '2026-03-10 A1: spawned', before])).toEqual(['Rowan-1: 3', 'Rowan-3: 2', 'Rowan-2: 1']);
  });

  test('nor does one cast back from a stage', () => {
    expect(broods(['2026-02-12 A1: wrigglers', '2026-04-12 A1: wrigglers brood Rowan-1'])).toEqual([
      'Rowan-2: 1',
      'Rowan-1: 2',
    ]);
  });

  test('that may be the one a line names next day is told as a doubt, never joined in silence', () => {
    expect(problems([before, '2026-02-03 A1: eggs seen brood Rowan-1'])).toEqual(['two-spawns']);
  });

  test('is the brood that a line without a name speaks of next', () => {
    expect(broods(['2026-02-02 A1: spawned brood Rowan-4', '2026-02-03 A1: eggs seen'])).toEqual(['Rowan-4: 1, 2']);
  });
});
