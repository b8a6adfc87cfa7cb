/**
 * How far a hold goes: from its tanks, from fourteen days before the first sign, over shared water and
 * moved fish in the order of time. Fish that came into a sick tank in those days may have brought it,
 * so the tanks that they left count as well. A tank valved off before the trouble can have arrived is clean.
 */
import { addDays, type Day } from '../../core/day.ts';
import type { DeepReadonly } from '../../core/readonly.ts';
import type { Place } from '../../core/span.ts';
import { reach } from '../../science/reach.ts';
import type { Arrival, Link } from '../../science/reach.ts';
import type { Room } from '../../state/draft.ts';
import type { Hold, Sick } from '../../state/health.ts';
import type { Sold } from '../../state/sale.ts';
import type { Move } from '../../state/stock.ts';
import { walkOrder } from '../../state/tanks.ts';
import { courses } from './courses.ts';
import { dayOfTime, endOf, linksSince, loopNode, startOf, type Way } from './links.ts';
import { oncePerRoom } from './once.ts';
import { routeSteps, sourceRoute, sourcesOf, type Step } from './route.ts';

/** Days before the first sign in which it can have spread (ours). */
export const LOOK_BACK_DAYS = 14;
/** Days without a sign or a dose after which a hold is clear (three to four weeks: common practice, no source). */
export const CLEAR_DAYS = 28;
/** Days before a `hold` line in which a sickness in its tanks is taken for the same trouble (ours). */
const SAME_TROUBLE_DAYS = 28;

export type Seen = { readonly day: Day; readonly place: Place };

export interface Reached {
  readonly tank: string;
  /** The first day on which it can have been exposed. */
  readonly since: Day;
  /** Minutes, for comparing with moves of that day. */
  readonly at: number;
  readonly origin: boolean;
  readonly route: readonly Step[];
}

export interface HoldReach {
  readonly hold: DeepReadonly<Hold>;
  readonly firstSign: Seen;
  readonly lookBack: Day;
  readonly lastSign: Seen;
  /** The last dose of any course in the reach, and the end of those not given yet. */
  readonly lastDose: Seen | null;
  readonly dosesTo: Day | null;
  readonly clear: Day;
  readonly tanks: readonly Reached[];
  /** Tanks of a reached loop that were off it in time, with the line that took them off. */
  readonly clean: readonly { readonly tank: string; readonly loop: string; readonly place: Place }[];
  readonly released: readonly string[];
  /** Fish that left a reached tank for another one. */
  readonly moved: readonly DeepReadonly<Move>[];
  /** Fish that left the room from a reached tank. */
  readonly sold: readonly DeepReadonly<Sold>[];
}

/** Every hold that is open on the room's day, with its reach. */
export const openHolds: (room: Room) => readonly HoldReach[] = oncePerRoom((room) =>
  room.health.holds.filter((hold) => hold.over === null).map((hold) => reachOf(room, hold)),
);

/** The hold that keeps a tank the longest, with the way by which it was reached; null where none reaches it. */
export function heldBy(room: Room, tank: string): { readonly hold: HoldReach; readonly reached: Reached } | null {
  let longest: { hold: HoldReach; reached: Reached } | null = null;
  for (const hold of openHolds(room)) {
    const reached = hold.tanks.find((one) => one.tank === tank);
    if (reached && (longest === null || hold.clear > longest.hold.clear)) longest = { hold, reached };
  }
  return longest;
}

/** Every held tank with the day on which its last hold is clear. */
export function heldTanks(room: Room): ReadonlyMap<string, Day> {
  const held = new Map<string, Day>();
  for (const { tanks, clear } of openHolds(room)) {
    for (const { tank } of tanks) held.set(tank, addDays(clear, Math.max(0, (held.get(tank) ?? clear) - clear)));
  }
  return held;
}

/** How far one hold goes, open or over. */
export function reachOf(room: Room, hold: DeepReadonly<Hold>): HoldReach {
  const firstSign = firstSignOf(room, hold);
  const lookBack = addDays(firstSign.day, -LOOK_BACK_DAYS);
  const start = startOf(lookBack);
  const sources = sourcesOf(room, hold, start, endOf(firstSign.day));
  const starts = [...hold.tanks, ...sources.keys()].map((node) => ({ node, at: start }));
  const links = linksSince(room, start);
  const arrivals = reach(starts, links);
  const released = releasedTanks(room, hold, arrivals, links);
  const tanks = walkOrder(room).flatMap((tank): Reached[] => {
    const arrival = arrivals.get(tank);
    if (!arrival || released.includes(tank)) return [];
    const steps = [...sourceRoute(sources, hold, arrivals, tank), ...routeSteps(arrivals, tank)];
    return [{ tank, since: dayOfTime(arrival.at), at: arrival.at, origin: hold.tanks.includes(tank), route: steps }];
  });
  const names = new Set(tanks.map(({ tank }) => tank));
  const lastSign = lastSignOf(room, hold, tanks, firstSign);
  const doses = dosesIn(room, names, lookBack);
  const last = [lastSign.day, doses.last?.day ?? lastSign.day, doses.to ?? lastSign.day].reduce((a, b) =>
    a > b ? a : b,
  );
  return {
    hold,
    firstSign,
    lookBack,
    lastSign,
    lastDose: doses.last,
    dosesTo: doses.to,
    clear: addDays(last, CLEAR_DAYS),
    tanks,
    clean: cleanTanks(room, arrivals, start),
    released,
    moved: room.stock.moves.filter((move) => move.from !== null && leftAfter(arrivals, move.from, move)),
    sold: room.sale.sales.filter((sale) => soldFrom(room, sale).some((tank) => leftAfter(arrivals, tank, sale))),
  };
}

function signs(room: Room): readonly DeepReadonly<Sick>[] {
  return room.health.sick.filter((one) => one.catching !== false);
}

function firstSignOf(room: Room, hold: DeepReadonly<Hold>): Seen {
  const own: Seen = { day: hold.day, place: hold.place };
  return signs(room)
    .filter(({ day, tanks }) => day <= hold.day && hold.day - day <= SAME_TROUBLE_DAYS && overlap(tanks, hold.tanks))
    .reduce<Seen>((first, { day, place }) => (day <= first.day ? { day, place } : first), own);
}

/** The last sign anywhere in the reach: a sickness that may be catching, or the hold written again. */
function lastSignOf(room: Room, hold: DeepReadonly<Hold>, tanks: readonly Reached[], first: Seen): Seen {
  const inReach = signs(room).filter((one) =>
    tanks.some(({ tank, since }) => one.tanks.includes(tank) && one.day >= since && one.day >= first.day),
  );
  return [{ day: hold.day, place: hold.place }, ...hold.again, ...inReach].reduce<Seen>(
    (last, { day, place }) => (day > last.day ? { day, place } : last),
    first,
  );
}

function dosesIn(room: Room, tanks: ReadonlySet<string>, since: Day): { last: Seen | null; to: Day | null } {
  let last: Seen | null = null;
  let to: Day | null = null;
  for (const course of courses(room)) {
    if (course.lastDose < since || !course.treatment.tanks.some((tank) => tanks.has(tank))) continue;
    const dose = course.given.at(-1);
    if (dose && (last === null || dose.day >= last.day)) last = dose;
    const end = addDays(course.clear, -course.waitDays);
    if (end > course.lastDose && (to === null || end > to)) to = end;
  }
  return { last, to };
}

/** Tanks let go by a line, unless fish, water or a net came to them from a held tank since, or a new sign shows it was too early. */
function releasedTanks(
  room: Room,
  hold: DeepReadonly<Hold>,
  arrivals: ReadonlyMap<string, Arrival<Way>>,
  links: readonly Link<Way>[],
): string[] {
  const lines = room.health.released.filter(({ day }) => day >= hold.day);
  const letGo = new Set(lines.flatMap(({ tanks }) => tanks));
  const held = [...arrivals.values()].filter(({ node }) => !letGo.has(node));
  const signsSince = (day: Day): { node: string; at: number }[] =>
    [
      ...hold.again.map((again) => ({ day: again.day, tanks: hold.tanks })),
      ...signs(room).filter(({ tanks }) => tanks.some((tank) => held.some(({ node }) => node === tank))),
    ]
      .filter((sign) => sign.day > day)
      .flatMap((sign) => sign.tanks.map((node) => ({ node, at: startOf(sign.day) })));
  return lines.flatMap(({ tanks, day, minute }) => {
    const from = endOf(day, minute);
    const anew = reach(
      held.map(({ node, at }) => ({ node, at: Math.max(at, from) })),
      links.filter((link) => link.from >= from),
    );
    const signed = reach(signsSince(day), links);
    return tanks.filter((tank) => !anew.has(tank) && !signed.has(tank));
  });
}

function cleanTanks(room: Room, arrivals: ReadonlyMap<string, Arrival<Way>>, start: number): HoldReach['clean'] {
  return walkOrder(room).flatMap((name) => {
    if (arrivals.has(name)) return [];
    const entry = room.plumbing.tanks.get(name)?.plumbed.findLast((one) => one.on === null && one.home !== null);
    if (!entry || entry.home === null || startOf(entry.day, entry.minute) >= start) return [];
    return arrivals.has(loopNode(entry.home)) ? [{ tank: name, loop: entry.home, place: entry.place }] : [];
  });
}

function leftAfter(
  arrivals: ReadonlyMap<string, Arrival<Way>>,
  tank: string,
  at: { readonly day: Day; readonly minute: number | null },
): boolean {
  const arrival = arrivals.get(tank);
  return arrival !== undefined && endOf(at.day, at.minute) > arrival.at;
}

/** The tanks that sold fish can have come from: the one that the line says, else wherever that stock was. */
function soldFrom(room: Room, sale: DeepReadonly<Sold>): readonly string[] {
  if (sale.tank !== null) return [sale.tank];
  const moves = room.stock.moves.filter(({ body }) => body === sale.stock);
  const body = room.stock.broods.get(sale.stock) ?? room.stock.groups.get(sale.stock);
  return [...(body?.parts.keys() ?? []), ...moves.flatMap(({ from, to }) => (from === null ? [to] : [from, to]))];
}

function overlap(a: readonly string[], b: readonly string[]): boolean {
  return a.some((one) => b.includes(one));
}
