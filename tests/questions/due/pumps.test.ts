/** A pump that stood starves the living filter: how long it stood decides. */
import { describe, expect, test } from 'vitest';
import { watchDue } from '../../../src/questions/due/watch.ts';
import { journalOn } from '../../support/journal.ts';

const ROOM = [
  '2026-01-01 loop North: sump 240 L; prefilter 6 layers; spills at 80 mm',
  '2026-01-01 tank N1: 100 L; on North',
];
const whys = (on: string, lines: readonly string[]): readonly string[] =>
  watchDue(journalOn(on, [...ROOM, ...lines].join('\n'))).map(({ why }) => why);

describe('a pump that stood', () => {
  test('for minutes asks for nothing, though one of weeks ago was never put on again', () => {
    const lines = [
      '2026-01-05 North: pump off for 1 h',
      '2026-02-01 08:00 North: pump off',
      '2026-02-01 08:20 North: pump on',
    ];
    expect(whys('2026-02-02', lines)).toEqual([]);
    expect(whys('2026-02-02', ['2026-01-05 North: pump off for 1 h', '2026-02-01 North: pump on'])).toEqual([]);
  });

  test('for a night asks for tests', () => {
    expect(whys('2026-02-02', ['2026-02-01 20:00 North: pump off', '2026-02-02 07:00 North: pump on'])).toEqual([
      expect.stringContaining('the pump stood for hours on 2 Feb; day 0'),
    ]);
  });

  test('for hours that its line said beforehand asks once they are over, put on again or not', () => {
    const off = '2026-02-01 10:00 North: pump off for 8 h';
    expect(whys('2026-02-02', [off])).toEqual([expect.stringContaining('the pump stood for hours on 1 Feb; day 1')]);
    expect(whys('2026-02-02', [off, '2026-02-02 07:00 North: pump on'])).toEqual([
      expect.stringContaining('the pump stood for hours on 1 Feb; day 1'),
    ]);
    expect(whys('2026-02-02', [off, '2026-02-01 11:00 North: pump on'])).toEqual([]);
    expect(whys('2026-02-02', ['2026-02-01 10:00 North: pump off for 2 h'])).toEqual([]);
    expect(whys('2027-03-01', [off])).toEqual([]);
  });
});
