/** What happened, as text and as JSON: one line a line, a dispute as one row with its lines under it. */
import type { HistoryAnswer, HistoryLine, HistoryOptions, HistoryRow } from '../questions/history.ts';
import { dayJson, linesJson, lineJson } from './json.ts';
import type { Look } from './look.ts';
import type { Cell, Row } from './table.ts';
import { table } from './table.ts';
import { dayText, heading, plural, windowText } from './words.ts';
import { paragraph } from './wrap.ts';

const COLUMNS = [{ head: '' }, { head: '', wraps: true }];

export function historyText(answer: HistoryAnswer, look: Look): string {
  const { rows, asked, count } = answer;
  const [first = '', ...more] = paragraph(`${heading(look)}: ${found(count, asked, rows, look)}`, look.width, 2).split(
    '\n',
  );
  const top = [look.paint.strong(first), ...more].join('\n');
  const drawn = table(
    look,
    COLUMNS,
    rows.map((row) => rowOf(row, look)),
  );
  return `${[top, drawn.trimEnd()].filter((part) => part !== '').join('\n\n')}\n`;
}

/** `12 lines about «Rowan», 2 Feb – 10 Mar`. */
function found(count: number, asked: HistoryOptions, rows: readonly HistoryRow[], look: Look): string {
  const { words, pair, tank, brood, kind } = asked;
  const named = [pair, tank, brood].filter((name) => name !== null);
  const about = [...(kind === null ? [] : [kind]), ...named, ...(words.length === 0 ? [] : [`«${words.join(' ')}»`])];
  const what = about.length === 0 ? '' : ` about ${about.join(', ')}`;
  const from = rows[0]?.day;
  const to = rows.reduce<HistoryRow['day'] | null>((last, row) => lastDay(row, last), null);
  const when = from === undefined || to === null ? '' : `, ${windowText({ low: from, likely: null, high: to }, look)}`;
  return count === 0 ? `no line${what}` : `${plural(count, 'line')}${what}${when}`;
}

function lastDay(row: HistoryRow, last: HistoryRow['day'] | null): HistoryRow['day'] {
  const own = row.row === 'dispute' ? (row.lines.at(-1)?.day ?? row.day) : row.day;
  return last === null || own > last ? own : last;
}

function rowOf(row: HistoryRow, look: Look): Row {
  if (row.row === 'line') return { cells: [dayText(row.day, look), written(row, look)] };
  const { pair, dispute, lines } = row;
  const { from, to, days, worst, by, endedBy } = dispute;
  const length = to === null ? `open, ${plural(days, 'day')} so far` : plural(days, 'day');
  const end = endedBy === null ? '' : `, ended by: ${endedBy}`;
  const dates = to === null ? `since ${dayText(from, look)}` : windowText({ low: from, likely: null, high: to }, look);
  const told = `${pair}: dispute, ${length}, worst ${worst}${by === null ? '' : `, ${by}`}${end}`;
  const seen = lines.map((line) => dayText(line.day, look));
  const width = Math.max(0, ...seen.map((day) => day.length));
  const under = lines.map((line, index) => `${(seen[index] ?? '').padEnd(width)}  ${asText(line)}`);
  return { cells: [dates, told], under };
}

function written(line: HistoryLine, look: Look): Cell {
  const text = asText(line);
  return line.leftOut ? { text: `${text} (left out)`, paint: look.paint.wrong } : text;
}

/** The line without its date, which stands before it; its time stays. */
function asText({ text }: HistoryLine): string {
  return text.trim().replace(/^\uFEFF?\d{4}-\d{2}-\d{2}\s+/u, '');
}

export function historyJson({ rows, count }: HistoryAnswer): object {
  return { count, rows: rows.map(rowJson) };
}

function rowJson(row: HistoryRow): object {
  if (row.row === 'line') return { id: row.id, row: 'line', ...lineOfRow(row), lines: [lineJson(row.line)] };
  const { id, pair, dispute, lines } = row;
  return {
    id,
    row: 'dispute',
    pair,
    from: dayJson(dispute.from),
    to: dayJson(dispute.to),
    days: dispute.days,
    worst: dispute.worst,
    by: dispute.by,
    endedBy: dispute.endedBy,
    written: lines.map(lineOfRow),
    lines: linesJson(dispute.lines),
  };
}

function lineOfRow({ day, minute, text, leftOut }: HistoryLine): object {
  return { day: dayJson(day), minute, text, leftOut };
}
