/** What lines that have just been written down did to KH and GH, where it is more than fish are to bear in a day. */
import { addDays, type Day } from '../core/day.ts';
import { middle } from '../core/interval.ts';
import type { Event, EventOf } from '../journal/event.ts';
import { DEGREES_A_DAY } from '../science/chemistry.ts';
import { shareOf } from '../state/done.ts';
import type { Room } from '../state/draft.ts';
import { isNewWater } from '../state/tanks.ts';
import { loopVolume, liveVolume } from '../state/volume.ts';
import { happened, lastSince, since } from '../state/when.ts';
import { whereOf } from '../state/where.ts';
import { addedBy, type Added } from './doses.ts';
import { TAP_LASTS } from './raised.ts';
import { lastOf, PARAMETER_WORDS, readingsOf } from './readings.ts';
import { bodiesOfWater, bodyOfWater, type WaterBody } from './waters.ts';

/** Days for which a test of KH or GH says what new water does to it (ours: a setting). */
const LASTS = 90;

/** One text for each water of which KH or GH went further in a day than the trade has it; mostly none. */
export function hardnessLines(room: Room, events: readonly Event[]): readonly string[] {
  const told = events.flatMap((event) => {
    if (event.kind !== 'dosed' && event.kind !== 'water changed') return [];
    const where = whereOf(event.subject);
    const one = bodyOfWater(room, where);
    const bodies = where === 'room' ? bodiesOfWater(room) : one === null ? [] : [one];
    return bodies.flatMap((body) => (event.kind === 'dosed' ? dosed(room, body, event) : changed(room, body, event)));
  });
  return [...new Set(told)];
}

/** All doses of that day count: half now and half at night is one day as well. */
function dosed(room: Room, body: WaterBody, event: EventOf<'dosed'>): string[] {
  const { day } = happened(event);
  const litres = body.kind === 'loop' ? loopVolume(room, body.name) : liveVolume(room, body.name).litres;
  const added = since(room.water.doses, day)
    .filter((dose) => dose.day === day && (dose.where === body.name || body.tanks.includes(dose.where)))
    .flatMap(({ product, dose }) => addedBy(product, dose, litres) ?? []);
  const own = addedBy(event.product, event.dose, litres);
  const all = added.filter(({ of }) => of === own?.of).reduce((sum, { degrees }) => sum + middle(degrees), 0);
  return own === null ? [] : says(body, own.of, all);
}

/** New water of another hardness, where the last test of each tells. */
function changed(room: Room, body: WaterBody, event: EventOf<'water changed'>): string[] {
  const { day } = happened(event);
  const share = shareOf(room, event.amount, whereOf(event.subject), body.name, day);
  const facts = readingsOf(room, body, addDays(day, -LASTS)).filter((fact) => fact.day <= day);
  return (['kh', 'gh'] as const).flatMap((of) => {
    const [own, tap] = [lastOf(facts, of)?.value ?? null, tapOf(room, of, day)];
    if (own === null || tap === null || share === null) return [];
    return says(body, of, share * (tap - middle(own)));
  });
}

/** The hardness of the new water, where a tank called Tap was tested. */
function tapOf(room: Room, of: Added['of'], day: Day): number | null {
  const { readings } = room.water;
  const isTold = (fact: (typeof readings)[number]): boolean =>
    !fact.superseded && isNewWater(fact.where) && fact.reading[of] !== null && fact.day <= day;
  const fact = lastSince(readings, day - TAP_LASTS, isTold);
  return middle(fact?.reading[of] ?? null);
}

function says({ name }: WaterBody, of: Added['of'], degrees: number): string[] {
  if (Math.abs(degrees) <= DEGREES_A_DAY.high) return [];
  const { word } = PARAMETER_WORDS[of];
  const by = `${degrees > 0 ? 'up' : 'down'} by about ${Math.abs(degrees).toFixed(1)} dH in one day`;
  const limit = `${String(DEGREES_A_DAY.low)} to ${String(DEGREES_A_DAY.high)} a day`;
  return [`${name}: ${word} goes ${by}; spread it over days, ${limit}, and watch how they breathe`];
}
