/** Reads a filled-in sheet of results: commas, semicolons or tabs, any line ends. Nothing in it is believed unread. */
import { parse } from 'csv-parse/sync';
import type { Result, Wrong } from '../../questions/settle/result.ts';
import { SHEET_HEADS } from '../../reports/settle.ts';
import { fishCell, moneyCell, plain, unsoldCell } from './cells.ts';

/** More than this is no sheet of one auction. */
const MOST_SIGNS = 500_000;
const MOST_ROWS = 2000;

/** What keepers and clubs may call the columns that are needed. */
const HEADS: Readonly<Record<Column, readonly string[]>> = {
  lot: ['lot', 'bag'],
  stock: ['stock', 'fish name'],
  tank: ['tank', 'from'],
  fish: ['fish', 'number of fish', 'count'],
  fetched: ['fetched', 'price', 'sold for', 'made'],
  back: ['back to', 'back'],
};

type Column = 'lot' | 'stock' | 'tank' | 'fish' | 'fetched' | 'back';

export type Sheet =
  { readonly ok: true; readonly results: readonly Result[] } | { readonly ok: false; readonly wrong: readonly Wrong[] };

interface Row {
  readonly line: number;
  readonly cells: readonly string[];
}

/** `currency`: the code that may stand beside a sum. */
export function readSheet(text: string, currency: string | null): Sheet {
  if (text.length > MOST_SIGNS)
    return one(null, `it holds ${megabytes(text)} million signs: that is no sheet of one auction`);
  if (text.includes('\ufffd')) return one(null, 'it is not UTF-8: save it as CSV UTF-8');
  const parsed = rowsOf(text);
  if (!('rows' in parsed)) return parsed;
  const [head, ...rows] = parsed.rows;
  if (head === undefined)
    return one(null, 'nothing stands in it', 'tankside settle AUCTION --sheet FILE writes a blank one');
  if (rows.length > MOST_ROWS) return one(null, `it has ${String(rows.length)} rows: that is no sheet of one auction`);
  const places = columnsOf(head);
  const missing = (['stock', 'tank', 'fish', 'fetched'] as const).filter((column) => !places.has(column));
  if (missing.length > 0) {
    const names = missing.map((column) => `«${HEADS[column][0] ?? ''}»`).join(', ');
    return one(head.line, `the first row names no column ${names}`, SHEET_HEADS.join(','));
  }
  const read = rows.map((row) => resultOf(row, head.cells.length, places, currency));
  const wrong = read.flatMap((each) => ('says' in each ? [each] : []));
  return wrong.length > 0
    ? { ok: false, wrong }
    : { ok: true, results: read.flatMap((each) => ('says' in each ? [] : [each])) };
}

/** True for a text that names at least one of the columns in its first row. */
export function isSheet(text: string): boolean {
  const first = text.replace(/^\ufeff?\s*/, '').split(/\r?\n|\r/, 1)[0] ?? '';
  const names = new Set(Object.values(HEADS).flat());
  const cells = first.split(/[,;\t]/).map(headName);
  return cells.length > 1 && cells.some((cell) => names.has(cell));
}

function headName(cell: string): string {
  return plain(cell.replaceAll('"', '')).toLowerCase();
}

function rowsOf(text: string): { readonly rows: readonly Row[] } | Extract<Sheet, { ok: false }> {
  try {
    const rows: Row[] = [];
    let last = 0;
    parse(text, {
      bom: true,
      delimiter: delimiterOf(text),
      relax_column_count: true,
      record_delimiter: ['\r\n', '\n', '\r'],
      on_record(record: string[], { lines }) {
        rows.push({ line: last + 1, cells: record.map(plain) });
        last = lines;
        return null;
      },
    });
    return { rows: rows.filter(({ cells }) => cells.some((cell) => cell !== '')) };
  } catch (error) {
    const line = error instanceof Error && 'lines' in error ? Number(error.lines) : null;
    return one(line, 'its quotes do not pair', 'quotes around the whole cell, or none');
  }
}

/** What the heading is parted by: the sign that it holds most of. */
function delimiterOf(text: string): string {
  const first = text.replace(/^\ufeff?\s*/, '').split(/\r?\n|\r/, 1)[0] ?? '';
  const count = (sign: string): number => first.split(sign).length;
  return [',', ';', '\t'].reduce((best, sign) => (count(sign) > count(best) ? sign : best));
}

function columnsOf({ cells }: Row): ReadonlyMap<Column, number> {
  const places = new Map<Column, number>();
  const names = cells.map((cell) => cell.toLowerCase());
  for (const column of ['lot', 'stock', 'tank', 'fish', 'fetched', 'back'] as const) {
    const at = HEADS[column].map((name) => names.indexOf(name)).find((index) => index >= 0);
    if (at !== undefined) places.set(column, at);
  }
  return places;
}

function resultOf(
  { line, cells }: Row,
  width: number,
  places: ReadonlyMap<Column, number>,
  currency: string | null,
): Result | Wrong {
  const wrong = (says: string, write: string | null = null): Wrong => ({ line, says, write });
  if (cells.slice(width).some((cell) => cell !== ''))
    return wrong(
      `${String(cells.length)} cells under ${String(width)} columns`,
      'quotes around a sum with a comma, or a point in it',
    );
  const cell = (column: Column): string => {
    const at = places.get(column);
    return at === undefined ? '' : (cells[at] ?? '');
  };
  if (cell('stock') === '' || cell('tank') === '') return wrong('no stock or no tank stands in it');
  const fish = fishCell(cell('fish'));
  const fetched = moneyCell(cell('fetched'), currency);
  if (!fish.ok) return wrong(fish.says);
  if (!fetched.ok) return wrong(fetched.says);
  const unsold = unsoldCell(cell('back'));
  if (fetched.value !== null && unsold !== null)
    return wrong(
      'it was sold, and yet «back to» says that it was not',
      'a row for those sold and a row for those that came back',
    );
  return {
    line,
    lot: cell('lot') === '' ? null : cell('lot'),
    stock: cell('stock'),
    tank: cell('tank'),
    fish: fish.value,
    fetched: fetched.value,
    unsold,
  };
}

function one(line: number | null, says: string, write: string | null = null): Extract<Sheet, { ok: false }> {
  return { ok: false, wrong: [{ line, says, write }] };
}

function megabytes(text: string): string {
  return (text.length / 1_000_000).toFixed(1);
}
