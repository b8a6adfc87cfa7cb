import { describe, expect, test } from 'vitest';
import type { DayWindow } from '../../src/core/interval.ts';
import type { DueAnswer, DueRow } from '../../src/questions/due.ts';
import { dueJson, dueText } from '../../src/reports/due.ts';
import { plainLook } from '../../src/reports/look.ts';
import { colours } from '../../src/reports/paint.ts';
import { day } from '../support/events.ts';

const look = plainLook(day('2026-02-15'));

function window(low: string, high = low): DayWindow {
  return { low: day(low), likely: null, high: day(high) };
}

function row(rest: Partial<DueRow>): DueRow {
  return {
    id: 'c1-water-change',
    place: 'C1',
    what: 'water change 30 %',
    kind: 'chore',
    due: window('2026-02-13'),
    state: 'late',
    weight: 1,
    why: 'every 7 days, last on 6 Feb',
    close: 'C1: water change 30 %',
    putOffKey: 'water change',
    pressing: false,
    minutes: null,
    because: { rule: '', source: '', steps: [], lines: [] },
    lines: [{ file: 'fishroom.txt', line: 12 }],
    ...rest,
  };
}

function answer(rows: readonly DueRow[], rest: Partial<DueAnswer> = {}): DueAnswer {
  return { rows, putOff: [], waiting: [], fitted: null, ...rest };
}

const GASPING = row({
  id: 'a1-dispute',
  place: 'A1',
  what: 'separate Rowan now',
  state: 'today',
  weight: 3,
  why: 'gasping since the 14th',
  close: 'A1: divider in',
  caution: 'gloves on',
});
const AHEAD = row({
  id: 'a2',
  place: 'A2',
  state: 'ahead',
  due: window('2026-02-17', '2026-02-20'),
  caution: 'gloves on',
});

describe('as text', () => {
  test('begins with the date and what matters most, and gives each thing its reason and its line', () => {
    expect(dueText(answer([GASPING, row({}), AHEAD]), look)).toBe(
      [
        'Sun 15 Feb 2026: 2 things to do, first A1: separate Rowan now',
        '',
        'A1  now          separate Rowan now',
        '    gasping since the 14th',
        '    take care: gloves on',
        '    jot  A1: divider in',
        'C1  late 2 days  water change 30 %',
        '    every 7 days, last on 6 Feb',
        '    jot  C1: water change 30 %',
        '',
        'A2  17–20 Feb    water change 30 %',
        '    every 7 days, last on 6 Feb',
        '    jot  C1: water change 30 %',
        '',
      ].join('\n'),
    );
  });

  test('gives a machine one ISO date a row, and says it of a projection', () => {
    const text = dueText(answer([row({}), AHEAD]), { ...look, machine: true, projected: true });
    expect(text).toMatch(/^2026-02-15 \(a projection\): 1 thing to do, first C1: water change/);
    expect(text).toMatch(/^C1 {2}late 2 days +water change/m);
    expect(text).toMatch(/^A2 {2}about 2026-02-17 {2}water change/m);
  });

  test('says by when a thing is to be done', () => {
    const first = (rest: Partial<DueRow>): string => dueText(answer([row(rest)]), look).split('\n')[2] ?? '';
    expect(first({ state: 'today', due: window('2026-02-13', '2026-02-17') })).toBe('C1  by 17 Feb  water change 30 %');
    expect(first({ state: 'today', due: window('2026-02-13', '2026-02-15') })).toBe('C1  today  water change 30 %');
    expect(first({ state: 'ahead', due: window('2026-02-17') })).toBe('C1  by 17 Feb  water change 30 %');
  });

  test('says that nothing is due, and what comes next', () => {
    expect(dueText(answer([]), look)).toBe('Sun 15 Feb 2026: nothing due\n');
    expect(dueText(answer([AHEAD]), look).split('\n')[0]).toBe(
      'Sun 15 Feb 2026: nothing due; next A2: water change 30 %, 17–20 Feb',
    );
  });

  test('counts what was put off and what waits, in the last line', () => {
    const put = { id: 'x', place: 'A2', what: 'water change', until: day('2026-02-20') };
    expect(dueText(answer([], { putOff: [put] }), look)).toMatch(/\n\n1 put off: A2 water change until 20 Feb\n$/);
    const many = answer([], { putOff: Array.from({ length: 6 }, () => put) });
    expect(dueText(many, look)).toMatch(/6 put off: .*and 2\s+more\n$/s);
    expect(dueText(answer([], { waiting: [{ ...put, until: day('2026-03-02') }] }), look)).toMatch(
      /away: 1 waits until you are back on 2 Mar\n$/,
    );
  });

  test('tells how the minutes were spent', () => {
    const fitted = { minutes: 35, of: 40, left: [AHEAD] };
    expect(dueText(answer([row({})], { fitted }), look)).toMatch(
      /about 35 of 40 minutes; did not fit: A2 water change 30 %\n$/,
    );
    expect(dueText(answer([], { fitted: { ...fitted, of: 2 } }), look).split('\n')[0]).toBe(
      'Sun 15 Feb 2026: nothing fits into 2 minutes',
    );
  });

  test('stays within a narrow terminal', () => {
    const lines = dueText(answer([GASPING, row({}), AHEAD]), { ...look, width: 40 }).split('\n');
    expect(Math.max(...lines.map(({ length }) => length))).toBeLessThanOrEqual(40);
  });

  test('uses colour for urgency and nothing but colour for it', async () => {
    const rows = answer([GASPING, row({}), AHEAD]);
    const coloured = dueText(rows, { ...look, paint: await colours() });
    expect(coloured).toContain('\u001b[31m');
    expect(coloured.replaceAll(/\u001b\[[\d;]*m/g, '')).toBe(dueText(rows, look));
  });
});

test('as JSON it has the keys of version 1', () => {
  const put = { id: 'x', place: 'A2', what: 'water change', until: day('2026-02-20') };
  expect(dueJson(answer([GASPING], { putOff: [put] }))).toEqual({
    putOff: 1,
    waiting: 0,
    items: [
      {
        id: 'a1-dispute',
        place: 'A1',
        what: 'separate Rowan now',
        kind: 'chore',
        state: 'today',
        due: { low: '2026-02-13', likely: null, high: '2026-02-13' },
        why: 'gasping since the 14th',
        close: 'A1: divider in',
        caution: 'gloves on',
        minutes: null,
        lines: [{ file: 'fishroom.txt', line: 12 }],
      },
    ],
    postponed: [{ id: 'x', place: 'A2', what: 'water change', until: '2026-02-20' }],
  });
});
