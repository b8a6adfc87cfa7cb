/**
 * What toxic ammonia would stand at after new water, or a dose, that can raise pH. Only a fresh reading of
 * total ammonia can say; without one the answer is to test first. It never says that all is in order.
 */
import { addDays } from '../core/day.ts';
import type { Interval } from '../core/interval.ts';
import type { DeepReadonly } from '../core/readonly.ts';
import { measure, type Measure } from '../core/quantity.ts';
import type { Place } from '../core/span.ts';
import { dayWords, figureWords } from '../core/words.ts';
import { AMMONIA_MARKS, toxicAmmonia, USUAL_PH } from '../science/ammonia.ts';
import type { Room } from '../state/draft.ts';
import { isNewWater } from '../state/tanks.ts';
import { lastSince } from '../state/when.ts';
import { ammoniaOf, lastOf, readingsOf, readingWords, type Ammonia, type LastReading } from './readings.ts';
import { bodyOfWater } from './waters.ts';

/** Days for which a reading of total ammonia says what a change would do (ours: a setting). */
const TAN_LASTS = 14;
/** Tests of so many days ago are not asked (ours: a setting). */
const OLD = 365;
/** Days for which a test of the new water stands (ours: a setting). */
export const TAP_LASTS = 365;
/** Where bicarbonate or hard tap water can take pH (from memory: a bicarbonate solution in air stands at about 8.3). */
const RAISED_PH = 8.3;
/** Products that raise pH, by what labels and keepers call them. */
const RAISES_PH = /bicarb|carbonate|\bsoda\b|buffer|\blime\b|coral|aragonite|crushed shell|\bph ?(\+|up|plus)/iu;

export interface Raised {
  /** One line. */
  readonly says: string;
  /** mg/L as N; null where nobody tested total ammonia lately. */
  readonly toxic: Measure<'mg/L'> | null;
  readonly steps: readonly string[];
  readonly places: readonly DeepReadonly<Place>[];
}

/** True for products that raise pH (carbonates, buffers, lime, coral and the like), by what labels and keepers call them. */
export function raisesPh(product: string): boolean {
  return RAISES_PH.test(product);
}

/** What would follow in the water of a tank or loop: by new water as its last test shows it, or by a dose up to 8.3. */
export function afterRaising(room: Room, place: string, by: 'new water' | 'dose' = 'new water'): Raised {
  const body = bodyOfWater(room, place);
  const facts = body === null ? [] : readingsOf(room, body, addDays(room.on, -OLD));
  const ammonia = body === null ? null : ammoniaOf(room, body, facts);
  if (ammonia === null || room.on - ammonia.tan.day > TAN_LASTS) {
    const says = `${by === 'dose' ? 'this dose' : 'new water'} can raise pH and toxic ammonia with it. TAN unknown: test first`;
    return { says, toxic: null, steps: [says], places: ammonia === null ? [] : [ammonia.tan.place] };
  }
  return raisedBy(room, ammonia, lastOf(facts, 'ph'), by);
}

/** The pH of the new water, where a tank called Tap was tested: `Tap: test pH 7.8`. */
function tapPh(room: Room): LastReading | null {
  const fact = lastSince(
    room.water.readings,
    room.on - TAP_LASTS,
    ({ where, reading, superseded }) => !superseded && isNewWater(where) && reading.ph !== null,
  );
  if (fact === undefined || fact.reading.ph === null) return null;
  const { day, minute, where, place } = fact;
  return { of: 'ph', value: fact.reading.ph, day, minute, where, place };
}

function raisedBy(room: Room, ammonia: Ammonia, now: LastReading | null, by: 'new water' | 'dose'): Raised {
  const tap = by === 'dose' ? null : tapPh(room);
  const { tan, temperature } = ammonia;
  const own: Interval = now?.value ?? USUAL_PH;
  const highest = Math.max(own.high, tap === null ? RAISED_PH : tap.value.high);
  const ph = measure('pH', own.low, null, highest);
  const toxic = toxicAmmonia(tan.value, ph, temperature?.value ?? null);
  const read = `${readingWords(room, 'tan', tan.value)} on ${dayWords(tan.day, room.on)}`;
  const may = toxic.low >= AMMONIA_MARKS.watch ? '' : 'may be ';
  const over = toxic.high >= AMMONIA_MARKS.watch ? `; ${may}over the mark of ${String(AMMONIA_MARKS.watch)}` : '';
  const range = `pH ${figureWords({ low: own.low, likely: null, high: highest }, 1)}`;
  const why = tap === null && by === 'new water' ? ', new water not tested' : '';
  const says =
    tan.value.high <= 0
      ? `toxic ammonia after it: 0 mg/L as N, by ${read}`
      : `toxic ammonia after it: ${figureWords(toxic, 3)} mg/L as N at ${range}${why}, by ${read}${over}`;
  return {
    says,
    toxic,
    steps: [
      read,
      now === null ? 'pH here not known' : `pH here ${figureWords(now.value, 1)} on ${dayWords(now.day, room.on)}`,
      tap === null
        ? `${by === 'dose' ? 'pH after a dose' : 'pH of the new water'} not tested: up to ${String(RAISED_PH)} taken, where bicarbonate in air stands`
        : `pH of the new water ${figureWords(tap.value, 1)} on ${dayWords(tap.day, room.on)}`,
      says,
    ],
    places: [tan.place, ...(now === null ? [] : [now.place]), ...(tap === null ? [] : [tap.place])],
  };
}
