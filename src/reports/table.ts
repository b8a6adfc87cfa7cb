/**
 * Rows as quiet columns that fit the width: no rules, a heading in small words, the widest wrapping
 * column giving way first. cli-table3 lays them out; it costs half a millisecond a row, so a table too
 * long to be read by a person is padded here instead, to the same bytes.
 */
import CliTable from 'cli-table3';
import stringWidth from 'string-width';
import type { Look } from './look.ts';
import { printable } from './printable.ts';
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
/** Rows above which the table is padded here. */
const MANY = 100;

/** Draws the rows; the result ends with a line end, and is empty where there are no rows. */
export function table(look: Look, columns: readonly Column[], rows: readonly Row[]): string {
  if (rows.length === 0) return '';
  const widths = fit(look.width, columns, rows);
  const lines: string[] = [];
  let block: (readonly string[])[] = [];
  const draw = rows.length > MANY ? pad : layOut;
  const flush = (): void => {
    if (block.length > 0) lines.push(...draw(block, columns, widths));
    block = [];
  };
  if (columns.some(({ head }) => head !== '')) {
    block.push(columns.map(({ head }) => look.paint.quiet(head)));
  }
  for (const row of rows) {
    if (row.apart === true) {
      flush();
      lines.push('');
    }
    block.push(columns.map((_, index) => cellLines(row.cells[index] ?? '', widths[index] ?? 0).join('\n')));
    if (row.under === undefined || row.under.length === 0) continue;
    flush();
    const indent = (widths[0] ?? 0) + GAP.length;
    for (const cell of row.under) {
      lines.push(...cellLines(cell, look.width - indent).map((line) => ' '.repeat(indent) + line));
    }
  }
  flush();
  return `${lines.map((line) => line.trimEnd()).join('\n')}\n`;
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

function widthOf(cell: Cell): number {
  return wordsOf(cell).reduce((most, words) => Math.max(most, stringWidth(textOf(words))), 0);
}

/** Widths that fit: natural ones, then what is too much taken from the wrapping columns, widest first. */
function fit(width: number, columns: readonly Column[], rows: readonly Row[]): readonly number[] {
  const widths = columns.map(({ head }, index) =>
    rows.reduce((most, row) => Math.max(most, widthOf(row.cells[index] ?? '')), stringWidth(head)),
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

/** Without borders; the paddings are the gaps, and no colour of its own. */
function layOut(
  block: readonly (readonly string[])[],
  columns: readonly Column[],
  widths: readonly number[],
): readonly string[] {
  const drawn = new CliTable({
    chars: {
      top: '',
      'top-mid': '',
      'top-left': '',
      'top-right': '',
      bottom: '',
      'bottom-mid': '',
      'bottom-left': '',
      'bottom-right': '',
      left: '',
      'left-mid': '',
      mid: '',
      'mid-mid': '',
      right: '',
      'right-mid': '',
      middle: GAP,
    },
    style: { head: [], border: [], 'padding-left': 0, 'padding-right': 0 },
    colWidths: [...widths],
    colAligns: columns.map(({ align }) => align ?? 'left'),
  });
  for (const cells of block) drawn.push([...cells]);
  return drawn.toString().split('\n');
}

function pad(
  block: readonly (readonly string[])[],
  columns: readonly Column[],
  widths: readonly number[],
): readonly string[] {
  return block.flatMap((cells) => {
    const split = cells.map((cell) => cell.split('\n'));
    const height = split.reduce((most, lines) => Math.max(most, lines.length), 0);
    return Array.from({ length: height }, (_, at) =>
      split.map((lines, index) => padded(lines[at] ?? '', widths[index] ?? 0, columns[index]?.align)).join(GAP),
    );
  });
}

function padded(text: string, width: number, align: Column['align']): string {
  const blanks = ' '.repeat(Math.max(0, width - stringWidth(text)));
  return align === 'right' ? blanks + text : text + blanks;
}
