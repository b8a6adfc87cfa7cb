/** Sheets of results as people and spreadsheets hand them in. */
import { stringify } from 'csv-stringify/sync';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { isSheet, readSheet, type Sheet } from '../../../src/cli/settle/sheet.ts';

const HEAD = 'lot,stock,species,tank,fish,minimum,fetched,back to';

function read(rows: string, head = HEAD): Sheet {
  return readSheet(`${head}\n${rows}`, 'EUR');
}

function says(sheet: Sheet): readonly string[] {
  return sheet.wrong.map(({ line, says: words }) => `${line ?? '–'}: ${words}`);
}

describe('a sheet that is read', () => {
  const sold = { line: 2, lot: '1', stock: 'Rowan-1', tank: 'C1', fish: 6, fetched: 14.5, unsold: null };

  test.each([
    ['as it was written', `${HEAD}\n1,Rowan-1,krib,C1,6,12,14.5,\n`],
    ['with a byte-order mark and CRLF', `\ufeff${HEAD}\r\n1,Rowan-1,krib,C1,6,12,14.50,\r\n`],
    ['with old line ends', `${HEAD}\r1,Rowan-1,krib,C1,6,12,14.50,\r`],
    ['with semicolons and a comma in the sum', `${HEAD.replaceAll(',', ';')}\n1;Rowan-1;krib;C1;6;12;14,50;\n`],
    ['with tabs', `${HEAD.replaceAll(',', '\t')}\n1\tRowan-1\tkrib\tC1\t6\t12\t14,5\t\n`],
    ['with quotes around everything', `"lot","stock","tank","fish","fetched"\n"1","Rowan-1","C1","6","14,50"\n`],
    ['with the sign of the currency', `${HEAD}\n1,Rowan-1,krib,C1,6,12,€ 14.50,\n`],
    ['with the code of the currency', `${HEAD}\n1,Rowan-1,krib,C1,6,12,14.50 eur,\n`],
    ['with columns in another order, and others', `fetched,tank,Remarks,FISH,Stock,Lot\n14.5,C1,"a\nb",6,Rowan-1,1\n`],
    ['with blanks and a hard blank', `${HEAD}\n 1 ,Rowan-1\u00a0,krib, C1,6 ,12, 14.50 ,\n`],
  ])('%s', (_, text) => {
    expect(readSheet(text, 'EUR')).toEqual({ results: [sold], wrong: [] });
  });

  test('what became of the unsold', () => {
    const sheet = read(
      '1,A,k,C1,6,,,Q1\n2,A,k,C1,6,,unsold,stayed\n3,A,k,C1,6,,-,Given\n4,A,k,C1,6,,,died\n5,A,k,C1,6,,,\n',
    );
    expect(sheet.results.map(({ unsold }) => unsold)).toEqual([
      { how: 'back', tank: 'Q1' },
      { how: 'stayed' },
      { how: 'gave away' },
      { how: 'died' },
      null,
    ]);
  });

  test('rows are told by the line on which they begin, empty ones are nothing', () => {
    const sheet = read('1,A,"k\nk",C1,6,,4,\n,,,,,,,\n\n2,A,k,C1,6,,5,\n');
    expect(sheet.results.map(({ line }) => line)).toEqual([2, 6]);
  });
});

describe('a sheet that is refused', () => {
  test.each([
    ['Total,,,,6,,4,', '2: no stock or no tank stands in it'],
    ['1,A,k,C1,six,,4,', '2: «six» is no whole number of fish from 1 to 9999'],
    ['1,A,k,C1,0,,4,', '2: «0» is no whole number of fish from 1 to 9999'],
    ['1,A,k,C1,-6,,4,', '2: «-6» is no whole number of fish from 1 to 9999'],
    ['1,A,k,C1,6.5,,4,', '2: «6.5» is no whole number of fish from 1 to 9999'],
    ['1,A,k,C1,,,4,', '2: no number of fish'],
    ['1,A,k,C1,6,,=1+1,', '2: «=1+1» is no sum of money'],
    ['1,A,k,C1,6,,-4,', '2: «-4» is no sum of money'],
    ['1,A,k,C1,6,,1e3,', '2: «1e3» is no sum of money'],
    ['1,A,k,C1,6,,4.00 USD,', '2: «4.00 USD» is no sum of money'],
    ['1,A,k,C1,6,,1.500,', '2: «1.500» may be 1500 or 1.500: write it without the mark, or with two decimals'],
    ['1,A,k,C1,6,,0,', '2: 0 is no price: empty if it was not sold, «given» under «back to» if it was given'],
    ['1,A,k,C1,6,,,Q1\n2,A,k,C1,6,,4,-\n3,A,k,C1,6,,4,Q1', '4: it was sold, and yet «back to» says that it was not'],
    ['1,A,k,C1,6,,4,,,5', '2: 10 cells under 8 columns'],
    ['1,,k,C1,6,,4,', '2: no stock or no tank stands in it'],
    ['1,"A,k,C1,6,,4,', '2: its quotes do not pair'],
  ])('%s', (row, words) => {
    expect(says(read(row))).toEqual([words]);
  });

  test('a wrong cell is told with what to write in it', () => {
    const written = (row: string): readonly (string | null)[] => read(row).wrong.map(({ write }) => write);
    expect(written('1,A,k,C1,six,,four,')).toEqual([
      'how many fish the lot held, as 6',
      'what the whole lot fetched, as 12.50; nothing where it was not sold',
    ]);
    expect(written('Total,,,,6,,4,')).toEqual([
      'both, as the blank sheet has them; take a row out that is no lot, as a total',
    ]);
  });

  test('every row that is wrong is told', () => {
    expect(says(read('1,A,k,C1,six,,4,\n2,A,k,C1,6,,4,\n3,A,k,C1,6,,four,\n')).map((line) => line.slice(0, 2))).toEqual(
      ['2:', '4:'],
    );
  });

  test('without the columns that are needed, or with nothing', () => {
    expect(says(read('1,2', 'lot,stock'))).toEqual(['1: the first row names no column «tank», «fish», «fetched»']);
    expect(says(readSheet('\ufeff\n', null))).toEqual(['–: nothing stands in it']);
  });

  test('far too long, or in another encoding', () => {
    expect(says(readSheet('x'.repeat(10_000_000), null))).toEqual([
      '–: it holds 10.0 million signs: that is no sheet of one auction',
    ]);
    expect(says(readSheet(`${HEAD}\n${'1,A,k,C1,6,,4,\n'.repeat(2001)}`, null))[0]).toContain('2001 rows');
    expect(says(readSheet(`${HEAD}\n1,A\ufffd,k,C1,6,,4,\n`, null))).toEqual([
      '–: it is not UTF-8: save it as CSV UTF-8',
    ]);
  });

  test('nothing that anybody hands in makes it fail, and nothing is half read', () => {
    const cell = fc.oneof(fc.string(), fc.constantFrom('6', '4.50', 'Rowan-1', 'C1', 'Q1', '', '"', '\n', ';', '\t'));
    const text = fc.oneof(
      fc.string(),
      fc.array(cell, { maxLength: 30 }).map((cells) => `${HEAD}\n${cells.join(',')}`),
      fc
        .array(fc.array(cell, { minLength: 8, maxLength: 8 }), { maxLength: 6 })
        .map((rows) => `${HEAD}\n${stringify(rows)}`),
    );
    fc.assert(
      fc.property(text, (handed) => {
        const sheet = readSheet(handed, 'EUR');
        for (const { fish, fetched, stock, unsold } of sheet.results) {
          expect(Number.isInteger(fish) && fish > 0 && stock !== '').toBe(true);
          expect(fetched === null || (fetched > 0 && unsold === null)).toBe(true);
        }
      }),
    );
  });
});

test('what is a sheet and what are lines of a journal', () => {
  expect(isSheet(`\ufeff${HEAD}`)).toBe(true);
  expect(isSheet('Fetched;Fish')).toBe(true);
  expect(isSheet('C1: sold 6 Rowan-1, for 14.00')).toBe(false);
});
