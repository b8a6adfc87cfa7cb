/** How warm a tank's water was: the nearest reading, a raised heater, or the thermostat as declared. */
import type { Day } from '../core/day.ts';
import type { Measure } from '../core/quantity.ts';
import type { Place } from '../core/span.ts';
import type { Room } from './draft.ts';
import { isOpenOn } from './rigs.ts';
import { loopOf } from './tanks.ts';

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
 * thermostat that the tank was declared with; else null.
 */
export function temperatureAt(room: Room, tank: string, day: Day = room.on): Warmth | null {
  const read = lastReading(room, tank, day);
  const raised = lastRaised(room, tank, day, read?.day ?? null);
  if (raised !== null) return raised;
  if (read !== null) return read;
  const declared = room.plumbing.tanks.get(tank);
  return declared?.heated ? { value: declared.heated, place: declared.declared, day: declared.since } : null;
}

/** The heater raised last of those raised after a reading: measures stand in the order of their days. */
function lastRaised(room: Room, tank: string, day: Day, read: Day | null): Warmth | null {
  const { raised } = room.measures;
  for (let at = raised.length - 1; at >= 0; at -= 1) {
    const rig = raised[at];
    if (rig === undefined || (read !== null && rig.day <= read)) return null;
    if (rig.where !== tank || rig.to === null || !isOpenOn(rig, day)) continue;
    return { value: rig.to, place: rig.begun, day: rig.day };
  }
  return null;
}

function lastReading(room: Room, tank: string, day: Day): Warmth | null {
  const loop = loopOf(room, tank, day);
  const { readings } = room.water;
  for (let at = lastBy(readings, day); at >= 0; at -= 1) {
    const fact = readings[at];
    if (fact === undefined || fact.superseded) continue;
    if (fact.day < day - TEMPERATURE_LASTS) break;
    if (fact.reading.temperature === null || !fact.tanks.includes(tank)) continue;
    const own = fact.where === tank;
    if (own || (loop !== null && loopOf(room, tank, fact.day, fact.minute) === loop)) {
      return { value: fact.reading.temperature, place: fact.place, day: fact.day };
    }
  }
  return null;
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
