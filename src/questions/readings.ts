/** The last reading of each thing in a body of water, and what it means: toxic ammonia as a range where pH or warmth is missing. */
import { FIRST_DAY, toDay, type Day } from '../core/day.ts';
import type { DeepReadonly } from '../core/readonly.ts';
import type { Interval } from '../core/interval.ts';
import { isSure, times } from '../core/interval.ts';
import type { Measure } from '../core/quantity.ts';
import type { Place } from '../core/span.ts';
import { AS_NITROGEN } from '../core/units.ts';
import { dayWords, figureWords } from '../core/words.ts';
import type { Reading } from '../journal/event.ts';
import { pKa, toxicAmmonia, unionisedShare, USUAL_PH, USUAL_WATER } from '../science/ammonia.ts';
import type { Room } from '../state/draft.ts';
import { loopOf } from '../state/tanks.ts';
import { temperatureAt } from '../state/temperature.ts';
import { since } from '../state/when.ts';
import type { WaterBody } from './waters.ts';

export type Parameter = keyof Reading;

export interface LastReading {
  readonly of: Parameter;
  readonly value: DeepReadonly<NonNullable<Reading[Parameter]>>;
  readonly day: Day;
  readonly minute: number | null;
  /** Tank or loop of the line. */
  readonly where: string;
  readonly place: Place;
}

const FIRST = toDay(FIRST_DAY);

type Fact = DeepReadonly<Room['water']['readings'][number]>;

/**
 * Readings that speak of this water: of that day's water of the loop, or of the tank itself. Oldest
 * first, from that day on: years of older ones are not gone through.
 */
export function readingsOf(room: Room, body: WaterBody, from: Day = FIRST): Fact[] {
  return since(room.water.readings, from).filter((fact) => {
    if (fact.superseded) return false;
    if (fact.where === body.name) return true;
    if (body.kind === 'tank') return body.tanks.includes(fact.where);
    return body.tanks.includes(fact.where) && loopOf(room, fact.where, fact.day, fact.minute) === body.name;
  });
}

/** All readings of one thing, oldest first. */
export function seriesOf(facts: readonly Fact[], of: Parameter): LastReading[] {
  return facts.flatMap((fact) => {
    const value = fact.reading[of];
    const { day, minute, where, place } = fact;
    return value === null ? [] : [{ of, value, day, minute, where, place }];
  });
}

/** The latest reading of a parameter; null where it was never tested. */
export function lastOf(facts: readonly Fact[], of: Parameter): LastReading | null {
  return seriesOf(facts, of).at(-1) ?? null;
}

export interface Ammonia {
  readonly tan: LastReading & { readonly value: DeepReadonly<Measure<'mg/L'>> };
  /** Read with it, or at most two weeks before; null where not known. */
  readonly ph: LastReading | null;
  readonly temperature: { readonly value: DeepReadonly<Measure<'C'>>; readonly place: Place | null } | null;
  /** Toxic ammonia, mg/L as N. */
  readonly toxic: Measure<'mg/L'>;
  /** What was not known and is therefore a range: nothing where both were. */
  readonly missing: readonly ('pH' | 'temperature')[];
}

/** Days for which a pH stays good enough to go with an ammonia reading (ours). */
const PH_LASTS = 14;

/** Toxic ammonia by the last total ammonia read, or null where none was. */
export function ammoniaOf(
  room: Room,
  body: WaterBody,
  facts: readonly Fact[] = readingsOf(room, body),
): Ammonia | null {
  const tan = lastOf(facts, 'tan');
  if (tan === null || tan.value.unit !== 'mg/L') return null;
  const near = seriesOf(facts, 'ph').findLast((one) => Math.abs(one.day - tan.day) <= PH_LASTS);
  const ph = near ?? null;
  const tank = body.kind === 'tank' ? body.name : tan.where === body.name ? (body.tanks[0] ?? body.name) : tan.where;
  const own = seriesOf(facts, 'temperature').findLast((one) => one.day === tan.day);
  const warmth =
    own !== undefined && own.value.unit === 'C'
      ? { value: own.value, place: own.place }
      : temperatureAt(room, tank, tan.day);
  const temperature = warmth;
  return {
    tan: { ...tan, value: tan.value },
    ph,
    temperature,
    toxic: toxicAmmonia(tan.value, ph !== null && ph.value.unit === 'pH' ? ph.value : null, temperature?.value ?? null),
    missing: [...(ph === null ? ['pH' as const] : []), ...(temperature === null ? ['temperature' as const] : [])],
  };
}

/** The inputs and the formula, one step a line. */
export function ammoniaSteps(room: Room, { tan, ph, temperature, toxic }: Ammonia): string[] {
  const warm =
    temperature === null
      ? 'temperature not known: 22 to 30 C taken'
      : `temperature ${figureWords(temperature.value, 1)} C`;
  return [
    `${readingWords(room, 'tan', tan.value)} on ${dayWords(tan.day, room.on)}`,
    ph === null ? 'pH not known: 6 to 8.5 taken' : `pH ${figureWords(ph.value, 1)} on ${dayWords(ph.day, room.on)}`,
    warm,
    'pKa = 0.09018 + 2729.92 / (273.15 + t); share = 1 / (1 + 10^(pKa − pH))',
    ...sharesOf(
      tan.value,
      ph === null || ph.value.unit !== 'pH' ? USUAL_PH : ph.value,
      temperature?.value ?? USUAL_WATER,
    ),
    `toxic ammonia ${figureWords(toxic, 3)} mg/L as N`,
  ];
}

/** The formula with the numbers put in, once where all three are known, else at both ends. */
function sharesOf(tan: Interval, ph: Interval, warmth: Interval): string[] {
  const at = (total: number, acid: number, celsius: number): string => {
    const share = unionisedShare(acid, celsius);
    const toxic = `${figure(total, 3)} × ${share.toPrecision(3)} = ${(total * share).toPrecision(3)} mg/L as N`;
    return `${figure(celsius, 1)} C, pH ${figure(acid, 2)}: pKa ${pKa(celsius).toFixed(3)}, share 1 / (1 + 10^${(pKa(celsius) - acid).toFixed(3)}); ${toxic}`;
  };
  if ([tan, ph, warmth].every(isSure)) return [`at ${at(tan.low, ph.low, warmth.low)}`];
  return [`at the least, ${at(tan.low, ph.low, warmth.low)}`, `at the most, ${at(tan.high, ph.high, warmth.high)}`];
}

function figure(value: number, decimals: number): string {
  return String(Number(value.toFixed(decimals)));
}

export const PARAMETER_WORDS: Readonly<
  Record<Parameter, { readonly word: string; readonly unit: string; readonly decimals: number }>
> = {
  ph: { word: 'pH', unit: '', decimals: 1 },
  kh: { word: 'KH', unit: 'dH', decimals: 0 },
  gh: { word: 'GH', unit: 'dH', decimals: 0 },
  tan: { word: 'TAN', unit: 'mg/L as N', decimals: 2 },
  no2: { word: 'NO2', unit: 'mg/L as N', decimals: 2 },
  no3: { word: 'NO3', unit: 'mg/L as N', decimals: 1 },
  temperature: { word: 'temperature', unit: 'C', decimals: 1 },
  conductivity: { word: 'conductivity', unit: 'µS/cm', decimals: 0 },
  salinity: { word: 'salinity', unit: 'ppt', decimals: 1 },
  oxygen: { word: 'oxygen', unit: 'mg/L', decimals: 1 },
  chlorine: { word: 'chlorine', unit: 'mg/L', decimals: 2 },
};

/** The factor from mg/L as N to what the keeper's kit shows, and the words for it. */
function kitOf(room: Room, of: Parameter): { factor: number; unit: string } {
  const { unit } = PARAMETER_WORDS[of];
  if (of !== 'tan' && of !== 'no2' && of !== 'no3') return { factor: 1, unit };
  if (room.settings.nitrogen !== 'ion') return { factor: 1, unit: 'mg/L as N' };
  return { factor: 1 / AS_NITROGEN[of], unit: 'mg/L' };
}

/** What a room says once, so that no nitrogen is counted by a guess. */
export const SAY_NITROGEN = 'room: nitrogen as N, or: room: nitrogen as ion';

/**
 * Where no line says how the kit counts nitrogen it is taken as N, the harsher way. The same number read as the ion, in
 * mg/L as N; null where the room has said, and for what is no nitrogen.
 */
export function ifIon(room: Room, of: Parameter, value: Interval): Interval | null {
  if (room.settings.nitrogen !== null || (of !== 'tan' && of !== 'no2' && of !== 'no3')) return null;
  return times(value, AS_NITROGEN[of]);
}

/** A value as the keeper's kit shows it: `pH 7.4`, `NO3 20–40 mg/L`, `25.5 C`. */
export function readingWords(room: Room, of: Parameter, value: Interval): string {
  const { word, decimals } = PARAMETER_WORDS[of];
  const { factor, unit } = kitOf(room, of);
  const shown = times(value, factor);
  const number = figureWords(shown, decimals);
  return of === 'temperature' ? `${number} C` : `${word} ${number}${unit === '' ? '' : ` ${unit}`}`;
}

/** The unit that the kit shows: empty for pH. */
export function kitUnit(room: Room, of: Parameter): string {
  return kitOf(room, of).unit;
}

/** mg/L as N as the keeper's kit counts it, for JSON and targets. */
export function kitFactor(room: Room, of: Parameter): number {
  return kitOf(room, of).factor;
}
