/**
 * What a move of the largest or smallest says of the lengths on either side: those that went and those that stayed are
 * no longer as long as the whole brood was. How well a hand sorts nobody knows, so each side is an interval: from no
 * sorting at all to the two ends of one bell of lengths, cut where that many went (ours).
 */
import type { Day } from '../../core/day.ts';
import type { Interval } from '../../core/interval.ts';
import { dayWords } from '../../core/words.ts';
import type { DeepReadonly } from '../../core/readonly.ts';
import { normalAt } from '../../core/stats.ts';
import { BROOD_CV } from '../../science/growth.ts';
import { partIn, type SeenBody } from '../../state/bodies.ts';
import type { Room } from '../../state/draft.ts';
import type { Move } from '../../state/stock.ts';
import { since } from '../../state/when.ts';
import { onceIn } from '../holds/once.ts';

/** How the fish of a body in one tank stand to the mean of all of them, since they were sorted. */
export interface Sorted {
  readonly day: Day;
  /** Mean length there over the mean of the whole body. */
  readonly times: Interval & { readonly likely: number };
  /** The share of all that may have gone from here as the largest: of the longest so many are surely left. */
  readonly bestGone: number;
  /** A length was read there since: then it is known how long these are, whatever the others are. */
  readonly read: boolean;
  /** `the rest, after the largest went to D1 on 3 Mar`. */
  readonly words: string;
}

/** Null where the fish of that tank were never parted from others by size. */
export const sortedIn = onceIn((room: Room, body: SeenBody, tank: string): Sorted | null => {
  const [first] = room.stock.picked.get(body.name) ?? [];
  if (first === undefined) return null;
  const mine = since(room.stock.moves, first).filter(
    (move) => move.body === body.name && (move.from === tank || move.to === tank),
  );
  const last = mine.findLast(({ which }) => which !== 'any');
  if (last === undefined) return null;
  const share = shareMoved(room, body, last);
  // Others came to them, or they were sorted more than once: they may be any of both.
  const mixed = mine.some((move) => move !== last && (move.which !== 'any' || move.to === tank));
  const [low, high] = [sideOf(share, false), sideOf(share, true)];
  const longer = (last.which === 'largest') === (last.to === tank);
  const times = mixed ? { low: low.low, likely: 1, high: high.high } : longer ? high : low;
  return {
    day: last.day,
    times,
    bestGone: longer && !mixed ? 0 : last.which === 'largest' ? share.high : 1 - share.low,
    read: body.sizes.some((seen) => !seen.replaced && seen.tank === tank && seen.day > last.day),
    words: wordsOf(room, last, tank, mixed),
  };
});

/** Of those that were together, the share that went: by what is believed to be on either side today. */
function shareMoved(room: Room, body: SeenBody, { from, count }: DeepReadonly<Move>): Interval {
  const stayed = from === null ? { low: 0, likely: null, high: Infinity } : partIn(body, from);
  const of = (went: number, left: number): number => (went + left > 0 ? went / (went + left) : 1);
  return {
    low: of(count.low, Number.isFinite(stayed.high) ? stayed.high : 10 * Math.max(1, count.low)),
    likely: of(count.likely ?? count.low, stayed.likely ?? stayed.low),
    high: of(Number.isFinite(count.high) ? count.high : 10 * Math.max(1, count.low), stayed.low),
  };
}

/** Mean of the longer (shorter) side of a bell over that of all, for each share that may have gone. */
function sideOf(share: Interval, longer: boolean): Interval & { readonly likely: number } {
  const at = (went: number): number => {
    const part = Math.min(0.98, Math.max(0.02, longer ? went : 1 - went));
    return 1 + ((longer ? 1 : -1) * BROOD_CV * bellAt(normalAt(part))) / part;
  };
  const likely = at(share.likely ?? (share.low + share.high) / 2);
  return longer ? { low: 1, likely, high: at(share.low) } : { low: at(share.high), likely, high: 1 };
}

/** Height of the bell of lengths so many spreads off its middle. */
const bellAt = (z: number): number => Math.exp(-0.5 * z * z) / Math.sqrt(2 * Math.PI);

function wordsOf(room: Room, { which, from, to, day }: DeepReadonly<Move>, tank: string, mixed: boolean): string {
  const on = dayWords(day, room.on);
  const parted = `the ${which} went ${from === null ? '' : `from ${from} `}to ${to} on ${on}`;
  if (mixed) return `longer and shorter ones, after ${parted} and others were moved`;
  return to === tank ? `the ${which} of them, from ${from ?? 'the others'} on ${on}` : `the rest, after ${parted}`;
}
