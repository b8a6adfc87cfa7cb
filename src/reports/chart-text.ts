/**
 * A chart in characters that every terminal has: `o` read, `-` expected, `:` the band, `=` a mark,
 * `|` the day asked about, `^` under the foot what happened. Later signs cover earlier ones, so readings
 * are drawn last.
 */
import { addDays, type Day } from '../core/day.ts';
import type { Chart, Series } from '../questions/chart/model.ts';
import { extentOf, niceStep, type Extent } from './chart-extent.ts';
import type { Look } from './look.ts';
import { dayText, heading } from './words.ts';
import { paragraph } from './wrap.ts';

const HEIGHT = 16;
/** Wider than this nothing is won. */
const WIDEST = 100;
/** Signs of readings, of one series after the other, and of moments. */
const READ = ['o', '*', 'x'] as const;
const MOMENT = ['^', '+'] as const;

export function chartText(chart: Chart, look: Look): string {
  const head = [`${heading(look)}: ${chart.title}`];
  const extent = extentOf(chart);
  if (extent === null) return `${[...head, 'nothing to draw: no readings in the journal', ''].join('\n')}`;
  const labels = labelsOf(extent);
  const left = Math.max(...labels.map(({ text }) => text.length)) + 1;
  const width = Math.max(20, Math.min(look.width, WIDEST) - left - 1);
  const rows = draw(chart, extent, width).map((row, i) => {
    const label = labels.find(({ row: at }) => at === i)?.text ?? '';
    return `${label.padStart(left)} ${row.join('')}`.trimEnd();
  });
  const indent = ' '.repeat(left + 1);
  return `${[
    ...head,
    ...chart.basis.map((text) => paragraph(text, look.width)),
    '',
    chart.up,
    ...rows,
    ...momentRows(chart, extent, width).map((row) => `${indent}${row}`.trimEnd()),
    `${indent}${axis(extent, width, look)}`,
    '',
    legend(chart, look),
  ].join('\n')}\n`;
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

function columnOf({ days: [from, to] }: Extent, width: number): (day: number) => number {
  return (day) => (to === from ? 0 : Math.round(((day - from) / (to - from)) * (width - 1)));
}

function draw(chart: Chart, extent: Extent, width: number): string[][] {
  const grid = Array.from({ length: HEIGHT }, () => Array.from({ length: width }, () => ' '));
  const [from, to] = extent.days;
  const column = columnOf(extent, width);
  const put = (x: number, value: number, sign: string): void => {
    const row = grid[rowOf(value, extent.values)];
    if (row !== undefined && x >= 0 && x < width) row[x] = sign;
  };
  for (const series of ordered(chart.series, 'band')) drawSeries(series, ':', column, put, extent);
  for (const row of grid) if (chart.on > from && chart.on < to) row[column(chart.on)] = '|';
  for (const { value } of chart.marks) for (let x = 0; x < width; x += 1) put(x, value, '=');
  for (const series of [...ordered(chart.series, 'line'), ...ordered(chart.series, 'steps')]) {
    drawSeries(series, '-', column, put, extent);
  }
  ordered(chart.series, 'readings').forEach((series, i) => {
    drawSeries(series, READ[i % READ.length] ?? 'o', column, put, extent);
  });
  return grid;
}

function ordered(series: readonly Series[], kind: Series['kind']): Series[] {
  return series.filter((one) => one.kind === kind);
}

function drawSeries(
  series: Series,
  sign: string,
  column: (day: number) => number,
  put: (x: number, value: number, sign: string) => void,
  extent: Extent,
): void {
  switch (series.kind) {
    case 'readings':
      for (const { day, value } of series.points) put(column(day), value, sign);
      return;
    case 'line':
    case 'steps':
      between(series.points, column, (x, a, b, share) => {
        put(x, series.kind === 'steps' && share < 1 ? a.value : a.value + (b.value - a.value) * share, sign);
      });
      return;
    case 'band':
      between(series.points, column, (x, a, b, share) => {
        const low = a.low + (b.low - a.low) * share;
        const high = a.high + (b.high - a.high) * share;
        const step = (extent.values[1] - extent.values[0]) / (HEIGHT - 1);
        for (let value = low; value <= high + step / 2; value += step) put(x, Math.min(value, high), sign);
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

function momentRows(chart: Chart, extent: Extent, width: number): string[] {
  const column = columnOf(extent, width);
  if (chart.moments.length === 0) return [];
  const row = Array.from({ length: width }, () => ' ');
  chart.moments.forEach(({ days }, i) => {
    for (const day of days) row[column(day)] = MOMENT[i % MOMENT.length] ?? '^';
  });
  return [row.join('')];
}

function axis({ days: [from, to] }: Extent, width: number, look: Look): string {
  const start = dayText(from, look);
  const end = dayText(to, look);
  const middle = dayText(addDays(from, Math.round((to - from) / 2)), look);
  const spare = width - start.length - middle.length - end.length;
  if (spare <= 4) return `${start} to ${end}`;
  const before = Math.floor((width - middle.length) / 2) - start.length;
  const after = spare - before;
  return before < 1 || after < 1
    ? `${start} to ${end}`
    : `${start}${' '.repeat(before)}${middle}${' '.repeat(after)}${end}`;
}

function legend({ series, marks, moments, on, ...chart }: Chart, look: Look): string {
  const read = ordered(series, 'readings').map(({ name }, i) => `${READ[i % READ.length] ?? 'o'} ${name}`);
  const expected = [...ordered(series, 'line'), ...ordered(series, 'steps')].map(({ name }) => `- ${name}`);
  const bands = ordered(series, 'band').map(({ name }) => `: ${name}`);
  const level = marks.map(({ name, value }) => `= ${name} ${value}`);
  const happened = moments.map(({ name }, i) => `${MOMENT[i % MOMENT.length] ?? '^'} ${name}`);
  const extent = extentOf({ series, marks, moments, on, ...chart });
  const inside = extent !== null && on > extent.days[0] && on < extent.days[1];
  const today = inside ? [`| ${dayText(on, look)}`] : [];
  return fitted([...read, ...expected, ...bands, ...level, ...happened, ...today], look.width);
}

/** Entries side by side, as many a line as fit; none is cut in two. */
function fitted(entries: readonly string[], width: number): string {
  const lines: string[] = [];
  for (const entry of entries) {
    const last = lines.at(-1);
    if (last !== undefined && last.length + 3 + entry.length <= width) lines[lines.length - 1] = `${last}   ${entry}`;
    else lines.push(entry);
  }
  return lines.join('\n');
}
