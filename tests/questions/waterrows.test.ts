/** What one row of `water` tells of a journal: changes and doses of late, toxic ammonia in words, trends, and what it rests on. */
import { describe, expect, test } from 'vitest';
import { dayFromIso, isoDay } from '../../src/core/day.ts';
import { water, waterRows, type WaterRow } from '../../src/questions/water.ts';
import { plainLook } from '../../src/reports/look.ts';
import { waterText } from '../../src/reports/water.ts';
import { day } from '../support/events.ts';
import { journalOn } from '../support/journal.ts';

const ON = '2026-03-31';
function rowOf(place: string, ...lines: readonly string[]): WaterRow {
  const [row] = water(journalOn(ON, `${lines.join('\n')}\n`), { place, target: null }) ?? [];
  if (row === undefined) throw new Error('no such water');
  return row;
}

describe('changes', () => {
  /** `03-10 A1 30 %`. */
  const changes = (place: string, ...lines: readonly string[]): string[] =>
    rowOf(place, ...lines).changes.map(({ on, where, share, missed }) => {
      const percent = share === null ? '?' : String(Math.round(share * 1000) / 10);
      return [isoDay(on).slice(5), where, `${percent} %`, ...missed.map((tank) => `not ${tank}`)].join(' ');
    });

  test('of the last four weeks are told, older ones not', () => {
    expect(changes('C1', '2026-03-03 C1: water change 20 %')).toEqual([]);
    expect(changes('C1', '2026-03-04 C1: water change 20 %', '2026-03-31 C1: water change 30 %')).toEqual([
      '03-04 C1 20 %',
      '03-31 C1 30 %',
    ]);
    expect(changes('C1', '2026-03-10 C2: water change 20 %', '2026-03-10 Long: water change 20 %')).toEqual([]);
  });

  test('of one tank count for its loop by its litres', () => {
    // A1 and A2 hold 136 L live each, B1 71.4 L, the sump 240 L: 30 % of 136 L out of 583.4 L
    expect(changes('Long', '2026-03-10 A1: water change 30 %')).toEqual(['03-10 A1 7 %']);
    expect(changes('Long', '2026-03-10 Long: water change 30 %')).toEqual(['03-10 Long 30 %']);
    expect(changes('Long', '2026-03-10 Long: water change 58.34 L')).toEqual(['03-10 Long 10 %']);
  });

  test('of a tank while it was valved off are none of the loop, nor those of the loop of that tank', () => {
    const off = ['2026-03-08 A2: off the loop', '2026-03-20 A2: back on the loop'];
    const both = ['2026-03-10 A2: water change 30 %', '2026-03-12 Long: water change 20 %'];
    expect(changes('Long', ...off, ...both)).toEqual(['03-12 Long 20 % not A2']);
    expect(changes('A2', '2026-03-08 A2: off the loop', ...both)).toEqual(['03-10 A2 30 %']);
    expect(changes('A2', '2026-03-08 Long: water change 20 %', '2026-03-09 A2: off the loop')).toHaveLength(1);
  });

  test('reach a tray with the tank that it hangs in', () => {
    const tray = '2026-01-02 tray T1: in C1';
    expect(changes('T1', tray, '2026-03-10 C1: water change 30 %')).toEqual(['03-10 C1 30 %']);
  });

  test('of all the room are that share of every water', () => {
    expect(changes('Long', '2026-03-10 room: water change 30 %')).toEqual(['03-10 room 30 %']);
    expect(changes('C1', '2026-03-10 room: water change 30 %')).toEqual(['03-10 room 30 %']);
  });
});

test('doses are told with what they added, where product and litres say', () => {
  const doses = (line: string) =>
    rowOf('C1', line).doses.map(({ on, where, product, added }) => [isoDay(on), where, product, added?.of ?? null]);
  expect(doses('2026-03-10 C1: dosed 12 g "sodium bicarbonate"')).toEqual([
    ['2026-03-10', 'C1', 'sodium bicarbonate', 'kh'],
  ]);
  expect(doses('2026-03-10 C1: dosed 12 g salt')).toEqual([['2026-03-10', 'C1', 'salt', null]]);
  expect(doses('2026-03-10 C2: dosed 12 g salt')).toEqual([]);
});

describe('doses of a treatment', () => {
  test('are each told with its own amount', () => {
    const course = [
      '2026-03-10 C1: treat "salt" 2 g/L',
      '2026-03-12 C1: treat "salt" 1 g/L',
      '2026-03-13 C1: treat "salt"',
    ];
    expect(rowOf('C1', ...course).doses.map(({ dose }) => dose)).toMatchObject([
      { low: 2, unit: 'g/L' },
      { low: 1, unit: 'g/L' },
      null,
    ]);
  });

  /** `03-10 treated salt, 25 % left`. */
  const doses = (place: string, ...lines: readonly string[]): string[] =>
    rowOf(place, ...lines).doses.map(({ on, product, treated, left }) => {
      const much = left === null ? '' : `, ${String(Math.round(left * 100))} % left`;
      return `${isoDay(on).slice(5)} ${treated ? 'treated' : 'dosed'} ${product}${much}`;
    });
  const half = (day: string, place = 'C1'): string => `2026-${day} ${place}: water change 50 %`;

  test('are told among the others, each with what the changes since leave of it at most', () => {
    const course = ['2026-03-10 C1: treat "salt" 2 g/L, every 24 h, 3 doses', '2026-03-11 C1: treat "salt"'];
    expect(doses('C1', ...course)).toEqual(['03-10 treated salt', '03-11 treated salt']);
    expect(doses('C1', ...course, half('03-11'), half('03-15'), '2026-03-16 C1: dosed 5 g salt')).toEqual([
      '03-10 treated salt, 25 % left',
      '03-11 treated salt, 50 % left',
      '03-16 dosed salt',
    ]);
    expect(doses('C2', ...course)).toEqual([]);
  });
  test('of one tank are diluted by the whole of its loop, and by that loop’s changes', () => {
    const lines = ['2026-03-10 A1: treat "salt" 1 g/L', half('03-12', 'Long'), half('03-13', 'C1')];
    expect(doses('Long', ...lines)).toEqual(['03-10 treated salt, 50 % left']);
    expect(doses('A2', ...lines)).toEqual(['03-10 treated salt, 50 % left']);
  });
  test('with salt are told till little of it can be left; others for four weeks', () => {
    const old = (product: string): string => `2026-01-10 C1: treat "${product}" 2 g/L`;
    expect(doses('C1', old('salt'))).toEqual(['01-10 treated salt']);
    expect(doses('C1', old('salt'), half('01-12'), half('01-19'), half('01-26'))).toEqual([
      '01-10 treated salt, 13 % left',
    ]);
    expect(doses('C1', old('salt'), ...['01-12', '01-19', '01-26', '02-02'].map((day) => half(day)))).toEqual([]);
    expect(doses('C1', old('Epsom salt'))).toEqual([]);
    expect(doses('C1', '2026-01-10 C1: dosed 90 g salt')).toEqual([]);
  });
});

describe('toxic ammonia in words', () => {
  const verdict = (tested: string, on = '2026-03-20'): string | undefined =>
    rowOf('C1', `${on} C1: test ${tested}`).ammonia?.verdict;
  // 8.8 % of the total is toxic at pH 8.2 and 26 C; marks of 0.02, 0.05 and 2 mg/L: UF/IFAS FA-16
  test.each([
    ['TAN 0.1', 'under the mark of 0.02'],
    ['TAN 0.5', 'may harm the fish'],
    ['TAN 1', 'harms the fish'],
    ['TAN 30', 'deadly'],
    ['TAN 0-5', 'may be over the mark of 0.02'],
  ])('%s at pH 8.2: %s', (tan, words) => {
    expect(verdict(`${tan}, pH 8.2, 26 C`)).toBe(words);
  });
  test('is of a day that is named once it is more than 30 days ago', () => {
    expect(verdict('TAN 0.1, pH 8.2, 26 C', '2026-03-01')).toBe('under the mark of 0.02');
    expect(verdict('TAN 0.1, pH 8.2, 26 C', '2026-02-28')).toBe('by a test of 28 Feb, too old to go by: test again');
  });
});

describe('a trend', () => {
  const trends = (...lines: readonly string[]): string[] => rowOf('C1', ...lines).trends.map(({ words }) => words);
  const kh = (day: string, value: string): string => `2026-${day} C1: test KH ${value} dH`;
  test('is drawn through three readings over two weeks of the last sixty days', () => {
    expect(trends(kh('03-10', '8'), kh('03-17', '7'), kh('03-24', '6'))).toEqual([
      'KH falls 1.0 a week (3 readings since 10 Mar)',
    ]);
    expect(trends(kh('03-10', '8'), kh('03-17', '7'), kh('03-23', '6'))).toEqual([]);
    expect(trends(kh('01-30', '8'), kh('02-20', '7'), kh('02-27', '6'))).toEqual([]);
    expect(trends(kh('01-31', '8'), kh('02-20', '7'), kh('02-27', '6'))).toHaveLength(1);
  });
  test('that a kit cannot tell is steady', () => {
    expect(trends(kh('03-03', '6'), kh('03-10', '6.2'), kh('03-17', '6.4'))).toEqual([
      'KH steady (3 readings since 3 Mar)',
    ]);
    expect(trends(kh('03-03', '6'), kh('03-10', '6.6'), kh('03-17', '7.2'))).toEqual([
      'KH rises 0.6 a week (3 readings since 3 Mar)',
    ]);
  });
});

test('the watch over a filter that was disturbed stands in the row of its water alone', () => {
  const lines = ['2026-03-25 C1: cleaned media', '2026-03-26 C1: test TAN 0, NO2 0'];
  const [since, earliest] = [dayFromIso('2026-03-25'), dayFromIso('2026-04-08')];
  expect(rowOf('C1', ...lines).watch).toEqual({ since, zeros: 1, earliest });
  expect(rowOf('C2', ...lines).watch).toBeNull();
  expect(rowOf('Long', ...lines).watch).toBeNull();
});

test('a row names the lines of its readings, changes and doses, and what it knows', () => {
  const row = rowOf(
    'C1',
    '2026-03-10 C1: test TAN 0.5, pH 8.2, 26 C',
    '2026-03-11 C1: water change 30 %',
    '2026-03-12 C1: dosed 12 g salt',
  );
  expect(row.lines.map(({ line }) => line)).toEqual([20, 21, 22]);
  expect(row.because.steps.slice(0, 3)).toEqual([
    '43–49 L of live water',
    'TAN 0.5 mg/L as N on 10 Mar',
    'pH 8.2 on 10 Mar',
  ]);
  expect(rowOf('C2').because.steps).toContain('no ammonia reading on record');
});

test('the rows of "why" carry the readings in their title', () => {
  const room = journalOn(ON, '2026-03-10 C1: test pH 7.4, KH 6\n');
  const titles = waterRows(room).map(({ id, title }) => `${id}: ${title}`);
  expect(titles).toContain('c1-water: water of C1: pH 7.4 and KH 6 dH');
  expect(titles).toContain('c2-water: water of C2: no reading on record');
});

describe('nitrogen of which no line says how the kit counts it', () => {
  const told = (...lines: readonly string[]): string =>
    waterText(
      water(journalOn(ON, `${lines.join('\n')}\n`), { place: null, target: null }) ?? [],
      plainLook(day(ON), 400),
    );
  const hint = 'no line says how your kit counts nitrogen: counted as N, the harsher way';
  test('is said so once, in a list and of one water', () => {
    const lines = ['2026-03-20 C1: test NO3 40', '2026-03-20 C2: test NO2 0.25'];
    expect(told(...lines).split(hint)).toHaveLength(2);
    expect(told(...lines)).toContain('room: nitrogen as N, or: room: nitrogen as ion');
    const one = water(journalOn(ON, '2026-03-20 C1: test NO3 40\n'), { place: 'C1', target: null }) ?? [];
    expect(waterText(one, plainLook(day(ON), 400))).toContain(hint);
  });
  test('is not said where it makes no difference, or the room has said', () => {
    expect(told('2026-03-20 C1: test NO2 0, TAN 0, pH 7')).not.toContain(hint);
    expect(told('2026-01-02 room: nitrogen as N', '2026-03-20 C1: test NO3 40')).not.toContain(hint);
    expect(told('2026-01-02 room: nitrogen as ion', '2026-03-20 C1: test NO3 40')).not.toContain(hint);
  });
});
