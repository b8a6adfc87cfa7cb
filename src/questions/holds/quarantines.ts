/** Quarantine: by a line that gives its days, or in a tank set up for it; either is counted from the last fish that came in (common practice, no source). */
import { addDays, type Day } from '../../core/day.ts';
import { sameClause, type Place } from '../../core/span.ts';
import type { DeepReadonly } from '../../core/readonly.ts';
import type { Room } from '../../state/draft.ts';
import { bodiesIn } from '../../state/bodies.ts';
import type { Quarantine } from '../../state/health.ts';
import type { Group } from '../../state/stock.ts';
import { isKnownEmpty } from '../../state/places.ts';
import { sharers } from '../../state/tanks.ts';
import { isToldLater } from '../../state/when.ts';

/** Days for which fish stay in a quarantine tank where no line says (three to four weeks: common practice, no source). */
export const USUAL_QUARANTINE_DAYS = 28;

export interface Kept {
  readonly tank: string;
  readonly since: Day;
  readonly until: Day;
  /** True where no line gives the days: the tank is a quarantine tank, and new fish came. */
  readonly usual: boolean;
  /** True where a line gives the days, and they are counted from fish that came in after it. */
  readonly anew: boolean;
  readonly lines: readonly Place[];
}

interface Arrival {
  readonly day: Day;
  readonly place: Place;
}

/** The quarantine that a tank is in, or that ran out and nobody ended yet; null where there is none. */
export function inQuarantine(room: Room, tank: string): Kept | null {
  const open = room.health.quarantines.filter((one) => one.ended === null && one.tanks.includes(tank));
  const said = open.map(({ day, until, place }): Kept => {
    return { tank, since: day, until, usual: false, anew: false, lines: [place] };
  });
  const last = open.at(-1);
  const anew = last === undefined ? [] : begunAnew(room, tank, last);
  const kept = longest([...said, ...anew]) ?? usualQuarantine(room, tank);
  // Once it ran out and its fish are gone there is nobody left to look over: it is over with them.
  return kept !== null && kept.until <= room.on && isKnownEmpty(room, tank) ? null : kept;
}

/** The quarantine that a tank was in when something was told of an earlier day; null where there was none. */
export function quarantineOn(room: Room, tank: string, then: Moment): Kept | null {
  const said = room.health.quarantines.flatMap((one): Kept[] => {
    const { day, until, ended, place } = one;
    const ran = one.tanks.includes(tank) && isToldLater(then, { day, minute: null, place }) && then.day < until;
    const over = ended !== null && ended.day <= then.day;
    return ran && !over ? [{ tank, since: day, until, usual: false, anew: false, lines: [place] }] : [];
  });
  const declared = room.plumbing.tanks.get(tank);
  if (said.length > 0 || declared?.quarantine !== true) return longest(said);
  const came = lastArrival(room, tank, () => true, then);
  const until = came === null ? null : addDays(came.day, USUAL_QUARANTINE_DAYS);
  if (came === null || until === null || then.day >= until) return null;
  const settled = room.health.quarantines.some(
    ({ tanks, ended }) => tanks.includes(tank) && ended !== null && isAfter(ended, came) && ended.day <= then.day,
  );
  return settled
    ? null
    : { tank, since: came.day, until, usual: true, anew: false, lines: [came.place, declared.declared] };
}

interface Moment {
  readonly day: Day;
  readonly minute: number | null;
  readonly place: Place;
}

function longest(all: readonly Kept[]): Kept | null {
  return all.reduce<Kept | null>((last, one) => (last !== null && last.until >= one.until ? last : one), null);
}

/** Fish that came in after the line that gives the days have them before them, and so have those that they came to. */
function begunAnew(room: Room, tank: string, said: DeepReadonly<Quarantine>): Kept[] {
  const together = room.health.quarantines.filter(({ place }) => sameClause(place, said.place));
  const inside = new Set([...together.flatMap(({ tanks }) => tanks), ...sharers(room, tank)]);
  const came = lastArrival(room, tank, (from) => !inside.has(from));
  if (came === null || came.day <= said.day) return [];
  const until = addDays(came.day, said.until - said.day);
  return [{ tank, since: came.day, until, usual: false, anew: true, lines: [said.place, came.place] }];
}

function usualQuarantine(room: Room, tank: string): Kept | null {
  const declared = room.plumbing.tanks.get(tank);
  if (declared?.quarantine !== true || bodiesIn(room, tank).length === 0) return null;
  const came = lastArrival(room, tank, () => true);
  if (came === null) return null;
  const settled = room.health.quarantines.some(
    (one) => one.tanks.includes(tank) && one.ended !== null && isAfter(one.ended, came),
  );
  if (settled) return null;
  const until = addDays(came.day, USUAL_QUARANTINE_DAYS);
  return { tank, since: came.day, until, usual: true, anew: false, lines: [came.place, declared.declared] };
}

/** On one day the order of the lines tells which was first: what came after the end of a quarantine is not settled by it. */
function isAfter(end: Arrival, came: Arrival): boolean {
  if (end.day !== came.day || end.place.file !== came.place.file) return end.day >= came.day;
  return end.place.line > came.place.line || (end.place.line === came.place.line && end.place.from > came.place.from);
}

/** The last fish that came in, by moves from such tanks, purchases and declarations: with `then`, before something told of an earlier day. */
function lastArrival(
  room: Room,
  tank: string,
  counts: (from: string) => boolean,
  then: Moment | null = null,
): Arrival | null {
  const here = [
    ...room.stock.moves.filter(({ to, from }) => to === tank && (from === null || counts(from))),
    ...room.sale.purchases.filter((purchase) => purchase.tank === tank),
    ...[...room.stock.groups.values()]
      .filter((group) => firstHome(room, group) === tank)
      .map(({ day, declared }) => ({ day, place: declared })),
  ];
  return here.reduce<Arrival | null>(
    (last, came) =>
      came.day > (then?.day ?? room.on) ||
      (then !== null && cameLater(came, then)) ||
      (last !== null && isAfter(last, came))
        ? last
        : { day: came.day, place: came.place },
    null,
  );
}

/** On the very day, but by the order of the lines only after what is told: fish sold before others came home. */
function cameLater(came: Arrival, then: Moment): boolean {
  return came.day === then.day && came.place.file === then.place.file && isAfter(came, then);
}

/** Where a group was declared: it may have moved on since, and left young behind. */
function firstHome(room: Room, { name, home }: DeepReadonly<Group>): string | null {
  const first = room.stock.moves.find(({ body, from }) => body === name && from !== null);
  return first?.from ?? home;
}
