/** Readings, changes, top-ups and doses, per tank and loop, each with the tanks that shared that water that day. */
import type { Homes } from './home.ts';
import { isoDay, type Day } from '../core/day.ts';
import type { Measure } from '../core/quantity.ts';
import { rangeWords } from '../core/words.ts';
import type { Place } from '../core/span.ts';
import type { Dose, EventBase, EventOf, Reading, WaterAmount } from '../journal/event.ts';
import type { Draft } from './draft.ts';
import { placesOf } from './places.ts';
import { sharers } from './tanks.ts';
import { liveVolume, loopVolume } from './volume.ts';
import { happened, insertInTime } from './when.ts';
import { PARAMETERS } from './parameters.ts';

export interface Water {
  /** Oldest first; a superseded one stays for the history only. */
  readings: WaterFact<{ reading: Reading; superseded: boolean }>[];
  changes: WaterFact<{ amount: WaterAmount }>[];
  topUps: WaterFact<{ litres: Measure<'L'> }>[];
  doses: WaterFact<{ dose: Dose | null; product: string }>[];
  /** Biological media cleaned, or the only sponge of a tank rinsed: starts a water watch. */
  disturbed: WaterFact<{ what: Disturbance; remark: string | null }>[];
}

export type Disturbance = 'media cleaned' | 'sponge rinsed' | 'power lost' | 'pump stood';

export type WaterFact<T> = T & {
  /** The tank or loop of the line. */
  where: string;
  /** Every tank that shared that water on that day. */
  tanks: readonly string[];
  day: Day;
  minute: number | null;
  place: Place;
};

export const WATER_HOMES: Homes<
  'media cleaned' | 'sponge rinsed' | 'water changed' | 'topped up' | 'tested' | 'dosed'
> = {
  'media cleaned': (draft, event) => {
    for (const where of placesOf(draft, event.subject)) disturb(draft, 'media cleaned', where, event);
  },
  'sponge rinsed': (draft, event) => {
    for (const where of placesOf(draft, event.subject)) disturb(draft, 'sponge rinsed', where, event);
  },
  'water changed': (draft, event) => {
    for (const where of placesOf(draft, event.subject)) changeWater(draft, event, where);
  },
  'topped up': (draft, event) => {
    for (const where of placesOf(draft, event.subject)) {
      insertInTime(draft.water.topUps, { litres: event.litres, ...factOf(draft, event, where) });
    }
  },
  tested: (draft, event) => {
    for (const where of placesOf(draft, event.subject)) noteReading(draft, event, where);
  },
  dosed: (draft, event) => {
    for (const where of placesOf(draft, event.subject)) {
      insertInTime(draft.water.doses, { dose: event.dose, product: event.product, ...factOf(draft, event, where) });
    }
  },
};

type When = Pick<EventBase, 'day' | 'minute' | 'place' | 'when'>;

function factOf(draft: Draft, event: When, where: string): WaterFact<object> {
  const { day, minute } = happened(event);
  return { where, tanks: sharersOf(draft, where, day, minute), day, minute, place: event.place };
}

/** By water, the list of tanks that the latest fact of it holds. */
const latest = new WeakMap<Draft, Map<string, readonly string[]>>();

/** Who shares that water; facts in a row hold one list, since there are thousands of them. */
function sharersOf(draft: Draft, where: string, day: Day, minute: number | null): readonly string[] {
  const lists = latest.get(draft) ?? new Map<string, readonly string[]>();
  latest.set(draft, lists);
  const now = sharers(draft, where, day, minute);
  const before = lists.get(where);
  if (before?.length === now.length && before.every((tank, index) => tank === now[index])) return before;
  lists.set(where, now);
  return now;
}

/** Notes that the living filter of a tank or loop was disturbed; whether that calls for a watch is asked later. */
export function disturb(
  draft: Draft,
  what: Disturbance,
  where: string,
  event: When & { remark?: string | null },
): void {
  insertInTime(draft.water.disturbed, { what, remark: event.remark ?? null, ...factOf(draft, event, where) });
}

function changeWater(draft: Draft, event: EventOf<'water changed'>, where: string): void {
  const { amount } = event;
  const held = draft.plumbing.tanks.has(where) ? liveVolume(draft, where) : null;
  // Whole litres, rounded outward: what is told as the most may be changed.
  const most = amount.unit === 'share' ? 1 : Math.ceil(held?.nominal?.high ?? Infinity);
  if (amount.low > most || amount.high <= 0) {
    draft.problems.push({
      kind: 'impossible-change',
      weight: 'stops',
      says:
        amount.unit === 'share'
          ? `no more than 100 % of the water of ${where} can be changed at once`
          : `${where} holds ${most} L at most`,
      write: `${isoDay(event.day)} ${where}: water change 30 %`,
      at: event.place,
      also: held === null ? [] : [draft.plumbing.tanks.get(where)?.declared ?? event.place],
    });
    return;
  }
  const fact = factOf(draft, event, where);
  const loop = draft.plumbing.loops.get(where);
  const whole = loop === undefined ? null : loopVolume(draft, where, fact.day);
  if (loop !== undefined && whole !== null && amount.unit === 'L' && amount.low > Math.ceil(whole.high)) {
    draft.problems.push({
      kind: 'impossible-change',
      weight: 'doubt',
      says: `${where} held ${rangeWords(whole)} L of water that day, sump and tanks on it together`,
      write: `the litres that were changed, or those that the sump and the tanks hold: ${where}: water change 30 %`,
      at: event.place,
      also: [loop.declared],
    });
  }
  insertInTime(draft.water.changes, { amount, ...fact });
}

/** The later-filed reading of the same thing at the same time stands; the earlier stays for the history. */
function noteReading(draft: Draft, event: EventOf<'tested'>, where: string): void {
  const { reading } = event;
  const { readings } = draft.water;
  const fact = factOf(draft, event, where);
  for (let i = readings.length - 1; i >= 0; i -= 1) {
    const earlier = readings[i];
    if (earlier === undefined || earlier.day < fact.day) break;
    if (earlier.where !== where || earlier.day > fact.day || earlier.minute !== fact.minute || earlier.superseded)
      continue;
    const again = PARAMETERS.filter((key) => earlier.reading[key] !== null && reading[key] !== null);
    if (again.length === 0) continue;
    const left: Reading = { ...earlier.reading, ...Object.fromEntries(again.map((key) => [key, null])) };
    if (PARAMETERS.every((key) => left[key] === null)) earlier.superseded = true;
    else earlier.reading = left;
  }
  insertInTime(readings, { reading, superseded: false, ...fact });
}
