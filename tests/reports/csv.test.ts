import { parse } from 'csv-parse/sync';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { csvText } from '../../src/reports/csv.ts';

test('is read back as it was by another program', () => {
  const rows = [
    ['A1', 'krib "red"', 'a, b'],
    ['ü', 'two\nlines', ''],
  ];
  const text = csvText(['tank', 'fish', 'note'], rows);
  expect(text.startsWith('tank,fish,note\r\n')).toBe(true);
  expect(parse(text)).toEqual([['tank', 'fish', 'note'], ...rows]);
});

test('leaves unknown cells empty and makes formulas harmless', () => {
  expect(csvText(['n', 'text'], [[null, '=1+1']])).toBe("n,text\r\n,'=1+1\r\n");
  expect(csvText(['n'], [[4.5]])).toBe('n\r\n4.5\r\n');
});

test('no cell begins as a formula, every other one is read back as it was', () => {
  const starts = fc.constantFrom('', '=', '+', '-', '@', '\t', '\r', '＝');
  const cell = fc.tuple(starts, fc.string({ unit: 'grapheme', maxLength: 12 })).map(([start, text]) => start + text);
  fc.assert(
    fc.property(fc.array(fc.tuple(cell, cell), { minLength: 1, maxLength: 5 }), (rows) => {
      const [, ...back] = parse(csvText(['a', 'b'], rows));
      const told = rows.map((row) => row.map((text) => (/^[=+\-@\t\r＝＋－＠]/.test(text) ? `'${text}` : text)));
      expect(back).toEqual(told);
    }),
  );
});
