/** Reading the plumbing: which tanks there are, in which order, and who shares whose water when. */
import { toDay, type Day } from '../core/day.ts';
import type { DeepReadonly } from '../core/readonly.ts';
import type { Room } from './draft.ts';
import type { Moment, Plumbed, Tank } from './plumbing.ts';

type RoomTank = DeepReadonly<Tank>;

/** True where `a` is at or before day and minute; without a minute the whole of that day counts. */
export function isBy(a: Moment, day: Day, minute?: number | null): boolean {
  if (a.day !== day) return a.day < day;
  return minute === undefined || minute === null || (a.minute ?? 0) <= minute;
}

/** How a tank stood to its loop at a moment, or null before its first line. */
export function plumbedAt(
  tank: RoomTank,
  day: Day,
  minute?: number | null,
): { home: string | null; on: string | null; entry: DeepReadonly<Plumbed> } | null {
  const entry = tank.plumbed.findLast((one) => isBy(one, day, minute));
  if (entry === undefined) return null;
  const back = entry.until !== null && isBy(entry.until, day, minute);
  return { home: entry.home, on: back ? entry.home : entry.on, entry };
}

/**
 * The loop whose water a tank shared then, or null for a tank alone, valved off or unknown. A tray or
 * net shares the water of the tank that it hangs in. Without a minute: as it stood at that day's end.
 */
export function loopOf(room: Room, tank: string, day: Day = room.on, minute?: number | null): string | null {
  const holder = room.plumbing.tanks.get(holderOf(room, tank));
  return holder === undefined ? null : (plumbedAt(holder, day, minute)?.on ?? null);
}

/** The loop that a tank belongs to, whether or not it shares its water just then. */
export function homeLoopOf(room: Room, tank: string, day: Day = room.on): string | null {
  const holder = room.plumbing.tanks.get(holderOf(room, tank));
  return holder === undefined ? null : (plumbedAt(holder, day)?.home ?? null);
}

/** The tank whose water it is: itself, or for a tray the tank that it hangs in (a circle ends where it closes). */
export function holderOf(room: Room, tank: string): string {
  // Nearly every tank stands by itself, and this is asked for every line.
  if ((room.plumbing.tanks.get(tank)?.inTank ?? null) === null) return tank;
  const seen = new Set<string>();
  let name = tank;
  for (;;) {
    const inside = room.plumbing.tanks.get(name)?.inTank ?? null;
    if (inside === null || seen.has(inside) || !room.plumbing.tanks.has(inside)) return name;
    seen.add(name);
    name = inside;
  }
}

/** The tanks that shared a loop's water then, in walking order. */
export function tanksOn(room: Room, loop: string, day: Day = room.on, minute?: number | null): string[] {
  return liveNames(room, day).filter((tank) => loopOf(room, tank, day, minute) === loop);
}

/**
 * Every tank that shared the water of a tank (itself included), of a loop, or with `room` all of them,
 * in walking order.
 */
export function sharers(room: Room, where: string, day: Day = room.on, minute?: number | null): string[] {
  if (where === 'room') return liveNames(room, day);
  if (room.plumbing.loops.has(where)) return tanksOn(room, where, day, minute);
  const loop = loopOf(room, where, day, minute);
  if (loop !== null) return tanksOn(room, loop, day, minute);
  const holder = holderOf(room, where);
  const sharing = liveNames(room, day).filter((tank) => holderOf(room, tank) === holder);
  return sharing.includes(where) ? sharing : [where, ...sharing];
}

/** Tanks set up and not retired on that day, in walking order. */
export function liveTanks(room: Room, day: Day = room.on): RoomTank[] {
  return liveNames(room, day).flatMap((name) => room.plumbing.tanks.get(name) ?? []);
}

/** Names of all live tanks: the walk as set, then the others as declared, each tray after its tank. */
export function walkOrder(room: Room): string[] {
  return liveNames(room, room.on);
}

function liveNames(room: Room, day: Day): string[] {
  const { tanks } = room.plumbing;
  return room.plumbing.order.filter((name) => {
    const tank = tanks.get(name);
    return tank !== undefined && tank.since <= day && (tank.retired === null || tank.retired.day > day);
  });
}

/** Walking order of all tanks: as set, then as declared, each tray after its tank. */
export function orderOf(room: Room): string[] {
  const { tanks } = room.plumbing;
  const order = new Set<string>();
  for (const name of room.settings.walk) if (tanks.has(name)) order.add(name);
  for (const tank of tanks.values()) if (tank.inTank === null) order.add(tank.name);
  const names = [...order];
  for (const tank of tanks.values()) {
    if (order.has(tank.name)) continue;
    const at = names.indexOf(holderOf(room, tank.name));
    names.splice(at < 0 ? names.length : at + 1, 0, tank.name);
  }
  return names;
}

/** Moment `minutes` after another; an untimed one counts from its day's start. */
export function after(from: Moment, minutes: number): Moment {
  const total = (from.minute ?? 0) + minutes;
  return { day: toDay(from.day + Math.floor(total / 1440)), minute: Math.floor(total % 1440) };
}

/** True for the tank that stands for the new water (`tank Tap: 20 L; alone`): it is tested, and nobody lives there. */
export function isNewWater(tank: string): boolean {
  return tank.toLowerCase() === 'tap';
}
