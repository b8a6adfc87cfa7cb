/** A chart's data as version 1 of the JSON writes it: days as ISO 8601, what is not certain as low, likely, high. */
import type { Chart, ChartPoint, Series } from '../questions/chart/model.ts';
import { countJson, dayJson, linesJson } from './json.ts';

export function chartJson(chart: Chart): object {
  return {
    id: chart.id,
    title: chart.title,
    up: chart.up,
    fromZero: chart.fromZero,
    series: chart.series.map(seriesJson),
    marks: chart.marks,
    moments: chart.moments.map(({ name, days }) => ({ name, days: days.map((day) => dayJson(day)) })),
    basis: chart.basis,
    lines: linesJson(chart.lines),
  };
}

function seriesJson(series: Series): object {
  const { kind, name } = series;
  if (series.kind === 'band') {
    return { kind, name, points: series.points.map(({ day, low, high }) => ({ day: dayJson(day), low, high })) };
  }
  return { kind, name, points: series.points.map((point) => ({ day: dayJson(point.day), value: valueJson(point) })) };
}

function valueJson({ value, low, high }: ChartPoint): ReturnType<typeof countJson> {
  return countJson({ low: low ?? value, likely: value, high: high ?? value });
}
