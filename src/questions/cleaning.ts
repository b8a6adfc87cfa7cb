/**
 * When the prefilter of a loop is to be cleaned where no chore says so: by its levels, and by how far apart full
 * cleans are. `due` asks for it on these days, and `loops` tells the same.
 */
import { addDays, toDay, type Day } from '../core/day.ts';
import type { DayWindow, Interval } from '../core/interval.ts';
import { middle } from '../core/interval.ts';
import type { DeepReadonly } from '../core/readonly.ts';
import { WARN_DAYS } from '../science/clogging.ts';
import type { Room } from '../state/draft.ts';
import type { Loop } from '../state/plumbing.ts';
import { clockOf, type ChoreClock } from './clock.ts';
import type { Prefilter } from './prefilter.ts';
import { spillOutlook, type Outlook } from './spill.ts';

/**
 * From a week before the earliest day that may see the spill to the day before it. Null where fewer than two levels
 * were read since the clean: then it goes by the days since the last one.
 */
export function askedByLevels({ level, spill }: Prefilter, outlook: Told | null): DayWindow | null {
  const low = earliest(byLevels(outlook), spill?.low ?? null);
  if (level === null || low === null) return null;
  const from = low - WARN_DAYS < level.day ? level.day : toDay(low - WARN_DAYS);
  return { low: from, likely: from, high: toDay(Math.max(from, low - 1)) };
}

type Told = Pick<Outlook, 'spill' | 'basis'>;

/** What is usual, or what earlier cleans taught, is a wide window: no reason to clean weeks before the usual day. */
function byLevels(outlook: Told | null): Day | null {
  return outlook?.basis === 'levels' ? outlook.spill.low : null;
}

/** The plain window is told, so the clean is never asked for later than that allows. */
function earliest(a: Day | null, b: Day | null): Day | null {
  if (a === null || b === null) return a ?? b;
  return a < b ? a : b;
}

/** The interval of the room's own full cleans, or the usual one, after the last. */
export function askedByHistory({ lastFull }: Prefilter, days: Interval): DayWindow | null {
  if (lastFull === null) return null;
  const likely = addDays(lastFull.day, days.likely ?? days.low);
  return { low: addDays(lastFull.day, days.low), likely, high: addDays(lastFull.day, days.high) };
}

/** The clocks of the chores that clean a loop's prefilter. */
export function cleaningClocks(room: Room, loop: DeepReadonly<Loop>): readonly ChoreClock[] {
  return room.chores.standing
    .filter(
      ({ where, action, stopped }) => where === loop.name && action.kind === 'clean prefilter' && stopped === null,
    )
    .map((chore) => clockOf(room, chore));
}

/**
 * The day before the earliest spill, where the chore comes later than that; null where it comes in time. Levels that
 * are drawn on in a line come to the lip later than a sponge that clogs ever faster.
 */
export function betterBy(due: DayWindow | null, outlook: Told | null): Day | null {
  const low = byLevels(outlook);
  const chore = due?.likely ?? due?.low ?? null;
  return low === null || chore === null || chore < low ? null : addDays(low, -1);
}

/**
 * The outlook takes a while to reckon and `due` is asked often: not in the two weeks after a clean, and
 * not while a fresh level has less than so much of its rise behind it, for then the lip is more than a week off.
 */
const QUIET = 14;
const FRESH = 10;
const RISEN = 0.2;

export function outlookAsked(room: Room, loop: DeepReadonly<Loop>, state: Prefilter): Outlook | null {
  const before = reckoned.get(state);
  if (before !== undefined) return before;
  const outlook = reckon(room, loop, state);
  reckoned.set(state, outlook);
  return outlook;
}

/** Several rows and their words ask for the same: reckoned once for each state of a prefilter. */
const reckoned = new WeakMap<Prefilter, Outlook | null>();

function reckon(room: Room, loop: DeepReadonly<Loop>, state: Prefilter): Outlook | null {
  const { lastClean, flowFell, since, level } = state;
  if (level?.spilled === true || lastClean === null || flowFell !== null || addDays(lastClean.day, QUIET) > room.on)
    return null;
  const [first, last, lip] = [since[0]?.level ?? null, level?.level ?? null, loop.spillsAt].map(middle);
  if (!state.near && level !== null && room.on - level.day <= FRESH && since.length > 1) {
    const rise = ((last ?? 0) - (first ?? 0)) / ((lip ?? 0) - (first ?? 0));
    if (rise < RISEN) return null;
  }
  return spillOutlook(room, loop);
}

/** The clause to jot when all of a prefilter's layers were cleaned; null: nobody said how many it has. */
export function cleanedAll(layers: number | null): string {
  return `cleaned ${layers === null ? 'all layers' : `${layers} of ${layers} layers`}`;
}
