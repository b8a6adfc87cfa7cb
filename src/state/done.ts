/**
 * Which lines count as doing a chore: `cleaned 2 of 6 layers` for the prefilter, `water change` in the
 * water that the tank shares, a test of that water … A part of it done is noted as a part.
 */
import type { Day } from '../core/day.ts';
import type { Place } from '../core/span.ts';
import type { DeepReadonly } from '../core/readonly.ts';
import type { WaterAmount } from '../journal/event.ts';
import type { Room } from './draft.ts';
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
export const NEARLY_ALL = 0.8;

/** When a standing chore was done, oldest first; lines from before it was set count too. */
export function timesDone(room: Room, chore: DeepReadonly<StandingChore>): Done[] {
  const said = room.chores.did
    .filter((did) => did.where === chore.where && sameAction(did.action, chore.action))
    .map((did): Done => whole(did));
  return [...byClause(room, chore), ...said].sort((a, b) => a.day - b.day);
}

function byClause(room: Room, chore: DeepReadonly<StandingChore>): Done[] {
  const { where } = chore;
  switch (chore.action.kind) {
    case 'clean prefilter':
      return (room.plumbing.loops.get(where)?.cleans ?? []).map((clean): Done => {
        const part = clean.of === null ? 1 : clean.layers / clean.of;
        const told = part < 1 && clean.of !== null ? `${clean.layers} of ${clean.of} layers` : '';
        return { day: clean.day, part, told, place: clean.place, seq: clean.seq };
      });
    case 'clean media':
      return room.water.disturbed.filter((one) => one.what === 'media cleaned' && one.where === where).map(whole);
    case 'rinse sponge':
      return room.water.disturbed.filter((one) => one.what === 'sponge rinsed' && one.where === where).map(whole);
    case 'water change':
      return changesOf(room, chore);
    case 'top up':
      return room.water.topUps.filter((one) => reaches(room, one, where)).map(whole);
    case 'test':
      return room.water.readings.filter((one) => reaches(room, one, where)).map(whole);
    case 'feed':
      return room.cultures.feeds.filter((one) => one.where === where).map(whole);
    case 'harvest':
      return (room.cultures.jars.get(where)?.harvests ?? []).map(whole);
    case 'restart': {
      const started = room.cultures.jars.get(where)?.started ?? null;
      return started === null ? [] : [whole(started)];
    }
    case 'own':
      return [];
  }
}

function whole(fact: { readonly day: Day; readonly place: Place }): Done {
  return { day: fact.day, part: 1, told: '', place: fact.place, seq: null };
}

type Fact = DeepReadonly<{ where: string; tanks: string[]; day: Day; minute: number | null }>;

/** True where something done to one water was done to the water of `where` too. */
function reaches(room: Room, fact: Fact, where: string): boolean {
  if (fact.where === where || fact.tanks.includes(where)) return true;
  return room.plumbing.loops.has(where) && loopOf(room, fact.where, fact.day, fact.minute) === where;
}

/** Water changes that reached that water, those of one day together, as shares of what was asked. */
function changesOf(room: Room, chore: DeepReadonly<StandingChore>): Done[] {
  const days = new Map<Day, { share: number | null; place: Place }>();
  for (const change of room.water.changes) {
    if (!reaches(room, change, chore.where)) continue;
    const share = shareOf(room, change.amount, change.where, chore.where, change.day);
    const before = days.get(change.day);
    // What stays of the old water multiplies: two changes of 20 % renew 36 %.
    const total =
      before === undefined
        ? share
        : before.share === null || share === null
          ? null
          : 1 - (1 - before.share) * (1 - share);
    days.set(change.day, { share: total, place: change.place });
  }
  const asked = chore.amount === null ? null : shareOf(room, chore.amount, chore.where, chore.where, room.on);
  return [...days].map(([day, { share, place }]): Done => {
    const part = asked === null || asked <= 0 || share === null ? 1 : Math.min(1, share / asked);
    const full = part >= NEARLY_ALL;
    return { day, part: full ? 1 : part, told: full ? '' : `${Math.round((share ?? 0) * 100)} %`, place, seq: null };
  });
}

/**
 * The share of the water of `of` that a change at `where` renewed, or null where the litres are not
 * known. One tank of a loop drained and filled dilutes the whole loop by its litres.
 */
export function shareOf(room: Room, amount: WaterAmount, where: string, of: string, day: Day): number | null {
  const middle = amount.likely ?? (amount.low + Math.min(amount.high, amount.low * 2)) / 2;
  if (where === of && amount.unit === 'share') return middle;
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
