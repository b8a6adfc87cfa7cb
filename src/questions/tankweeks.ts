/**
 * How long fish held glass: tank-weeks, the scarce thing of a fish room. A tank that several stocks share
 * on a day counts for each in equal parts, so that no tank-week is counted twice.
 */
import type { Day } from '../core/day.ts';
import type { DeepReadonly } from '../core/readonly.ts';
import type { Place } from '../core/span.ts';
import { isBrood } from '../state/bodies.ts';
import type { SeenBody } from '../state/bodies.ts';
import type { Room } from '../state/draft.ts';
import { movesOf } from './counts/ledger.ts';
import { laidDay } from './laying.ts';

/** Days in one tank: from the first, up to the last, which is not counted. */
export interface Stay {
  readonly body: SeenBody;
  readonly tank: string;
  readonly from: Day;
  readonly to: Day;
}

export interface TankWeeks {
  readonly weeks: number;
  /** Arrivals and leavings that the stays rest on. */
  readonly lines: readonly DeepReadonly<Place>[];
}

/** Tank-weeks of a body up to the room's day. */
export function tankWeeks(room: Room, body: SeenBody): TankWeeks {
  const all = allStays(room);
  const days = (all.of.get(body) ?? []).reduce((sum, stay) => sum + sharedDays(stay, all.in.get(stay.tank) ?? []), 0);
  const moves = movesOf(room, body.name);
  return {
    weeks: days / 7,
    lines: [...body.lines.slice(0, 1), ...moves.map(({ place }) => place), ...body.gone.map(({ place }) => place)],
  };
}

interface Stays {
  readonly of: ReadonlyMap<SeenBody, readonly Stay[]>;
  readonly in: ReadonlyMap<string, readonly Stay[]>;
}

const KNOWN = new WeakMap<Room, Stays>();

/** Every stay of every stock: worked out once a room. */
function allStays(room: Room): Stays {
  const known = KNOWN.get(room);
  if (known) return known;
  const bodies = [...room.stock.groups.values(), ...[...room.stock.broods.values()].filter((one) => !one.suspected)];
  const of = new Map<SeenBody, readonly Stay[]>(bodies.map((body) => [body, staysOf(room, body)]));
  const inTank = new Map<string, Stay[]>();
  for (const stay of [...of.values()].flat()) inTank.set(stay.tank, [...(inTank.get(stay.tank) ?? []), stay]);
  const stays = { of, in: inTank };
  KNOWN.set(room, stays);
  return stays;
}

/** Where a body was, from when to when. */
export function staysOf(room: Room, body: SeenBody): readonly Stay[] {
  const start = isBrood(body) ? (laidDay(room, body) ?? room.on) : body.day;
  const moves = movesOf(room, body.name);
  const first = isBrood(body) ? body.natal : (moves[0]?.from ?? body.home ?? [...body.parts.keys()][0] ?? null);
  const open = new Map<string, Day>(first === null ? [] : [[first, start]]);
  const stays: Stay[] = [];
  const close = (tank: string | null, to: Day): void => {
    const from = tank === null ? undefined : open.get(tank);
    if (tank === null || from === undefined) return;
    open.delete(tank);
    if (to > from) stays.push({ body, tank, from, to });
  };
  const changes = [
    ...moves.map((move) => ({ day: move.day, from: move.from, to: move.to, all: move.as === 'all' })),
    ...body.gone.map((gone) => ({ day: gone.day, from: gone.tank, to: null, all: gone.whole })),
  ].toSorted((a, b) => a.day - b.day);
  const lastAt = new Map<string, Day>();
  for (const { day, from, to, all } of changes) {
    if (from !== null) lastAt.set(from, day);
    if (all) close(from, day);
    if (to !== null && !open.has(to)) open.set(to, day);
  }
  const end = isBrood(body) && body.ended ? body.ended.day : room.on;
  for (const tank of [...open.keys()]) {
    const there = (body.parts.get(tank)?.high ?? 0) > 0;
    close(tank, there ? room.on : (lastAt.get(tank) ?? end));
  }
  return stays;
}

/** Days of a stay, each divided by how many stocks were in that tank. */
function sharedDays(stay: Stay, inTank: readonly Stay[]): number {
  const others = inTank.filter((one) => one !== stay && one.from < stay.to && one.to > stay.from);
  const turns = [...new Set([stay.from, stay.to, ...others.flatMap(({ from, to }) => [from, to])])]
    .filter((day) => day >= stay.from && day <= stay.to)
    .sort((a, b) => a - b);
  return turns.slice(1).reduce((sum, to, index) => {
    const from = turns[index] ?? to;
    const sharing = 1 + others.filter((one) => one.from <= from && one.to >= to).length;
    return sum + (to - from) / sharing;
  }, 0);
}
