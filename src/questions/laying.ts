/**
 * When a brood was laid, hatched and swam: the hard windows of every look with the days inside them that
 * are most likely (four in five), by the stage clock of such fish. Every age in every answer counts from here.
 */
import { toDay } from '../core/day.ts';
import type { Day } from '../core/day.ts';
import type { DayWindow, Interval } from '../core/interval.ts';
import { layingDays, mostLikely, within } from '../science/layingday.ts';
import type { BroodDays, DayChances, Found, StageLook } from '../science/layingday.ts';
import type { StageTimes } from '../science/stageclocks.ts';
import { USUAL_TEMPERATURE } from '../science/stages.ts';
import type { SeenBrood } from '../state/bodies.ts';
import { since } from '../state/broodlife.ts';
import type { Room } from '../state/draft.ts';
import { clockOf, usualFor } from '../state/stageclock.ts';
import { onceFor } from './holds/once.ts';

/** The days of one brood. `laid`, `hatched`, `swam`, `released` are facts; `mostLikely` lies inside each. */
export interface BroodDates {
  readonly laid: DayWindow;
  readonly hatched: DayWindow | null;
  readonly swam: DayWindow | null;
  readonly released: DayWindow | null;
  readonly mostLikely: {
    readonly laid: DayWindow;
    readonly hatched: DayWindow | null;
    readonly swam: DayWindow | null;
    readonly released: DayWindow | null;
  };
  /** When it hatches and swims (is released), seen or not, by the clock alone where nobody saw; null where such fish do not. */
  readonly hatches: DayWindow | null;
  readonly swims: DayWindow | null;
  /** Chances behind `mostLikely.laid`; null where the day was seen, or nothing bounds it. */
  readonly chances: DayChances | null;
}

/** The dates of a brood. */
export const datesOf = onceFor(workOut);

/** The one day from which an age counts: the likely one, else the end that is known; null where neither is. */
export function laidDay(room: Room, brood: SeenBrood): Day | null {
  const { low, high } = brood.laid;
  if (low !== null && low === high) return low;
  const { laid } = datesOf(room, brood);
  return laid.likely ?? laid.high ?? laid.low;
}

/** Age in days from laying (birth): its ends are facts, the likely one comes from the most likely days. */
export function ageOf(room: Room, brood: SeenBrood, on: Day = room.on): Interval {
  return since(datesOf(room, brood).laid, on);
}

function workOut(room: Room, brood: SeenBrood): BroodDates {
  const { laid, hatched, swam, released } = brood;
  const days = chancesFor(room, brood);
  if (days === null || laid.low === null || laid.high === null) {
    const plain = { laid, hatched, swam, released };
    return { ...plain, mostLikely: plain, hatches: null, swims: null, chances: null };
  }
  const likely = {
    laid: narrowed(days.laid, laid),
    hatched: days.hatched === null ? hatched : narrowedOrNull(days.hatched, hatched),
    swam: narrowedOrNull(days.swam, swam),
    released: narrowedOrNull(days.swam, released),
  };
  return {
    laid: withLikely(laid, likely.laid),
    hatched: hatched && withLikely(hatched, likely.hatched),
    swam: swam && withLikely(swam, likely.swam),
    released: released && withLikely(released, likely.released),
    mostLikely: likely,
    hatches: days.hatched === null ? null : asWindow(days.hatched),
    swims: asWindow(days.swam),
    chances: laid.low === laid.high ? null : days.laid,
  };
}

function chancesFor(room: Room, brood: SeenBrood): BroodDays | null {
  const { low, high } = brood.laid;
  if (low === null || high === null) return null;
  const clock = clockOf(room, brood);
  const usual = usualFor(clock);
  const held = clock.release !== null || brood.looks.some((look) => look.stage === 'holding');
  const times: StageTimes = {
    hatch: usual.hatch,
    swim: usual.swim,
    release: held ? usual.release : null,
    temperature: clock.temperature?.value ?? USUAL_TEMPERATURE,
  };
  const looks = brood.looks.flatMap((look): StageLook[] => {
    const found = foundBy(look.stage);
    const exact = look.stage === 'hatched' || look.stage === 'free-swimming' || look.stage === 'released';
    const beganFrom = exact ? (look.when?.low ?? null) : null;
    return found === null ? [] : [{ day: look.when?.high ?? look.day, found, beganFrom }];
  });
  // Nobody looks into a mouth in passing.
  return layingDays(low, high, times, looks, held ? [] : brood.quiet);
}

function foundBy(stage: SeenBrood['looks'][number]['stage']): Found | null {
  switch (stage) {
    case 'eggs':
      return 'eggs';
    case 'holding':
      return 'held';
    case 'hatched':
    case 'wrigglers':
      return 'wrigglers';
    case 'free-swimming':
    case 'fry seen':
    case 'released':
      return 'swimming';
    case 'stripped':
      return 'taken out';
    case 'born':
      return null;
  }
}

function narrowed(days: DayChances, hard: DayWindow): DayWindow {
  const inside = within(days, hard.low ?? -Infinity, hard.high ?? Infinity);
  return inside === null ? hard : asWindow(inside);
}

function narrowedOrNull(days: DayChances, hard: DayWindow | null): DayWindow | null {
  return hard === null ? null : narrowed(days, hard);
}

function asWindow(days: DayChances): DayWindow {
  const { low, likely, high } = mostLikely(days);
  return { low: toDay(low), likely: toDay(likely), high: toDay(high) };
}

function withLikely(hard: DayWindow, likely: DayWindow | null): DayWindow {
  return likely === null ? hard : { ...hard, likely: likely.likely };
}
