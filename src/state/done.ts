/**
 * Which lines count as doing a chore: `cleaned 2 of 6 layers` for the prefilter, `water change` in the
 * water that the tank shares, a test of that water … A part of it done is noted as a part.
 */
import type { Day } from '../core/day.ts';
import type { Place } from '../core/span.ts';
import type { DeepReadonly } from '../core/readonly.ts';
import type { WaterAmount } from '../journal/event.ts';
import type { Room } from './draft.ts';
import { lastFeed } from './fed.ts';
import { isFull } from './prefilter.ts';
import type { LoopClean } from './plumbing.ts';
import { sameAction, type StandingChore } from './chores.ts';
import { loopVolume, liveVolume } from './volume.ts';
import { loopOf } from './tanks.ts';

export interface Done {
  readonly day: Day;
  /** Share of the whole that was done, 0 to 1. */
  readonly part: number;
  /** `2 of 6 layers`, `15 %`: how a part is told; empty for the whole. */
  readonly told: string;
  readonly place: Place;
  /** Order among the levels of a loop; null for other chores. */
  readonly seq: number | null;
}

/** A change of this share of what was asked counts as the whole of it (ours: a setting). */
const NEARLY_ALL = 0.8;

/**
 * When a standing chore was done, oldest first, from the last time that it was done in full: what came
 * before changes nothing any more. Lines from before it was set count too.
 */
export function doneSinceWhole(room: Room, chore: DeepReadonly<StandingChore>): Done[] {
  const said = room.chores.did.findLast((did) => did.where === chore.where && sameAction(did.action, chore.action));
  const done = [...byClause(room, chore), ...(said === undefined ? [] : [whole(said)])].sort((a, b) => a.day - b.day);
  return done.slice(
    Math.max(
      0,
      done.findLastIndex(({ part }) => part >= 1),
    ),
  );
}

function cleansSinceFull(room: Room, where: string): DeepReadonly<LoopClean[]> {
  const cleans = room.plumbing.loops.get(where)?.cleans ?? [];
  return cleans.slice(Math.max(0, cleans.findLastIndex(isFull)));
}

function byClause(room: Room, chore: DeepReadonly<StandingChore>): Done[] {
  const { where } = chore;
  switch (chore.action.kind) {
    case 'clean prefilter':
      return cleansSinceFull(room, where).map((clean): Done => {
        const part = clean.of === null ? 1 : clean.layers / clean.of;
        const told = part < 1 && clean.of !== null ? `${clean.layers} of ${clean.of} layers` : '';
        return { day: clean.day, part, told, place: clean.place, seq: clean.seq };
      });
    case 'clean media':
      return once(room.water.disturbed.findLast((one) => one.what === 'media cleaned' && one.where === where));
    case 'rinse sponge':
      return once(room.water.disturbed.findLast((one) => one.what === 'sponge rinsed' && one.where === where));
    case 'water change':
      return changesOf(room, chore);
    case 'top up':
      return once(room.water.topUps.findLast((one) => reaches(room, one, where)));
    case 'test':
      return once(room.water.readings.findLast((one) => reaches(room, one, where)));
    case 'feed':
      return once(lastFeed(room, where));
    case 'harvest':
      return once(room.cultures.jars.get(where)?.harvests.at(-1));
    case 'restart':
      return once(room.cultures.jars.get(where)?.started ?? undefined);
    case 'own':
      return [];
  }
}

function once(fact: { readonly day: Day; readonly place: Place } | undefined): Done[] {
  return fact === undefined ? [] : [whole(fact)];
}

function whole(fact: { readonly day: Day; readonly place: Place }): Done {
  return { day: fact.day, part: 1, told: '', place: fact.place, seq: null };
}

type Fact = DeepReadonly<{ where: string; tanks: string[]; day: Day; minute: number | null }>;

/** True where something done to one water was done to the water of `where` too. */
function reaches(room: Room, fact: Fact, where: string): boolean {
  if (fact.where === where || fact.tanks.includes(where)) return true;
  if (!room.plumbing.loops.has(where)) return false;
  return fact.where === 'room' || loopOf(room, fact.where, fact.day, fact.minute) === where;
}

/**
 * Water changes that reached that water, those of one day together, as shares of what was asked: back
 * to the last day on which all of it was done.
 */
function changesOf(room: Room, chore: DeepReadonly<StandingChore>): Done[] {
  const asked = chore.amount === null ? null : shareOf(room, chore.amount, chore.where, chore.where, room.on);
  const done: Done[] = [];
  let today: DayOfChanges | null = null;
  const { changes } = room.water;
  for (let at = changes.length - 1; at >= 0; at -= 1) {
    const change = changes[at];
    if (change === undefined || !reaches(room, change, chore.where)) continue;
    if (today !== null && change.day !== today.day) {
      done.unshift(doneOn(today, asked));
      if (done[0]?.part === 1) return done;
      today = null;
    }
    today ??= { day: change.day, place: change.place, shares: [] };
    today.shares.push(shareOf(room, change.amount, change.where, chore.where, change.day));
  }
  return today === null ? done : [doneOn(today, asked), ...done];
}

interface DayOfChanges {
  readonly day: Day;
  readonly place: Place;
  readonly shares: (number | null)[];
}

/** The changes of one day: what stays of the old water multiplies, so two of 20 % renew 36 %. */
function doneOn({ day, place, shares }: DayOfChanges, asked: number | null): Done {
  const share = shares.reduce<number | null>(
    (total, one) => (total === null || one === null ? null : 1 - (1 - total) * (1 - one)),
    0,
  );
  const part = asked === null || asked <= 0 || share === null ? 1 : Math.min(1, share / asked);
  const full = part >= NEARLY_ALL;
  return { day, part: full ? 1 : part, told: full ? '' : `${Math.round((share ?? 0) * 100)} %`, place, seq: null };
}

/**
 * The share of the water of `of` that a change at `where` renewed, or null where the litres are not
 * known. One tank of a loop drained and filled dilutes the whole loop by its litres; a share of all the
 * room is that share of each water.
 */
export function shareOf(room: Room, amount: WaterAmount, where: string, of: string, day: Day): number | null {
  const middle = amount.likely ?? (amount.low + Math.min(amount.high, amount.low * 2)) / 2;
  if ((where === of || where === 'room') && amount.unit === 'share') return middle;
  const litres = amount.unit === 'L' ? middle : shareInLitres(room, middle, where, day);
  const loop = room.plumbing.loops.has(of) ? of : loopOf(room, of, day);
  if (amount.unit === 'share' && where === loop) return middle;
  const total = loop === null ? liveVolume(room, of).litres : loopVolume(room, loop, day);
  const held = total?.likely ?? null;
  return litres === null || held === null || held <= 0 ? null : Math.min(1, litres / held);
}

function shareInLitres(room: Room, share: number, where: string, day: Day): number | null {
  const held = room.plumbing.loops.has(where) ? loopVolume(room, where, day) : liveVolume(room, where).litres;
  return held?.likely === undefined || held.likely === null ? null : held.likely * share;
}
