/** The water as text and as JSON: one row a water in the room, or one water with everything about it. */
import { isSure, times } from '../core/interval.ts';
import type { WaterRow } from '../questions/water.ts';
import { countJson, dayJson, linesJson } from './json.ts';
import type { Look } from './look.ts';
import { table, type Row } from './table.ts';
import { figureWords } from '../core/words.ts';
import { dayText, heading, listWords, plural, rangeWords } from './words.ts';
import { paragraph } from './wrap.ts';

const COLUMNS = [
  { head: 'water' },
  { head: 'last readings', wraps: true },
  { head: 'toxic ammonia', wraps: true },
  { head: 'last change', wraps: true },
];
/** Nitrogen of the marks and of toxic ammonia is always told as N. */
const TOXIC_DECIMALS = 3;

export function waterText(rows: readonly WaterRow[], look: Look): string {
  const [only] = rows;
  const first = paragraph(`${heading(look)}: ${matters(rows)}`, look.width, 2);
  if (only !== undefined && rows.length === 1) {
    const unsaid = unsaidWords(rows, look);
    return `${first}\n\n${detail(only, look)}${unsaid === '' ? '' : `\n${unsaid}\n`}`;
  }
  const tested = rows.filter((row) => row.readings.length > 0 || row.watch !== null || row.reach !== null);
  const others = rows.filter((row) => !tested.includes(row)).map(({ name }) => name);
  const body = table(
    look,
    COLUMNS,
    tested.map((row) => overview(row, look)),
  );
  const rest =
    others.length === 0 || tested.length === 0
      ? ''
      : paragraph(`no reading on record: ${listWords(others)}`, look.width, 2);
  return `${[first, body.trimEnd(), rest, unsaidWords(rows, look)].filter((part) => part !== '').join('\n\n')}\n`;
}

/** NO3 40 as N is more than four times NO3 40 as the ion: told wherever a guess of ours stands in the figures. */
function unsaidWords(rows: readonly WaterRow[], look: Look): string {
  if (!rows.some(({ unsaid }) => unsaid)) return '';
  const says = 'no line says how your kit counts nitrogen: counted as N, the harsher way, unless a test says otherwise';
  return paragraph(`${says}; write it once: room: nitrogen as N, or: room: nitrogen as ion`, look.width, 2);
}

/** The worst water, or that none was tested. */
function matters(rows: readonly WaterRow[]): string {
  if (rows.length === 0) return 'no loop or tank is set up';
  const worst = [...rows]
    .filter(({ ammonia }) => ammonia !== null && ammonia.verdict !== 'under the mark of 0.02')
    .sort(
      (a, b) =>
        (b.ammonia?.toxic.likely ?? b.ammonia?.toxic.high ?? 0) -
        (a.ammonia?.toxic.likely ?? a.ammonia?.toxic.high ?? 0),
    )[0];
  if (worst !== undefined && worst.ammonia !== null) {
    return `${worst.name}: toxic ammonia ${figureWords(worst.ammonia.toxic, TOXIC_DECIMALS)} mg/L as N, ${worst.ammonia.verdict}`;
  }
  const [only] = rows;
  if (only !== undefined && rows.length === 1) return `${only.name}: toxic ammonia ${ammoniaWords(only)}`;
  const watched = rows.filter(({ watch }) => watch !== null);
  if (watched.length > 0) return `water watch on ${listWords(watched.map(({ name }) => name))}`;
  const untested = rows.filter(({ readings }) => readings.length === 0);
  return untested.length === rows.length ? 'no reading on record' : plural(rows.length, 'water');
}

function overview(row: WaterRow, look: Look): Row {
  const change = row.changes.at(-1);
  return {
    cells: [
      row.name,
      readingsByDay(row, look).join('; '),
      ammoniaWords(row),
      change === undefined ? 'none in 4 weeks' : `${changeWords(change, row)} on ${dayText(change.on, look)}`,
    ],
    under: [
      ...row.trends.filter(({ words }) => !words.includes('steady')).map(({ words }) => words),
      ...row.load.says,
      ...(change === undefined || change.missed.length === 0 ? [] : [`the last change${missedWords(change)}`]),
      ...(row.watch === null ? [] : [watchWords(row, look)]),
      ...reachLines(row),
    ],
  };
}

/** `10 Feb: 25.5 C, pH 7.4`: what was read together stands together, newest first. */
function readingsByDay(row: WaterRow, look: Look): string[] {
  if (row.readings.length === 0) return ['no reading on record'];
  const days = new Map<string, string[]>();
  for (const { on, where, words } of [...row.readings].sort((a, b) => b.on - a.on)) {
    const head = `${dayText(on, look)}${where === row.name ? '' : ` in ${where}`}`;
    days.set(head, [...(days.get(head) ?? []), words]);
  }
  return [...days].map(([head, words]) => `${head}: ${words.join(', ')}`);
}

function detail(row: WaterRow, look: Look): string {
  const held = row.litres === null ? 'litres not known' : `${rangeWords(row.litres)} L of live water`;
  const who = row.kind === 'loop' ? `; on it: ${row.tanks.length === 0 ? 'none' : listWords([...row.tanks])}` : '';
  const facts = [
    `${row.name}: ${held}${who}`,
    ...readingsByDay(row, look),
    `toxic ammonia: ${ammoniaWords(row)}`,
    ...row.trends.map(({ words }) => words),
    ...row.load.says,
    ...row.changes.map(
      (change) => `${dayText(change.on, look)} changed ${changeWords(change, row)}${missedWords(change)}`,
    ),
    ...row.doses.map(
      ({ on, product, dose, where, treated, ...one }) =>
        `${dayText(on, look)} ${treated ? 'treated' : 'dosed'} ${doseWords(dose)}${product}${where === row.name ? '' : ` in ${where}`}${addedWords(one, look)}`,
    ),
    ...(row.watch === null ? [] : [watchWords(row, look)]),
    ...reachLines(row),
  ];
  return `${facts.map((line) => paragraph(line, look.width, 2)).join('\n')}\n`;
}

function ammoniaWords({ ammonia }: WaterRow): string {
  if (ammonia === null) return 'not known: TAN not tested';
  const without = ammonia.missing.length === 0 ? '' : ` (${listWords([...ammonia.missing])} not known)`;
  return `${figureWords(ammonia.toxic, TOXIC_DECIMALS)} mg/L as N, ${ammonia.verdict}${without}`;
}

function missedWords({ missed }: WaterRow['changes'][number]): string {
  return missed.length === 0 ? '' : `, missed by ${listWords([...missed])} off the loop`;
}

/** `30 %`, `40 L (7 %)`; of one tank of a loop, or of a tray, what it was of the whole: `50 % of A1 (12 % of Long)`. */
function changeWords({ amount, share, where }: WaterRow['changes'][number], { name }: WaterRow): string {
  const part = share === null ? null : `${Math.round(share * 100)} %`;
  const inParts = amount.unit === 'share';
  const much = inParts ? `${rangeWords(times(amount, 100))} %` : `${rangeWords(amount)} L`;
  if (where === name || where === 'room') return inParts || part === null ? much : `${much} (${part})`;
  return `${much} ${inParts ? 'of' : 'in'} ${where}${part === null ? '' : ` (${part} of ${name})`}`;
}

function doseWords(dose: WaterRow['doses'][number]['dose']): string {
  if (dose === null) return '';
  if (dose.unit === 'own') return `${dose.count} ${dose.name} `;
  return `${isSure(dose) ? dose.low : `${dose.low}–${dose.high}`} ${dose.unit} `;
}

function addedWords(
  { added, left, backOn }: Pick<WaterRow['doses'][number], 'added' | 'left' | 'backOn'>,
  look: Look,
): string {
  const most = left === null ? null : `; at most ${String(Math.ceil(left * 100))} %`;
  if (backOn !== null) {
    const spread = most === null ? '; litres not known' : `${most} as strong in all the loop's water`;
    return ` off the loop, back on it ${dayText(backOn, look)}${spread}`;
  }
  const raised = added === null ? '' : `: ${added.of.toUpperCase()} up by ${figureWords(added.degrees, 1)} dH`;
  return `${raised}${most === null ? '' : `${most} of it left by the changes since`}`;
}

function watchWords({ watch }: WaterRow, look: Look): string {
  if (watch === null) return '';
  return `water watch since ${dayText(watch.since, look)}: ${watch.zeros} of 3 double zeros, not over before ${dayText(watch.earliest, look)}`;
}

function reachLines({ reach }: WaterRow): string[] {
  return reach === null ? [] : [reach.says, ...reach.cautions.map((text) => `take care: ${text}`)];
}

export function waterJson(rows: readonly WaterRow[]): object {
  return {
    waters: rows.map((row) => ({
      id: row.id,
      name: row.name,
      kind: row.kind,
      tanks: row.tanks,
      litres: countJson(row.litres),
      readings: row.readings.map(({ of, value, words, on, where }) => {
        return { of, value: countJson(value), words, on: dayJson(on), where };
      }),
      ammonia: row.ammonia && { ...row.ammonia, toxic: countJson(row.ammonia.toxic) },
      trends: row.trends,
      load: loadJson(row.load),
      changes: row.changes.map(({ on, where, amount, share, missed }) => {
        return { on: dayJson(on), where, unit: amount.unit, amount: countJson(amount), share, missed };
      }),
      doses: row.doses.map(doseJson),
      watch: row.watch && {
        since: dayJson(row.watch.since),
        zeros: row.watch.zeros,
        earliest: dayJson(row.watch.earliest),
      },
      reach: row.reach && reachJson(row.reach),
      lines: linesJson(row.lines),
    })),
  };
}

function loadJson({ grams, ammonia, carried, khEaten, khFell }: WaterRow['load']): object {
  return {
    gramsADay: grams,
    ammoniaADay: ammonia,
    carried: carried && { gramsADay: carried.grams, on: dayJson(carried.on) },
    khEatenAWeek: khEaten,
    khFellAWeek: khFell,
  };
}

function doseJson({ on, where, product, dose, added, treated, left, backOn }: WaterRow['doses'][number]): object {
  return {
    treated,
    left,
    backOn: dayJson(backOn),
    added: added && { of: added.of, degrees: countJson(added.degrees) },
    on: dayJson(on),
    where,
    product,
    dose: doseWords(dose).trim(),
  };
}

function reachJson({ of, says, change, dose, cautions }: NonNullable<WaterRow['reach']>): object {
  return {
    of,
    says,
    change: change && { ...change, litres: countJson(change.litres) },
    dose: dose.map((one) => ({ of: one.of, grams: countJson(one.grams), days: one.days })),
    cautions,
  };
}
