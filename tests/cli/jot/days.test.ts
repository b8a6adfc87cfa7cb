import { describe, expect, test } from 'vitest';
import { datedLine, dayAlone } from '../../../src/cli/jot/days.ts';
import { dayFromIso, isoDay, toDay } from '../../../src/core/day.ts';

/** A Sunday. */
const TODAY = dayFromIso('2026-02-15') ?? toDay(0);

function alone(text: string): string | null {
  const day = dayAlone(text, TODAY);
  return day === null ? null : isoDay(day);
}

describe('a day before the words of a line', () => {
  test.each([
    ['Tue A1: chasing', '2026-02-10 A1: chasing'],
    ['yesterday A1 A2: lights off', '2026-02-14 A1 A2: lights off'],
    ['14 Feb A1: wc 30%', '2026-02-14 A1: wc 30%'],
    ['Feb 14 row D: all well', '2026-02-14 row D: all well'],
    ['Wed 12: all well', '2026-02-11 12: all well'],
    ['last tue A1: all well', '2026-02-10 A1: all well'],
    ['14 Feb 2025 A1: wc 30%', '2025-02-14 A1: wc 30%'],
    ['Feb 14, 2025 A1: wc 30%', '2025-02-14 A1: wc 30%'],
    ['14.02.2026 A1: chasing', '2026-02-14 A1: chasing'],
    ['2026/2/4 07:40 A1: spawned', '2026-02-04 07:40 A1: spawned'],
    ['14 February 2025, A1: chasing', '2025-02-14 A1: chasing'],
  ])('%s', (words, line) => {
    expect(datedLine(words, TODAY, TODAY)).toBe(line);
  });

  test.each(['4/2/2026 A1: chasing', '04-02-2026 A1: chasing'])(
    '%s may be two days: it is left to be asked',
    (words) => {
      expect(datedLine(words, TODAY, TODAY)).toBe(words);
    },
  );

  test('a number before a heading is a tank, not a year', () => {
    expect(datedLine('14 Feb 2026: all well', TODAY, TODAY)).toBe('2026-02-14 2026: all well');
    expect(datedLine('2026-02-30 A1: chasing', TODAY, TODAY)).toBe('2026-02-30 A1: chasing');
  });

  test.each(['A1: wc 30%', 'tank 12: all well', 'Sun: all well', 'note Tue A1: chasing', 'D1 to D6: all well'])(
    '%s has none',
    (words) => {
      expect(datedLine(words, TODAY, TODAY)).toBe(`2026-02-15 ${words}`);
    },
  );
});

describe('a day on a line of its own', () => {
  test.each([
    ['Tue', '2026-02-10'],
    ['tuesday', '2026-02-10'],
    ['Sun', '2026-02-15'],
    ['Mon:', '2026-02-09'],
    ['14 Feb', '2026-02-14'],
    ['Feb 14.', '2026-02-14'],
    ['14 Feb 2025', '2025-02-14'],
    ['Feb 14, 2025', '2025-02-14'],
    ['14.2.2026', '2026-02-14'],
    [' 2026/02/14: ', '2026-02-14'],
    ['last tue', '2026-02-10'],
    ['2026-02-01', '2026-02-01'],
    ['yesterday', '2026-02-14'],
    ['-3', '2026-02-12'],
    ['today', '2026-02-15'],
  ])('%s is %s', (text, iso) => {
    expect(alone(text)).toBe(iso);
  });

  test.each([
    'A1: chasing',
    'A1',
    '12',
    'note tue',
    '',
    '  ',
    'tu',
    'no eggs',
    '31 Feb',
    '2026-02-30',
    '4/2/2026',
    '1.5',
    'mons',
  ])('«%s» is none', (text) => {
    expect(alone(text)).toBeNull();
  });

  test('is one that has been, however near the coming one is', () => {
    const on = dayFromIso('2026-11-29') ?? toDay(0);
    expect(isoDay(dayAlone('14 Feb', on) ?? toDay(0))).toBe('2026-02-14');
  });
});
