/** What a loop's pipes ask for: the clean before it spills, from which day on, and what fell where nothing was cleaned. */
import { describe, expect, it } from 'vitest';
import { addDays, isoDay } from '../../../src/core/day.ts';
import type { DueItem } from '../../../src/questions/due/item.ts';
import { loopsDue } from '../../../src/questions/due/loops.ts';
import { due } from '../../../src/questions/due.ts';
import { loops } from '../../../src/questions/loops.ts';
import { loopsText } from '../../../src/reports/loops.ts';
import { plainLook } from '../../../src/reports/look.ts';
import { journalOn, journalRoom } from '../../support/journal.ts';
import { ROOM } from '../../support/lines.ts';

const SETUP = ROOM.split('\n').length - 1;
const rows = (on: string, lines: string): readonly DueItem[] => loopsDue(journalOn(on, lines));
const ids = (on: string, lines: string): string[] => rows(on, lines).map(({ id }) => id);
const days = ({ due: { low, high } }: DueItem): string =>
  [low, high].map((day) => (day === null ? 'open' : isoDay(day).slice(5))).join(' to ');
const only = (on: string, lines: string): DueItem => {
  const [row, ...others] = rows(on, lines);
  if (row === undefined || others.length > 0) throw new Error(`${String(others.length)} rows besides`);
  return row;
};

const CLEAN = '2026-01-11 Long: cleaned 6 of 6 layers\n';
// From 28 mm on 14 Jan 4 mm a day: 80 mm on the 27th, or half a day either side by what an eye reads.
const RISING = `${CLEAN}2026-01-12 Long: level 20 mm\n2026-01-14 Long: level 28 mm\n`;

describe('the clean before a spill', () => {
  it('is asked for from a week before the earliest day of it to the day before', () => {
    expect(rows('2026-01-18', RISING)).toEqual([]);
    const row = only('2026-01-19', RISING);
    expect(row).toMatchObject({
      id: 'long-spill',
      what: 'clean the prefilter before it spills',
      close: 'Long: cleaned 6 of 6 layers',
      weight: 2,
      pressing: true,
      putOffKey: 'clean prefilter',
    });
    expect(row.why).toContain('level 28 mm on 14 Jan, spills at 80 mm');
    expect(days(row)).toBe('01-19 to 01-25');
    expect(row.caution).toContain('cut the power');
    expect(row.because.rule).toMatch(/^clean a week before the earliest spill/);
    expect(row.because.steps).toEqual([
      'levels since the clean: 20 mm on 12 Jan, 28 mm on 14 Jan',
      'line through all: median slope 4.00 mm a day, at 80 mm on 27 Jan',
      'reaches 80 mm between 26 Jan and 28 Jan: the earliest of the three to the middle one',
    ]);
    expect(row.lines.map(({ line }) => line - SETUP)).toEqual([1, 2, 3]);
  });
  it('is asked for from the day of the level that shows it, not before', () => {
    // 4 mm a day from 52 on 20 Jan: the 27th.
    const seen = `${CLEAN}2026-01-12 Long: level 20 mm\n2026-01-20 Long: level 52 mm\n`;
    expect(days(only('2026-01-21', seen))).toBe('01-20 to 01-25');
    const late = only('2026-01-30', seen).due.high ?? Infinity;
    expect(late).toBeLessThan(journalOn('2026-01-30', '').on);
  });
  it('is asked for at once where the level stands high and nothing tells the day', () => {
    const high = `${CLEAN}2026-01-20 Long: level 70 mm\n`;
    const row = only('2026-01-21', high);
    expect(days(row)).toBe('01-20 to 01-20');
    expect(row.because.steps).toContain('no forecast: fewer than two levels since the clean');
    expect(rows('2026-01-21', high.replace('70 mm', '59 mm'))).toEqual([]);
    expect(rows('2026-01-21', CLEAN)).toEqual([]);
  });
  it('is asked for by how such sponges clog where a third of the way is gone, before the first of the likely days', () => {
    const slow = `${CLEAN}2026-01-12 Long: level 20 mm\n2026-02-01 Long: level 40 mm\n`;
    expect(rows('2026-02-02', slow)).toEqual([]);
    const row = only('2026-02-10', slow);
    expect(row.because.steps.at(-1)).toMatch(/^8 in 10 spill 1\d–\d\d Feb$/);
    expect(row.why).toBe('level 40 mm on 1 Feb, spills at 80 mm 10–25 Feb, 8 times in 10');
    const little = `${CLEAN}2026-01-12 Long: level 20 mm\n2026-02-01 Long: level 28 mm\n`;
    expect(rows('2026-02-10', little)).toEqual([]);
  });
  it('is of all layers where nobody wrote how many there are', () => {
    const plain = ROOM.replace('; prefilter 6 layers', '');
    const [row] = loopsDue(journalRoom('2026-01-21', `${plain}2026-01-20 Long: level 70 mm\n`));
    expect(row?.close).toBe('Long: cleaned all layers');
  });
  it('is asked for on the days that the loop tells, from the first of them on', () => {
    const read = `${CLEAN}2026-01-11 Long: level 20 mm\n2026-01-25 Long: level 28 mm\n2026-02-04 Long: level 42 mm\n`;
    for (const lines of [RISING, read]) {
      const told = loops(journalOn('2026-02-10', lines))[0]?.asked;
      const from = told?.low;
      if (from === undefined || from === null) throw new Error('no day is told');
      expect(rows(isoDay(addDays(from, -1)), lines)).toEqual([]);
      expect(only(isoDay(from), lines).due).toEqual(told);
    }
  });
  it('is asked for after a spill that is over, whatever else is broken there or spills elsewhere', () => {
    const over = `${RISING}2026-01-19 Long: overflowed\n2026-01-19 Long: fixed\n`;
    const others = [
      '',
      '2026-01-19 Long: fault "lid cracked"\n',
      '2026-01-01 loop Short: sump 90 L; prefilter 3 layers; spills at 60 mm\n2026-01-19 Short: overflowed\n',
    ];
    for (const more of others) {
      const [row] = rows('2026-01-20', over + more).filter(({ place }) => place === 'Long');
      expect([row?.id, row?.what]).toEqual(['long-spill', 'clean the prefilter, it spilled']);
    }
    // As long as it overflows the fault asks for the clean.
    const open = '2026-01-19 Long: fault "lid cracked"\n2026-01-19 Long: overflowed\n';
    expect(rows('2026-01-20', RISING + open)).toEqual([]);
  });
  it('tells the window that it goes by where the levels alone give none', () => {
    const flat = `${CLEAN}2026-01-12 Long: level 60 mm\n2026-02-20 Long: level 60 mm\n`;
    const row = only('2026-03-22', flat);
    expect(row.why).toBe('level 60 mm on 20 Feb, spills at 80 mm; 8 in 10 spill 25 Mar – 24 May');
    expect(row.because.steps).toContain('no forecast: the level does not rise');
    expect(row.because.steps.at(-1)).toBe('8 in 10 spill 25 Mar – 24 May');
  });
  it('is asked for no more once it is done', () => {
    expect(rows('2026-01-20', `${RISING}2026-01-19 Long: cleaned 2 of 6 layers\n`)).toEqual([]);
  });
});

describe('a cleaning chore speaks for the spill', () => {
  const beside = (line: string, on = '2026-01-19'): string[] => ids(on, `${RISING}2026-01-02 ${line}\n`);
  it('where it falls due today or before the spill', () => {
    expect(beside('Long: clean prefilter every 8 days')).toEqual([]);
    expect(beside('Long: clean prefilter every 14 days')).toEqual([]);
    expect(beside('Long: clean prefilter every 17 days', '2026-01-27')).toEqual(['long-spill']);
    expect(beside('Long: clean prefilter every 17 days', '2026-01-28')).toEqual([]);
  });
  it('not where it falls due on that day or after, was stopped, or is another chore', () => {
    expect(beside('Long: clean prefilter every 15 days')).toEqual(['long-spill']);
    expect(beside('Long: clean prefilter every 14 days\n2026-01-15 Long: stop clean prefilter')).toEqual([
      'long-spill',
    ]);
    expect(beside('Long: water change 20 % every 7 days')).toEqual(['long-spill']);
    expect(
      beside(
        `loop Short: sump 90 L; prefilter 3 layers; spills at 60 mm\n2026-01-02 Short: clean prefilter every 8 days`,
      ),
    ).toEqual(['long-spill']);
  });
});

describe('a clean that no chore and no level asks for', () => {
  const long = (on: string, lines: string, days = 0): readonly DueItem[] => loopsDue(journalOn(on, lines), days);
  it('is due six weeks after the last full one, as the loop tells it', () => {
    expect(long('2026-02-21', CLEAN)).toEqual([]);
    expect(long('2026-02-21', CLEAN, 1)).toHaveLength(1);
    const row = only('2026-02-22', CLEAN);
    expect(row).toMatchObject({
      id: 'long-clean-prefilter',
      what: 'clean the prefilter, all 6 layers',
      why: 'last full clean 11 Jan, about every 6 weeks is usual; no level since the clean',
      close: 'Long: cleaned 6 of 6 layers',
      weight: 1,
      pressing: false,
    });
    expect(row.due).toEqual(loops(journalOn('2026-02-22', CLEAN))[0]?.nextClean);
    expect(row.because).toEqual({
      rule: 'where no chore cleans it, after as many days as its full cleans are apart here, or usually',
      source: 'all layers last about six weeks (common practice, no source)',
      steps: [
        'last full clean 11 Jan',
        'usual for a prefilter: about 42 days',
        'no forecast: fewer than two levels since the clean',
      ],
      lines: row.lines,
    });
    expect(row.lines.map(({ line }) => line - SETUP)).toEqual([1]);
    expect(long('2026-03-20', `${CLEAN}2026-03-01 Long: cleaned 2 of 6 layers\n`)[0]?.due).toEqual(row.due);
  });
  it('is due then where the levels tell a day far off, and tells it', () => {
    const slow = `${CLEAN}2026-01-12 Long: level 20 mm\n2026-02-20 Long: level 22 mm\n`;
    const row = only('2026-02-22', slow);
    expect(row.id).toBe('long-clean-prefilter');
    expect(row.because.steps).toEqual([
      'last full clean 11 Jan',
      'usual for a prefilter: about 42 days',
      'levels since the clean: 20 mm on 12 Jan, 22 mm on 20 Feb',
      expect.stringMatching(/^line through all: median slope 0\.05 mm a day/),
      expect.stringMatching(/^reaches 80 mm between/),
    ]);
  });
  it('names no layers where nobody wrote how many there are', () => {
    const plain = ROOM.replace('; prefilter 6 layers', '');
    const [row] = loopsDue(journalRoom('2026-02-22', `${plain}2026-01-11 Long: cleaned all layers\n`));
    expect([row?.what, row?.close]).toEqual(['clean the prefilter', 'Long: cleaned all layers']);
  });
  it('is due after the interval that three full cleans here have taught', () => {
    const taught = ['2026-01-11', '2026-02-10', '2026-03-12', '2026-04-11'].map(
      (on) => `${on} Long: cleaned 6 of 6 layers\n`,
    );
    expect(only('2026-05-11', taught.join('')).why).toContain('here every 30 days;');
  });
  it('is due then where one level was read as well: that tells no day', () => {
    const one = `${CLEAN}2026-01-12 Long: level 20 mm\n`;
    expect(long('2026-02-21', one)).toEqual([]);
    expect(only('2026-02-22', one).id).toBe('long-clean-prefilter');
    const told = loops(journalOn('2026-02-21', one))[0];
    expect([told?.asked, told?.outlook?.basis]).toEqual([null, 'usual']);
  });
  it('is no row where a chore cleans it, a spill is near, or none was ever cleaned in full', () => {
    expect(long('2026-03-20', `2026-01-02 Long: clean prefilter every 12 weeks\n${CLEAN}`)).toEqual([]);
    expect(ids('2026-03-20', `${CLEAN}2026-03-19 Long: level 75 mm\n`)).toEqual(['long-spill']);
    expect(long('2026-03-20', '2026-01-11 Long: cleaned 2 of 6 layers\n')).toEqual([]);
  });
});

describe('a chore that comes later than the earliest spill', () => {
  it('says so beside the days that the levels give', () => {
    const lines = `2026-01-04 Long: clean prefilter every 6 weeks
${CLEAN}2026-01-11 Long: level 20 mm
2026-01-25 Long: level 28 mm
2026-02-04 Long: level 42 mm
2026-02-10 Long: level 54 mm
`;
    const room = journalOn('2026-02-15', lines);
    const why = due(room, { days: 7, minutes: null }).rows.find(({ id }) => id === 'long-clean-prefilter')?.why;
    expect(why).toMatch(/about 23–26 Feb; clogging quickens, it may spill from 16 Feb: better before$/);
    const [row] = loops(room);
    expect(row?.betterBy === null || row === undefined ? null : isoDay(row.betterBy)).toBe('2026-02-15');
    expect(loopsText(loops(room), plainLook(room.on))).toMatch(
      /by its levels; at this pace 23–26 Feb, but clogging quickens: better clean\s+by 15 Feb/,
    );
    const near = journalOn('2026-02-18', lines);
    expect(loopsText(loops(near), plainLook(near.on))).toMatch(/by its levels; at this pace .*: better clean\s+now/s);
    const said = due(near, { days: 7, minutes: null }).rows.find(({ id }) => id === 'long-clean-prefilter')?.why;
    expect(said).toMatch(/it may spill any day: better now$/);
    // The list asks for it from that day on, and not before.
    const stateOn = (day: string, days: number): string | undefined =>
      due(journalOn(day, lines), { days, minutes: null }).rows.find(({ id }) => id === 'long-clean-prefilter')?.state;
    expect([stateOn('2026-02-14', 0), stateOn('2026-02-14', 2)]).toEqual([undefined, 'ahead']);
    expect([stateOn('2026-02-15', 0), stateOn('2026-02-18', 0)]).toEqual(['today', 'today']);
    const sooner = loops(journalOn('2026-02-15', lines.replace('6 weeks', '5 weeks')))[0];
    expect([sooner?.betterBy, sooner?.asked]).toEqual([null, null]);
  });
});

describe('a spill that is near', () => {
  // 70 of 80 mm on 18 February, 2 mm a day: the 23rd.
  const chore = `2026-01-02 Long: clean prefilter every 6 weeks
${CLEAN}2026-01-11 Long: level 20 mm
2026-02-10 Long: level 54 mm
2026-02-18 Long: level 70 mm
`;
  const shown = (on: string, line: string): string[] =>
    due(journalOn(on, `${chore}${line}\n`), { days: 7, minutes: null })
      .rows.map(({ id }) => id)
      .filter((id) => id.startsWith('long'));
  it('is put off for a day at most, though the clean is a chore', () => {
    const off = '2026-02-20 Long: put off clean prefilter until 2026-03-20';
    expect(shown('2026-02-20', off)).toEqual([]);
    expect(shown('2026-02-21', off)).toEqual(['long-clean-prefilter']);
    expect(shown('2026-02-25', off)).toEqual(['long-clean-prefilter']);
  });
  it('is none after a clean: the chore can wait as long as the keeper says', () => {
    const cleaned = '2026-02-19 Long: cleaned 6 of 6 layers\n2026-04-02 Long: put off clean prefilter until 2026-04-20';
    expect(shown('2026-04-05', cleaned)).toEqual([]);
    expect(shown('2026-04-20', cleaned)).toEqual(['long-clean-prefilter']);
  });
});

describe('a level that falls', () => {
  const FELL = `${CLEAN}2026-01-25 Long: level 28 mm\n2026-02-04 Long: level 42 mm\n2026-02-10 Long: level 30 mm\n`;
  it('is told with both readings, and closed by another', () => {
    const row = only('2026-02-11', FELL);
    expect(row).toMatchObject({
      id: 'long-flow-fell',
      why: 'level 42 mm on 4 Feb, 30 mm on 10 Feb, nothing cleaned between',
      close: 'Long: level … mm',
      weight: 2,
      pressing: true,
    });
    expect(days(row)).toBe('02-10 to 02-10');
    expect(row.because).toEqual({
      rule: 'a level that falls without a clean means less flow, not a cleaner sponge',
      source: 'common practice, no source',
      steps: ['level 42 mm on 4 Feb, 30 mm on 10 Feb', 'no clean between the two'],
      lines: row.lines,
    });
    expect(row.lines.map(({ line }) => line - SETUP)).toEqual([3, 4]);
    expect(rows('2026-02-13', `${FELL}2026-02-12 Long: level 31 mm\n`)).toEqual([]);
  });
  it('names the tanks of that loop that went off it between the two', () => {
    const why = (line: string): string => only('2026-02-12', FELL + line).why;
    for (const on of ['2026-02-04', '2026-02-10'])
      expect(why(`${on} A2: off the loop\n`)).toMatch(/; A2 went off the loop between$/);
    for (const line of [
      '2026-02-03 A2: off the loop\n',
      '2026-02-11 A2: off the loop\n',
      '2026-02-05 A2: lights off\n',
    ])
      expect(why(line)).toMatch(/nothing cleaned between$/);
    const short = `2026-01-02 loop Short: sump 90 L\n2026-01-02 tank D1: 54 L; on Short\n2026-02-05 D1: off the loop\n`;
    expect(why(short)).toMatch(/nothing cleaned between$/);
  });
  it('is told beside the clean, where it stands near the lip all the same', () => {
    const high = `${CLEAN}2026-01-11 Long: level 20 mm\n2026-01-20 Long: level 76 mm\n2026-01-22 Long: level 70 mm\n`;
    expect(ids('2026-01-23', high)).toEqual(['long-flow-fell', 'long-spill']);
  });
});
