/**
 * Fish that were sold or given away out of a tank that kept them that day: under a hold or reached by one, in quarantine,
 * sick with what may be catching, or within the wait after a treatment. A doubt: the line counts, but a buyer may have to
 * be told, or a line that let them go was never written.
 */
import { addDays, type Day } from '../core/day.ts';
import type { Problem } from '../core/problem.ts';
import type { Place } from '../core/span.ts';
import { countWords, dayWords, plural } from '../core/words.ts';
import type { DeepReadonly } from '../core/readonly.ts';
import type { Room } from '../state/draft.ts';
import type { Sold } from '../state/sale.ts';
import { sickWords } from '../state/health.ts';
import { isToldLater } from '../state/when.ts';
import { courses } from './holds/courses.ts';
import { onceFor } from './holds/once.ts';
import { quarantineOn } from './holds/quarantines.ts';
import { CLEAR_DAYS, reachOf } from './holds/reach.ts';

type Sale = DeepReadonly<Sold>;

/** What kept them, the line that says so, and what would have let them go: told with its if, as it may never have been so. */
interface Kept {
  /** `on hold that day for velvet`. */
  readonly why: string;
  readonly place: Place;
  readonly write: string;
}

export function soldHeld(room: Room): readonly Problem[] {
  return room.sale.sales.flatMap((sale): Problem[] => {
    const { tank } = sale;
    const kept =
      tank === null
        ? null
        : (byHold(room, sale, tank) ??
          bySickness(room, sale, tank) ??
          byTreatment(room, sale, tank) ??
          byQuarantine(room, sale, tank));
    if (tank === null || kept === null) return [];
    return [
      {
        kind: 'sold-held',
        weight: 'doubt',
        says: `${countWords(sale.count)} ${sale.stock} went out of ${tank}, ${kept.why}: tell whoever has them, or write what let them go`,
        write: kept.write,
        at: sale.place,
        also: [kept.place],
      },
    ];
  });
}

/** Told before the sale, and ended on a later day or not at all. */
function wasOpen(sale: Sale, begun: Begun): boolean {
  return isToldLater(sale, begun) && (begun.over === null || begun.over.day > sale.day);
}

interface Begun {
  readonly day: Day;
  readonly minute: number | null;
  readonly place: Place;
  readonly over: { readonly day: Day } | null;
}

/** Worked out once for each hold, however many were sold under it. */
const reachedBy = onceFor(reachOf);

function byHold(room: Room, sale: Sale, tank: string): Kept | null {
  const hold = room.health.holds.find(
    (one) =>
      wasOpen(sale, one) &&
      !wasLetGo(room, sale, tank, one.day) &&
      (one.tanks.includes(tank) || reachedBy(room, one).sold.includes(sale)),
  );
  if (hold === undefined) return null;
  return {
    why: hold.tanks.includes(tank)
      ? `on hold that day for ${hold.text}`
      : `reached by the hold of ${hold.where} for ${hold.text}`,
    place: hold.place,
    write: `if it was over by then, ${tank}: hold over`,
  };
}

/** By a line of that tank since the hold began: one from before says nothing of it. */
function wasLetGo(room: Room, sale: Sale, tank: string, since: Day): boolean {
  return room.health.released.some(({ tanks, day }) => tanks.includes(tank) && day >= since && day <= sale.day);
}

function bySickness(room: Room, sale: Sale, tank: string): Kept | null {
  const sick = room.health.sick.find(
    ({ catching, ...one }) =>
      catching !== false &&
      one.tanks.includes(tank) &&
      wasOpen(sale, one) &&
      (catching === null || sale.day < addDays(one.day, CLEAR_DAYS)),
  );
  if (sick === undefined) return null;
  return {
    why: `${sickWords(sick.text)}${sick.catching === null ? ', and nobody said whether it is catching' : ''}`,
    place: sick.place,
    write: `if it was not, ${tank}: not catching`,
  };
}

/** By the doses that were written till then: those still to come make the wait no shorter. */
function byTreatment(room: Room, sale: Sale, tank: string): Kept | null {
  for (const { treatment, given, waitDays } of courses(room)) {
    const dose = given.findLast((one) => one.day <= sale.day);
    const place = dose?.place ?? treatment.place;
    const last = dose?.day ?? treatment.day;
    if (!treatment.tanks.includes(tank) || !isToldLater(sale, treatment) || sale.day >= addDays(last, waitDays))
      continue;
    return {
      why: `${plural(sale.day - last, 'day')} after a dose of ${treatment.product}, of ${String(waitDays)} to wait`,
      place,
      write: `their own day, if they went on ${dayWords(addDays(last, waitDays), room.on)} or later`,
    };
  }
  return null;
}

function byQuarantine(room: Room, sale: Sale, tank: string): Kept | null {
  const kept = quarantineOn(room, tank, sale);
  const [place] = kept?.lines ?? [];
  if (kept === null || place === undefined) return null;
  return {
    why: `in quarantine since ${dayWords(kept.since, room.on)}`,
    place,
    write: `if it was over by then, ${tank}: quarantine over`,
  };
}
