import { describe, expect, test } from 'vitest';
import { dayFromIso, toDay } from '../../src/core/day.ts';
import { asNote, dated, undated, withColon, withRemark } from '../../src/language/jotted.ts';

const DAY = dayFromIso('2026-02-14') ?? toDay(0);

describe('words on their way to a line', () => {
  test.each([
    ['A1: chasing', '2026-02-14 A1: chasing'],
    ['  A1: chasing \r', '2026-02-14 A1: chasing'],
    ['07:40 A1: spawned', '2026-02-14 07:40 A1: spawned'],
    ['2026-02-10 A1: chasing', '2026-02-10 A1: chasing'],
    ['# filters are due', '# filters are due'],
    ['also read "2025.txt"', 'also read "2025.txt"'],
    ['A1: note two\nlines\u2028here \u001b[31mred', '2026-02-14 A1: note two lines here [31mred'],
    ['   ', ''],
  ])('%j becomes %j', (words, line) => {
    expect(dated(words, DAY)).toBe(line);
  });

  test('the day that a prompt shows already is left out', () => {
    expect(undated('2026-02-14 A1: chasing', DAY)).toBe('A1: chasing');
    expect(undated('2026-02-13 A1: chasing', DAY)).toBe('2026-02-13 A1: chasing');
  });

  test('a colon is tried after one word and more, never where there is one', () => {
    expect(withColon('2026-02-14 07:40 A1 pair spawned')).toEqual([
      '2026-02-14 07:40 A1: pair spawned',
      '2026-02-14 07:40 A1 pair: spawned',
    ]);
    expect(withColon('2026-02-14 A1: pair spawned')).toEqual([]);
    expect(withColon('2026-02-14 nonsense')).toEqual([]);
  });

  test('words become a remark behind what is read, and not without it', () => {
    const line = '2026-02-14 A1: spawned, about 80 eggs, left cave';
    expect(withRemark(line, line.indexOf('left'))).toBe('2026-02-14 A1: spawned, about 80 eggs "left cave"');
    expect(withRemark('2026-02-14 A1: left cave', 15)).toBeNull();
    expect(withRemark('2026-02-14 A1: fault "valve" weeping', 30)).toBeNull();
  });

  test('a note keeps the words, under their heading where it is one', () => {
    expect(asNote('2026-02-14 A1: she, likes; # the "left" cave')).toEqual([
      '2026-02-14 A1: note she, likes; # the "left" cave',
      '2026-02-14 note A1: she, likes; # the "left" cave',
    ]);
    expect(asNote('2026-02-14 buy salt')).toEqual(['2026-02-14 note buy salt']);
  });
});
