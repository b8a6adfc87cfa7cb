/** How the broods stand, as text and as JSON: one row a brood; by name, with what each figure rests on. */
import type { DayWindow, Interval } from '../core/interval.ts';
import type { BroodRow, BroodsAnswer } from '../questions/broods.ts';
import type { BroodWarning } from '../questions/danger.ts';
import { survivalJson, survivalLines } from './survival.ts';
import type { Milestone } from '../questions/stages.ts';
import { countJson, dayJson, linesJson, spreadJson, windowJson } from './json.ts';
import type { Look } from './look.ts';
import type { Cell, Row, Words } from './table.ts';
import { table } from './table.ts';
import {
  ageWords,
  countWords,
  datesText,
  dayText,
  heading,
  listWords,
  plural,
  rangeWords,
  windowText,
} from './words.ts';
import { paragraph } from './wrap.ts';

const COLUMNS = [
  { head: 'brood', wraps: true },
  { head: 'where', wraps: true },
  { head: 'age' },
  { head: 'stage' },
  { head: 'mm', align: 'right' as const },
  { head: 'next', wraps: true },
  { head: 'for sale', wraps: true },
];

export function broodsText(answer: BroodsAnswer, look: Look): string {
  const [first = '', ...more] = paragraph(`${heading(look)}: ${matters(answer, look)}`, look.width, 2).split('\n');
  const top = [look.paint.strong(first), ...more].join('\n');
  const rows = answer.broods.map((brood) => row(brood, look));
  const single = answer.broods.length === 1 && answer.asked !== null ? answer.broods : [];
  const blocks = [top, table(look, COLUMNS, rows).trimEnd(), ...single.map((brood) => details(brood, look))];
  return `${blocks.filter((block) => block !== '').join('\n\n')}\n`;
}

/** The worst danger; else what comes next; else how many there are. */
function matters({ broods }: BroodsAnswer, look: Look): string {
  if (broods.length === 0) return 'no brood in the journal yet';
  const harm = broods.flatMap(({ warnings }) => warnings);
  const worst = harm.find(({ weight }) => weight === 'danger') ?? harm[0];
  if (worst) return worst.text;
  const comes = broods
    .flatMap((brood) =>
      brood.next === null || brood.next.what === 'sale' || brood.stage === 'suspected'
        ? []
        : [{ brood, next: brood.next }],
    )
    .toSorted((a, b) => (a.next.window.low ?? 0) - (b.next.window.low ?? 0));
  const told = plural(broods.length, 'brood');
  const [soon] = comes;
  if (soon) return `${told}; ${soon.brood.name} next, ${milestone(soon.next, look)}`;
  const ready = broods.filter(({ isReady }) => isReady).map(({ name }) => name);
  if (ready.length > 0) return `${told}; for sale: ${listWords(ready)}`;
  const [sale] = broods
    .filter(({ ready: sold }) => sold !== null && sold.window.low !== null)
    .toSorted((a, b) => (a.ready?.window.low ?? 0) - (b.ready?.window.low ?? 0));
  return sale?.ready ? `${told}; ${sale.name} for sale ${windowText(sale.ready.window, look)}` : told;
}

function row(brood: BroodRow, look: Look): Row {
  const { name, tanks, age, size } = brood;
  const suspected = brood.stage === 'suspected';
  const where = tanks.map(({ tank, count }) => `${tank} ${countWords(count)}`);
  return {
    cells: [
      suspected ? `${brood.group ?? name}?` : name,
      suspected ? tanks.map(({ tank }) => tank) : where.length === 0 ? 'none left' : where,
      ageWords(age),
      brood.stage === 'free-swimming' ? 'swimming' : brood.stage,
      size === null ? '' : rangeWords(size),
      nextCell(brood, look),
      saleCell(brood, look),
    ],
    // Told once, with the young that are in danger.
    under: [
      ...sortedLine(brood),
      ...brood.warnings.filter(({ younger }) => younger.name === name).map((one) => warning(one, look)),
    ],
  };
}

/** The length of the whole brood is none of its parts' own once it was sorted. */
function sortedLine({ tanks }: BroodRow): string[] {
  const parts = tanks.flatMap(({ tank, sorted }) =>
    sorted === null ? [] : [`${tank} ${rangeWords(sorted.size)} mm (${sorted.words})`],
  );
  return parts.length === 0 ? [] : [`mm of all of them; since sorted: ${listWords(parts)}`];
}

function nextCell({ next, noWordSince }: BroodRow, look: Look): Cell {
  if (noWordSince !== null) return { text: `no word since ${dayText(noWordSince, look)}`, paint: look.paint.late };
  return next === null || next.what === 'sale' ? '' : milestone(next, look);
}

function warning({ weight, text }: BroodWarning, look: Look): Words {
  const word = weight === 'danger' ? 'danger' : 'watch';
  return { text: `${word}: ${text}`, paint: weight === 'danger' ? look.paint.urgent : look.paint.late };
}

/** `hatches 4–7 Feb`, `first move 5–24 Mar`, `should have hatched by 7 Feb`. */
function milestone({ what, window }: Milestone, look: Look): string {
  const words = { hatch: 'hatches', swim: 'swims', release: 'released', 'first move': 'first move', sale: 'for sale' };
  const past = { hatch: 'hatched', swim: 'swum', release: 'been released', 'first move': 'moved', sale: 'sold' };
  if (window.high !== null && window.high < look.on)
    return `should have ${past[what]} by ${dayText(window.high, look)}`;
  return `${words[what]} ${inColumn(window, look)}`;
}

/** A window in a column: for a machine the likely day alone, since two ISO dates are too wide; JSON has all. */
function inColumn(window: DayWindow, look: Look): string {
  const day = window.likely ?? window.low;
  return look.machine && day !== null ? dayText(day, look) : windowText(window, look);
}

function saleCell({ ready, isReady, stage }: BroodRow, look: Look): Cell {
  if (ready === null || stage === 'gone' || stage === 'suspected') return '';
  if (isReady) {
    const share = Math.round((ready.share.likely ?? ready.share.low) * 100);
    return { text: ready.share.low >= 1 ? 'now, all' : `now, ${String(share)} %`, paint: look.paint.today };
  }
  return inColumn(ready.window, look);
}

function details(brood: BroodRow, look: Look): string {
  const { group, mothers, species, spawned, hatched, swam, released, total, ready, rate, mostLikely } = brood;
  const born = hatched === null && swam !== null && sameWindow(spawned, swam) ? 'born' : 'laid';
  const dates = [
    `${born} ${datesText(spawned, mostLikely.laid, look)}`,
    ...(hatched === null ? [] : [`hatched ${datesText(hatched, mostLikely.hatched, look)}`]),
    ...(swam === null || born === 'born' ? [] : [`swam ${datesText(swam, mostLikely.swam, look)}`]),
    ...(released === null ? [] : [`released ${datesText(released, mostLikely.released, look)}`]),
  ];
  const of = [
    species,
    group === null ? null : `of ${group}`,
    mothers.length === 0 ? null : `mother ${mothers.join(' or ')}`,
  ];
  const lines = [
    [...of.filter((word) => word !== null), ...dates].join(', '),
    `all together ${countWords(total)}${likelyWords(brood)}`,
    ...(brood.survival === null ? [] : survivalLines(brood.survival, look)),
    ...(rate === null || brood.size === null ? [] : [`grows ${rangeWords(rate, 1)} mm a week`]),
    ...(ready === null
      ? []
      : [
          `for sale at ${ready.rule}: the first ${windowText(ready.first, look)}, half ${windowText(ready.half, look)}, all ${windowText(ready.all, look)}`,
        ]),
    `more: tankside why ${brood.name} ${ready === null ? 'count' : 'ready'}`,
  ];
  return lines.map((line) => paragraph(line, look.width, 2)).join('\n');
}

/** Told where it says more than the number itself. */
function likelyWords({ likely, total }: BroodRow): string {
  if (likely === null || (likely.low === total.low && likely.high === total.high)) return '';
  return `; likely there ${likely.low === likely.high ? String(likely.low) : `${String(likely.low)}–${String(likely.high)}`} (four times of five)`;
}

function sameWindow(a: DayWindow, b: DayWindow): boolean {
  return a.low === b.low && a.high === b.high;
}

export function broodsJson({ broods }: BroodsAnswer): object {
  return { broods: broods.map(broodJson) };
}

function broodJson(brood: BroodRow): object {
  const { id, name, group, mothers, species, tanks, stage, next, ready, rate, isReady } = brood;
  return {
    id,
    name,
    group,
    mothers,
    species,
    tanks: tanks.map(({ tank, count, likely, sorted }) => ({
      tank,
      count: countJson(count),
      likelyCount: countJson(likely),
      ...(sorted === null ? {} : { size: countJson(sorted.size), sorted: sorted.words }),
    })),
    total: countJson(brood.total),
    likelyTotal: countJson(brood.likely),
    survival: brood.survival === null ? null : survivalJson(brood.survival),
    spawned: windowJson(brood.spawned),
    hatched: windowJson(brood.hatched),
    swam: windowJson(brood.swam),
    released: windowJson(brood.released),
    mostLikely: {
      spawned: windowJson(brood.mostLikely.laid),
      hatched: windowJson(brood.mostLikely.hatched),
      swam: windowJson(brood.mostLikely.swam),
      released: windowJson(brood.mostLikely.released),
    },
    ageDays: countJson(brood.age),
    stage,
    size: countJson(brood.size && tenths(brood.size)),
    growth: countJson(rate && tenths(rate)),
    next:
      next === null
        ? null
        : { what: next.what, window: windowJson(next.window), mostLikely: windowJson(next.mostLikely) },
    noWordSince: dayJson(brood.noWordSince),
    ready: ready === null ? null : spreadJson(ready.window),
    readyFirst: windowJson(ready?.first ?? null),
    readyHalf: windowJson(ready?.half ?? null),
    readyAll: windowJson(ready?.all ?? null),
    readyShare: ready === null ? null : countJson(hundredths(ready.share)),
    growthFrom: brood.basis,
    readyNow: isReady,
    warnings: brood.warnings.map((one) => ({
      id: one.id,
      weight: one.weight,
      text: one.text,
      lines: linesJson(one.lines),
    })),
    lines: linesJson(brood.lines),
  };
}

/** A share in whole hundredths, outward. */
function hundredths({ low, likely, high }: Interval): Interval {
  const middle = likely === null ? null : Math.round(likely * 100) / 100;
  return { low: Math.floor(low * 100) / 100, likely: middle, high: Math.ceil(high * 100) / 100 };
}

/** Rounded outward to tenths: nobody measures a fish more closely. */
function tenths(value: { low: number; likely: number | null; high: number }): {
  low: number;
  likely: number | null;
  high: number;
} {
  const likely = value.likely === null ? null : Math.round(value.likely * 10) / 10;
  return { low: Math.floor(value.low * 10) / 10, likely, high: Math.ceil(value.high * 10) / 10 };
}
