/** How every brood stands: age, stage, where how many are, how long they are, what comes next, when they can be sold. */
import type { Because } from '../core/because.ts';
import type { Day } from '../core/day.ts';
import { addDays } from '../core/day.ts';
import type { DayWindow, Interval } from '../core/interval.ts';
import type { Measure } from '../core/quantity.ts';
import type { LineRef } from '../core/span.ts';
import { linesOf } from '../core/span.ts';
import { ageWords, countWords, dayWords, likelyWindowWords, plural, rangeWords, shareWords } from '../core/words.ts';
import { aliveTotal, partIn, tanksOf } from '../state/bodies.ts';
import type { SeenBrood } from '../state/bodies.ts';
import type { Room } from '../state/draft.ts';
import { clockOf } from '../state/stageclock.ts';
import { withoutWord } from '../state/withoutword.ts';
import { likelyCounts } from './counts.ts';
import { dangers } from './danger.ts';
import type { BroodWarning, Danger } from './danger.ts';
import { growthOf, sizeOn } from './growing.ts';
import { sortedIn } from './growing/sorted.ts';
import type { Growth } from './growing.ts';
import { fittedSteps } from './growing/fitted.ts';
import { rowId } from './id.ts';
import { ageOf, datesOf, laidDay } from './laying.ts';
import type { BroodDates } from './laying.ts';
import { expected, nextOf, stageOf } from './stages.ts';
import type { Milestone, StageName } from './stages.ts';
import { survivalOf } from './survival.ts';
import type { Survival } from './survival.ts';
import { saleableFrom } from './saleable.ts';
import type { Saleable } from './saleable.ts';
import { unmatedWarning } from './unmated.ts';
import type { WhyRow } from './whyrow.ts';

interface TankOfBrood {
  readonly tank: string;
  readonly count: Interval;
  readonly likely: Interval | null;
  /** Set where fish were parted by size: how long those here are, and which they are. */
  readonly sorted: { readonly words: string; readonly size: Measure<'mm'> } | null;
}

export interface BroodRow {
  readonly id: string;
  readonly name: string;
  /** The pair or group that spawned it. */
  readonly group: string | null;
  /** The females that it may be of. */
  readonly mothers: readonly string[];
  readonly species: string | null;
  /** By the lines, and beside it how many are likely there (80 %); null where nobody said a number. */
  readonly tanks: readonly TankOfBrood[];
  readonly total: Interval;
  readonly likely: Interval | null;
  /** From stage to stage, and when they were lost; null where nobody said a number. */
  readonly survival: Survival | null;
  /** When it was laid; for livebearers, born. */
  readonly spawned: DayWindow;
  readonly hatched: DayWindow | null;
  readonly swam: DayWindow | null;
  readonly released: DayWindow | null;
  /** The days inside each of these that are most likely, four in five. */
  readonly mostLikely: BroodDates['mostLikely'];
  readonly age: Interval;
  readonly stage: StageName;
  /** Mean length, 80 % limits. */
  readonly size: Measure<'mm'> | null;
  /** mm a week. */
  readonly rate: Interval | null;
  /** What size and growth rest on, in a few words. */
  readonly basis: string | null;
  readonly next: Milestone | null;
  /** Where they should have swum long ago: the last day on which anybody spoke of them. */
  readonly noWordSince: Day | null;
  readonly ready: Saleable | null;
  /** Half of them or more can be sold today. */
  readonly isReady: boolean;
  readonly warnings: readonly BroodWarning[];
  readonly lines: readonly LineRef[];
  readonly because: Because;
}

export interface BroodsAnswer {
  readonly on: Day;
  readonly asked: string | null;
  readonly broods: readonly BroodRow[];
}

/**
 * All broods that still have fish, oldest first; with a name, that brood whatever became of it, or the
 * broods of that group, tank or species.
 */
export function broods(room: Room, asked: string | null = null): BroodsAnswer {
  const all = [...room.stock.broods.values()].toSorted((a, b) => (laidDay(room, a) ?? 0) - (laidDay(room, b) ?? 0));
  const found =
    asked === null ? all.filter((brood) => isThere(brood) && !cameToNothing(room, brood)) : broodsCalled(all, asked);
  const harm = dangers(room);
  return { on: room.on, asked, broods: found.map((brood) => broodRow(room, brood, harm)) };
}

/** True while some may be left. */
export function isThere(brood: SeenBrood): boolean {
  return brood.ended === null && aliveTotal(brood).high > 0;
}

/** A spawn that was only suspected, whose young would have swum by now. */
function cameToNothing(room: Room, brood: SeenBrood): boolean {
  const swim = expected(room, brood, 'swim');
  return brood.suspected && (swim?.high ?? room.on) < room.on;
}

function broodsCalled(all: readonly SeenBrood[], asked: string): SeenBrood[] {
  const same = (name: string | null): boolean => name !== null && name.toLowerCase() === asked.toLowerCase();
  const own = all.filter((brood) => same(brood.name) || brood.oneOf.some(same));
  if (own.length > 0) return own;
  return all.filter(
    (brood) => isThere(brood) && (same(brood.group) || same(brood.species) || tanksOf(brood).some(same)),
  );
}

function broodRow(room: Room, brood: SeenBrood, harm: readonly Danger[]): BroodRow {
  const ready = saleableFrom(room, brood);
  const growth = growthOf(room, brood);
  const rate = growth?.line.rate ?? null;
  const size = sizeOn(room, brood);
  const lines = linesOf(brood.lines);
  const likely = likelyCounts(room, brood);
  const dates = datesOf(room, brood);
  return {
    id: rowId(brood.name),
    name: brood.name,
    group: brood.group,
    mothers: brood.mothers,
    species: brood.species,
    tanks: tanksOf(brood).map((tank) => ({
      tank,
      count: partIn(brood, tank),
      likely: likely.parts.get(tank) ?? null,
      sorted: sortedHere(room, brood, tank),
    })),
    total: aliveTotal(brood),
    likely: isThere(brood) ? likely.total : null,
    survival: survivalOf(room, brood),
    spawned: dates.laid,
    hatched: dates.hatched,
    swam: dates.swam,
    released: dates.released,
    mostLikely: dates.mostLikely,
    age: ageOf(room, brood),
    stage: stageOf(room, brood),
    size,
    rate: rate && { low: rate.low * 7, likely: rate.likely === null ? null : rate.likely * 7, high: rate.high * 7 },
    basis: growth?.basis ?? null,
    next: nextOf(room, brood),
    noWordSince: withoutWord(room, brood)?.since ?? null,
    ready,
    isReady: isThere(brood) && size !== null && (ready?.share.likely ?? 0) >= 0.5,
    warnings: [...harm.filter((one) => one.older === brood || one.younger === brood), ...unmatedWarning(brood)],
    lines,
    because: becauseOf(room, brood, lines),
  };
}

/** Their own length, where the largest or smallest went and the length of the whole brood is no longer theirs. */
function sortedHere(room: Room, brood: SeenBrood, tank: string): TankOfBrood['sorted'] {
  const sorted = sortedIn(room, brood, tank);
  const size = sorted === null ? null : sizeOn(room, brood, room.on, tank);
  return sorted === null || size === null ? null : { words: sorted.words, size };
}

function becauseOf(room: Room, brood: SeenBrood, lines: readonly LineRef[]): Because {
  const clock = clockOf(room, brood);
  const born = clock.guild === 'livebearer' ? 'born' : 'laid';
  const warm = clock.temperature === null ? '25–27 C, nobody measured' : `${rangeWords(clock.temperature.value)} C`;
  const { laid, mostLikely } = datesOf(room, brood);
  const told = (what: string, window: DayWindow | null, likely: DayWindow | null): string[] =>
    window === null ? [] : [`${what} ${likelyWindowWords(window, likely, room.on)}`];
  return {
    rule: `age counts from the day it was ${born}; a look that names a stage bounds it, the usual days of such fish fill what no look bounds; most likely are the days that hold four in five chances, by every look and the usual days of each stage`,
    source: `the journal; ${clock.guild === null ? 'usual for substrate spawners, since no way of breeding is set' : `usual for ${clock.guild}s`} at ${warm}`,
    steps: [
      `${born} ${likelyWindowWords(laid, mostLikely.laid, room.on)}, ${brood.laidKnown === 'seen' ? 'seen that day' : brood.laidKnown}`,
      ...quietWords(brood),
      ...told('hatched', brood.hatched, mostLikely.hatched),
      ...told('swam', brood.swam, mostLikely.swam),
      ...told('released', brood.released, mostLikely.released),
      `age on ${dayWords(room.on, room.on)}: ${ageWords(ageOf(room, brood))}`,
    ],
    lines,
  };
}

/** Looks inside the window that told of no eggs: they rule nothing out. */
function quietWords({ quiet, laid }: SeenBrood): string[] {
  const inside = quiet.filter((day) => day >= (laid.low ?? day) && day < (laid.high ?? day));
  if (inside.length === 0) return [];
  return [
    `${plural(inside.length, 'look')} in that window told of no eggs: later days are likelier, none is ruled out`,
  ];
}

/** Rows that `why` can be asked about: the brood, its count, size, sale and dangers. */
export function broodsWhy(room: Room): readonly WhyRow[] {
  return [...broods(room).broods].flatMap((row) => {
    const brood = room.stock.broods.get(row.name);
    if (!brood) return [];
    const growth = growthOf(room, brood);
    const rows: WhyRow[] = [
      { id: row.id, title: `${row.name} age and stage`, because: row.because, lines: row.lines },
      { id: rowId(row.name, 'count'), title: `${row.name} count: ${countWords(row.total)}`, ...countWhy(room, brood) },
    ];
    rows.push(...numbersWhy(room, brood, row.survival));
    if (growth)
      rows.push({
        id: rowId(row.name, 'size'),
        title: `${row.name} size`,
        because: { ...growth.because, steps: [...growth.because.steps, ...alone(growth)] },
        lines: growth.because.lines,
      });
    if (row.ready) {
      const { because } = row.ready;
      rows.push({ id: rowId(row.name, 'ready'), title: `${row.name} ready for sale`, because, lines: because.lines });
    }
    const warned = row.warnings.filter((one) => !('older' in one) || one.older === brood);
    return [...rows, ...warned.map((one) => ({ id: one.id, title: one.text, because: one.because, lines: one.lines }))];
  });
}

/** What the readings would say with no word of what is usual. */
function alone({ readings }: Growth): string[] {
  return fittedSteps(readings.map(({ age, mean }) => ({ x: age, y: mean })));
}

/** The limits of a curve know nothing of guesses: told only where all was counted. */
function livedWords({ survival, low, high }: Survival['steps'][number], counted: boolean): string {
  const limits = counted && low !== null && high !== null;
  return shareWords({ low: limits ? low : survival, likely: survival, high: limits ? high : survival });
}

/** How many are likely there, and how many lived. */
function numbersWhy(room: Room, brood: SeenBrood, survival: Survival | null): WhyRow[] {
  const { total, because } = likelyCounts(room, brood);
  const rows: WhyRow[] = [];
  if (total !== null)
    rows.push({
      id: rowId(brood.name, 'likely'),
      title: `${brood.name} likely ${countWords(total)}`,
      because,
      lines: because.lines,
    });
  if (survival !== null) {
    const last = survival.steps.at(-1);
    const lived = last ? livedWords(last, survival.counted) : null;
    rows.push({
      id: rowId(brood.name, 'survival'),
      title: `${brood.name} survival${lived === null ? '' : `: ${lived}`}; ${survival.says}`,
      because: survival.because,
      lines: survival.because.lines,
    });
  }
  return rows;
}

function countWhy(room: Room, brood: SeenBrood): { because: Because; lines: readonly LineRef[] } {
  const places = [...brood.counts.map((seen) => seen.place), ...brood.gone.map((gone) => gone.place)];
  const moves = room.stock.moves.filter((move) => move.body === brood.name);
  const lines = linesOf([...brood.lines.slice(0, 1), ...places, ...moves.map((move) => move.place)]);
  const dated = [
    ...brood.counts.map((seen) => ({
      day: seen.day,
      says: `${seen.sure ? 'counted' : 'guessed'} ${countWords(seen.count)}${seen.tank === null ? '' : ` in ${seen.tank}`}${seen.replaced ? ', replaced that day' : ''}`,
    })),
    ...brood.gone.map((gone) => ({ day: gone.day, says: `${gone.how} ${countWords(gone.count)}` })),
    ...moves.map((move) => ({
      day: move.day,
      says: `moved ${countWords(move.count)}${move.from === null ? '' : ` from ${move.from}`} to ${move.to}`,
    })),
  ].toSorted((a, b) => a.day - b.day);
  return {
    because: {
      rule: 'numbers only fall; a count narrows or corrects what was guessed, and the total and the parts bound each other',
      source: 'the journal',
      steps: [
        ...dated.map(({ day, says }) => `${dayWords(addDays(day, 0), room.on)}: ${says}`),
        `left: ${countWords(brood.total)}`,
      ],
      lines,
    },
    lines,
  };
}
