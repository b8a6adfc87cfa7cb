/** Coolings that power cuts in the journal tell of: a temperature before or early in it, and one later while the power was away, with a time of day. */
import type { Day } from '../core/day.ts';
import type { Interval } from '../core/interval.ts';
import { middle } from '../core/interval.ts';
import type { DeepReadonly } from '../core/readonly.ts';
import type { Place } from '../core/span.ts';
import { coolingRate } from '../science/cooling.ts';
import type { Room } from '../state/draft.ts';
import type { Fault } from '../state/measures.ts';
import { holderOf, loopOf } from '../state/tanks.ts';
import { temperatureAt } from '../state/temperature.ts';
import { liveVolume } from '../state/volume.ts';

export interface Cooling {
  readonly tank: string;
  readonly litres: number | null;
  /** The rate that each end of the air's temperature makes of it, per hour. */
  readonly by: readonly { readonly air: number; readonly perHour: number }[];
  readonly step: string;
  readonly places: readonly Place[];
}

/** Minutes after the power came back that a reading still speaks of the cut. */
const AFTER = 60;

/** Minutes that two readings must lie apart to tell a rate (ours). */
const APART = 30;

/** Every cooling on record, oldest first. */
export function coolings(room: Room, air: Interval): Cooling[] {
  return room.measures.faults.filter(({ kind }) => kind === 'power').flatMap((cut) => coolingsOf(room, cut, air));
}

function coolingsOf(room: Room, cut: DeepReadonly<Fault>, air: Interval): Cooling[] {
  if (cut.minute === null) return [];
  const began = clock(cut.day, cut.minute);
  const ended = endOf(cut);
  return room.water.readings.flatMap((fact) => {
    const to = middle(fact.reading.temperature);
    if (fact.superseded || fact.minute === null || to === null) return [];
    const at = clock(fact.day, fact.minute);
    if (at <= began || at > ended + AFTER || !reaches(room, cut.where, fact.where, fact.day)) return [];
    const tank = room.plumbing.tanks.has(fact.where) ? holderOf(room, fact.where) : null;
    const before = tank === null ? null : (beforeCut(room, tank, began, cut.day) ?? earlier(room, tank, began, at));
    if (tank === null || before === null) return [];
    const hours = (Math.min(at, ended) - (before.at ?? began)) / 60;
    const ends = [...new Set([air.low, air.high])];
    const by = ends.flatMap((one) => {
      const perHour = coolingRate(before.celsius, to, hours, one);
      return perHour === null ? [] : [{ air: one, perHour }];
    });
    if (by.length < ends.length) return [];
    const step = `${tank} went from ${before.celsius} to ${to} C in ${hours.toFixed(1)} hours of a cut`;
    return [{ tank, litres: middle(liveVolume(room, tank).litres), by, step, places: [cut.begun, fact.place] }];
  });
}

function clock(day: Day, minute: number): number {
  return day * 1440 + minute;
}

/** Where nobody wrote at what time it came back, the start of that day: water warm again by then would pass for one that holds. */
function endOf(cut: DeepReadonly<Fault>): number {
  if (cut.lasts !== null) return clock(cut.day, cut.minute ?? 0) + cut.lasts.high;
  return cut.fixed === null ? Infinity : clock(cut.fixed.day, cut.fixed.minute ?? 0);
}

function reaches(room: Room, where: string, tank: string, day: Day): boolean {
  return where === 'room' || where === tank || loopOf(room, tank, day) === where;
}

/** What it cools from: as warm as it was when the cut began, or as it was read some time into it. */
interface From {
  readonly celsius: number;
  readonly at: number | null;
}

/** Nobody read it before: the first reading of the cut itself, half an hour before this one at least. */
function earlier(room: Room, tank: string, began: number, at: number): From | null {
  const first = room.water.readings.find(
    ({ superseded, where, day, minute, reading }) =>
      !superseded &&
      where === tank &&
      minute !== null &&
      reading.temperature !== null &&
      clock(day, minute) > began &&
      clock(day, minute) <= at - APART,
  );
  const celsius = middle(first?.reading.temperature ?? null);
  return first === undefined || celsius === null ? null : { celsius, at: clock(first.day, first.minute ?? 0) };
}

/** The last temperature of that tank before the cut, at most two days; else what its heater is set to. */
function beforeCut(room: Room, tank: string, began: number, day: Day): From | null {
  const own = room.water.readings.findLast(
    (fact) =>
      !fact.superseded &&
      fact.where === tank &&
      fact.reading.temperature !== null &&
      clock(fact.day, fact.minute ?? 0) <= began &&
      fact.day >= day - 2,
  );
  const celsius = middle(own?.reading.temperature ?? room.plumbing.tanks.get(tank)?.heated ?? null);
  if (celsius !== null) return { celsius, at: null };
  const warm = temperatureAt(room, tank, day);
  const known = warm === null || warm.place === null || warm.day >= day ? null : middle(warm.value);
  return known === null ? null : { celsius: known, at: null };
}

/**
 * How fast a tank cools: by its own last cooling, else by the last of another, since a larger water
 * cools more slowly (surface over volume goes with the cube root of the litres).
 */
export function rateFor(
  logged: readonly Cooling[],
  tank: string,
  litres: number | null,
): (Pick<Cooling, 'by' | 'step' | 'places'> & { readonly from: string }) | null {
  const own = logged.findLast((one) => one.tank === tank);
  if (own !== undefined) return { ...own, from: 'its own cut' };
  const other = logged.findLast((one) => one.litres !== null);
  if (other === undefined || other.litres === null || litres === null) return null;
  const slower = Math.cbrt(other.litres / litres);
  return {
    by: other.by.map(({ air, perHour }) => ({ air, perHour: perHour * slower })),
    step: `${other.step}; rate × ∛(${Math.round(other.litres)} ÷ ${Math.round(litres)} L)`,
    places: other.places,
    from: `the cut of ${other.tank}`,
  };
}
