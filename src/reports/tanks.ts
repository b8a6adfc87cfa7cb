/** The tanks as text and as JSON. */
import type { TankRow, TanksAnswer } from '../questions/tanks.ts';
import { countJson, dayJson, linesJson, windowJson } from './json.ts';
import type { Look } from './look.ts';
import { table, type Row } from './table.ts';
import { figureWords } from '../core/words.ts';
import { countWords, dayText, heading, listWords, plural, rangeWords, windowText } from './words.ts';
import { paragraph } from './wrap.ts';

const COLUMNS = [
  { head: 'tank' },
  { head: 'water', wraps: true },
  { head: 'who', wraps: true },
  { head: 'rigged, broken', wraps: true },
];
const FREE_COLUMNS = [{ head: 'tank' }, { head: 'free' }, { head: 'litres' }, { head: 'because', wraps: true }];

export function tanksText(answer: TanksAnswer, look: Look): string {
  const first = paragraph(`${heading(look)}: ${matters(answer, look)}`, look.width, 2);
  const body = answer.free
    ? table(
        look,
        FREE_COLUMNS,
        answer.rows.map((row) => freeRow(row, look)),
      )
    : table(
        look,
        COLUMNS,
        answer.rows.map((row) => tankRow(row, look)),
      );
  return body === '' ? `${first}\n` : `${first}\n\n${body}`;
}

function matters({ rows, free }: TanksAnswer, look: Look): string {
  const now = rows.filter((row) => isFreeNow(row, look) && row.fish.length === 0);
  if (free) {
    const kept = now.filter(({ keptForQuarantine }) => keptForQuarantine);
    const own = now.filter(({ keptForQuarantine }) => !keptForQuarantine);
    const spare =
      kept.length === 0 ? '' : `; empty, but kept for quarantine: ${listWords(kept.map(({ name }) => name))}`;
    if (own.length > 0) return `free now: ${listWords(own.map(({ name }) => name))}${spare}`;
    const next = rows.find(({ keptForQuarantine }) => !keptForQuarantine);
    const soon = next?.free ?? null;
    return next === undefined || soon === null
      ? `no tank is free or coming free${spare}`
      : `none free; next ${next.name}, ${windowText(soon, look)}${spare}`;
  }
  if (rows.length === 0) return 'no tank is set up';
  const rigged = rows.filter(({ rigs, faults }) => rigs.length + faults.length > 0);
  const off = rows.filter(({ loop, onLoop }) => loop !== null && !onLoop);
  const retired = rows.filter((row) => row.retired !== null).map(({ name }) => name);
  return [
    plural(rows.length - retired.length, 'tank'),
    ...(retired.length === 0 ? [] : [`retired with fish on record: ${listWords(retired)}`]),
    ...(rigged.length === 0 ? [] : [`${rigged.length} with something rigged or broken`]),
    ...(off.length === 0 ? [] : [`off the loop: ${listWords(off.map(({ name }) => name))}`]),
  ].join('; ');
}

function isFreeNow({ free }: TankRow, look: Look): boolean {
  return free !== null && free.high !== null && free.high <= look.on;
}

function freeRow(row: TankRow, look: Look): Row {
  const when = row.free === null ? 'not known' : windowText(row.free, look);
  const now = row.fish.length > 0 ? 'once sold' : row.keptForQuarantine ? 'quarantine' : 'now';
  return { cells: [row.name, isFreeNow(row, look) ? now : when, litres(row), row.freeWhy] };
}

function litres({ litres: held }: TankRow): string {
  return held === null ? 'not known' : `${rangeWords(held)} L`;
}

function tankRow(row: TankRow, look: Look): Row {
  const warm = row.temperature === null ? '' : `, ${figureWords(row.temperature.value, 1)} C`;
  const fish = row.fish.map(({ name, count }) => `${name} ${countWords(count)}`);
  const rigged = [
    ...row.rigs.map(({ kind, since }) => `${kind} since ${dayText(since, look)}`),
    ...row.faults.map(({ text, since }) => `${text} since ${dayText(since, look)}`),
  ];
  const marks = [
    ...(row.retired === null ? [] : [`retired ${dayText(row.retired.since, look)}`]),
    ...(row.quarantine ? ['quarantine'] : []),
    ...(row.heldUntil === null ? [] : [`held until ${dayText(row.heldUntil, look)}`]),
  ];
  return {
    cells: [
      row.name,
      `${waterWords(row)}, ${litres(row)}${warm}`,
      [...(fish.length === 0 ? ['no fish on record'] : fish), ...marks].join('; '),
      { text: rigged.join('; '), paint: look.paint.today },
    ],
    under: row.retired === null ? [] : [`where did they go? jot ${row.retired.jot}`],
  };
}

function waterWords({ loop, onLoop, filter }: TankRow): string {
  if (loop === null) return filter === null ? 'alone' : `alone, ${filter}`;
  return onLoop ? loop : `off ${loop}`;
}

export function tanksJson(answer: TanksAnswer): object {
  return {
    tanks: answer.rows.map((row) => ({
      id: row.id,
      name: row.name,
      loop: row.loop,
      onLoop: row.onLoop,
      litres: countJson(row.litres),
      litresFrom: row.basis,
      filter: row.filter,
      quarantine: row.quarantine,
      keptForQuarantine: row.keptForQuarantine,
      temperature: row.temperature === null ? null : countJson(row.temperature.value),
      fish: row.fish.map(({ name, count }) => ({ name, count: countJson(count) })),
      rigs: row.rigs.map(({ kind, since }) => ({ kind, since: dayJson(since) })),
      faults: row.faults.map(({ text, since }) => ({ text, since: dayJson(since) })),
      free: windowJson(row.free),
      freeWhy: row.freeWhy,
      heldUntil: dayJson(row.heldUntil),
      retired: dayJson(row.retired?.since ?? null),
      lines: linesJson(row.lines),
    })),
  };
}
