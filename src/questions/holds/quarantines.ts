/** Quarantine: by a line that gives its days, or in a tank set up for it, counted from the last fish that came in. */
import { addDays, type Day } from '../../core/day.ts';
import type { Place } from '../../core/span.ts';
import type { Room } from '../../state/draft.ts';
import { bodiesIn } from '../../state/bodies.ts';

/** Days for which fish stay in a quarantine tank where no line says (three to four weeks: common practice, no source). */
export const USUAL_QUARANTINE_DAYS = 28;

export interface Kept {
  readonly tank: string;
  readonly since: Day;
  readonly until: Day;
  /** True where no line gives the days: the tank is a quarantine tank, and new fish came. */
  readonly usual: boolean;
  readonly lines: readonly Place[];
}

interface Arrival {
  readonly day: Day;
  readonly place: Place;
}

/** The quarantine that a tank is in, or that ran out and nobody ended yet; null where there is none. */
export function inQuarantine(room: Room, tank: string): Kept | null {
  const open = room.health.quarantines.filter((one) => one.ended === null && one.tanks.includes(tank));
  const said = open.reduce<Kept | null>(
    (last, { day, until, place }) =>
      last !== null && last.until >= until ? last : { tank, since: day, until, usual: false, lines: [place] },
    null,
  );
  return said ?? usualQuarantine(room, tank);
}

function usualQuarantine(room: Room, tank: string): Kept | null {
  const declared = room.plumbing.tanks.get(tank);
  if (declared?.quarantine !== true || bodiesIn(room, tank).length === 0) return null;
  const came = lastArrival(room, tank);
  if (came === null) return null;
  const settled = room.health.quarantines.some(
    (one) => one.tanks.includes(tank) && one.ended !== null && isAfter(one.ended, came),
  );
  if (settled) return null;
  const until = addDays(came.day, USUAL_QUARANTINE_DAYS);
  return { tank, since: came.day, until, usual: true, lines: [came.place, declared.declared] };
}

/** On one day the order of the lines tells which was first: what came after the end of a quarantine is not settled by it. */
function isAfter(end: Arrival, came: Arrival): boolean {
  if (end.day !== came.day || end.place.file !== came.place.file) return end.day >= came.day;
  return end.place.line > came.place.line || (end.place.line === came.place.line && end.place.from > came.place.from);
}

function lastArrival(room: Room, tank: string): Arrival | null {
  const here = [
    ...room.stock.moves.filter((move) => move.to === tank),
    ...room.sale.purchases.filter((purchase) => purchase.tank === tank),
    ...[...room.stock.groups.values()]
      .filter((group) => group.home === tank)
      .map(({ day, declared }) => ({ day, place: declared })),
  ];
  return here.reduce<Arrival | null>(
    (last, { day, place }) => (last !== null && last.day > day ? last : { day, place }),
    null,
  );
}
