import stringWidth from 'string-width';
import { beforeAll, describe, expect, test } from 'vitest';
import { toDay } from '../../src/core/day.ts';
import { plainLook } from '../../src/reports/look.ts';
import { colours, PLAIN, wantsColour } from '../../src/reports/paint.ts';
import { printable, printableAnswer } from '../../src/reports/printable.ts';
import type { Row } from '../../src/reports/table.ts';
import { table } from '../../src/reports/table.ts';
import { loadWidths } from '../../src/reports/width.ts';
import { labelled, paragraph, wrap } from '../../src/reports/wrap.ts';

const look = plainLook(toDay(20_499));
const columns = [{ head: 'where' }, { head: 'n', align: 'right' as const }, { head: 'why', wraps: true }];
const long = 'the level has risen twelve millimetres in six days and the last clean was of two layers only';

beforeAll(loadWidths);

function widest(text: string): number {
  return Math.max(...text.split('\n').map((line) => stringWidth(line)));
}

describe('a table', () => {
  test('lines columns up by what a terminal shows, not by characters', () => {
    const rows: Row[] = [{ cells: ['A1', '9', 'x'] }, { cells: ['水槽', '10', 'y'] }, { cells: ['é', '1', 'z'] }];
    expect(table(look, columns, rows)).toBe('where   n  why\nA1      9  x\n水槽   10  y\né       1  z\n');
  });

  test('wraps the wrapping column and keeps the others whole', () => {
    const text = table({ ...look, width: 40 }, columns, [{ cells: ['Long', '2', long] }]);
    expect(widest(text)).toBeLessThanOrEqual(40);
    expect(text.split('\n').slice(1).join(' ').replaceAll(/\s+/g, ' ').trim()).toBe(`Long 2 ${long}`);
  });

  test('becomes blocks where the columns cannot fit, each cell beside the name of its column', () => {
    const rows: Row[] = [
      { cells: ['Rowan of the upper row', '12', 'x'], under: ['jot  A1: lights on'] },
      { cells: ['Ash', '', long], apart: true },
    ];
    const text = table({ ...look, width: 24 }, columns, rows);
    expect(widest(text)).toBeLessThanOrEqual(24);
    expect(text).toMatch(
      /^Rowan of the upper row\n {2}n {4}12\n {2}why {2}x\n {2}jot {2}A1: lights on\n\nAsh\n {2}why {2}the level has/,
    );
  });

  test('puts lines of its own under a row, set in a little', () => {
    const text = table(look, columns, [{ cells: ['A1', '1', 'x'], under: ['jot  A1: lights on'] }]);
    expect(text).toBe('where  n  why\nA1     1  x\n    jot  A1: lights on\n');
  });

  test('draws many rows as it draws few', () => {
    const row: Row = { cells: ['Long', '2', long], under: ['jot  Long: level 58 mm'] };
    const few = table(
      look,
      columns,
      Array.from({ length: 90 }, () => row),
    ).split('\n');
    const many = table(
      look,
      columns,
      Array.from({ length: 180 }, () => row),
    ).split('\n');
    expect(many.slice(0, few.length - 1)).toEqual(few.slice(0, -1));
    expect(many.length - 2).toBe((few.length - 2) * 2);
  });

  test('draws a cell of many lines as it draws one of few', () => {
    const told = (lines: number): string =>
      table(look, columns, [{ cells: ['A1', '1', 'word '.repeat(8 * lines).trim()] }]);
    const few = told(4).split('\n');
    const many = told(2_000).split('\n');
    expect(many.slice(0, few.length - 2)).toEqual(few.slice(0, -2));
    expect(many.length).toBeGreaterThan(500);
    expect(new Set(many.slice(3, -2)).size).toBe(1);
  });

  test('stacks several texts in one cell', () => {
    const cells = ['A1', '1', ['water change', { text: 'last on 6 Feb', paint: look.paint.quiet }]];
    expect(table(look, columns, [{ cells }])).toBe('where  n  why\nA1     1  water change\n          last on 6 Feb\n');
  });

  test('is nothing where there are no rows', () => {
    expect(table(look, columns, [])).toBe('');
  });

  test('colours whole words after they were cut to width', async () => {
    const paint = await colours();
    const cell = { text: 'late, twelve days', paint: paint.late };
    const text = table({ ...look, width: 16, paint }, [{ head: '', wraps: true }], [{ cells: [cell] }]);
    expect(text).toBe('\u001b[31mlate, twelve\u001b[39m\n\u001b[31mdays\u001b[39m\n');
  });
});

describe('wrapping', () => {
  test('cuts a word that is too long for any line', () => {
    expect(wrap('a abcdefghij b', 4)).toEqual(['a', 'abcd', 'efgh', 'ij b']);
    expect(wrap('', 10)).toEqual(['']);
  });

  test('keeps blanks at the beginning, and takes words at their width on the screen', () => {
    expect(wrap('  a b', 10)).toEqual(['  a b']);
    expect(wrap('水槽 水槽', 5)).toEqual(['水槽', '水槽']);
  });

  test('sets a text beside its label', () => {
    expect(labelled('rule', 'one two three', 7, 14)).toBe('rule   one two\n       three');
  });

  test('sets the later lines of a paragraph in', () => {
    expect(paragraph('one two three four', 10, 2)).toBe('one two\n  three\n  four');
  });
});

describe('journal text', () => {
  test('cannot move the cursor, ring a bell or turn the line round', () => {
    expect(printable('a\u001b[2Jb\u0007c\u202ed\u0085e\tf')).toBe('a?[2Jb?c?d?e f');
    expect(printable('♀ 3 × 40 cm, große Höhle, 水槽')).toBe('♀ 3 × 40 cm, große Höhle, 水槽');
  });

  test('keeps only line ends and colours of ours in an answer', () => {
    expect(printableAnswer('\u001b[31mlate\u001b[39m\n\u001b]0;x\u0007', true)).toBe(
      '\u001b[31mlate\u001b[39m\n?]0;x?',
    );
    expect(printableAnswer('\u001b[31mlate\u001b[39m', false)).toBe('late');
  });

  test('is made harmless by every brush', async () => {
    for (const paint of [PLAIN, await colours()]) {
      const { urgent, late, today, quiet, strong, wrong } = paint;
      for (const brush of [urgent, late, today, quiet, strong, wrong]) expect(brush('a\u0007b')).toContain('a?b');
    }
  });
});

test('colour follows NO_COLOR, then FORCE_COLOR, then the terminal', () => {
  const tty = { isTTY: true, env: {} };
  expect(wantsColour(tty)).toBe(true);
  expect(wantsColour({ isTTY: false, env: {} })).toBe(false);
  expect(wantsColour({ isTTY: true, env: { TERM: 'dumb' } })).toBe(false);
  expect(wantsColour({ isTTY: true, env: { NO_COLOR: '1', FORCE_COLOR: '1' } })).toBe(false);
  expect(wantsColour({ isTTY: true, env: { NO_COLOR: '' } })).toBe(true);
  expect(wantsColour({ isTTY: false, env: { FORCE_COLOR: '1' } })).toBe(true);
  expect(wantsColour({ isTTY: true, env: { FORCE_COLOR: '0' } })).toBe(false);
});
