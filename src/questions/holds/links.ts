/**
 * The room as links for `reach`: water shared for a time, fish moved, nets and sponges that went along. Where a line has no time of
 * day the whole of its day counts, so that what may have been shared is taken as shared.
 */
import { toDay, type Day } from '../../core/day.ts';
import type { DeepReadonly } from '../../core/readonly.ts';
import type { Place } from '../../core/span.ts';
import type { Link } from '../../science/reach.ts';
import type { Room } from '../../state/draft.ts';
import type { Plumbed, Tank } from '../../state/plumbing.ts';
import type { Shared } from '../../state/shared.ts';
import type { Move } from '../../state/stock.ts';

export type Way =
  | { readonly how: 'water'; readonly loop: string; readonly places: readonly Place[] }
  | { readonly how: 'tray'; readonly places: readonly Place[] }
  | { readonly how: 'shared' | 'brought'; readonly thing: string; readonly places: readonly Place[] }
  | { readonly how: 'fish'; readonly move: DeepReadonly<Move>; readonly places: readonly Place[] };

const MINUTES = 1440;

/** Minutes since day 0 at the start of a day, or at its minute. */
export function startOf(day: Day, minute: number | null = null): number {
  return day * MINUTES + (minute ?? 0);
}

/** The end of a day, or just after its minute. */
export function endOf(day: Day, minute: number | null = null): number {
  return minute === null ? (day + 1) * MINUTES : day * MINUTES + minute + 1;
}

/** The day that a time of `startOf` falls in. */
export function dayOfTime(time: number): Day {
  return toDay(time / MINUTES);
}

/** The water of a loop is a node of its own: what it picked up stays in the sump after a tank has left. */
export function loopNode(loop: string): string {
  return `water of ${loop}`;
}

/** Every way that was open at or after a time, and is by the end of the room's day: `off the loop until` ends on a day to come. */
export function linksSince(room: Room, since: number): readonly Link<Way>[] {
  const links: Link<Way>[] = [];
  for (const tank of room.plumbing.tanks.values()) {
    links.push(...waterLinks(tank));
    if (tank.inTank !== null) links.push(trayLink(tank, tank.inTank));
  }
  for (const move of movesSince(room, since)) if (move.from !== null) links.push(fishLink(move, move.from));
  links.push(...room.shared.flatMap(sharedLinks));
  const now = endOf(room.on);
  return links.filter((link) => link.until > since && link.from < now);
}

/** Moves on or after the day of a time, oldest first. */
function movesSince(room: Room, since: number): readonly DeepReadonly<Move>[] {
  const { moves } = room.stock;
  return moves.filter((move) => endOf(move.day, move.minute) > since);
}

function waterLinks(tank: DeepReadonly<Tank>): Link<Way>[] {
  return tank.plumbed.flatMap((entry, index) => {
    const next = tank.plumbed[index + 1];
    const gone = tank.retired === null ? Infinity : endOf(tank.retired.day);
    const until = Math.min(next === undefined ? Infinity : endOf(next.day, next.minute), gone);
    const spans: Link<Way>[] = [];
    if (entry.on !== null) spans.push(shared(tank.name, entry.on, entry, startOf(entry.day, entry.minute), until));
    else if (entry.until !== null && entry.home !== null) {
      spans.push(shared(tank.name, entry.home, entry, startOf(entry.until.day, entry.until.minute), until));
    }
    return spans.filter((span) => span.from < span.until);
  });
}

function shared(tank: string, loop: string, entry: DeepReadonly<Plumbed>, from: number, until: number): Link<Way> {
  const label: Way = { how: 'water', loop, places: [entry.place] };
  return { a: tank, b: loopNode(loop), from, until, bothWays: true, label };
}

function trayLink(tank: DeepReadonly<Tank>, holder: string): Link<Way> {
  const until = tank.retired === null ? Infinity : endOf(tank.retired.day);
  const label: Way = { how: 'tray', places: [tank.declared] };
  return { a: tank.name, b: holder, from: startOf(tank.since), until, bothWays: true, label };
}

/** Nobody knows whose turn a net came first on a day without times: the whole of it counts. */
function sharedLinks({ thing, from, to, bothWays, day, minute, until, place }: DeepReadonly<Shared>): Link<Way>[] {
  const span = { from: startOf(day, minute), until: endOf(until, minute), bothWays };
  const label: Way = { how: bothWays ? 'shared' : 'brought', thing, places: [place] };
  return from.flatMap((a) => to.filter((b) => a !== b).map((b) => ({ a, b, ...span, label })));
}

function fishLink(move: DeepReadonly<Move>, from: string): Link<Way> {
  const label: Way = { how: 'fish', move, places: [move.place] };
  return {
    a: from,
    b: move.to,
    from: startOf(move.day, move.minute),
    until: endOf(move.day, move.minute),
    bothWays: false,
    label,
  };
}
