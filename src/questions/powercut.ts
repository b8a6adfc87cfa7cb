/**
 * Which tank goes first when the power is away: grams of fish a litre at that warmth, against what comes
 * in through the surface, and whether it has an air line of its own. How fast it cools, from a cut that was logged.
 */
import type { Because } from '../core/because.ts';
import type { Interval } from '../core/interval.ts';
import { NONE, middle, plus } from '../core/interval.ts';
import type { LineRef, Place } from '../core/span.ts';
import { linesOf } from '../core/span.ts';
import { figureWords, rangeWords } from '../core/words.ts';
import { cooledTo, hoursToCool } from '../science/cooling.ts';
import { bodiesIn, speciesOf } from '../state/bodies.ts';
import type { Room } from '../state/draft.ts';
import { openRigs } from '../state/rigs.ts';
import { holderOf, liveTanks, loopOf } from '../state/tanks.ts';
import { temperatureAt } from '../state/temperature.ts';
import { liveVolume } from '../state/volume.ts';
import { coolings, rateFor, type Cooling } from './coolings.ts';
import { surfaceOf } from './draindown.ts';
import { fishMass } from './fishmass.ts';
import { rowId } from './id.ts';
import type { WhyRow } from './whyrow.ts';

/** Oxygen that a gram of fish takes, mg an hour at 25 C, and by how much more 10 C warmer water makes it (from memory; for ranking only). */
const BREATH = 0.3;
const WARMER = 2;
/** Oxygen through a still surface: metres an hour, at a deficit of so many mg/L (ours; for ranking only). */
const STILL = 0.02;
const DEFICIT = 4;
/** What a battery air pump on its own line is worth in the ranking (ours). */
const OWN_AIR = 0.5;
/** C down to which it is reckoned where no species says (ours). */
const USUAL_LEAST = 22;
const USUAL_WARMTH = 25;
/** Hours of a cut that nobody noticed. */
const NIGHT = 8;

/** Air in a fish room whose heating is away, C, where nobody said (ours: give yours with --air). */
export const USUAL_AIR = { low: 15, likely: 18, high: 20 } as const satisfies Interval;

export interface CutRow {
  readonly id: string;
  readonly name: string;
  readonly gramsPerLitre: Interval | null;
  readonly litres: Interval | null;
  /** cm² of surface a litre. */
  readonly surface: number | null;
  readonly air: 'own air line' | 'only the loop' | 'none on record';
  readonly celsius: number | null;
  /** Hours till it is down to `least`; null where no logged cut tells. */
  readonly cools: { readonly least: number; readonly hours: Interval; readonly from: string } | null;
  readonly because: Because;
  readonly lines: readonly LineRef[];
}

export interface CutAnswer {
  /** The tank that goes first stands first. Tanks without fish are left out. */
  readonly rows: readonly CutRow[];
  readonly empty: readonly string[];
  readonly air: Interval;
  /** Why no cooling time is given, or null. */
  readonly noCooling: string | null;
}

/** Which tanks are in trouble first when the power fails, and how fast they cool towards the room’s air (C). */
export function powerCut(room: Room, air: Interval = USUAL_AIR): CutAnswer {
  const logged = coolings(room, air);
  const waters = watersOf(room);
  const stocked = waters.filter(({ grams }) => grams.high > 0);
  const rows = stocked.map((water) => cutRow(room, water, logged)).sort((a, b) => b.need - a.need);
  return {
    rows: rows.map(({ row }) => row),
    empty: waters.filter((water) => !stocked.includes(water)).map(({ name }) => name),
    air,
    noCooling:
      logged.length > 0
        ? null
        : 'no cut with a time and a temperature on record: at the next, jot «room: power off», and «A1: test 24 C» early and again later, with their times',
  };
}

/** A tank with the trays and nets that hang in it: one water, one surface, and all the fish of both. */
interface Water {
  readonly name: string;
  readonly tanks: readonly string[];
  readonly grams: Interval;
}

function watersOf(room: Room): Water[] {
  const inside = new Map<string, string[]>();
  for (const { name } of liveTanks(room)) {
    const holder = holderOf(room, name);
    inside.set(holder, [...(inside.get(holder) ?? []), name]);
  }
  return [...inside].map(([name, tanks]) => {
    return { name, tanks, grams: tanks.map((tank) => fishMass(room, tank)).reduce(plus, NONE) };
  });
}

function cutRow(room: Room, water: Water, logged: readonly Cooling[]): { readonly row: CutRow; readonly need: number } {
  const { name, grams } = water;
  const volume = liveVolume(room, name).litres;
  const warm = temperatureAt(room, name);
  const celsius = middle(warm?.value ?? null);
  const square = middle(surfaceOf(room, name));
  const litres = middle(volume);
  const gramsPerLitre = perLitre(grams, volume);
  const air = airOf(room, name);
  const taken = BREATH * WARMER ** (((celsius ?? USUAL_WARMTH) - 25) / 10) * (gramsPerLitre?.likely ?? 0.5);
  const comes = square === null || litres === null ? 0 : (STILL * square * 1000 * DEFICIT) / litres;
  const cools = coolsOf(room, water, celsius, litres, logged);
  const lines = linesOf([...places(room, name), ...(warm?.place ? [warm.place] : []), ...(cools?.places ?? [])]);
  const row: CutRow = {
    id: rowId(name, 'power cut'),
    name,
    gramsPerLitre,
    litres: volume,
    surface: square === null || litres === null ? null : (square * 10_000) / litres,
    air,
    celsius,
    cools: cools === null ? null : { least: cools.least, hours: cools.hours, from: cools.from },
    because: cutBecause({ grams, volume, taken, comes, air, cools: cools?.step ?? null }, lines),
    lines,
  };
  return { need: (taken / Math.max(0.001, comes)) * (air === 'own air line' ? OWN_AIR : 1), row };
}

function perLitre(grams: Interval, litres: Interval | null): Interval | null {
  const held = middle(litres);
  if (litres === null || held === null) return null;
  return { low: grams.low / litres.high, likely: (middle(grams) ?? grams.low) / held, high: grams.high / litres.low };
}

interface Reckoned {
  readonly grams: Interval;
  readonly volume: Interval | null;
  /** mg/L an hour. */
  readonly taken: number;
  readonly comes: number;
  readonly air: CutRow['air'];
  readonly cools: string | null;
}

function cutBecause({ grams, volume, taken, comes, air, cools }: Reckoned, lines: readonly LineRef[]): Because {
  return {
    rule: 'first goes the tank whose fish take most oxygen against what its still surface lets in; an air line of its own halves that, for a battery pump can serve it',
    source:
      'rule of ours, for ranking only; grams by W = 0.02 L^3.03 (Froese 2006 for the exponent); cooling by Newton’s law',
    steps: [
      `${rangeWords(grams)} g of fish${volume === null ? ', litres not known' : ` in ${rangeWords(volume)} L`}`,
      `taken ${BREATH} mg/g an hour at 25 C, ${WARMER} times that 10 C warmer: ${taken.toFixed(2)} mg/L an hour`,
      `let in by the surface at a deficit of ${DEFICIT} mg/L: ${comes.toFixed(2)} mg/L an hour`,
      air,
      ...(cools === null ? [] : [cools]),
    ],
    lines,
  };
}

function places(room: Room, name: string): Place[] {
  const tank = room.plumbing.tanks.get(name);
  return tank === undefined ? [] : [tank.declared];
}

function airOf(room: Room, name: string): CutRow['air'] {
  const rigged = openRigs(room, name).some(({ kind }) => kind === 'air filter');
  if (rigged || /sponge|\bair\b/iu.test(room.plumbing.tanks.get(name)?.filter ?? '')) return 'own air line';
  return loopOf(room, name) === null ? 'none on record' : 'only the loop';
}

function coolsOf(
  room: Room,
  { name, tanks }: Pick<Water, 'name' | 'tanks'>,
  celsius: number | null,
  litres: number | null,
  logged: readonly Cooling[],
): { least: number; hours: Interval; from: string; step: string; places: readonly Place[] } | null {
  const rate = rateFor(logged, name, litres);
  if (rate === null || celsius === null) return null;
  const least = leastOf(room, tanks);
  const hours = rate.by.flatMap(({ air, perHour }) => hoursToCool(celsius, least, air, perHour) ?? []);
  if (hours.length < rate.by.length || hours.length === 0) return null;
  const night = rate.by.map(({ air, perHour }) => cooledTo(celsius, air, perHour, NIGHT));
  const after = { low: Math.min(...night), likely: null, high: Math.max(...night) };
  const span = { low: Math.min(...hours), likely: null, high: Math.max(...hours) };
  return {
    least,
    hours: span,
    from: rate.from,
    step: `${rate.step}; from ${figureWords({ low: celsius, likely: celsius, high: celsius }, 1)} C to ${least} C in ${rangeWords(span)} hours; after ${NIGHT} hours ${figureWords(after, 1)} C`,
    places: rate.places,
  };
}

/** The coldest that all fish there are kept in, as declared for their species. */
function leastOf(room: Room, tanks: readonly string[]): number {
  const lows = tanks
    .flatMap((tank) => bodiesIn(room, tank))
    .flatMap((body) => speciesOf(room, body)?.traits.temperature?.low ?? []);
  return lows.length === 0 ? USUAL_LEAST : Math.max(...lows);
}

/** Rows for `why`. */
export function cutRows(room: Room): readonly WhyRow[] {
  return powerCut(room).rows.map(({ id, name, air, because, lines }, index) => {
    return { id, title: `${name} power cut: place ${index + 1}, ${air}`, because, lines };
  });
}
