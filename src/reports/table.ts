/**
 * Rows as quiet columns that fit the width: no rules, a heading in small words, the widest wrapping
 * column giving way first. Drawn here, since a table library costs half a millisecond a row: more than
 * the answer itself.
 */
import type { Look } from './look.ts';
import { printable } from './printable.ts';
import { widthOf } from './width.ts';
import { wrap } from './wrap.ts';

export interface Column {
  /** Empty: the column needs no heading. */
  readonly head: string;
  readonly align?: 'left' | 'right';
  /** May be broken into several lines where the table would be too wide. */
  readonly wraps?: boolean;
}

/** Text, or text with the brush that colours it; brushes touch it after it was cut to width. */
export type Words = string | { readonly text: string; readonly paint: (text: string) => string };

/** One text, or several below each other. */
export type Cell = Words | readonly Words[];

export interface Row {
  readonly cells: readonly Cell[];
  /** Lines of their own below the row, across all columns but the first. */
  readonly under?: readonly Words[];
  /** An empty line before it. */
  readonly apart?: boolean;
}

const GAP = '  ';
/** No wrapping column gets narrower than this. */
const NARROWEST = 8;

/** Draws the rows; the result ends with a line end, and is empty where there are no rows. */
export function table(look: Look, columns: readonly Column[], rows: readonly Row[]): string {
  if (rows.length === 0) return '';
  const widths = fit(look.width, columns, rows);
  const indent = (widths[0] ?? 0) + GAP.length;
  const lines: string[] = [];
  if (columns.some(({ head }) => head !== '')) {
    const heads = columns.map(({ head }) => ({ text: head, paint: look.paint.quiet }));
    lines.push(...draw(heads, columns, widths));
  }
  for (const row of rows) {
    if (row.apart === true) lines.push('');
    lines.push(...draw(row.cells, columns, widths));
    for (const words of row.under ?? []) {
      lines.push(...cellLines(words, look.width - indent).map((line) => ' '.repeat(indent) + line));
    }
  }
  return `${lines.map((line) => line.trimEnd()).join('\n')}\n`;
}

/** The lines of one row: every cell wrapped to its column and filled up to it. */
function draw(cells: readonly Cell[], columns: readonly Column[], widths: readonly number[]): readonly string[] {
  const split = columns.map((_, index) => cellLines(cells[index] ?? '', widths[index] ?? 0));
  const height = split.reduce((most, lines) => Math.max(most, lines.length), 0);
  return Array.from({ length: height }, (_, at) =>
    split.map((lines, index) => padded(lines[at] ?? '', widths[index] ?? 0, columns[index]?.align)).join(GAP),
  );
}

function padded(text: string, width: number, align: Column['align']): string {
  const blanks = ' '.repeat(Math.max(0, width - widthOf(text)));
  return align === 'right' ? blanks + text : text + blanks;
}

function cellLines(cell: Cell, width: number): readonly string[] {
  return wordsOf(cell).flatMap((words) => {
    const lines = wrap(textOf(words), width);
    return typeof words === 'string' ? lines : lines.map((line) => words.paint(line));
  });
}

function wordsOf(cell: Cell): readonly Words[] {
  return typeof cell === 'string' || 'text' in cell ? [cell] : cell;
}

function textOf(words: Words): string {
  return printable(typeof words === 'string' ? words : words.text);
}

function cellWidth(cell: Cell): number {
  return wordsOf(cell).reduce((most, words) => Math.max(most, widthOf(textOf(words))), 0);
}

/** Widths that fit: natural ones, then what is too much taken from the wrapping columns, widest first. */
function fit(width: number, columns: readonly Column[], rows: readonly Row[]): readonly number[] {
  const widths = columns.map(({ head }, index) =>
    rows.reduce((most, row) => Math.max(most, cellWidth(row.cells[index] ?? '')), widthOf(head)),
  );
  let excess = widths.reduce((sum, each) => sum + each, 0) + GAP.length * (columns.length - 1) - width;
  while (excess > 0) {
    const widest = columns.reduce<number | null>((best, { wraps }, index) => {
      const mine = widths[index] ?? 0;
      if (wraps !== true || mine <= NARROWEST) return best;
      return best === null || mine > (widths[best] ?? 0) ? index : best;
    }, null);
    if (widest === null) break;
    widths[widest] = (widths[widest] ?? 0) - 1;
    excess -= 1;
  }
  return widths;
}
