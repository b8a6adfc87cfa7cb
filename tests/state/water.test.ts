/** Readings, changes and doses as the room keeps them: which reading stands, which change cannot be, whose water it was. */
import { describe, expect, test } from 'vitest';
import { isoDay } from '../../src/core/day.ts';
import { PARAMETERS } from '../../src/state/parameters.ts';
import { journalOn } from '../support/journal.ts';

const on = (...lines: readonly string[]) => journalOn('2026-04-10', `${lines.join('\n')}\n`);

describe('a reading', () => {
  /** `C1 kh 6, ph 7` of every reading that stands; `nothing` of one that was replaced as a whole. */
  const standing = (...lines: readonly string[]): string[] =>
    on(...lines).water.readings.map(({ where, reading, superseded }) => {
      const told = PARAMETERS.flatMap((key) =>
        reading[key] === null ? [] : [`${key} ${String(reading[key].likely)}`],
      );
      return `${where} ${superseded ? 'nothing' : told.join(', ')}`;
    });

  test('filed later for the same water and day replaces the same thing, and that alone', () => {
    expect(standing('2026-03-10 C1: test pH 7, KH 6', '2026-03-10 C1: test pH 7.4')).toEqual(['C1 kh 6', 'C1 ph 7.4']);
    expect(standing('2026-03-10 C1: test pH 7', '2026-03-10 C1: test pH 7.4')).toEqual(['C1 nothing', 'C1 ph 7.4']);
    expect(standing('2026-03-10 C1: test pH 7', '2026-03-10 C1: test KH 6')).toEqual(['C1 ph 7', 'C1 kh 6']);
  });

  test('is replaced again, though others of the day stand between', () => {
    const lines = [
      '2026-03-10 C1: test pH 7',
      '2026-03-10 C2: test pH 6',
      '2026-03-10 C1: test KH 6',
      '2026-03-10 C1: test pH 7.4',
    ];
    expect(standing(...lines)).toEqual(['C1 nothing', 'C2 ph 6', 'C1 kh 6', 'C1 ph 7.4']);
    const again = [...lines, '2026-03-10 C1: test pH 7.6, KH 5'];
    expect(standing(...again)).toEqual(['C1 nothing', 'C2 ph 6', 'C1 nothing', 'C1 nothing', 'C1 ph 7.6, kh 5']);
  });

  test.each([
    ['of another water', '2026-03-10 C2: test pH 7.4'],
    ['of another day', '2026-03-11 C1: test pH 7.4'],
    ['filed late for a day before', '2026-03-09 C1: test pH 7.4'],
    ['at another time of that day', '2026-03-10 18:00 C1: test pH 7.4'],
  ])('%s leaves it standing', (_, line) => {
    const told = standing('2026-03-10 08:00 C1: test pH 7', line);
    expect(told).toHaveLength(2);
    expect(told).toContain('C1 ph 7');
  });

  test('that comes behind others of later days finds its own day', () => {
    const lines = ['2026-03-10 C1: test pH 7', '2026-03-12 C1: test pH 7.2', '2026-03-11 C1: test pH 7.1 yesterday'];
    expect(standing(...lines)).toEqual(['C1 nothing', 'C1 ph 7.1', 'C1 ph 7.2']);
  });
});

describe('a change', () => {
  const changes = (line: string) => {
    const room = on(line);
    return [
      room.water.changes.length,
      ...room.problems.map(({ kind, at, also }) => `${kind} ${[at, ...also].map((place) => place.line).join(' ')}`),
    ];
  };
  test('of more than there is cannot be, of all of it can', () => {
    expect(changes('2026-03-10 C1: water change 54 L')).toEqual([1]);
    expect(changes('2026-03-10 C1: water change 55 L')).toEqual([0, 'impossible-change 20 6']);
    expect(changes('2026-03-10 C1: water change 50-60 L')).toEqual([1]);
    expect(changes('2026-03-10 A1: water change 160 L')).toEqual([1]);
    expect(changes('2026-03-10 A1: water change 161 L')).toEqual([0, 'impossible-change 20 3']);
    expect(changes('2026-03-10 Long: water change 161 L')).toEqual([1]);
    expect(changes('2026-03-10 C1: water change 100 %')).toEqual([1]);
  });
});

test('what is done to a tank of a loop is done to all that share its water that day', () => {
  const { doses, topUps, disturbed } = on(
    '2026-03-09 A2: off the loop',
    '2026-03-10 A1: dosed 5 g salt, topped up 12 L',
    '2026-03-11 A2: dosed 5 g salt',
    '2026-03-12 Long: cleaned media "half of it"',
    '2026-03-13 C1: rinsed sponge',
  ).water;
  expect(doses.map(({ day, where, product, tanks }) => [isoDay(day), where, product, ...tanks])).toEqual([
    ['2026-03-10', 'A1', 'salt', 'A1', 'B1'],
    ['2026-03-11', 'A2', 'salt', 'A2'],
  ]);
  expect(topUps.map(({ litres, tanks }) => [litres.likely, ...tanks])).toEqual([[12, 'A1', 'B1']]);
  expect(disturbed.map(({ what, remark, tanks }) => [what, remark, ...tanks])).toEqual([
    ['media cleaned', 'half of it', 'A1', 'B1'],
    ['sponge rinsed', null, 'C1'],
  ]);
});
