/** How a loop's prefilter stands: its level since the last clean, when it will spill, what a partial clean bought. */
import { addDays, isDay, toDay, type Day } from '../core/day.ts';
import type { Interval } from '../core/interval.ts';
import { middle, onDay } from '../core/interval.ts';
import type { DayWindow } from '../core/interval.ts';
import type { Place } from '../core/span.ts';
import type { DeepReadonly } from '../core/readonly.ts';
import { median } from '../core/stats.ts';
import { dayWords, rangeWords, windowWords } from '../core/words.ts';
import { spillForecast, thoroughness, WARN_DAYS, WARN_FREEBOARD, type SpillForecast } from '../science/clogging.ts';
import { crossing, type Line } from '../science/trend.ts';
import type { Room } from '../state/draft.ts';
import type { Loop, LoopClean, LoopLevel } from '../state/plumbing.ts';
import { isAfter } from '../state/when.ts';
import { isFull, trueLevels } from '../state/prefilter.ts';
import { onceFor } from './holds/once.ts';
import { FALL, readableLevels } from './levels.ts';

type Level = DeepReadonly<LoopLevel>;
type Clean = DeepReadonly<LoopClean>;

export interface Prefilter {
  /** The last level that says something, or null. */
  readonly level: Level | null;
  /** Levels since the last clean of any kind, oldest first. */
  readonly since: readonly Level[];
  readonly lastClean: Clean | null;
  readonly lastFull: Clean | null;
  /** Days between which it spills; null where there is no forecast, and `whyNot` says why. */
  readonly spill: DayWindow | null;
  readonly forecast: SpillForecast | null;
  /** The spill is further off than twice the time read so far: clogging quickens, so it is an early guess. */
  readonly early: boolean;
  readonly whyNot: string | null;
  /** The level fell though nothing was cleaned: less water comes, or more runs off. */
  readonly flowFell: { readonly from: Level; readonly to: Level } | null;
  /** Less than a quarter of the freeboard after a clean is left, or the spill is a week off or nearer. */
  readonly near: boolean;
  readonly steps: readonly string[];
  readonly places: readonly Place[];
}

/** Reads a loop's levels and cleans on the room's day. */
export const prefilterOf = onceFor((room: Room, loop: DeepReadonly<Loop>): Prefilter => {
  const lastClean = loop.cleans.at(-1) ?? null;
  const lastFull = loop.cleans.findLast(isFull) ?? null;
  const { kept: levels, dropped } = readableLevels(room, loop);
  const since = levels.filter((level) => lastClean === null || isAfter(level, lastClean));
  const level = since.at(-1) ?? null;
  const flowFell = fellWithoutClean(since);
  const lip = middle(loop.spillsAt);
  const forecast = lip === null || flowFell !== null ? null : forecastOf(sinceFall(since), lip);
  return {
    level,
    since,
    lastClean,
    lastFull,
    forecast,
    early: level?.spilled !== true && forecast !== null && isEarly(since, forecast),
    spill: spillOf(level, forecast),
    whyNot: forecast === null && level?.spilled !== true ? noForecast(since, lip, flowFell !== null) : null,
    flowFell,
    near: isNear(room, lip, level, clearLevel(levels, lastFull, lip), forecast),
    steps: [...stepsOf(room, since, lip, forecast), ...droppedSteps(room, dropped, lastClean)],
    places: [...(lastClean === null ? [] : [lastClean.place]), ...since.map(({ place }) => place)],
  };
});

function forecastOf(since: readonly Level[], lip: number): SpillForecast | null {
  if (since.length < 2) return null;
  return spillForecast(
    since.map(({ day, level }) => ({ day, level: middle(level) })),
    lip,
  );
}

function isEarly(since: readonly Level[], { spill }: SpillForecast): boolean {
  const first = since[0]?.day ?? spill.low;
  const last = since.at(-1)?.day ?? spill.low;
  return spill.low - last > 2 * (last - first);
}

/** The day on which it was seen to spill, or those between which it will. */
function spillOf(level: Level | null, forecast: SpillForecast | null): DayWindow | null {
  if (level?.spilled === true) return onDay(level.day);
  if (forecast === null) return null;
  const { spill } = forecast;
  return { low: toDay(spill.low), likely: toDay(spill.likely), high: toDay(spill.high) };
}

function noForecast(since: readonly Level[], lip: number | null, fell: boolean): string {
  if (lip === null) return 'no forecast: the height at which it spills is not set';
  if (fell) return 'no forecast: the level fell though nothing was cleaned';
  return since.length < 2
    ? 'no forecast: fewer than two levels since the clean'
    : 'no forecast: the level does not rise';
}

/** The last step of the level, where it goes down by more than an eye errs. */
function fellWithoutClean(since: readonly Level[]): Prefilter['flowFell'] {
  const to = since.at(-1);
  const from = since.at(-2);
  if (to === undefined || from === undefined) return null;
  const fall = middle(from.level) - middle(to.level);
  return fall >= FALL ? { from, to } : null;
}

/** Levels since the flow last fell: what was read before speaks of another flow. */
function sinceFall(since: readonly Level[]): readonly Level[] {
  const fell = since.findLastIndex((_, index) => fellWithoutClean(since.slice(0, index + 1)) !== null);
  return fell < 0 ? since : since.slice(fell);
}

/**
 * What the freeboard is measured from: the first level after a full clean. One that was not read by the day after shows
 * a sponge that clogs again, and is taken for no more than half the height of the lip (ours).
 */
function clearLevel(levels: readonly Level[], full: Clean | null, lip: number | null): number | null {
  const first = full === null ? undefined : levels.find((level) => isAfter(level, full));
  if (full === null || first === undefined || lip === null) return null;
  const read = middle(first.level);
  return first.day <= addDays(full.day, 1) ? read : Math.min(read, lip / 2);
}

function isNear(
  room: Room,
  lip: number | null,
  level: Level | null,
  clear: number | null,
  forecast: SpillForecast | null,
): boolean {
  if (forecast !== null && forecast.spill.low - room.on <= WARN_DAYS) return true;
  if (lip === null || level === null) return false;
  return lip - middle(level.level) <= WARN_FREEBOARD * (lip - (clear ?? 0));
}

function stepsOf(room: Room, since: readonly Level[], lip: number | null, forecast: SpillForecast | null): string[] {
  const read = since.map(
    ({ day, level, spilled }) => `${mmWords(level)} on ${dayWords(day, room.on)}${spilled ? ' (overflowed)' : ''}`,
  );
  if (forecast === null || lip === null) return read.length === 0 ? [] : [`levels since the clean: ${read.join(', ')}`];
  const { all, lastThree, lastTwo } = forecast.lines;
  const told = (which: string, line: Line): string => `${which}: ${lineWords(room, line, lip)}`;
  return [
    `levels since the clean: ${read.join(', ')}`,
    told('line through all', all),
    ...(since.length > 3 ? [told('through the last three', lastThree)] : []),
    ...(since.length > 2 ? [told('through the last two', lastTwo)] : []),
    `reaches ${Math.round(lip)} mm between ${dayWords(toDay(forecast.spill.low), room.on)} and ${dayWords(toDay(forecast.spill.high), room.on)}: the earliest of the three to the middle one`,
  ];
}

/** A robust line with the day on which it reaches the lip: `median slope 1.27 mm a day, at 80 mm on 4 Mar`. */
function lineWords(room: Room, line: Line, lip: number): string {
  const slope = `median slope ${line.slope.toFixed(2)} mm a day`;
  const day = line.slope > 0 ? crossing(line, lip) : null;
  if (day === null || !isDay(Math.floor(day))) return `${slope}, never at ${Math.round(lip)} mm`;
  return `${slope}, at ${Math.round(lip)} mm on ${dayWords(toDay(day), room.on)}`;
}

function droppedSteps(
  room: Room,
  dropped: ReturnType<typeof readableLevels>['dropped'],
  clean: Clean | null,
): string[] {
  return dropped
    .filter(({ level }) => clean === null || isAfter(level, clean))
    .map(({ level, why }) => `left out: ${mmWords(level.level)} on ${dayWords(level.day, room.on)}, ${why}`);
}

/**
 * How long a partial clean lasts as a share of a full one: from the levels after both, where the
 * journal has them (freeboard won over freeboard after a full clean), else one half and one half of
 * the layers' share.
 */
export function lastsOf(loop: DeepReadonly<Loop>, clean: Clean): { share: number; step: string } {
  if (isFull(clean)) return { share: 1, step: 'all layers' };
  const lip = middle(loop.spillsAt);
  const after = levelAfter(loop, clean);
  const full = loop.cleans.findLast((one) => isFull(one) && isAfter(clean, one));
  const clear = full === undefined ? null : levelAfter(loop, full);
  if (lip !== null && after !== null && clear !== null && lip > clear) {
    const share = Math.min(1, Math.max(0, (lip - after) / (lip - clear)));
    return {
      share,
      step: `freeboard ${Math.round(lip - after)} mm of ${Math.round(lip - clear)} mm after a full clean: ${share.toFixed(2)}`,
    };
  }
  const share = thoroughness(clean.layers, clean.of ?? clean.layers);
  return {
    share,
    step: `½ + ½ × ${clean.layers}/${clean.of ?? clean.layers} = ${share.toFixed(2)} of a full clean's interval`,
  };
}

/** The level read on the day of a clean or the day after, before the next one. */
function levelAfter(loop: DeepReadonly<Loop>, clean: Clean): number | null {
  const next = loop.cleans.find((one) => isAfter(one, clean));
  const first = trueLevels(loop).find(
    (level) =>
      isAfter(level, clean) && level.day <= addDays(clean.day, 1) && (next === undefined || isAfter(next, level)),
  );
  return first === undefined ? null : middle(first.level);
}

/** Days that all layers last where the room has not taught better (about six weeks: common practice, no source). */
const USUAL_CLEAN_DAYS = 42;
/** Intervals between full cleans that it takes to teach. */
const TAUGHT_BY = 3;

interface CleanInterval {
  readonly days: Interval;
  /** In words, with what it rests on; the usual is named beside the room's own. */
  readonly step: string;
  readonly own: boolean;
}

/** How far apart full cleans are in this room, from its last intervals; the usual where there are fewer than three. */
export function cleanInterval(loop: DeepReadonly<Loop>): CleanInterval {
  const full = loop.cleans.filter(isFull);
  const gaps = full
    .slice(1)
    .map(({ day }, index) => day - (full[index]?.day ?? day))
    .filter((days) => days > 0)
    .slice(-8);
  const likely = median(gaps);
  const usual = `usual for a prefilter: about ${USUAL_CLEAN_DAYS} days`;
  if (likely === null || gaps.length < TAUGHT_BY) {
    const days = { low: USUAL_CLEAN_DAYS, likely: USUAL_CLEAN_DAYS, high: USUAL_CLEAN_DAYS };
    return { days, step: usual, own: false };
  }
  const days = { low: Math.min(...gaps), likely: Math.round(likely), high: Math.max(...gaps) };
  const step = `full cleans here came every ${rangeWords(days)} days (${gaps.length} intervals, median ${days.likely}); ${usual}`;
  return { days, step, own: true };
}

/** `54 mm`. */
export function mmWords(length: Interval): string {
  return `${Math.round(middle(length))} mm`;
}

/**
 * `level 54 mm on 10 Feb, spills at 80 mm about 23–26 Feb`, the days only where they are no early guess. Lines that run
 * on past the window that holds the spill eight times in ten (`odds`) say what comes if nothing quickens: it is told instead.
 */
export function levelWords(
  loop: DeepReadonly<Loop>,
  state: Prefilter,
  now: Day,
  odds: DayWindow | null = null,
): string {
  if (state.level === null) return 'no level since the clean';
  const { day, level, spilled } = state.level;
  if (spilled) return `overflowed on ${dayWords(day, now)}, not cleaned since`;
  const read = `level ${mmWords(level)} on ${dayWords(day, now)}`;
  if (loop.spillsAt === null) return read;
  const at = `${read}, spills at ${mmWords(loop.spillsAt)}`;
  if (state.spill === null || state.early) return at;
  const isPast = odds?.high !== null && odds?.high !== undefined && (state.spill.low ?? 0) > odds.high;
  return isPast ? `${at} ${windowWords(odds, now)}, 8 times in 10` : `${at} about ${windowWords(state.spill, now)}`;
}
