/** Where young could go, and the line that says they went. */
import { tankInLine } from '../../core/words.ts';
import { bodiesIn, isBrood, tanksOf } from '../../state/bodies.ts';
import type { SeenBrood } from '../../state/bodies.ts';
import type { Room } from '../../state/draft.ts';
import { openDispute } from '../../state/quarrel.ts';
import { isNewWater, sharers, walkOrder } from '../../state/tanks.ts';
import { groupMayHurt, mayHurt } from '../danger.ts';
import { oncePerRoom } from '../holds/once.ts';
import { sickBeside } from '../holds/sickness.ts';
import { lastReason } from '../last.ts';
import { watches } from '../watch.ts';
import type { Sent } from './item.ts';

/** The first tank in walking order that holds no fish; trays, quarantine tanks and tanks shut to fish from there are left out. */
export function freeTank(room: Room, from: string | null): string | null {
  return walkOrder(room).find((name) => isFree(room, name) && isOpen(room, from, name)) ?? null;
}

/** Tanks on a filter that is watched. */
const onWatch = oncePerRoom((room) => new Set(watches(room).flatMap(({ body }) => body.tanks)));

/**
 * No fish go into sickness, a hold, quarantine or a filter that is watched, unless their tank is in it as well; nor out
 * of sickness, a hold or quarantine into the water of others.
 */
function isOpen(room: Room, from: string | null, name: string): boolean {
  const kept = from !== null && isKeptApart(room, from);
  const clean = !isKeptApart(room, name);
  if (kept ? clean && hasFish(room, name) : !clean) return false;
  return (from !== null && onWatch(room).has(from)) || !onWatch(room).has(name);
}

function isKeptApart(room: Room, tank: string): boolean {
  return lastReason(room, tank) !== null || sickBeside(room, tank) !== null;
}

/** Fish live there, or in a tank that shares its water. */
function hasFish(room: Room, name: string): boolean {
  return sharers(room, name).some((tank) => bodiesIn(room, tank).length > 0);
}

function isFree(room: Room, name: string): boolean {
  return canHouse(room, name) && bodiesIn(room, name).length === 0;
}

/** A tank to live in: no tray, no quarantine tank, and not the one that stands for the new water. */
function canHouse(room: Room, name: string): boolean {
  const tank = room.plumbing.tanks.get(name);
  return tank !== undefined && tank.inTank === null && !tank.quarantine && !isNewWater(name);
}

/**
 * The line that moves a brood out of its tank: to where some of them are raised already, so that one brood takes one tank,
 * to one that is free, else to where other young are raised. It says `all` and no number: a guess of ours that is jotted
 * would stand as a count.
 */
export function moveLine(
  room: Room,
  brood: SeenBrood,
  from = tanksOf(brood)[0] ?? null,
): { close: string; where: string; sends: { readonly sends?: Sent } } {
  const { to, where } = goalOf(room, brood, from);
  const waits = disputeThere(room, from) ? '; not while the pair disputes' : '';
  return {
    sends: to === null ? {} : { sends: { name: brood.name, brood, from, to } },
    close: `${from ?? brood.name}: moved all ${brood.name} to ${to === null ? '…' : tankInLine(to)}`,
    where: `${where}${waits}`,
  };
}

/** To catch young in the middle of a dispute makes it worse (common practice, no source). */
function disputeThere(room: Room, tank: string | null): boolean {
  if (tank === null) return false;
  return bodiesIn(room, tank).some((body) => !isBrood(body) && openDispute(body) !== null);
}

/** The tank that they go to, and in words why that one. */
function goalOf(room: Room, brood: SeenBrood, from: string | null): { to: string | null; where: string } {
  const isElsewhere = (name: string): boolean =>
    name !== from && isNursery(room, name) && isOpen(room, from, name) && isHarmless(room, brood, from, name);
  const own = tanksOf(brood).find(isElsewhere);
  if (own !== undefined) return { to: own, where: `${own} has some of them already` };
  const free = freeTank(room, from);
  if (free !== null) return { to: free, where: `${free} is free` };
  const raising = walkOrder(room).find(isElsewhere);
  if (raising === undefined) return { to: null, where: 'no tank is free' };
  return { to: raising, where: `no tank is free, but ${raising} has only young and grow-outs` };
}

/** Neither may these hurt other young there, nor the others, or fish of a group that are longer or of no known length, these. */
function isHarmless(room: Room, brood: SeenBrood, from: string | null, name: string): boolean {
  return bodiesIn(room, name)
    .filter((body) => body !== brood)
    .every((other) =>
      isBrood(other)
        ? !mayHurt(room, brood, from ?? name, other) && !mayHurt(room, other, name, brood)
        : !groupMayHurt(room, other, name, brood),
    );
}

/** A tank with fish, and no breeders among them. */
function isNursery(room: Room, name: string): boolean {
  const bodies = bodiesIn(room, name);
  return canHouse(room, name) && bodies.length > 0 && bodies.every((body) => isBrood(body) || body.kind === 'group');
}
