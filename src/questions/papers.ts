/**
 * What is printed for an auction: a label for each bag, the seller's sheet for the table, and what goes into
 * which box. Buyers' names are in it only where they are asked for.
 */
import { addDays, type Day } from '../core/day.ts';
import type { DayWindow, Interval } from '../core/interval.ts';
import { countWords, dayWords, figureWords, windowWords } from '../core/words.ts';
import { bodyNamed, isBrood } from '../state/bodies.ts';
import type { Room } from '../state/draft.ts';
import { datesOf } from './laying.ts';
import { PARAMETERS } from '../state/parameters.ts';
import type { PlanBag, PlanLot, SalePlan } from './plan/plan.ts';
import { promises } from './promises.ts';
import { lastOf, readingsOf, readingWords, type Parameter } from './readings.ts';
import { timetableRows } from './timetable/row.ts';
import { bodyOfWater } from './waters.ts';

export interface Papers {
  readonly plan: SalePlan;
  /** The day on which they are made. */
  readonly on: Day;
  readonly lots: readonly PaperLot[];
  /** Fish that somebody is to fetch by then or at the auction. */
  readonly handOver: readonly { readonly says: string }[];
  /** What to do on which day before it. */
  readonly days: readonly { readonly day: Day; readonly what: string; readonly done: boolean }[];
}

/** One lot with what its label says. Every text is plain and not yet fit for mark-up. */
export interface PaperLot {
  readonly lot: PlanLot;
  readonly bags: readonly PlanBag[];
  /** `25–30 mm`, or with a hint that nobody measured. */
  readonly size: string | null;
  /** `brood Birch-3`, `brood of Hazel-1 or Elder-1`, `line "Moss river"`. */
  readonly origin: string;
  readonly laid: string | null;
  /** `pair Birch`, `pair Hazel or pair Elder`; null where nobody wrote them. */
  readonly parents: string | null;
  /** `pH 7 · KH 4 dH · 25 C`, with the day on which it was read; null where nobody measured lately. */
  readonly water: { readonly says: string; readonly read: string } | null;
}

/** Readings that tell a buyer what the fish came out of, in this order. */
const ON_LABEL: readonly Parameter[] = ['ph', 'gh', 'kh', 'no3', 'conductivity', 'temperature'];
/** Days for which a reading still describes the water (ours). */
const READ_DAYS = 42;

/** `hide` takes buyers' names out of sentences that quote them. */
export function papersOf(
  room: Room,
  plan: SalePlan,
  { withNames, hide }: { readonly withNames: boolean; readonly hide: (text: string) => string },
): Papers {
  return {
    plan: { ...plan, warnings: plan.warnings.map(hide) },
    on: room.on,
    lots: plan.lots.map((lot) => paperLot(room, { ...lot, cautions: lot.cautions.map(hide) })),
    handOver: handOver(room, plan, withNames),
    days: daysBefore(room, plan),
  };
}

function paperLot(room: Room, lot: PlanLot): PaperLot {
  return {
    lot,
    bags: lot.bags,
    size: lot.size === null ? null : `${figureWords(lot.size, 0)} mm${lot.sizeRead ? '' : ', usual for their age'}`,
    origin: originWords(room, lot),
    laid: laidWords(room, lot),
    parents: parentWords(room, lot.parents),
    water: waterOf(room, lot.tank),
  };
}

function originWords(room: Room, { stock, name, line }: PlanLot): string {
  const body = bodyNamed(room, stock);
  const from = line === null ? '' : `, line ${line}`;
  if (body === null || !isBrood(body)) return `${body?.kind ?? 'stock'} ${name}${from}`;
  return name.includes(' or ') ? `brood of ${name}${from}` : `brood ${name}${from}`;
}

/** When they were laid, with every doubt: `laid 4–9 Jul`. */
function laidWords(room: Room, { stock }: PlanLot): string | null {
  const body = bodyNamed(room, stock);
  if (body === null || !isBrood(body) || body.oneOf.length > 0) return null;
  const { laid } = datesOf(room, body);
  return isOpen(laid) ? null : `laid ${windowWords(laid, withYear(room))}`;
}

/** A day that no date on paper is of the same year as: paper outlives the year, so dates carry it. */
function withYear(room: Room): Day {
  return addDays(room.on, 2 * 366);
}

function isOpen({ low, high }: DayWindow): boolean {
  return low === null || high === null;
}

/** The groups by what they are: the kind is what a buyer asks for. */
function parentWords(room: Room, parents: readonly string[]): string | null {
  const words = parents.map((name) => {
    const group = room.stock.groups.get(name);
    return group === undefined ? name : `${group.kind} ${name}`;
  });
  return words.length === 0 ? null : words.join(' or ');
}

function waterOf(room: Room, tank: string): PaperLot['water'] {
  const body = bodyOfWater(room, tank);
  if (body === null) return null;
  const facts = readingsOf(room, body, addDays(room.on, -READ_DAYS));
  const found = PARAMETERS.filter((one) => ON_LABEL.includes(one)).flatMap((one) => {
    const last = lastOf(facts, one);
    return last === null ? [] : [last];
  });
  if (found.length === 0) return null;
  const says = ON_LABEL.flatMap((of) =>
    found.filter((one) => one.of === of).map(({ value }) => readingWords(room, of, value)),
  );
  const days = found.map(({ day }) => day);
  return { says: says.join(' · '), read: windowWords(spread(days), withYear(room)) };
}

function spread(days: readonly Day[]): DayWindow {
  const [first = null] = days;
  return days.reduce<DayWindow>(
    ({ low, high }, day) => ({
      low: low === null || day < low ? day : low,
      likely: null,
      high: high === null || day > high ? day : high,
    }),
    { low: first, likely: null, high: first },
  );
}

/** Reservations that stand, and wants for kinds that go. */
function handOver(room: Room, plan: SalePlan, withNames: boolean): Papers['handOver'] {
  const { reserved, wanted } = promises(room);
  const kinds = new Set(plan.lots.map(({ species }) => species));
  const until = (day: Day | null, word: string): string =>
    day === null ? '' : `, ${word} ${dayWords(day, withYear(room))}`;
  const to = (name: string | null): string => (withNames && name !== null ? `, for ${name}` : '');
  const many = (count: Interval): string => countWords(count);
  return [
    ...reserved
      .filter(({ lapsed }) => !lapsed)
      .map((row) => ({
        says: `reserved: ${many(row.count)} ${row.stock}${until(row.until, 'until')}${to(row.to)}`,
      })),
    ...wanted
      .filter(({ species, count }) => kinds.has(species) && count.high > 0)
      .map((row) => ({ says: `wanted: ${many(row.count)} ${row.species}${until(row.by, 'by')}${to(row.to)}` })),
  ];
}

function daysBefore(room: Room, plan: SalePlan): Papers['days'] {
  return timetableRows(room, plan)
    .filter(({ day }) => day >= room.on)
    .map(({ day, what, done }) => ({ day, what, done }));
}
