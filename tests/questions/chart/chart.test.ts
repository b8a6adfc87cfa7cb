import { describe, expect, test } from 'vitest';
import { dayFromIso, isoDay, toDay } from '../../../src/core/day.ts';
import { loops } from '../../../src/questions/loops.ts';
import { chartNamed, chartOf } from '../../../src/questions/chart/ask.ts';
import type { Chart, Series } from '../../../src/questions/chart/model.ts';
import { foldRoom } from '../../../src/state/fold.ts';
import type { Room } from '../../../src/state/draft.ts';
import { readJournal } from '../../../src/language/read.ts';
import { SAMPLE } from '../../support/sample.ts';

function room(on: string, lines: readonly string[]): Room {
  const { events, problems } = readJournal('fishroom.txt', lines.join('\n'), () => ({ ok: false, says: 'no' }));
  expect(problems).toEqual([]);
  const day = dayFromIso(on);
  if (day === null) throw new Error(on);
  return foldRoom(events, day);
}

const sampleOn = (on: string): Room => room(on, SAMPLE.split('\n'));
const ROOM = sampleOn('2026-03-11');

function chart(of: Room, ...words: string[]): Chart {
  const charted = chartOf(of, words);
  if (!charted.ok) throw new Error(`${charted.says}; ${charted.write}`);
  return charted.chart;
}

function refused(of: Room, ...words: string[]): { says: string; write: string } {
  const charted = chartOf(of, words);
  if (charted.ok) throw new Error(`drew ${charted.chart.title}`);
  return charted;
}

function pointsOf(of: Chart, kind: Series['kind']): { day: string; value: number }[] {
  const found = of.series.find((series) => series.kind === kind);
  if (found === undefined || found.kind === 'band') return [];
  return found.points.map(({ day, value }) => ({ day: isoDay(day), value }));
}

describe('words of a chart', () => {
  test('stand in any order and case, with a name alone where the kind is plain', () => {
    const asked = [['growth', 'Rowan-1'], ['rowan-1', 'Growth'], ['growth of Rowan-1'], ['Rowan-1']];
    expect(asked.map((words) => chart(ROOM, ...words).id)).toEqual(asked.map(() => 'chart-growth-rowan-1'));
    expect(chart(ROOM, 'Long').id).toBe('chart-level-long');
  });

  test('are mended to the nearest name or kind', () => {
    expect(refused(ROOM, 'growth', 'Rowna-1').write).toBe('tankside chart growth Rowan-1');
    expect(refused(ROOM, 'grwoth', 'Rowan-1').write).toBe('tankside chart growth Rowan-1');
    expect(refused(ROOM, 'level', 'Lnog').write).toBe('tankside chart level Long');
    expect(refused(ROOM, 'level', 'xyzzy').write).toBe('tankside chart level Long');
  });

  test('that ask for what is not drawn say what is', () => {
    expect(refused(ROOM).write).toBe('tankside chart growth Rowan-1');
    expect(refused(ROOM, 'level', 'A1')).toEqual({
      ok: false,
      says: 'level is drawn of a loop, and A1 is none',
      write: 'tankside chart level Long',
    });
    expect(refused(ROOM, 'survival', 'Rowan').says).toContain('a brood');
    expect(refused(ROOM, 'growth', 'level', 'Long').says).toContain('one kind');
    expect(refused(ROOM, 'water', 'C1', 'NO3').says).toBe('C1: no NO3 read in that time');
  });
});

describe('the level of a prefilter', () => {
  const level = chart(sampleOn('2026-02-15'), 'level', 'Long');

  test('has every reading in order of time, the clean, and the lip', () => {
    expect(pointsOf(level, 'readings')).toEqual([
      { day: '2026-01-11', value: 20 },
      { day: '2026-01-25', value: 28 },
      { day: '2026-02-04', value: 42 },
      { day: '2026-02-10', value: 54 },
    ]);
    expect(level.marks).toEqual([{ name: 'spills at', value: 80 }]);
    expect(level.moments.map(({ name, days }) => [name, ...days.map(isoDay)])).toEqual([
      ['all layers cleaned', '2026-01-11'],
    ]);
  });

  test('goes on to the lip within the window of the forecast', () => {
    const line = pointsOf(level, 'line');
    expect(line[0]).toEqual({ day: '2026-02-10', value: 54 });
    expect(line.at(-1)?.value).toBe(80);
    const band = level.series.find(({ kind }) => kind === 'band');
    const reaches = band?.points.at(-1);
    expect(reaches).toMatchObject({ low: 80, high: 80 });
    const { spill } = loops(sampleOn('2026-02-15'))[0]?.outlook ?? { spill: null };
    expect(line.at(-1)?.day).toBe(isoDay(spill?.likely ?? toDay(0)));
    expect(isoDay(reaches?.day ?? toDay(0))).toBe(isoDay(spill?.high ?? toDay(0)));
  });

  test('right after a clean shows what is usual, and says that levels tell nothing yet', () => {
    const clean = room('2026-02-15', [
      '2026-01-04 loop Long: prefilter 6 layers; spills at 80 mm',
      '2026-02-10 Long: level 54 mm',
      '2026-02-12 Long: cleaned 2 of 6 layers; level 30 mm',
    ]);
    const drawn = chart(clean, 'level', 'Long');
    expect(drawn.basis[0]).toContain('8 in 10 spill');
    expect(drawn.basis[1]).toContain('fewer than two levels');
    expect(drawn.moments.map(({ name }) => name)).toEqual(['some layers cleaned']);
  });
});

describe('growth', () => {
  const growth = chart(ROOM, 'growth', 'Rowan-1');

  test('has the sale size, the reading as written, and the mean that it speaks for', () => {
    expect(growth.marks).toEqual([{ name: 'for sale at', value: 35 }]);
    const read = growth.series.filter(({ kind }) => kind === 'readings');
    expect(read.map(({ name }) => name)).toEqual(['mean, from each reading', 'largest as read']);
    expect(read[1]?.points).toMatchObject([{ value: 12 }]);
    const [mean] = read[0]?.points ?? [];
    expect(mean !== undefined && 'value' in mean && mean.value < 12).toBe(true);
  });

  test('begins when they swim, and its band holds the likely length', () => {
    const band = growth.series.find((series) => series.kind === 'band');
    const line = pointsOf(growth, 'line');
    expect(band?.points).toHaveLength(line.length);
    expect(line[0]?.day ?? '').toMatch(/^2026-02-(0[5-9]|1[01])$/);
    band?.points.forEach((point, i) => {
      const likely = line[i]?.value ?? Number.NaN;
      if ('high' in point && point.high !== undefined && point.low !== undefined) {
        expect(point.low).toBeLessThanOrEqual(likely);
        expect(point.high).toBeGreaterThanOrEqual(likely);
      }
    });
  });
});

describe('survival', () => {
  const lines = [
    '2026-01-04 tank A1: 54 L; alone; sponge filter',
    '2026-01-04 species krib: Pelvicachromis taeniatus; cave spawner',
    '2026-01-04 pair Rowan: krib; male 80 mm; female 60 mm; in A1',
    '2026-02-02 A1: spawned brood Rowan-1',
    '2026-02-12 A1: free-swimming',
    '2026-03-10 A1: Rowan-1 counted 40',
    '2026-03-20 A1: Rowan-1 died 4',
    '2026-04-20 A1: Rowan-1 sold 12 at 4.00 each',
    '2026-05-20 A1: Rowan-1 counted 18',
  ];

  test('takes sold fish as gone alive and missing ones as dead: Kaplan and Meier by hand', () => {
    const drawn = chart(room('2026-06-01', lines), 'survival', 'Rowan-1');
    // 40 counted, 4 die: 36/40. 12 sold alive leave 24 at risk; 18 counted: 6 of 24 are gone. 0.9 × 18/24 = 0.675.
    expect(pointsOf(drawn, 'steps').map(({ day, value }) => [day, Number(value.toFixed(3))])).toEqual([
      ['2026-03-10', 100],
      ['2026-03-20', 90],
      ['2026-05-20', 67.5],
      ['2026-06-01', 67.5],
    ]);
    expect(drawn.because.steps.join('\n')).toContain('× (1 − 6/24) = 67.5 %');
  });
});

describe('water', () => {
  const lines = [
    '2026-01-04 tank C1: 54 L; alone; sponge filter',
    '2026-01-04 species krib: Pelvicachromis taeniatus; cave spawner; water 24-27 C, pH 6-7.5',
    '2026-01-04 group Ash: krib; 12; in C1',
    '2026-02-01 C1: test NO3 20-40, 25.5 C',
    '2026-02-08 C1: water change 30 %',
    '2026-02-09 C1: test NO3 10, 26 C',
  ];

  test('has readings with what they leave open, changes, and the range of the fish there', () => {
    const of = room('2026-02-15', lines);
    const nitrate = chart(of, 'NO3', 'c1');
    expect(nitrate.series[0]?.points).toMatchObject([
      { low: 20, high: 40 },
      { value: 10, low: 10, high: 10 },
    ]);
    expect(nitrate.moments.map(({ name, days }) => [name, ...days.map(isoDay)])).toEqual([
      ['water changed', '2026-02-08'],
    ]);
    expect(chart(of, 'temperature', 'C1').marks).toEqual([
      { name: 'not under', value: 24 },
      { name: 'not over', value: 27 },
    ]);
  });

  test('asks which reading where there are several', () => {
    expect(refused(room('2026-02-15', lines), 'water', 'C1')).toMatchObject({
      says: 'which reading of C1? there is temperature, NO3',
      write: 'tankside chart water C1 temperature',
    });
  });
});

test('the id of a chart finds it again', () => {
  for (const words of [
    ['growth', 'Rowan-1'],
    ['level', 'Long'],
    ['survival', 'Rowan-1'],
  ]) {
    const { id } = chart(ROOM, ...words);
    expect(chartNamed(ROOM, [id])?.id).toBe(id);
  }
  expect(chartNamed(ROOM, ['chart-growth-nobody'])).toBeNull();
});
