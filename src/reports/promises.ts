/** Reservations, wants and holdbacks as text and as JSON. Buyers' names go into text alone unless asked for. */
import type { PromisesAnswer, ReservedRow } from '../questions/promises.ts';
import type { WantedRow } from '../questions/promises/wanted.ts';
import { countJson, dayJson, linesJson } from './json.ts';
import type { Look } from './look.ts';
import { table, type Row } from './table.ts';
import { countWords, dayText, heading, listWords, plural, rangeWords } from './words.ts';
import { paragraph } from './wrap.ts';

const RESERVED = [
  { head: 'reserved', wraps: true },
  { head: 'where' },
  { head: 'until' },
  { head: 'for', wraps: true },
  { head: '', wraps: true },
];
const WANTED = [
  { head: 'wanted', wraps: true },
  { head: 'by' },
  { head: 'for', wraps: true },
  { head: 'there will be', wraps: true },
];

export function promisesText(answer: PromisesAnswer, look: Look): string {
  const [first = '', ...more] = paragraph(`${heading(look)}: ${matters(answer, look)}`, look.width, 2).split('\n');
  const blocks = [
    [look.paint.strong(first), ...more].join('\n'),
    table(
      look,
      RESERVED,
      answer.reserved.map((row) => reservedRow(row, look)),
    ).trimEnd(),
    table(
      look,
      WANTED,
      answer.wanted.map((row) => wantedRow(row, look)),
    ).trimEnd(),
    [keptWords(answer, look), depositWords(answer, look)].filter((words) => words !== '').join('\n'),
  ];
  return `${blocks.filter((block) => block !== '').join('\n\n')}\n`;
}

function matters({ reserved, wanted, over }: PromisesAnswer, look: Look): string {
  const [short] = over;
  if (short) return `${short.stock}: ${short.promised} kept back and reserved, but surely only ${short.sure} alive`;
  const live = reserved.filter(({ lapsed }) => !lapsed);
  const [next] = live;
  const parts = [
    next === undefined
      ? 'nothing reserved'
      : `${plural(live.length, 'reservation')}${next.until === null ? '' : `, the next lapses on ${dayText(next.until, look)}`}`,
    ...(wanted.length === 0 ? [] : [`${plural(wanted.length, 'want')}, ${servedWords(wanted)}`]),
  ];
  return parts.join('; ');
}

/** How many wants can be met out of what is ready: whole, or only in part. */
function servedWords(wanted: readonly WantedRow[]): string {
  const ready = wanted.filter(({ matches }) => matches.some((match) => match.ready));
  const whole = ready.filter(({ short, matches }) => short === 0 && matches.every((match) => match.ready)).length;
  const part = ready.length - whole;
  if (part === 0) return `${whole} to be met now`;
  return whole === 0 ? `${part} to be met now in part` : `${whole} to be met now, ${part} in part`;
}

function reservedRow(row: ReservedRow, look: Look): Row {
  const state = row.lapsed ? ['lapsed: free again'] : row.covered ? [] : ['more promised than surely there'];
  return {
    cells: [
      `${countWords(row.count)} ${row.stock}`,
      row.tank ?? '',
      row.until === null ? 'no day' : dayText(row.until, look),
      row.to ?? '',
      {
        text: [
          ...state,
          ...(row.as === null ? [] : [row.as]),
          ...(row.deposit === null ? [] : [`${row.deposit.toFixed(2)} paid`]),
        ].join('; '),
        paint: row.covered ? look.paint.quiet : look.paint.late,
      },
    ],
  };
}

function wantedRow(row: WantedRow, look: Look): Row {
  const size = row.size === null ? '' : ` at ${rangeWords(row.size)} mm`;
  const matches = row.matches.map(
    ({ stock, tank, free, takes, ready, from }) =>
      `${takes} of ${free} ${stock} in ${tank}${ready || from === null ? '' : ` from ${dayText(from, look)}`}`,
  );
  const short = row.short > 0 && matches.length > 0 ? [`${row.short} short`] : [];
  return {
    cells: [
      `${countWords(row.count)} ${row.species}${size}`,
      row.by === null ? 'no day' : dayText(row.by, look),
      row.to ?? '',
      matches.length === 0 ? noneWords(row) : [...matches, ...short].join('; '),
    ],
  };
}

function noneWords({ spokenFor }: WantedRow): string {
  return spokenFor.length === 0 ? 'none in time' : `none left: ${listWords(spokenFor)} go to earlier wants`;
}

function keptWords({ kept }: PromisesAnswer, look: Look): string {
  if (kept.length === 0) return '';
  return paragraph(
    `kept back: ${listWords(kept.map(({ stock, count }) => `${countWords(count)} ${stock}`))}`,
    look.width,
    2,
  );
}

/** Money in hand that is not earned yet. */
function depositWords({ deposits: { held, lapsed }, currency }: PromisesAnswer, look: Look): string {
  const unit = currency === null ? '' : ` ${currency}`;
  const parts = [
    ...(held > 0 ? [`deposits held: ${held.toFixed(2)}${unit}`] : []),
    ...(lapsed > 0 ? [`${lapsed.toFixed(2)}${unit} paid for what has lapsed: give back or agree anew`] : []),
  ];
  return parts.length === 0 ? '' : paragraph(parts.join('; '), look.width, 2);
}

export function promisesJson(answer: PromisesAnswer, withNames: boolean): object {
  return {
    reserved: answer.reserved.map(
      ({ id, stock, tank, count, until, to, deposit, since, lapsed, covered, as, lines }) => ({
        id,
        stock,
        tank,
        count: countJson(count),
        since: dayJson(since),
        until: dayJson(until),
        ...(withNames ? { to } : {}),
        deposit,
        lapsed,
        covered,
        as,
        lines: linesJson(lines),
      }),
    ),
    wanted: answer.wanted.map(({ id, species, count, size, by, to, matches, short, lines }) => ({
      id,
      species,
      count: countJson(count),
      size: countJson(size),
      by: dayJson(by),
      ...(withNames ? { to } : {}),
      matches: matches.map((match) => ({ ...match, from: dayJson(match.from) })),
      short,
      lines: linesJson(lines),
    })),
    kept: answer.kept.map(({ stock, count, lines }) => ({ stock, count: countJson(count), lines: linesJson(lines) })),
    deposits: answer.deposits,
    currency: answer.currency,
    over: answer.over.map(({ id, stock, sure, promised, lines }) => ({
      id,
      stock,
      sure,
      promised,
      lines: linesJson(lines),
    })),
  };
}
