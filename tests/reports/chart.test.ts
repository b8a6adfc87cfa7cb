import { describe, expect, test } from 'vitest';
import { dayFromIso, toDay, type Day } from '../../src/core/day.ts';
import type { Chart } from '../../src/questions/chart/model.ts';
import { extentOf, niceStep } from '../../src/reports/chart-extent.ts';
import { chartSvg } from '../../src/reports/chart-svg.ts';
import { chartText } from '../../src/reports/chart-text.ts';
import { plainLook } from '../../src/reports/look.ts';

const day = (iso: string): Day => dayFromIso(iso) ?? toDay(0);

const chart: Chart = {
  title: 'Long <prefilter>',
  up: 'level, mm',
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
  on: day('2026-02-15'),
  basis: ['4 readings since the clean of 11 Jan'],
  lines: [],
};

describe('charts', () => {
  test('span readings, forecasts, marks and nothing else', () => {
    expect(extentOf(chart)).toEqual({ days: [day('2026-01-11'), day('2026-02-24')], values: [0, 100] });
    expect(extentOf({ ...chart, series: [] })).toBeNull();
  });

  test('step by one, two or five', () => {
    expect([niceStep(100), niceStep(7), niceStep(0.3), niceStep(31)]).toEqual([20, 2, 0.1, 10]);
  });

  test('in a terminal keep to its width and show each series by its own sign', () => {
    const text = chartText(chart, plainLook(day('2026-02-15'), 60));
    for (const line of text.split('\n')) expect(line.length).toBeLessThanOrEqual(60);
    const rows = text.split('\n').slice(3, 19);
    expect(rows.join('').match(/o/g)).toHaveLength(2);
    for (const sign of ['-', ':', '=', '|']) expect(rows.join('')).toContain(sign);
    expect(text).toContain('= spills at 80');
  });

  test('with nothing read say so', () => {
    expect(chartText({ ...chart, series: [] }, plainLook(day('2026-02-15')))).toContain('nothing to draw');
    expect(chartSvg({ ...chart, series: [] })).toContain('nothing to draw');
  });

  test('as SVG are well formed, self-contained, and hold no mark-up from the journal', () => {
    const svg = chartSvg(chart);
    expect(svg).toContain('Long &lt;prefilter&gt;');
    expect(svg.match(/<circle/g)).toHaveLength(2);
    expect(svg).not.toMatch(/<script|href=|url\(|@import/);
    const opened = [...svg.matchAll(/<(\w+)(?:\s[^>]*[^/>])?>/g)].map((match) => match[1]);
    const closed = [...svg.matchAll(/<\/(\w+)>/g)].map((match) => match[1]);
    expect(opened.sort()).toEqual(closed.sort());
  });
});
