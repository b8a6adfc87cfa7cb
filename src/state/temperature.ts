/** How warm a tank's water was: the nearest reading, a raised heater, or the thermostat as declared. */
import type { Day } from '../core/day.ts';
import type { Measure } from '../core/quantity.ts';
import type { Place } from '../core/span.ts';
import type { DeepReadonly } from '../core/readonly.ts';
import type { Room } from './draft.ts';
import type { Rig } from './measures.ts';
import { endsBy, isOpenOn } from './rigs.ts';
import { isBy, loopOf } from './tanks.ts';
import { isToldLater, since } from './when.ts';

/** A reading older than this many days says nothing about today (ours). */
const TEMPERATURE_LASTS = 30;

export interface Warmth {
  readonly value: Measure<'C'>;
  readonly place: Place | null;
  readonly day: Day;
}

/**
 * The temperature of a tank on a day: the last reading of that tank, or of water that it shared then
 * and still shares, at most 30 days before; `heat to 30 C` where that came later; else the
 * thermostat that the tank was declared with; else null. What was read of water that was heated for a while
 * says nothing once it no longer is.
 */
export function temperatureAt(room: Room, tank: string, day: Day = room.on): Warmth | null {
  const read = lastReading(room, tank, day);
  const raised = lastRaised(room, tank, day, read);
  if (raised !== null) return raised;
  if (read?.reading.temperature) return { value: read.reading.temperature, place: read.place, day: read.day };
  const declared = room.plumbing.tanks.get(tank);
  return declared?.heated ? { value: declared.heated, place: declared.declared, day: declared.since } : null;
}

type Fact = DeepReadonly<Room['water']['readings'][number]>;
type OneRig = DeepReadonly<Rig>;

/** The heater raised last of those raised after a reading: measures stand in the order of their days. */
function lastRaised(room: Room, tank: string, day: Day, read: Fact | null): Warmth | null {
  const { raised } = room.measures;
  for (let at = raised.length - 1; at >= 0; at -= 1) {
    const rig = raised[at];
    if (rig === undefined || (read !== null && rig.day < read.day)) return null;
    if (rig.to === null || !isOpenOn(rig, day) || !heats(room, rig.where, tank, day)) continue;
    if (read !== null && !isToldLater({ ...rig, place: rig.begun }, read)) continue;
    return { value: rig.to, place: rig.begun, day: rig.day };
  }
  return null;
}

/** A heater of that tank itself, of the loop that it is on, or of all the room. */
function heats(room: Room, where: string, tank: string, day: Day, minute?: number | null): boolean {
  return where === tank || where === 'room' || where === loopOf(room, tank, day, minute);
}

function lastReading(room: Room, tank: string, day: Day): Fact | null {
  const loop = loopOf(room, tank, day);
  const { readings } = room.water;
  for (let at = lastBy(readings, day); at >= 0; at -= 1) {
    const fact = readings[at];
    if (fact === undefined || fact.superseded) continue;
    if (fact.day < day - TEMPERATURE_LASTS) break;
    if (fact.reading.temperature === null || !fact.tanks.includes(tank)) continue;
    const own = fact.where === tank;
    if (!own && (loop === null || loopOf(room, tank, fact.day, fact.minute) !== loop)) continue;
    if (!wasForAWhile(room, fact, tank, day) && !wasBroken(room, fact, day)) return fact;
  }
  return null;
}

/** Read while a heater was raised that heats this tank no more on that day, or never did. */
function wasForAWhile(room: Room, fact: Fact, tank: string, day: Day): boolean {
  return room.measures.raised.some(
    (rig) => wasHeatedBy(room, rig, fact) && !(isOpenOn(rig, day) && heats(room, rig.where, tank, day)),
  );
}

/** Read while a heater was stuck or the power away, which was over by the day before. What shows that a heater is stuck is of it. */
function wasBroken(room: Room, fact: Fact, day: Day): boolean {
  return since(room.measures.faults, fact.day - TEMPERATURE_LASTS).some((fault) => {
    const { kind, where, day: begun, fixed, begun: place } = fault;
    if ((kind !== 'heater stuck' && kind !== 'power') || fixed === null || fixed.day >= day) return false;
    const from = kind === 'power' ? !isToldLater({ ...fault, place }, fact) : begun <= fact.day;
    return from && isToldLater(fixed, fact) && heats(room, where, fact.where, fact.day, fact.minute);
  });
}

/** True where a reading was taken in water that this measure heated just then. */
export function wasHeatedBy(room: Room, rig: OneRig, fact: Pick<Fact, 'where' | 'day' | 'minute' | 'place'>): boolean {
  if (!heats(room, rig.where, fact.where, fact.day, fact.minute)) return false;
  if (isToldLater({ ...rig, place: rig.begun }, fact)) return false;
  const end = endsBy(rig);
  if (end !== null && isBy(end, fact.day, fact.minute ?? 0)) return false;
  return rig.closed === null || !isToldLater(fact, rig.closed);
}

/** Where the last fact of a day or before stands; -1 where none does. They stand in order of day: years of them lie after an old brood. */
function lastBy(facts: readonly { readonly day: Day }[], day: Day): number {
  let [from, to] = [0, facts.length];
  while (from < to) {
    const middle = (from + to) >> 1;
    if ((facts[middle]?.day ?? day) > day) to = middle;
    else from = middle + 1;
  }
  return from - 1;
}
