/** How every loop stands: who is on it, its prefilter's level and spill, the last cleans and the next. */
import type { Day } from '../core/day.ts';
import { addDays } from '../core/day.ts';
import type { Because } from '../core/because.ts';
import type { DayWindow } from '../core/interval.ts';
import type { Measure } from '../core/quantity.ts';
import type { LineRef } from '../core/span.ts';
import { linesOf } from '../core/span.ts';
import { dayWords, listWords, windowWords } from '../core/words.ts';
import type { DeepReadonly } from '../core/readonly.ts';
import { WARN_DAYS } from '../science/clogging.ts';
import type { Room } from '../state/draft.ts';
import type { Loop, LoopClean } from '../state/plumbing.ts';
import { isFull } from '../state/prefilter.ts';
import { isOpenOn } from '../state/rigs.ts';
import { homeLoopOf, liveTanks, tanksOn } from '../state/tanks.ts';
import { loopVolume } from '../state/volume.ts';
import { askedByHistory, askedByLevels, betterBy, cleaningClocks } from './cleaning.ts';
import { drainDown, type DrainDown } from './draindown.ts';
import { rowId } from './id.ts';
import { cleanInterval, lastsOf, prefilterOf, type Prefilter } from './prefilter.ts';
import { spillOutlook, type Outlook } from './spill.ts';
import type { WhyRow } from './whyrow.ts';

export interface LoopRow {
  readonly id: string;
  readonly name: string;
  /** Sharing its water today, in walking order. */
  readonly tanks: readonly string[];
  /** Plumbed to it and valved off, and since when. */
  readonly off: readonly { readonly tank: string; readonly since: Day }[];
  /** Live litres, sump included. */
  readonly litres: DeepReadonly<Measure<'L'>> | null;
  readonly level: { readonly mm: DeepReadonly<Measure<'mm'>>; readonly on: Day } | null;
  readonly spillsAt: DeepReadonly<Measure<'mm'>> | null;
  readonly spill: DayWindow | null;
  readonly whyNoSpill: string | null;
  /** The forecast is an early guess, cut into the window of the outlook: clogging quickens. */
  readonly early: boolean;
  /** Eight times in ten it spills inside this window; null without a clean or the lip's height. */
  readonly outlook: Pick<Outlook, 'spill' | 'cleanBy' | 'basis' | 'own' | 'usual' | 'cycles'> | null;
  /** What the last clean bought, where it was a partial one. */
  readonly bought: Outlook['bought'];
  readonly cleaned: Cleaned | null;
  readonly lastFull: Cleaned | null;
  /** Till when the last partial clean buys time, where one came after the last full one. */
  readonly easedUntil: Day | null;
  /** The full clean: by its chore, else a week before the spill or by the room's own interval, whichever comes first. */
  readonly nextClean: DayWindow | null;
  /** The days on which today's list asks for it by the levels, where no chore does. */
  readonly asked: DayWindow | null;
  /** The day before it may spill, where the chore comes later than that. */
  readonly betterBy: Day | null;
  /** What runs down when the pump stops, against the sump's spare room; null where no surface is known. */
  readonly drain: Pick<DrainDown, 'litres' | 'spare' | 'verdict' | 'says'> | null;
  /** What to look at: a flow that fell, a spill that is near. */
  readonly notes: readonly string[];
  readonly because: Because;
  readonly lines: readonly LineRef[];
}

interface Cleaned {
  readonly on: Day;
  readonly layers: number;
  readonly of: number | null;
}

export function loops(room: Room): readonly LoopRow[] {
  return [...room.plumbing.loops.values()].map((loop) => loopRow(room, loop));
}

function loopRow(room: Room, loop: DeepReadonly<Loop>): LoopRow {
  const state = prefilterOf(room, loop);
  const clock = cleaningClocks(room, loop)[0] ?? null;
  const usual = cleanInterval(loop);
  const outlook = state.flowFell === null && state.level?.spilled !== true ? spillOutlook(room, loop) : null;
  const drain = drainDown(room, loop);
  const asked = clock === null ? askedByLevels(state, outlook) : null;
  const spill = state.early && outlook !== null ? within(state.spill, outlook.spill) : state.spill;
  const nextClean = clock?.due ?? sooner(bySpill(spill), askedByHistory(state, usual.days));
  const lines = linesOf([loop.declared, ...state.places, ...(clock?.places ?? [])]);
  return {
    id: rowId(loop.name),
    name: loop.name,
    tanks: tanksOn(room, loop.name),
    off: offLoop(room, loop.name),
    litres: loopVolume(room, loop.name),
    level: state.level === null ? null : { mm: state.level.level, on: state.level.day },
    spillsAt: loop.spillsAt,
    spill,
    whyNoSpill: state.whyNot,
    early: state.early,
    outlook,
    bought: outlook?.bought ?? null,
    cleaned: told(state.lastClean),
    lastFull: told(state.lastFull),
    easedUntil: clock?.easedUntil ?? null,
    nextClean,
    asked,
    betterBy: clock === null || state.level === null ? null : betterBy(nextClean, outlook),
    drain,
    notes: [
      ...notesOf(room, state, spill),
      ...(drain?.verdict === 'overflows' ? ['a power cut overflows the sump'] : []),
    ],
    because: {
      rule: 'the level is drawn on by three robust lines, and weighed with what is known of earlier cleans into a window that holds the spill eight times in ten; the full clean is due by its chore, else a week before the earliest spill or after the interval of the full cleans before, whichever comes first',
      source:
        'rules of ours; all layers last about six weeks (common practice, no source); blocking laws after Hermia 1982 (from memory)',
      steps: [
        ...cleanSteps(room, loop, state),
        ...state.steps,
        ...(state.whyNot === null ? [] : [state.whyNot]),
        ...(state.early ? [earlyStep(room, state.spill, spill)] : []),
        ...(outlook?.steps ?? []),
        ...(drain === null ? [] : [drain.step]),
        usual.step,
        ...(clock?.steps ?? []),
      ],
      lines,
    },
    lines,
  };
}

/**
 * Lines through the first levels run on far past the days that the wider window holds: an early guess is their common
 * days, and where they have none the half of the window that lies nearer.
 */
export function within(guess: DayWindow | null, window: DayWindow): DayWindow | null {
  const { low, likely, high } = window;
  if (guess === null || low === null || high === null) return guess;
  if ((guess.low ?? low) >= high) return { low: likely ?? low, likely: high, high };
  if ((guess.high ?? high) <= low) return { low, likely: low, high: likely ?? high };
  const inside = (day: Day | null, open: Day): Day => (day === null ? open : day < low ? low : day > high ? high : day);
  return { low: inside(guess.low, low), likely: inside(guess.likely, likely ?? low), high: inside(guess.high, high) };
}

function earlyStep(room: Room, lines: DayWindow | null, told: DayWindow | null): string {
  const early = 'an early guess: clogging quickens towards the end';
  if (told === null || told === lines) return early;
  return `${early}, so it is kept inside the days below: ${windowWords(told, room.on)}`;
}

function bySpill(spill: DayWindow | null): DayWindow | null {
  if (spill === null || spill.low === null) return null;
  const early = addDays(spill.low, -WARN_DAYS);
  return { low: early, likely: early, high: addDays(spill.high ?? spill.low, -WARN_DAYS) };
}

function sooner(a: DayWindow | null, b: DayWindow | null): DayWindow | null {
  if (a === null || b === null) return a ?? b;
  return (a.likely ?? 0) <= (b.likely ?? 0) ? a : b;
}

function told(clean: DeepReadonly<LoopClean> | null): Cleaned | null {
  return clean === null ? null : { on: clean.day, layers: clean.layers, of: clean.of };
}

function cleanSteps(room: Room, loop: DeepReadonly<Loop>, { lastClean, lastFull }: Prefilter): string[] {
  const steps =
    lastFull === null ? ['no full clean on record'] : [`last full clean ${dayWords(lastFull.day, room.on)}`];
  if (lastClean === null || isFull(lastClean)) return steps;
  const { step } = lastsOf(loop, lastClean);
  return [
    ...steps,
    `${lastClean.layers} of ${lastClean.of ?? '?'} layers on ${dayWords(lastClean.day, room.on)}: ${step}`,
  ];
}

function offLoop(room: Room, loop: string): { tank: string; since: Day }[] {
  return liveTanks(room).flatMap(({ name }) => {
    if (homeLoopOf(room, name) !== loop) return [];
    const rig = room.measures.unclosed.findLast(
      (one) => one.kind === 'off the loop' && one.where === name && isOpenOn(one, room.on),
    );
    return rig === undefined ? [] : [{ tank: name, since: rig.day }];
  });
}

function notesOf(room: Room, state: Prefilter, spill: DayWindow | null): string[] {
  if (state.flowFell !== null) return ['flow fell: check pump or drain'];
  if (state.level?.spilled === true) return ['overflowed, not cleaned since'];
  const { low, high } = spill ?? { low: null, high: null };
  if (high !== null && high < room.on) return ['by its levels it has spilled by now: read it again'];
  if (low !== null && low <= room.on) return ['may spill any day'];
  return state.near ? ['near the lip'] : [];
}

/** Rows for `why`. */
export function loopRows(room: Room): readonly WhyRow[] {
  return loops(room).map(({ id, name, tanks, because, lines }) => {
    return {
      id,
      title: `loop ${name}, its level and spill; on it: ${tanks.length === 0 ? 'no tank on it' : listWords([...tanks])}`,
      because,
      lines,
    };
  });
}
