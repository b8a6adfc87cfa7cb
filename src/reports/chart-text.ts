/**
 * A chart in characters that every terminal has: `o` read, `-` expected, `:` the band, `=` a mark,
 * `|` the day asked about. Later signs cover earlier ones, so readings are drawn last.
 */
import { addDays, type Day } from '../core/day.ts';
import type { Chart, Series } from '../questions/chart/model.ts';
import { extentOf, niceStep, type Extent } from './chart-extent.ts';
import type { Look } from './look.ts';
import { dayText, heading } from './words.ts';
import { paragraph } from './wrap.ts';

const HEIGHT = 16;

export function chartText(chart: Chart, look: Look): string {
  const head = [heading(look), look.paint.strong(chart.title)];
  const extent = extentOf(chart);
  if (extent === null) return `${[...head, 'nothing to draw: no readings in the journal', ''].join('\n')}`;
  const labels = labelsOf(extent);
  const left = Math.max(...labels.map(({ text }) => text.length)) + 1;
  const width = Math.max(20, Math.min(look.width, 100) - left - 1);
  const grid = draw(chart, extent, width);
  const rows = grid.map((row, i) => {
    const label = labels.find(({ row: at }) => at === i)?.text ?? '';
    return `${label.padStart(left)} ${row.join('').trimEnd()}`;
  });
  const foot = chart.basis.map((text) => paragraph(text, look.width));
  return `${[...head, chart.up, ...rows, axis(extent, width, left, look), legend(chart), ...foot].join('\n')}\n`;
}

function labelsOf({ values: [low, high] }: Extent): { row: number; text: string }[] {
  const step = niceStep(high - low);
  const labels: { row: number; text: string }[] = [];
  for (let value = low; value <= high + step / 1000; value += step) {
    labels.push({ row: rowOf(value, [low, high]), text: String(Number(value.toFixed(6))) });
  }
  return labels;
}

function rowOf(value: number, [low, high]: readonly [number, number]): number {
  return Math.round((1 - (value - low) / (high - low)) * (HEIGHT - 1));
}

function draw(chart: Chart, extent: Extent, width: number): string[][] {
  const grid = Array.from({ length: HEIGHT }, () => Array.from({ length: width }, () => ' '));
  const [from, to] = extent.days;
  const column = (day: number): number => (to === from ? 0 : Math.round(((day - from) / (to - from)) * (width - 1)));
  const put = (x: number, value: number, sign: string): void => {
    const row = grid[rowOf(value, extent.values)];
    if (row !== undefined && x >= 0 && x < width) row[x] = sign;
  };
  for (const row of grid) if (chart.on > from && chart.on < to) row[column(chart.on)] = '|';
  for (const { value } of chart.marks) for (let x = 0; x < width; x += 1) put(x, value, '=');
  for (const series of [...chart.series].sort((a, b) => ORDER[a.kind] - ORDER[b.kind]))
    drawSeries(series, column, put, extent);
  return grid;
}

const ORDER: Readonly<Record<Series['kind'], number>> = { band: 0, line: 1, steps: 2, readings: 3 };

function drawSeries(
  series: Series,
  column: (day: number) => number,
  put: (x: number, value: number, sign: string) => void,
  extent: Extent,
): void {
  switch (series.kind) {
    case 'readings':
      for (const { day, value } of series.points) put(column(day), value, 'o');
      return;
    case 'line':
    case 'steps':
      between(series.points, column, (x, a, b, share) => {
        put(x, series.kind === 'steps' ? a.value : a.value + (b.value - a.value) * share, '-');
      });
      return;
    case 'band':
      between(series.points, column, (x, a, b, share) => {
        const low = a.low + (b.low - a.low) * share;
        const high = a.high + (b.high - a.high) * share;
        const step = (extent.values[1] - extent.values[0]) / (HEIGHT - 1);
        for (let value = low; value <= high + step / 2; value += step) put(x, Math.min(value, high), ':');
      });
  }
}

/** Visits every column from each point to the next. */
function between<P extends { readonly day: Day }>(
  points: readonly P[],
  column: (day: number) => number,
  visit: (x: number, a: P, b: P, share: number) => void,
): void {
  points.forEach((a, i) => {
    const b = points[i + 1];
    const [x0, x1] = [column(a.day), column(b?.day ?? a.day)];
    if (b === undefined || x1 === x0) visit(x0, a, a, 0);
    else for (let x = x0; x <= x1; x += 1) visit(x, a, b, (x - x0) / (x1 - x0));
  });
}

function axis({ days: [from, to] }: Extent, width: number, left: number, look: Look): string {
  const start = dayText(from, look);
  const end = dayText(to, look);
  const middle = dayText(addDays(from, Math.round((to - from) / 2)), look);
  const spare = width - start.length - middle.length - end.length;
  const gap = ' '.repeat(Math.max(1, Math.floor(spare / 2)));
  const words = spare > 4 ? `${start}${gap}${middle}${gap}${end}` : `${start} to ${end}`;
  return `${' '.repeat(left + 1)}${words}`;
}

function legend(chart: Chart): string {
  const signs: Readonly<Record<Series['kind'], string>> = { readings: 'o', line: '-', steps: '-', band: ':' };
  const series = chart.series.map(({ kind, name }) => `${signs[kind]} ${name}`);
  const marks = chart.marks.map(({ name, value }) => `= ${name} ${value}`);
  return [...series, ...marks].join('   ');
}
