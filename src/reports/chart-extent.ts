/** What a chart spans, and the round numbers on its edge. */
import type { Day } from '../core/day.ts';
import type { Chart } from '../questions/chart/model.ts';

/** Share of a lone value that is shown on either side of it. */
const ALIKE = 0.05;

export interface Extent {
  readonly days: readonly [Day, Day];
  readonly values: readonly [number, number];
}

/** What a chart spans, marks included; null where there is nothing to draw. */
export function extentOf(chart: Chart): Extent | null {
  const days: Day[] = [];
  const values: number[] = chart.marks.map(({ value }) => value);
  for (const series of chart.series) {
    for (const point of series.points) {
      days.push(point.day);
      if ('value' in point) values.push(point.low ?? point.value, point.value, point.high ?? point.value);
      else values.push(point.low, point.high);
    }
  }
  const firstDay = days[0];
  if (firstDay === undefined) return null;
  days.push(chart.on);
  const earliest = days.reduce((a, b) => (b < a ? b : a), firstDay);
  const latest = days.reduce((a, b) => (b > a ? b : a), firstDay);
  return {
    days: [earliest, latest],
    values: niceEnds(Math.min(...(chart.fromZero ? [0] : []), ...values), Math.max(...values), chart.fromZero),
  };
}

function niceEnds(least: number, most: number, fromZero: boolean): [number, number] {
  // One reading alone, or several alike, stand in a span of their own: an edge with one number three times tells nothing.
  const alike = least === most ? Math.abs(least) * ALIKE || 1 : 0;
  const [low, high] = [fromZero ? least : least - alike, most + alike];
  const step = niceStep(high - low);
  return [Math.floor(low / step) * step, Math.max(Math.ceil(high / step) * step, low + step)];
}

/** A step of 1, 2 or 5 times a power of ten that cuts a span into about five. */
export function niceStep(span: number): number {
  const rough = Math.max(span, 1e-9) / 5;
  const power = 10 ** Math.floor(Math.log10(rough));
  const lead = rough / power;
  return power * (lead <= 1 ? 1 : lead <= 2 ? 2 : lead <= 5 ? 5 : 10);
}
