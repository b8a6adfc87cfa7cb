/** Today's list as text and as JSON: the heaviest thing in the first line, one row a thing, the line to jot under it. */
import type { DueAnswer, DueRow, Postponed } from '../questions/due.ts';
import type { Row, Words } from './columns.ts';
import { columnsText } from './columns.ts';
import { toldOnce } from './due-alike.ts';
import { dayJson, linesJson, spreadJson } from './json.ts';
import type { Look } from './look.ts';
import { dayText, heading, listWords, plural, windowText } from './words.ts';
import { paragraph } from './wrap.ts';

/** Put-off rows named one by one; more are only counted. */
const NAMED = 4;

/** Where, when, and what to do: columns that need no names. */
const COLUMNS = [{ head: '' }, { head: '' }, { head: '', wraps: true }];

export function dueText(answer: DueAnswer, look: Look): string {
  const first = paragraph(`${heading(look)}: ${matters(answer, look)}`, look.width, 2);
  const parts = [look.paint.strong(first.split('\n')[0] ?? '')];
  const more = first.split('\n').slice(1);
  const rows = columnsText(look, COLUMNS, drawn(answer.rows, look));
  const last = ending(answer, look).map((line) => paragraph(line, look.width, 2));
  const blocks = [[...parts, ...more].join('\n'), rows.trimEnd(), last.join('\n')];
  return `${blocks.filter((block) => block !== '').join('\n\n')}\n`;
}

/** What to begin with, or that there is nothing to do and what comes next. */
function matters({ rows, fitted }: DueAnswer, look: Look): string {
  const now = rows.filter(({ state }) => state !== 'ahead');
  const [top] = now;
  if (top !== undefined) return `${plural(now.length, 'thing')} to do, first ${top.place}: ${top.what}`;
  if (fitted !== null && fitted.left.length > 0) return `nothing fits into ${plural(fitted.of, 'minute')}`;
  const [next] = rows;
  return next === undefined ? 'nothing due' : `nothing due; next ${next.place}: ${next.what}, ${when(next, look)}`;
}

function drawn(rows: readonly DueRow[], look: Look): readonly Row[] {
  const told = new Set<string>();
  const shown = toldOnce(rows);
  return shown.map(({ place, what, close, row }, index) => {
    const { why, caution, after, state } = row;
    const under: Words[] = why === '' ? [] : [why];
    if (caution !== undefined && !told.has(caution)) under.push(`take care: ${caution}`);
    if (after !== undefined && !told.has(after)) under.push(after);
    if (close !== '') under.push({ text: `jot  ${close}`, paint: look.paint.quiet });
    told.add(caution ?? '').add(after ?? '');
    const cells = [place, { text: when(row, look), paint: brush(row, look) }, { text: what, paint: look.paint.strong }];
    return { cells, under, apart: state === 'ahead' && shown[index - 1]?.row.state !== 'ahead' && index > 0 };
  });
}

function brush({ state, weight }: DueRow, { paint }: Look): (text: string) => string {
  if (state === 'ahead') return paint.quiet;
  if (weight === 3) return paint.urgent;
  return state === 'late' ? paint.late : paint.today;
}

/** `now`, `late 4 days`, `today`, `by 22 Feb`, `17–20 Feb`; a pipe gets one ISO date, the likely one. */
function when({ state, weight, due }: DueRow, look: Look): string {
  const { low, likely, high } = due;
  if (state !== 'ahead' && weight === 3) return 'now';
  if (state === 'late' && high !== null) return `late ${plural(look.on - high, 'day')}`;
  if (state === 'today') return high === null || high === look.on ? 'today' : `by ${dayText(high, look)}`;
  if (low === null || low === high) return low === null ? 'ahead' : `by ${dayText(low, look)}`;
  return look.machine ? `about ${dayText(likely ?? low, look)}` : windowText(due, look);
}

function ending({ putOff, waiting, fitted }: DueAnswer, look: Look): readonly string[] {
  const lines: string[] = [];
  if (fitted !== null) {
    const left = fitted.left.length === 0 ? '' : `; did not fit: ${named(fitted.left)}`;
    lines.push(`about ${fitted.minutes} of ${plural(fitted.of, 'minute')}${left}`);
  }
  if (putOff.length > 0) lines.push(`${putOff.length} put off: ${postponed(putOff, look)}`);
  const [back] = waiting;
  if (back !== undefined)
    lines.push(`away: ${plural(waiting.length, 'waits', 'wait')} until you are back on ${dayText(back.until, look)}`);
  return lines;
}

function postponed(rows: readonly Postponed[], look: Look): string {
  const told = rows.slice(0, NAMED).map((row) => `${row.place} ${row.what} until ${dayText(row.until, look)}`);
  return counted(told, rows.length);
}

function named(rows: readonly DueRow[]): string {
  return counted(
    rows.slice(0, NAMED).map(({ place, what }) => `${place} ${what}`),
    rows.length,
  );
}

function counted(told: readonly string[], all: number): string {
  return listWords(all > told.length ? [...told, `${all - told.length} more`] : told);
}

export function dueJson(answer: DueAnswer): object {
  const { putOff, waiting, fitted } = answer;
  return {
    putOff: putOff.length,
    waiting: waiting.length,
    ...(fitted === null ? {} : { minutes: fitted.minutes, notFitting: fitted.left.map(({ id }) => id) }),
    items: answer.rows.map(itemJson),
    postponed: [...putOff, ...waiting].map((row) => ({ ...row, until: dayJson(row.until) })),
  };
}

function itemJson(row: DueRow): object {
  const { id, place, what, kind, state, why, close, caution, after } = row;
  return {
    id,
    place,
    what,
    kind,
    state,
    due: spreadJson(row.due),
    why,
    close,
    ...(caution === undefined ? {} : { caution }),
    ...(after === undefined ? {} : { after }),
    minutes: row.minutes,
    lines: linesJson(row.lines),
  };
}
