/** The loops as text and as JSON: level and spill first, since that is what a keeper opens it for. */
import type { LoopRow } from '../questions/loops.ts';
import type { DayWindow } from '../core/interval.ts';
import { countJson, dayJson, linesJson, windowJson } from './json.ts';
import type { Look } from './look.ts';
import { table, type Row } from './table.ts';
import { dayText, heading, listWords, plural, rangeWords, windowText } from './words.ts';
import { paragraph } from './wrap.ts';

const COLUMNS = [
  { head: 'loop' },
  { head: 'level' },
  { head: 'spills', wraps: true },
  { head: 'last clean', wraps: true },
  { head: 'next full clean', wraps: true },
];

export function loopsText(rows: readonly LoopRow[], look: Look): string {
  const first = paragraph(`${heading(look)}: ${matters(rows, look)}`, look.width, 2);
  const body = table(
    look,
    COLUMNS,
    rows.map((row) => drawn(row, look)),
  );
  return body === '' ? `${first}\n` : `${first}\n\n${body}`;
}

/** The loop that spills first, or what else is wrong. */
function matters(rows: readonly LoopRow[], look: Look): string {
  if (rows.length === 0) return 'no loop is set up';
  const noted = rows.find(({ notes }) => notes.length > 0);
  if (noted !== undefined) return `${noted.name}: ${noted.notes.join('; ')}`;
  const [next] = rows
    .flatMap(({ name, ...row }) => {
      const clean = cleanOf(row);
      return clean === null ? [] : [{ name, clean }];
    })
    .toSorted((a, b) => (a.clean.likely ?? 0) - (b.clean.likely ?? 0));
  if (next === undefined) return 'no full clean is due by chore or level';
  return `${next.name}, full clean ${isOver(next.clean, look) ? 'was due' : 'due'} ${daysText(next.clean, look)}`;
}

/** The clean as today's list asks for it: by its chore, else by levels or by the days since the last one. */
function cleanOf({ nextClean, asked }: Pick<LoopRow, 'nextClean' | 'asked'>): DayWindow | null {
  return asked === null || (nextClean?.low ?? Infinity) < (asked.low ?? Infinity) ? nextClean : asked;
}

function isOver({ likely, high }: DayWindow, { on }: Look): boolean {
  return (high ?? likely ?? on) < on;
}

/** A machine's interval is one word too long for a column: its two days part at a blank. */
function daysText(days: DayWindow, look: Look): string {
  return windowText(days, look).replace('/', ' to ');
}

function drawn(row: LoopRow, look: Look): Row {
  const clean = cleanOf(row);
  const late = clean !== null && isOver(clean, look);
  return {
    cells: [
      row.name,
      levelText(row, look),
      spills(row, look),
      cleanedWords(row, look),
      {
        text: clean === null ? 'not set' : `${late ? 'late, ' : ''}${daysText(clean, look)}`,
        paint: late ? look.paint.late : look.paint.today,
      },
    ],
    under: [
      `on it: ${row.tanks.length === 0 ? 'none' : listWords([...row.tanks])}${litres(row)}`,
      ...row.off.map(
        ({ tank, since }) =>
          `off it: ${tank} since ${dayText(since, look)}, gets no change, heat or dose of ${row.name}`,
      ),
      ...outlookLine(row, look),
      ...(row.drain === null ? [] : [row.drain.says]),
      ...row.notes.map((text) => ({ text, paint: look.paint.late })),
    ],
  };
}

/** Eight in ten, and from what; what is usual stands beside what the room has taught. */
function outlookLine({ spill: straight, outlook, early, bought, asked, betterBy }: LoopRow, look: Look): string[] {
  if (outlook === null) return [];
  const { spill, basis, own, usual, cycles } = outlook;
  const isAbove = straight !== null && !early && isPast(straight, outlook);
  const from = { levels: 'by its levels', 'own cleans': 'by earlier cleans', usual: 'as is usual' }[basis];
  const clean =
    asked !== null
      ? `: clean ${daysText(asked, look)}`
      : betterBy === null
        ? ''
        : `: better clean ${betterBy < look.on ? 'now' : `by ${dayText(betterBy, look)}`}`;
  const life =
    own === null
      ? `usual from clean to lip: ${rangeWords(usual)} days`
      : `clean to lip here ${rangeWords(own)} days (${plural(cycles, 'clean')}), usual ${rangeWords(usual)}`;
  return [
    isAbove
      ? `${from}; at this pace ${daysText(straight, look)}, but clogging quickens${clean === '' ? ': go by the days above' : clean}`
      : `8 in 10 spill ${daysText(spill, look)} ${from}${early ? '' : goBy(straight, spill)}${clean}`,
    life,
    ...(bought === null ? [] : [`the last clean ${bought.words}`]),
  ];
}

/** Of two windows that part the keeper goes by the earlier: water on the floor is the worse mistake. */
function goBy(straight: DayWindow | null, odds: DayWindow): string {
  const [line, ten] = [straight?.low ?? null, odds.low];
  if (line === null || ten === null || line === ten) return '';
  return line < ten ? '; go by the earlier days above' : '; go by these, the earlier';
}

function litres({ litres: held }: LoopRow): string {
  return held === null ? '' : `; about ${rangeWords(held)} L with the sump`;
}

/** `54 of 80 mm, 10 Feb`: what stands in the chamber, and where it spills. */
function levelText({ level, spillsAt }: LoopRow, look: Look): string {
  if (level === null) return 'not read';
  const of = spillsAt === null ? '' : ` of ${rangeWords(spillsAt)}`;
  return `${rangeWords(level.mm)}${of} mm, ${dayText(level.on, look)}`;
}

/** Lines that run on past the wider window tell what comes if nothing quickens: then that window stands here, as in `due`. */
function spills({ spill, whyNoSpill, early, outlook }: LoopRow, look: Look): string {
  if (spill === null) return whyNoSpill ?? 'no forecast';
  if (early) return `early guess: ${daysText(spill, look)}`;
  return outlook !== null && isPast(spill, outlook)
    ? `${daysText(outlook.spill, look)}, 8 times in 10`
    : `about ${daysText(spill, look)}`;
}

function isPast(straight: DayWindow, { spill }: Pick<NonNullable<LoopRow['outlook']>, 'spill'>): boolean {
  return (straight.low ?? 0) > (spill.high ?? Infinity);
}

function cleanedWords({ cleaned, lastFull, easedUntil }: LoopRow, look: Look): string {
  if (cleaned === null) return 'none on record';
  const share = cleaned.of === null ? 'all' : `${cleaned.layers} of ${cleaned.of}`;
  const last = `${share} on ${dayText(cleaned.on, look)}`;
  if (lastFull !== null && lastFull.on === cleaned.on && lastFull.layers === cleaned.layers) return last;
  const full = lastFull === null ? 'no full one on record' : `in full ${dayText(lastFull.on, look)}`;
  return `${last}${easedUntil === null ? '' : `, buys till ${dayText(easedUntil, look)}`}; ${full}`;
}

export function loopsJson(rows: readonly LoopRow[]): object {
  return {
    loops: rows.map((row) => ({
      id: row.id,
      name: row.name,
      tanks: row.tanks,
      off: row.off.map(({ tank, since }) => ({ tank, since: dayJson(since) })),
      litres: countJson(row.litres),
      level: row.level === null ? null : countJson(row.level.mm),
      levelOn: row.level === null ? null : dayJson(row.level.on),
      spillsAt: countJson(row.spillsAt),
      spill: windowJson(row.spill),
      ...(row.whyNoSpill === null ? {} : { whyNoSpill: row.whyNoSpill }),
      early: row.early,
      outlook:
        row.outlook === null
          ? null
          : {
              spill: windowJson(row.outlook.spill),
              cleanBy: windowJson(row.outlook.cleanBy),
              basis: row.outlook.basis,
              ownDays: countJson(row.outlook.own),
              usualDays: countJson(row.outlook.usual),
              cleans: row.outlook.cycles,
            },
      drain:
        row.drain === null
          ? null
          : { litres: countJson(row.drain.litres), spare: countJson(row.drain.spare), verdict: row.drain.verdict },
      bought: row.bought === null ? null : { days: countJson(row.bought.days), share: row.bought.share },
      cleaned: cleanedJson(row.cleaned),
      cleanedInFull: cleanedJson(row.lastFull),
      easedUntil: dayJson(row.easedUntil),
      nextClean: windowJson(row.nextClean),
      asked: windowJson(row.asked),
      betterBy: dayJson(row.betterBy),
      notes: row.notes,
      lines: linesJson(row.lines),
    })),
  };
}

function cleanedJson(cleaned: LoopRow['cleaned']): object | null {
  return cleaned === null ? null : { on: dayJson(cleaned.on), layers: cleaned.layers, of: cleaned.of };
}
