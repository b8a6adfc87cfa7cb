/** A chart as one self-contained SVG: no script, no outside font, readable in print; shapes differ as well as shades. */
import { addDays, isoDay, type Day } from '../core/day.ts';
import type { Chart, Series } from '../questions/chart/model.ts';
import { extentOf, niceStep, type Extent } from './chart-extent.ts';
import { markup, type Markup } from './markup.ts';

const WIDTH = 820;
const HEIGHT = 440;
const EDGE = { left: 64, right: 24, top: 48, bottom: 92 };

interface Scale {
  readonly x: (day: number) => number;
  readonly y: (value: number) => number;
}

export function chartSvg(chart: Chart): string {
  const extent = extentOf(chart);
  const body =
    extent === null
      ? markup`<text x="64" y="90">nothing to draw: no readings in the journal</text>`
      : picture(chart, extent);
  return `${
    markup`<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${WIDTH} ${HEIGHT}" width="${WIDTH}" height="${HEIGHT}" role="img" font-family="sans-serif" font-size="13">
<title>${chart.title}</title>
<rect width="100%" height="100%" fill="#ffffff"/>
<text x="${EDGE.left}" y="22" font-size="17">${chart.title}</text>
<text x="${EDGE.left}" y="40" fill="#444444">${chart.up}</text>
${body}
</svg>`.text
  }\n`;
}

function picture(chart: Chart, extent: Extent): Markup {
  const scale = scaleOf(extent);
  const order: Readonly<Record<Series['kind'], number>> = { band: 0, line: 1, steps: 2, readings: 3 };
  const series = [...chart.series].sort((a, b) => order[a.kind] - order[b.kind]).map((one) => drawn(one, scale));
  return markup`${axes(extent, scale)}
${today(chart.on, extent, scale)}
${chart.marks.map((mark) => level(mark, scale))}
${series}
${legend(chart)}`;
}

function scaleOf({ days: [from, to], values: [low, high] }: Extent): Scale {
  const wide = WIDTH - EDGE.left - EDGE.right;
  const tall = HEIGHT - EDGE.top - EDGE.bottom;
  return {
    x: (day) => round(EDGE.left + (to === from ? 0 : ((day - from) / (to - from)) * wide)),
    y: (value) => round(EDGE.top + (1 - (value - low) / (high - low)) * tall),
  };
}

function round(value: number): number {
  return Number(value.toFixed(1));
}

function axes({ days: [from, to], values: [low, high] }: Extent, { x, y }: Scale): Markup {
  const step = niceStep(high - low);
  const up: Markup[] = [];
  for (let value = low; value <= high + step / 1000; value += step) {
    up.push(markup`<line x1="${EDGE.left}" x2="${WIDTH - EDGE.right}" y1="${y(value)}" y2="${y(value)}" stroke="#dddddd"/>
<text x="${EDGE.left - 8}" y="${y(value) + 4}" text-anchor="end">${Number(value.toFixed(6))}</text>
`);
  }
  const ticks = to === from ? 0 : 4;
  const along: Markup[] = [];
  for (let i = 0; i <= ticks; i += 1) {
    const day: Day = addDays(from, ticks === 0 ? 0 : Math.round(((to - from) * i) / ticks));
    along.push(markup`<text x="${x(day)}" y="${HEIGHT - EDGE.bottom + 20}" text-anchor="middle">${isoDay(day)}</text>
`);
  }
  return markup`${up}${along}`;
}

function today(on: Day, { days: [from, to] }: Extent, { x }: Scale): Markup {
  if (on <= from || on >= to) return markup``;
  return markup`<line x1="${x(on)}" x2="${x(on)}" y1="${EDGE.top}" y2="${HEIGHT - EDGE.bottom}" stroke="#888888" stroke-dasharray="2 4"/>`;
}

function level({ name, value }: Chart['marks'][number], { y }: Scale): Markup {
  return markup`<line x1="${EDGE.left}" x2="${WIDTH - EDGE.right}" y1="${y(value)}" y2="${y(value)}" stroke="#000000" stroke-dasharray="8 4"/>
<text x="${WIDTH - EDGE.right}" y="${y(value) - 5}" text-anchor="end">${name} ${value}</text>
`;
}

function drawn(series: Series, { x, y }: Scale): Markup {
  switch (series.kind) {
    case 'readings':
      return markup`${series.points.map(
        ({ day, value }) => markup`<circle cx="${x(day)}" cy="${y(value)}" r="4" fill="#000000"/>
`,
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
      return markup`<path d="${`M${[...lower, ...upper].join('L')}Z`}" fill="#9ec4d8" fill-opacity="0.5"/>
`;
    }
  }
}

function path(points: readonly string[]): Markup {
  return points.length === 0
    ? markup``
    : markup`<path d="${`M${points.join('L')}`}" fill="none" stroke="#1c5d7a" stroke-width="2"/>
`;
}

function legend(chart: Chart): Markup {
  const words: Readonly<Record<Series['kind'], string>> = {
    readings: 'dots',
    line: 'line',
    steps: 'steps',
    band: 'shaded',
  };
  const told = chart.series.map(({ kind, name }) => `${words[kind]}: ${name}`).join('   ');
  return markup`<text x="${EDGE.left}" y="${HEIGHT - 44}">${told}</text>
${chart.basis.slice(0, 2).map(
  (text, i) => markup`<text x="${EDGE.left}" y="${HEIGHT - 26 + i * 16}" fill="#444444" font-size="11">${text}</text>
`,
)}`;
}
