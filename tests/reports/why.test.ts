import { expect, test } from 'vitest';
import { plainLook } from '../../src/reports/look.ts';
import type { Explained } from '../../src/reports/why.ts';
import { whyJson, whyText } from '../../src/reports/why.ts';
import { day } from '../support/events.ts';

const ROW: Explained = {
  id: 'c1-water-change',
  title: 'C1: water change 30 %',
  because: {
    rule: 'a chore falls due its interval after it was last done',
    source: 'the journal',
    steps: ['last done 2026-02-10', '10 Feb + 7 days = 17 Feb'],
    lines: [],
  },
  quoted: [{ file: 'fishroom.txt', line: 12, text: '2026-01-04 C1: water change 30 % every 7 days' }],
};
const look = plainLook(day('2026-02-15'));

test('tells the rule, the numbers, the source and the lines as written', () => {
  expect(whyText([ROW], look)).toBe(
    [
      'Sun 15 Feb 2026: C1: water change 30 %',
      '  rule     a chore falls due its interval after it was last done',
      '  numbers  last done 2026-02-10',
      '           10 Feb + 7 days = 17 Feb',
      '  source   the journal',
      '  lines    fishroom.txt line 12',
      '             2026-01-04 C1: water change 30 % every 7 days',
      '  id       c1-water-change',
      '',
    ].join('\n'),
  );
});

test('two rows are told one below the other, and counted first', () => {
  const [first, ...rest] = whyText([ROW, { ...ROW, title: 'C2: water change 30 %' }], look).split('\n\n');
  expect(first).toBe('Sun 15 Feb 2026: 2 rows have these words');
  expect(rest.map((block) => block.split('\n')[0])).toEqual(['C1: water change 30 %', 'C2: water change 30 %']);
});

test('lets the keeper choose where many rows have the words', () => {
  const text = whyText([ROW, ROW, ROW, ROW], look);
  expect(text.split('\n')[0]).toBe('Sun 15 Feb 2026: 4 rows have these words; ask for one of them');
  expect(text).toContain('tankside why c1-water-change  (C1: water change 30 %)');
});

test('tells many rows of one kind in one line, by what tells them apart', () => {
  const stays = ['aspen-1-n6', 'aspen-3-s3', 'elm-s3', 'hazel-2-s4', 'gorse-1-k1'];
  const rows = stays.map((own) => ({ ...ROW, id: `winter-${own}-stays`, title: `${own} stays` }));
  const text = whyText([{ ...ROW, id: 'winter-check', title: 'room: check' }, ...rows], look);
  expect(text).toBe(
    [
      'Sun 15 Feb 2026: 6 rows have these words; ask for one of them',
      '',
      'tankside why winter-check  (room: check)',
      'tankside why winter … stays  (5 rows; for … one of aspen-1-n6, aspen-3-s3,',
      '    elm-s3, hazel-2-s4, gorse-1-k1)',
      '',
    ].join('\n'),
  );
});

test('as JSON it has the texts beside the lines', () => {
  expect(whyJson([ROW])).toEqual({
    rows: [
      {
        id: 'c1-water-change',
        title: 'C1: water change 30 %',
        rule: ROW.because.rule,
        source: 'the journal',
        steps: ROW.because.steps,
        lines: [{ file: 'fishroom.txt', line: 12 }],
        texts: ['2026-01-04 C1: water change 30 % every 7 days'],
      },
    ],
  });
});
