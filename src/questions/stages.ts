/** What stage a brood is at, by what was seen and by the clock, and what comes next. */
import type { Day } from '../core/day.ts';
import type { DayWindow } from '../core/interval.ts';
import { likelyWindowWords } from '../core/words.ts';
import type { SeenBrood } from '../state/bodies.ts';
import { reached, since } from '../state/broodlife.ts';
import type { Room } from '../state/draft.ts';
import { clockOf, swimDays, usualFor } from '../state/stageclock.ts';
import { dayAtAge } from '../state/stagewindows.ts';
import { withoutWord } from '../state/withoutword.ts';
import { isSiblingSafe } from './danger.ts';
import { datesOf } from './laying.ts';
import { sizeOn } from './growing.ts';
import { saleableFrom } from './saleable.ts';

/** What keepers call them. The furthest that was seen; what nobody saw is told as what comes next. */
export type StageName = 'suspected' | 'egg' | 'held' | 'wriggler' | 'free-swimming' | 'young' | 'juvenile' | 'gone';

/** What is to be expected of a brood next, and when. */
export interface Milestone {
  readonly what: 'hatch' | 'swim' | 'release' | 'first move' | 'sale';
  readonly window: DayWindow;
  /** The days inside it that are most likely, four in five; null where nothing says. */
  readonly mostLikely: DayWindow | null;
}

/** Days after swimming free during which they are called so. */
const JUST_SWIMMING = 14;

/** The stage that a brood is at by the room’s day, as far as looks and its clock say. */
export function stageOf(room: Room, brood: SeenBrood): StageName {
  if (brood.ended !== null) return 'gone';
  if (brood.suspected) return 'suspected';
  if (brood.swam === null && brood.released === null) {
    if (isHeld(room, brood)) return 'held';
    return reached(brood, 'hatched') ? 'wriggler' : 'egg';
  }
  if (isFreeSwimming(room, brood)) return 'free-swimming';
  const size = sizeOn(room, brood)?.likely ?? 0;
  const sale = usualFor(clockOf(room, brood)).saleSize;
  return size >= (sale.likely ?? sale.low) / 2 ? 'juvenile' : 'young';
}

/** Whether `stageOf` is that: without how long they are, which takes much longer to work out. */
export function isFreeSwimming(room: Room, brood: SeenBrood): boolean {
  const free = brood.swam ?? brood.released;
  if (free === null || brood.ended !== null || brood.suspected) return false;
  const swimming = since(free, room.on);
  return (swimming.likely ?? swimming.low) <= JUST_SWIMMING;
}

/** Young in their mother's mouth: nobody sees them hatch or swim. */
export function isHeld(room: Room, brood: SeenBrood): boolean {
  return clockOf(room, brood).release !== null || brood.looks.some((look) => look.stage === 'holding');
}

/**
 * When a brood hatches, swims or is released, if it was not seen to: from the earliest to the latest that is
 * usual. Null where it was seen, or fish of that kind never do.
 */
export function expected(room: Room, brood: SeenBrood, what: 'hatch' | 'swim'): DayWindow | null {
  const window = usualWindow(room, brood, what);
  const inside = window === null ? null : likelyInside(room, brood, what, window);
  return window === null || inside === null ? window : { ...window, likely: inside.likely };
}

/** The days within `expected` that are most likely, four in five. */
export function mostLikely(room: Room, brood: SeenBrood, what: 'hatch' | 'swim'): DayWindow | null {
  const window = usualWindow(room, brood, what);
  return window === null ? null : likelyInside(room, brood, what, window);
}

function likelyInside(room: Room, brood: SeenBrood, what: 'hatch' | 'swim', window: DayWindow): DayWindow | null {
  const { hatches, swims } = datesOf(room, brood);
  const days = what === 'hatch' ? hatches : swims;
  if (days === null || days.low === null || days.high === null) return null;
  const inside = (day: Day): Day => {
    if (window.low !== null && day < window.low) return window.low;
    return window.high !== null && day > window.high ? window.high : day;
  };
  return { low: inside(days.low), likely: days.likely && inside(days.likely), high: inside(days.high) };
}

/** `hatches 5–7 Feb, most likely 5–6`: without the verb. */
export function expectedWords(room: Room, brood: SeenBrood, what: 'hatch' | 'swim', window: DayWindow): string {
  return likelyWindowWords(window, mostLikely(room, brood, what), room.on);
}

function usualWindow(room: Room, brood: SeenBrood, what: 'hatch' | 'swim'): DayWindow | null {
  const clock = clockOf(room, brood);
  if (brood.ended !== null || reached(brood, 'swam')) return null;
  if (what === 'hatch') {
    return clock.hatch === null || reached(brood, 'hatched') ? null : dayAtAge(brood.laid, clock.hatch);
  }
  const window = dayAtAge(brood.laid, swimDays(clock));
  const lastSeen = brood.looks.at(-1)?.day ?? null;
  if (lastSeen === null || window.low === null || lastSeen < window.low) return window;
  return { ...window, low: lastSeen };
}

/** The window of the first move away from the parents, by what is usual; null once they were moved, and for fish that can stay. */
export function firstMove(room: Room, brood: SeenBrood): DayWindow | null {
  const free = brood.swam ?? brood.released;
  if (free === null || brood.moved || brood.ended !== null || brood.oneOf.length > 0) return null;
  if (isSiblingSafe(room, brood)) return null;
  return dayAtAge(free, usualFor(clockOf(room, brood)).firstMove);
}

/** What a brood comes to next, and when; null where nothing is expected, or nobody knows whether it lives. */
export function nextOf(room: Room, brood: SeenBrood): Milestone | null {
  if (brood.ended !== null || withoutWord(room, brood) !== null) return null;
  const hatch = expected(room, brood, 'hatch');
  if (hatch !== null && !isHeld(room, brood))
    return { what: 'hatch', window: hatch, mostLikely: mostLikely(room, brood, 'hatch') };
  const swim = expected(room, brood, 'swim');
  if (swim !== null) {
    const what = clockOf(room, brood).release === null ? 'swim' : 'release';
    return { what, window: swim, mostLikely: mostLikely(room, brood, 'swim') };
  }
  const move = firstMove(room, brood);
  if (move !== null && (move.high ?? room.on) >= room.on) return { what: 'first move', window: move, mostLikely: null };
  const sale = saleableFrom(room, brood);
  return sale === null || sale.share.low >= 1 ? null : { what: 'sale', window: sale.window, mostLikely: sale.half };
}
