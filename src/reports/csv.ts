/** Rows as CSV by RFC 4180: CRLF, quotes where needed, and no cell that a spreadsheet would run as a formula. */
import { stringify } from 'csv-stringify/sync';

export type CsvCell = string | number | null;

/** A heading and its rows; null is an empty cell. */
export function csvText(heading: readonly string[], rows: readonly (readonly CsvCell[])[]): string {
  return stringify([[...heading], ...rows.map((row) => [...row])], {
    record_delimiter: 'windows',
    escape_formulas: true,
  });
}
