import { describe, expect, test } from 'vitest';
import { dayFromIso, toDay, type Day } from '../../src/core/day.ts';
import type { Chart } from '../../src/questions/chart/model.ts';
import { extentOf, niceStep } from '../../src/reports/chart-extent.ts';
import { chartSvg } from '../../src/reports/chart-svg.ts';
import { chartText } from '../../src/reports/chart-text.ts';
import { plainLook } from '../../src/reports/look.ts';

const day = (iso: string): Day => dayFromIso(iso) ?? toDay(0);

const chart: Chart = {
  id: 'chart-level-long',
  title: 'Long <prefilter>',
  up: 'level, mm',
  fromZero: true,
  series: [
    {
      kind: 'readings',
      name: 'level read',
      points: [
        { day: day('2026-01-11'), value: 20 },
        { day: day('2026-02-10'), value: 54 },
      ],
    },
    {
      kind: 'line',
      name: 'expected',
      points: [
        { day: day('2026-02-10'), value: 54 },
        { day: day('2026-02-24'), value: 80 },
      ],
    },
    {
      kind: 'band',
      name: 'window',
      points: [
        { day: day('2026-02-10'), low: 54, high: 54 },
        { day: day('2026-02-24'), low: 76, high: 84 },
      ],
    },
  ],
  marks: [{ name: 'spills at', value: 80 }],
  moments: [{ name: 'all layers cleaned', days: [day('2026-01-11')] }],
  on: day('2026-02-15'),
  basis: ['4 readings since the clean of 11 Jan'],
  because: { rule: '', source: '', steps: [], lines: [] },
  lines: [],
};

describe('charts', () => {
  test('span readings, forecasts, marks and nothing else', () => {
    expect(extentOf(chart)).toEqual({ days: [day('2026-01-11'), day('2026-02-24')], values: [0, 100] });
    expect(extentOf({ ...chart, series: [] })).toBeNull();
  });

  test('show a reading that stands alone in a span of its own, not three times at the edge', () => {
    const of = (value: number, fromZero: boolean): readonly [number, number] | undefined => {
      const points = [{ day: day('2026-01-11'), value }];
      const alone: Chart = { ...chart, fromZero, marks: [], series: [{ kind: 'readings', name: 'pH read', points }] };
      return extentOf(alone)?.values;
    };
    const [low = 0, high = 0] = of(6.8, false) ?? [];
    expect([low, high].map((value) => Number(value.toFixed(3)))).toEqual([6.4, 7.2]);
    expect(of(0, true)).toEqual([0, 1]);
    expect(of(20, true)).toEqual([0, 20]);
  });

  test('step by one, two or five', () => {
    expect([niceStep(100), niceStep(7), niceStep(0.3), niceStep(31)]).toEqual([20, 2, 0.1, 10]);
  });

  test('in a terminal keep to its width and show each series by its own sign', () => {
    const text = chartText(chart, plainLook(day('2026-02-15'), 60));
    for (const line of text.split('\n')) expect(line.length).toBeLessThanOrEqual(60);
    const rows = text.split('\n').slice(4, 20);
    expect(rows.join('').match(/o/g)).toHaveLength(2);
    for (const sign of ['-', ':', '=', '|']) expect(rows.join('')).toContain(sign);
    expect(text).toContain('= spills at 80');
    expect(text.split('\n')[20]?.trim()).toBe('^');
  });

  test('start at none only where none means something', () => {
    const warm: Chart = {
      ...chart,
      fromZero: false,
      marks: [],
      moments: [],
      series: [
        { kind: 'readings', name: 'read', points: [{ day: day('2026-02-10'), value: 24, low: 23, high: 25.5 }] },
      ],
    };
    expect(extentOf(warm)?.values).toEqual([23, 25.5]);
    expect(extentOf({ ...warm, fromZero: true })?.values[0]).toBe(0);
  });

  test('tell two series of readings apart, in the picture and in the legend', () => {
    const points = [{ day: day('2026-01-20'), value: 40 }];
    const two: Chart = { ...chart, series: [...chart.series, { kind: 'readings', name: 'largest as read', points }] };
    expect(chartText(two, plainLook(day('2026-02-15'), 60))).toContain('* largest as read');
    expect(chartText(two, plainLook(day('2026-02-15'), 60)).match(/\*/g)).toHaveLength(2);
    expect(chartSvg(two).match(/fill="#ffffff" stroke="#000000"/g)).toHaveLength(2);
  });

  test('put the name of a level line below it where another stands close above', () => {
    const svg = chartSvg({
      ...chart,
      marks: [
        { name: 'not under', value: 78 },
        { name: 'not over', value: 80 },
      ],
    });
    const at = (name: string): number => Number(new RegExp(`y="([\\d.]+)"[^>]*>${name}`).exec(svg)?.[1]);
    expect(at('not under') - at('not over')).toBeGreaterThan(15);
  });

  test('with nothing read say so', () => {
    expect(chartText({ ...chart, series: [] }, plainLook(day('2026-02-15')))).toContain('nothing to draw');
    expect(chartSvg({ ...chart, series: [] })).toContain('nothing to draw');
  });

  test('as SVG are well formed, self-contained, and hold no mark-up from the journal', () => {
    const svg = chartSvg(chart);
    expect(svg).toContain('Long &lt;prefilter&gt;');
    // Two readings, and the sign of the legend.
    expect(svg.match(/<circle/g)).toHaveLength(3);
    expect(svg).not.toMatch(/<script|href=|url\(|@import/);
    const opened = [...svg.matchAll(/<(\w+)(?:\s[^>]*[^/>])?>/g)].map((match) => match[1]);
    const closed = [...svg.matchAll(/<\/(\w+)>/g)].map((match) => match[1]);
    expect(opened.sort()).toEqual(closed.sort());
  });
});
