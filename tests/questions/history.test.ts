import { describe, expect, test } from 'vitest';
import { dayFromIso } from '../../src/core/day.ts';
import { history, isOfKind } from '../../src/questions/history.ts';
import type { HistoryAnswer, HistoryOptions, Written } from '../../src/questions/history.ts';
import { THEMES, themeOf } from '../../src/questions/history/themes.ts';
import { historyJson, historyText } from '../../src/reports/history.ts';
import { plainLook } from '../../src/reports/look.ts';
import type { Line } from '../support/events.ts';
import { day, eventsOf, roomOn } from '../support/events.ts';
import { groupSet, movedTo, rigged, said, sign, spawn, tankSet } from '../support/pairs.ts';

const SET = '2026-01-04';
const NOTHING: HistoryOptions = {
  words: [],
  pair: null,
  tank: null,
  brood: null,
  kind: null,
  since: null,
  until: null,
};

/** The journal's words beside the facts that were read from them. */
const JOURNAL: readonly (readonly [text: string, line: Line])[] = [
  ['tank A1: 100 L; alone', tankSet(SET, 'A1')],
  ['tank B2: 100 L; alone', tankSet(SET, 'B2')],
  ['pair Rowan: krib; in A1', groupSet(SET, 'Rowan', 'A1')],
  ['A1: spawned, about 90 eggs "left cave"', spawn('2026-02-02', 'A1', 'Rowan-1')],
  ['A1: chasing, male on female', sign('2026-02-14', 'A1', 'chasing', 'male on female')],
  ['A1: lights off', rigged('2026-02-14', 'A1', 'lights off')],
  ['A1: torn fin', sign('2026-02-15', 'A1', 'torn fin')],
  ['A1: made up', said('2026-02-16', 'A1', 'made up')],
  ['A1: moved the male to B2', movedTo('2026-02-20', 'A1', 'male', 'B2')],
];

function entries(): Written[] {
  const events = eventsOf(JOURNAL.map(([, line]) => line));
  return JOURNAL.map(([text, [iso]], index) => ({
    place: { file: 'fishroom.txt', line: index + 1, from: 0, to: text.length },
    day: dayFromIso(iso),
    minute: null,
    text: `${iso} ${text}`,
    events: events.filter((event) => event.place.line === index + 1),
  }));
}

function ask(options: Partial<HistoryOptions>, on = '2026-03-01'): HistoryAnswer {
  const room = roomOn(
    on,
    JOURNAL.map(([, line]) => line),
  );
  return history(room, entries(), { ...NOTHING, ...options });
}

/** Line numbers found, a dispute's in brackets. */
function numbers({ rows }: HistoryAnswer): string {
  return rows
    .map((row) => (row.row === 'line' ? String(row.line.line) : `(${row.lines.map((one) => one.line.line).join(' ')})`))
    .join(' ');
}

describe('history', () => {
  test('finds words in the text, all of them, without case', () => {
    expect(numbers(ask({ words: ['LEFT', 'eggs'] }))).toBe('4');
    expect(numbers(ask({ words: ['left', 'right'] }))).toBe('');
  });

  test('finds what a line is about, though its words do not say it', () => {
    expect(numbers(ask({ words: ['rowan', 'spawn'] }))).toBe('4');
  });

  test('a dispute is one row with its lines, whichever of them was found', () => {
    expect(numbers(ask({ words: ['torn'] }))).toBe('(5 7 8)');
    expect(numbers(ask({ kind: 'dispute' }))).toBe('(5 7 8)');
  });

  test('looked for by another kind, its lines are not drawn in', () => {
    expect(numbers(ask({ kind: 'measure' }))).toBe('6');
    expect(numbers(ask({ kind: 'lights off' }))).toBe('6');
  });

  test('by pair, tank, brood and dates', () => {
    expect(numbers(ask({ pair: 'rowan' }))).toBe('3 4 (5 7 8) 9');
    expect(numbers(ask({ tank: 'b2' }))).toBe('2 9');
    expect(numbers(ask({ brood: 'Rowan-1' }))).toBe('4');
    expect(numbers(ask({ tank: 'A1', since: day('2026-02-17') }))).toBe('9');
    expect(numbers(ask({ tank: 'A1', until: day('2026-02-02') }))).toBe('1 3 4');
  });

  test('nothing of a later day is told', () => {
    expect(numbers(ask({ tank: 'A1', since: day('2026-02-01') }, '2026-02-14'))).toBe('4 (5) 6');
  });

  test('is told with its dates', () => {
    const text = historyText(ask({ pair: 'Rowan', since: day('2026-02-01') }), plainLook(day('2026-03-01')));
    expect(text).toBe(
      [
        'Sun 1 Mar 2026: 5 lines about Rowan, 2–20 Feb',
        '',
        '2 Feb      A1: spawned, about 90 eggs "left cave"',
        '14–16 Feb  Rowan: dispute, 3 days, worst torn fin, male on female, ended by:',
        '           made up',
        '    14 Feb  A1: chasing, male on female',
        '    15 Feb  A1: torn fin',
        '    16 Feb  A1: made up',
        '20 Feb     A1: moved the male to B2',
        '',
      ].join('\n'),
    );
  });

  test('as JSON every row has an id and its lines', () => {
    expect(historyJson(ask({ words: ['torn'] }))).toMatchObject({
      count: 3,
      rows: [
        {
          id: 'rowan-dispute-2026-02-14',
          from: '2026-02-14',
          to: '2026-02-16',
          worst: 'torn fin',
          endedBy: 'made up',
          lines: [{ line: 5 }, { line: 7 }, { line: 8 }],
        },
      ],
    });
  });

  test('a line that was left out is found and marked', () => {
    const bad: Written = {
      place: { file: 'fishroom.txt', line: 40, from: 0, to: 9 },
      day: day('2026-02-21'),
      minute: null,
      text: '2026-02-21 A1: spwaned',
      events: [],
    };
    const room = roomOn('2026-03-01', []);
    const found = history(room, [bad], { ...NOTHING, words: ['spwaned'] });
    expect(historyText(found, plainLook(day('2026-03-01')))).toContain('A1: spwaned (left out)');
  });
});

describe('kinds', () => {
  test('a kind is a theme, the words of a clause, or a sign', () => {
    const [torn] = eventsOf([sign('2026-02-15', 'A1', 'torn fin')]);
    if (!torn) throw new Error('no event');
    expect(THEMES).toContain(themeOf(torn));
    expect(['dispute', 'Torn fin', 'dispute sign', 'water'].map((kind) => isOfKind(torn, kind))).toEqual([
      true,
      true,
      true,
      false,
    ]);
  });
});
