/** A chart as one self-contained SVG: no script, no outside font, readable in print; shapes differ as well as shades. */
import { addDays, isoDay, type Day } from '../core/day.ts';
import type { Chart, Series } from '../questions/chart/model.ts';
import { extentOf, niceStep, type Extent } from './chart-extent.ts';
import { legendRows, legendSvg } from './chart-legend.ts';
import { dot, BAND, LINE, moment } from './chart-signs.ts';
import { markup, type Markup } from './markup.ts';

const WIDTH = 820;
const PLOT_HEIGHT = 300;
const EDGE = { left: 64, right: 24 };
/** Heights of a line of the title's words and of the legend. */
const ROW = 18;
/** Labels of two level lines closer than this are put on either side of them, px. */
const CLOSE = 16;

interface Frame {
  readonly x: (day: number) => number;
  readonly y: (value: number) => number;
  readonly top: number;
  readonly bottom: number;
}

export function chartSvg(chart: Chart): string {
  const extent = extentOf(chart);
  const top = 66 + ROW * chart.basis.length;
  const entries = legendRows(chart, WIDTH - EDGE.left - EDGE.right);
  const height = top + PLOT_HEIGHT + 58 + ROW * entries.length;
  const frame = extent === null ? null : frameOf(extent, top);
  const body =
    extent === null || frame === null
      ? markup`<text x="${EDGE.left}" y="${top}">nothing to draw: no readings in the journal</text>`
      : markup`${picture(chart, extent, frame)}
${legendSvg(entries, EDGE.left, frame.bottom + 58, ROW)}`;
  return `${
    markup`<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${WIDTH} ${height}" width="${WIDTH}" height="${height}" role="img" font-family="sans-serif" font-size="13">
<title>${chart.title}</title>
<rect width="100%" height="100%" fill="#ffffff"/>
<text x="${EDGE.left}" y="26" font-size="17">${chart.title}, ${isoDay(chart.on)}</text>
${chart.basis.map(
  (text, i) => markup`<text x="${EDGE.left}" y="${46 + i * ROW}" fill="#333333">${text}</text>
`,
)}<text x="${EDGE.left}" y="${top - 10}" fill="#333333" font-size="12">${chart.up}</text>
${body}
</svg>`.text
  }\n`;
}

function picture(chart: Chart, extent: Extent, frame: Frame): Markup {
  const of = (kind: Series['kind']): Series[] => chart.series.filter((one) => one.kind === kind);
  return markup`${axes(extent, frame)}
${of('band').map((series) => drawn(series, 0, frame))}${today(chart.on, extent, frame)}
${levels(chart, frame)}${[...of('line'), ...of('steps')].map((series) => drawn(series, 0, frame))}${of('readings').map((series, i) => drawn(series, i, frame))}${moments(chart, frame)}`;
}

function frameOf({ days: [from, to], values: [low, high] }: Extent, top: number): Frame {
  const wide = WIDTH - EDGE.left - EDGE.right;
  return {
    x: (day) => round(EDGE.left + (to === from ? wide / 2 : ((day - from) / (to - from)) * wide)),
    y: (value) => round(top + (1 - (value - low) / (high - low)) * PLOT_HEIGHT),
    top,
    bottom: top + PLOT_HEIGHT,
  };
}

function round(value: number): number {
  return Number(value.toFixed(1));
}

function axes({ days: [from, to], values: [low, high] }: Extent, { x, y, bottom }: Frame): Markup {
  const step = niceStep(high - low);
  const up: Markup[] = [];
  for (let value = low; value <= high + step / 1000; value += step) {
    up.push(markup`<line x1="${EDGE.left}" x2="${WIDTH - EDGE.right}" y1="${y(value)}" y2="${y(value)}" stroke="#dddddd"/>
<text x="${EDGE.left - 8}" y="${y(value) + 4}" text-anchor="end">${Number(value.toFixed(6))}</text>
`);
  }
  const parts = Math.min(4, to - from);
  const along: Markup[] = [];
  for (let i = 0; i <= parts; i += 1) {
    const day: Day = addDays(from, parts === 0 ? 0 : Math.round(((to - from) * i) / parts));
    const anchor = parts === 0 ? 'middle' : i === 0 ? 'start' : i === parts ? 'end' : 'middle';
    along.push(markup`<line x1="${x(day)}" x2="${x(day)}" y1="${bottom}" y2="${bottom + 5}" stroke="#888888"/>
<text x="${x(day)}" y="${bottom + 34}" text-anchor="${anchor}">${isoDay(day)}</text>
`);
  }
  return markup`${up}${along}`;
}

function today(on: Day, { days: [from, to] }: Extent, { x, top, bottom }: Frame): Markup {
  if (on <= from || on >= to) return markup``;
  return markup`<line x1="${x(on)}" x2="${x(on)}" y1="${top}" y2="${bottom}" stroke="#666666" stroke-dasharray="2 4"/>`;
}

/** Level lines, each named at its right end: above the line, or below where another stands close above. */
function levels({ marks }: Chart, { y }: Frame): Markup {
  return markup`${marks.map(({ name, value }) => {
    const below = marks.some((other) => other.value > value && y(value) - y(other.value) < CLOSE);
    return markup`<line x1="${EDGE.left}" x2="${WIDTH - EDGE.right}" y1="${y(value)}" y2="${y(value)}" stroke="#000000" stroke-dasharray="8 4"/>
<text x="${WIDTH - EDGE.right}" y="${y(value) + (below ? 15 : -5)}" text-anchor="end" stroke="#ffffff" stroke-width="4" paint-order="stroke">${name} ${value}</text>
`;
  })}`;
}

function drawn(series: Series, index: number, { x, y }: Frame): Markup {
  switch (series.kind) {
    case 'readings':
      return markup`${series.points.map(({ day, value, low = value, high = value }) =>
        y(low) - y(high) < 3
          ? dot(index, x(day), y(value))
          : markup`<line x1="${x(day)}" x2="${x(day)}" y1="${y(low)}" y2="${y(high)}" stroke="#000000"/>
${dot(index, x(day), y(value))}`,
      )}`;
    case 'line':
      return path(series.points.map(({ day, value }) => `${x(day)} ${y(value)}`));
    case 'steps':
      return path(
        series.points.flatMap(({ day, value }, i) => {
          const before = series.points[i - 1];
          return before === undefined
            ? [`${x(day)} ${y(value)}`]
            : [`${x(day)} ${y(before.value)}`, `${x(day)} ${y(value)}`];
        }),
      );
    case 'band': {
      const lower = series.points.map(({ day, low }) => `${x(day)} ${y(low)}`);
      const upper = series.points.map(({ day, high }) => `${x(day)} ${y(high)}`).reverse();
      return markup`<path d="${`M${[...lower, ...upper].join('L')}Z`}" fill="${BAND}" fill-opacity="0.5"/>
`;
    }
  }
}

function path(points: readonly string[]): Markup {
  return points.length === 0
    ? markup``
    : markup`<path d="${`M${points.join('L')}`}" fill="none" stroke="${LINE}" stroke-width="2"/>
`;
}

function moments({ moments: all }: Chart, { x, bottom }: Frame): Markup {
  return markup`${all.flatMap(({ days }, i) => days.map((day) => moment(i, x(day), bottom + 11)))}`;
}
