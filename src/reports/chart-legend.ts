/** The legend of an SVG chart: each sign beside its name, as many a row as fit. */
import type { Chart } from '../questions/chart/model.ts';
import { BAND, dot, LINE, moment } from './chart-signs.ts';
import { markup, type Markup } from './markup.ts';

export interface LegendEntry {
  readonly words: string;
  /** Draws the sign with its middle at a place. */
  sign(x: number, y: number): Markup;
}

interface Placed extends LegendEntry {
  readonly left: number;
}

/** Width of a letter of the legend, on the wide side: no font is known here, px. */
const LETTER = 7.4;
const SIGN = 34;
const GAP = 22;

export function legendRows(chart: Chart, width: number): readonly (readonly Placed[])[] {
  const rows: Placed[][] = [];
  let at = Infinity;
  for (const entry of entriesOf(chart)) {
    const wide = SIGN + entry.words.length * LETTER;
    if (at + wide > width) {
      rows.push([]);
      at = 0;
    }
    rows.at(-1)?.push({ ...entry, left: at });
    at += wide + GAP;
  }
  return rows;
}

export function legendSvg(rows: readonly (readonly Placed[])[], left: number, top: number, row: number): Markup {
  return markup`${rows.flatMap((entries, i) =>
    entries.map((entry) => {
      const x = Math.round(left + entry.left);
      const y = top + i * row;
      return markup`${entry.sign(x + 13, y - 4)}<text x="${x + SIGN}" y="${y}">${entry.words}</text>
`;
    }),
  )}`;
}

function entriesOf({ series, moments }: Chart): LegendEntry[] {
  const read = series.filter(({ kind }) => kind === 'readings');
  return [
    ...read.map(({ name }, i): LegendEntry => ({ words: name, sign: (x, y) => dot(i, x, y) })),
    ...series.flatMap(({ kind, name }): LegendEntry[] => {
      if (kind === 'readings') return [];
      return [{ words: name, sign: kind === 'band' ? bandSign : lineSign }];
    }),
    ...moments.map(({ name }, i): LegendEntry => ({ words: name, sign: (x, y) => moment(i, x, y) })),
  ];
}

function bandSign(x: number, y: number): Markup {
  return markup`<rect x="${x - 12}" y="${y - 6}" width="24" height="12" fill="${BAND}" fill-opacity="0.5"/>
`;
}

function lineSign(x: number, y: number): Markup {
  return markup`<line x1="${x - 12}" x2="${x + 12}" y1="${y}" y2="${y}" stroke="${LINE}" stroke-width="2"/>
`;
}
