/** How the pairs stand, as text and as JSON: one row a pair; by name, with every dispute and what its past teaches. */
import type { OpenDispute, PairRow, PairsAnswer } from '../questions/pairs.ts';
import type { DisputeRow } from '../questions/pairs/dispute.ts';
import { dayJson, linesJson, windowJson } from './json.ts';
import { numbersJson } from './pair-numbers.ts';
import type { Look } from './look.ts';
import type { Cell, Column, Row } from './table.ts';
import { table } from './table.ts';
import { dayText, heading, plural, rangeWords, windowText } from './words.ts';
import { paragraph } from './wrap.ts';

const OVERVIEW: readonly Column[] = [
  { head: 'pair' },
  { head: 'where' },
  { head: 'bond' },
  { head: 'now', wraps: true },
  { head: '90 days' },
  { head: 'last spawn', wraps: true },
  { head: 'next', wraps: true },
];

const DISPUTES = [
  { head: 'dispute' },
  { head: 'days', align: 'right' as const },
  { head: 'worst sign' },
  { head: 'who', wraps: true },
  { head: 'tried', wraps: true },
  { head: 'ended by' },
];

export function pairsText(answer: PairsAnswer, look: Look): string {
  const [first = '', ...more] = paragraph(`${heading(look)}: ${matters(answer, look)}`, look.width, 2).split('\n');
  const top = [look.paint.strong(first), ...more].join('\n');
  const body = answer.asked === null ? [overview(answer.pairs, look)] : answer.pairs.map((pair) => details(pair, look));
  const cautions = new Set(answer.pairs.flatMap(({ dispute }) => dispute?.advice.caution ?? []));
  const care = [...cautions].map((text) => paragraph(`take care: ${text}`, look.width, 2));
  return `${[top, ...body.map((part) => part.trimEnd()), ...care].filter((part) => part !== '').join('\n\n')}\n`;
}

/** The worst open dispute; else who is late; else that all is quiet. */
function matters({ pairs }: PairsAnswer, look: Look): string {
  if (pairs.length === 0) return 'no pair in the journal yet';
  const open = pairs.filter(({ dispute }) => dispute !== null);
  const [worst] = open;
  if (worst?.dispute) {
    const { days, worst: sign, advice } = worst.dispute;
    const silent = advice.step === 'ask' ? `, no word since ${dayText(advice.lastWord, look)}` : '';
    const others = open.length === 1 ? '' : `; ${plural(open.length - 1, 'more dispute')} open`;
    return `${worst.name}${at(worst)}, day ${String(days)} of a dispute, ${sign}${silent}${others}`;
  }
  const late = pairs.filter(({ spawning }) => (spawning.lateDays ?? 0) > 0);
  const quiet = pairs.length === 1 ? 'no dispute open' : 'no dispute open in any pair';
  return late.length === 0 ? quiet : `${quiet}; late to spawn: ${late.map(({ name }) => name).join(', ')}`;
}

function at({ tank }: PairRow): string {
  return tank === null ? '' : ` in ${tank}`;
}

function overview(pairs: readonly PairRow[], look: Look): string {
  return table(
    look,
    OVERVIEW,
    pairs.map((pair): Row => {
      const { name, tank, state, dispute, per90 } = pair;
      const disputes = per90 === 0 ? 'none' : plural(per90, 'dispute');
      const cells = [
        name,
        tank ?? '',
        state,
        nowCell(pair, look),
        disputes,
        lastWords(pair, look),
        nextCell(pair, look),
      ];
      return { cells, under: dispute === null ? [] : [advised(dispute)] };
    }),
  );
}

function advised({ advice }: OpenDispute): string {
  return `${advice.what} (${advice.how})`;
}

/** `not said; guarding Rowan-1`: the dispute is told elsewhere. */
function bondWords({ state, doing }: PairRow): string {
  const bond = state === 'not said' ? 'bond not said' : state;
  return [bond, ...calmDoings(doing)].join(', ');
}

/** `male died 3 Feb`, where fish of it are gone for good. */
function lostWords({ left }: PairRow): string[] {
  return left === null ? [] : [left.lost];
}

function calmDoings(doing: PairRow['doing']): string[] {
  return doing === null ? [] : doing.split('; ').filter((one) => one !== 'in a dispute');
}

function nowCell(pair: PairRow, look: Look): Cell {
  const { dispute, doing } = pair;
  const calm = [...calmDoings(doing), ...lostWords(pair)];
  if (dispute === null) return calm;
  const text = `dispute day ${String(dispute.days)}, ${dispute.worst}`;
  return [{ text, paint: dispute.advice.rank >= 4 ? look.paint.urgent : look.paint.late }, ...calm];
}

function lastWords({ spawning: { last } }: PairRow, look: Look): string {
  // A machine's interval is one word too long for a column: its two days part at a blank.
  return last === null ? 'none seen' : windowText(last, look).replace('/', ' to ');
}

/** `2–16 Mar`, `5 days late`; why nobody is to expect one, where the row does not say it already. */
function nextCell({ spawning, next, dispute, state }: PairRow, look: Look): Cell {
  const { lateDays, waits } = spawning;
  if (lateDays !== null && lateDays > 0) return { text: `${plural(lateDays, 'day')} late`, paint: look.paint.today };
  if (dispute !== null || waits === 'holding' || waits === state) return '';
  if (waits !== null && !waits.startsWith('guarding')) return waits;
  // While they guard young nobody waits for the next, and a day that is past says nothing.
  if (next === null || (waits !== null && next.high !== null && next.high < look.on)) return '';
  return look.machine && next.likely !== null ? dayText(next.likely, look) : windowText(next, look);
}

function details(pair: PairRow, look: Look): string {
  const { name, spawning, dispute, past } = pair;
  const told = [
    `${name}: ${whoWords(pair)}${at(pair)}, ${[bondWords(pair), ...lostWords(pair)].join('; ')}`,
    ...(dispute === null ? [] : [`now: ${advised(dispute)}`]),
    spawnWords(pair, look),
    ...(spawning.waits === null || spawning.last === null ? [] : [`not called late: ${spawning.waits}`]),
    ...(pair.numbers?.broods.says ?? []),
    pair.disputes.length === 0
      ? 'disputes: none written down'
      : `disputes: ${String(pair.disputes.length)} written down, ${String(pair.per90)} in the last 90 days${past.says === null ? '' : `; ${past.says}`}`,
    ...(pair.disputes.length === 0 ? [] : (pair.numbers?.disputes.says ?? [])),
  ];
  const rows = table(
    look,
    DISPUTES,
    pair.disputes.map((row) => disputeLine(row, look)),
  );
  return [...told.map((line) => paragraph(line, look.width, 2)), ...(rows === '' ? [] : ['', rows.trimEnd()])].join(
    '\n',
  );
}

/** `krib pair`; of one that lost its male `krib, 1 female of the pair`. */
function whoWords({ species, kind, left }: PairRow): string {
  if (left !== null) return [...(species === null ? [] : [species]), left.what].join(', ');
  return [species, kind].filter((word) => word !== null).join(' ');
}

function spawnWords({ spawning }: PairRow, look: Look): string {
  const { last, lastBrood, from, interval, lateDays } = spawning;
  if (last === null) return 'spawns: none seen';
  const usual = interval === null ? '' : `; ${rangeWords(interval.days)} days between spawns: ${interval.basis}`;
  const late = lateDays !== null && lateDays > 0 ? `; ${plural(lateDays, 'day')} late, none seen` : '';
  const says = interval === null ? null : (from?.says ?? null);
  const anew = says === null ? '' : `; ${says}, counted from then`;
  return `spawns: last ${windowText(last, look)} (${lastBrood ?? ''})${usual}${anew}${late}`;
}

function disputeLine(row: DisputeRow, look: Look): Row {
  const dates = windowText({ low: row.from, likely: null, high: row.to }, look);
  const gaps = row.gaps.map((gap) => `no word ${windowText({ low: gap.from, likely: null, high: gap.to }, look)}`);
  return {
    cells: [
      row.to === null ? `since ${dayText(row.from, look)}` : dates,
      row.to === null ? `${String(row.days)} so far` : String(row.days),
      row.worst,
      row.by ?? '',
      row.measures.map(({ measure }) => measure).join(', '),
      row.endedBy ?? 'open',
    ],
    under: [...(row.after === null ? [] : [`began ${row.after}`]), ...gaps],
  };
}

export function pairsJson({ pairs }: PairsAnswer): object {
  return { pairs: pairs.map(pairJson) };
}

function pairJson(pair: PairRow): object {
  const { id, name, kind, species, tank, state, doing, dispute, disputes, per90, past, numbers, spawning, lines } =
    pair;
  return {
    id,
    name,
    kind,
    species,
    tank,
    state,
    left: pair.left === null ? null : `${pair.left.what}, ${pair.left.lost}`,
    doing,
    dispute: dispute === null ? null : openJson(dispute),
    disputes: disputes.map(disputeJson),
    disputesPer90: per90,
    past: past.says,
    numbers: numbers === null ? null : numbersJson(numbers),
    lastSpawn: windowJson(spawning.last),
    interval: spawning.interval === null ? null : intervalJson(spawning.interval),
    next: windowJson(pair.next),
    lateDays: spawning.lateDays,
    waits: spawning.waits,
    lines: linesJson(lines),
  };
}

function intervalJson({ days, basis }: NonNullable<PairRow['spawning']['interval']>): object {
  return { low: days.low, likely: days.likely, high: days.high, basis };
}

function openJson(dispute: OpenDispute): object {
  const { advice } = dispute;
  return {
    ...disputeJson(dispute),
    advice: advice.what,
    step: advice.step,
    how: advice.how,
    caution: advice.caution,
  };
}

function disputeJson(row: DisputeRow): object {
  return {
    id: row.id,
    from: dayJson(row.from),
    to: dayJson(row.to),
    days: row.days,
    worst: row.worst,
    rank: row.rank,
    by: row.by,
    measures: row.measures.map(({ measure }) => measure),
    endedBy: row.endedBy,
    after: row.after,
    gaps: row.gaps.map((gap) => ({ from: dayJson(gap.from), to: dayJson(gap.to) })),
    lines: linesJson(row.lines),
  };
}
