/**
 * Rows as a table, drawn by cli-table3 without rules or colours of its own. It takes half a millisecond
 * a row, so a table that is too long for a person to read is padded instead, to the same bytes; so is one with
 * a cell of many lines.
 */
import CliTable from 'cli-table3';
import type { Column, Draw, Row } from './columns.ts';
import { columnsText, GAP, pad } from './columns.ts';
import type { Look } from './look.ts';

export type { Cell, Column, Row, Words } from './columns.ts';

/** Rows above which the table is padded. */
const MANY = 100;
/** Lines of one cell above which it is: the library cuts the whole cell anew for each of them. */
const HIGH = 6;

/** Draws the rows; the result ends with a line end, and is empty where there are no rows. */
export function table(look: Look, columns: readonly Column[], rows: readonly Row[]): string {
  return rows.length > MANY ? columnsText(look, columns, rows) : columnsText(look, columns, rows, byLibrary);
}

const NO_RULES = {
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
} as const;

const byLibrary: Draw = (rows, columns, widths) => {
  if (rows.some((row) => row.some((lines) => lines.length > HIGH))) return pad(rows, columns, widths);
  const drawn = new CliTable({
    chars: NO_RULES,
    style: { head: [], border: [], 'padding-left': 0, 'padding-right': 0 },
    colWidths: [...widths],
    colAligns: columns.map(({ align }) => align ?? 'left'),
  });
  drawn.push(...rows.map((row) => row.map((lines) => lines.join('\n'))));
  return drawn.toString().split('\n');
};
