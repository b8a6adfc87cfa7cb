/**
 * Rows as quiet columns that fit the width: no rules, a heading in small words, the widest wrapping
 * column giving way first. What fits where is settled here; `table.ts` has the rows drawn by a library,
 * and the daily list, which must be there at once, takes the plain drawing of this file.
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
  /** Lines of their own below the row, across all columns, set in a little. */
  readonly under?: readonly Words[];
  /** An empty line before it. */
  readonly apart?: boolean;
}

/** What stands between two columns. */
export const GAP = '  ';
/** What stands before a line of its own below a row. */
const MARGIN = '    ';
/** What stands before the lines of a block. */
const BLOCK = '  ';
/** No wrapping column gets narrower than this. */
const NARROWEST = 8;

/** Cells already cut into the lines of their columns. */
export type CutRow = readonly (readonly string[])[];

/** Draws rows side by side: for each row as many lines as its highest cell has. */
export type Draw = (
  rows: readonly CutRow[],
  columns: readonly Column[],
  widths: readonly number[],
) => readonly string[];

/** Lays the rows out; the result ends with a line end, and is empty where there are no rows. */
export function columnsText(look: Look, columns: readonly Column[], rows: readonly Row[], draw: Draw = pad): string {
  if (rows.length === 0) return '';
  const widths = fit(look.width, columns, rows);
  if (widthAcross(widths) > look.width) return blocks(look, columns, rows);
  const headed = columns.some(({ head }) => head !== '');
  const heads: Row = { cells: columns.map(({ head }) => ({ text: head, paint: look.paint.quiet })) };
  const all = headed ? [heads, ...rows] : rows;
  const cut = all.map(({ cells }) => columns.map((_, index) => cellLines(cells[index] ?? '', widths[index] ?? 0)));
  const drawn = [...draw(cut, columns, widths)];
  const lines = all.flatMap((row, index) => [
    ...(row.apart === true ? [''] : []),
    ...drawn.splice(0, height(cut[index] ?? [])),
    ...(row.under ?? []).flatMap((words) => cellLines(words, look.width - MARGIN.length).map((line) => MARGIN + line)),
  ]);
  return `${lines.map((line) => line.trimEnd()).join('\n')}\n`;
}

function widthAcross(widths: readonly number[]): number {
  return widths.reduce((sum, each) => sum + each, 0) + GAP.length * (widths.length - 1);
}

/** Where the columns cannot fit: each row as a block, its first cell above, each other one beside the name of its column. */
function blocks(look: Look, columns: readonly Column[], rows: readonly Row[]): string {
  const [, ...others] = columns;
  const heads = others.map(({ head }) => widthOf(head));
  const left = BLOCK.length + Math.max(0, ...heads) + GAP.length;
  const lines = rows.flatMap(({ cells, under = [], apart }, index) => {
    const [first = '', ...more] = cells;
    const told = more.flatMap((cell, at) => {
      const text = cellLines(cell, look.width - left);
      if (text.every((line) => line.trim() === '')) return [];
      const head = others[at]?.head ?? '';
      const label = BLOCK + look.paint.quiet(head) + ' '.repeat(left - BLOCK.length - widthOf(head));
      return text.map((line, i) => (i === 0 ? label : ' '.repeat(left)) + line);
    });
    const below = under.flatMap((words) => cellLines(words, look.width - BLOCK.length).map((line) => BLOCK + line));
    return [...(apart === true && index > 0 ? [''] : []), ...cellLines(first, look.width), ...told, ...below];
  });
  return `${lines.map((line) => line.trimEnd()).join('\n')}\n`;
}

function height(row: CutRow): number {
  return row.reduce((most, lines) => Math.max(most, lines.length), 0);
}

/** The plain drawing: every cell padded to its column. */
export const pad: Draw = (rows, columns, widths) =>
  rows.flatMap((row) =>
    Array.from({ length: height(row) }, (_, at) =>
      row.map((lines, index) => padded(lines[at] ?? '', widths[index] ?? 0, columns[index]?.align)).join(GAP),
    ),
  );

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
  let excess = widthAcross(widths) - width;
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
