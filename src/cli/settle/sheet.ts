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

/** Rows that make sense, and what is wrong with the others: then nothing of the sheet may be written. */
export interface Sheet {
  readonly results: readonly Result[];
  readonly wrong: readonly Wrong[];
}

interface Row {
  readonly line: number;
  readonly cells: readonly string[];
}

/** `currency`: the code that may stand beside a sum. */
export function readSheet(text: string, currency: string | null): Sheet {
  if (text.length > MOST_SIGNS)
    return none(null, `it holds ${megabytes(text)} million signs: that is no sheet of one auction`);
  if (text.includes('\ufffd')) return none(null, 'it is not UTF-8: save it as CSV UTF-8');
  const parsed = rowsOf(text);
  if (!('rows' in parsed)) return parsed;
  const [head, ...rows] = parsed.rows;
  if (head === undefined)
    return none(null, 'nothing stands in it', 'tankside settle AUCTION --sheet FILE writes a blank one');
  if (rows.length > MOST_ROWS) return none(null, `it has ${String(rows.length)} rows: that is no sheet of one auction`);
  const places = columnsOf(head);
  const missing = (['stock', 'tank', 'fish', 'fetched'] as const).filter((column) => !places.has(column));
  if (missing.length > 0) {
    const names = missing.map((column) => `«${HEADS[column][0] ?? ''}»`).join(', ');
    return none(head.line, `the first row names no column ${names}`, SHEET_HEADS.join(','));
  }
  const read = rows.map((row) => resultOf(row, head.cells.length, places, currency));
  return { results: read.flatMap((one) => one.results), wrong: read.flatMap((one) => one.wrong) };
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

function rowsOf(text: string): { readonly rows: readonly Row[] } | Sheet {
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
    return none(line, 'its quotes do not pair', 'quotes around the whole cell, or none');
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

const NO_LOT = 'both, as the blank sheet has them; take a row out that is no lot, as a total';

function resultOf(
  { line, cells }: Row,
  width: number,
  places: ReadonlyMap<Column, number>,
  currency: string | null,
): Sheet {
  const wrong = (says: string, write: string | null = null): Wrong => ({ line, says, write });
  if (cells.slice(width).some((cell) => cell !== ''))
    return none(
      line,
      `${String(cells.length)} cells under ${String(width)} columns`,
      'quotes around a sum with a comma, or a point in it',
    );
  const cell = (column: Column): string => {
    const at = places.get(column);
    return at === undefined ? '' : (cells[at] ?? '');
  };
  const fish = fishCell(cell('fish'));
  const fetched = moneyCell(cell('fetched'), currency);
  const unsold = unsoldCell(cell('back'));
  const bad = [
    ...(cell('stock') === '' || cell('tank') === '' ? [wrong('no stock or no tank stands in it', NO_LOT)] : []),
    ...(fish.ok ? [] : [wrong(fish.says, 'how many fish the lot held, as 6')]),
    ...(fetched.ok ? [] : [wrong(fetched.says, 'what the whole lot fetched, as 12.50; nothing where it was not sold')]),
    ...(fetched.ok && fetched.value !== null && unsold !== null
      ? [
          wrong(
            'it was sold, and yet «back to» says that it was not',
            'a row for those sold and a row for those that came back',
          ),
        ]
      : []),
  ];
  if (bad.length > 0 || !fish.ok || !fetched.ok) return { results: [], wrong: bad };
  const lot = cell('lot') === '' ? null : cell('lot');
  const result = { line, lot, stock: cell('stock'), tank: cell('tank'), fish: fish.value };
  return { results: [{ ...result, fetched: fetched.value, unsold }], wrong: [] };
}

function none(line: number | null, says: string, write: string | null = null): Sheet {
  return { results: [], wrong: [{ line, says, write }] };
}

function megabytes(text: string): string {
  return (text.length / 1_000_000).toFixed(1);
}
