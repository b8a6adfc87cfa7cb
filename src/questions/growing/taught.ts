/** What the room's other broods teach of how fast such fish grow here. */
import type { Day } from '../../core/day.ts';
import type { Interval } from '../../core/interval.ts';
import { exactly } from '../../core/interval.ts';
import { paceOf } from '../../science/growth.ts';
import type { GrowthPrior } from '../../science/growth.ts';
import type { SeenBody, SeenBrood } from '../../state/bodies.ts';
import type { Room } from '../../state/draft.ts';
import { adultSizeOf, isSelected, readingsOf, startOf } from './start.ts';

/** A brood of the room teaches its species once it was read at this age, days (ours). */
const TAUGHT_AT = 40;

export interface Taught {
  readonly laterAge: Interval;
  readonly broods: number;
}

/** How far the broods of one room differ in the days that they take, as a share (ours). */
const BROODS_DIFFER = 0.12;

/**
 * When this room's broods of that species reach the later size: what is usual, moved by what the others
 * did, each by its certainty (normal means of means: e.g. Gelman et al., chapter 5, from memory). One
 * brood teaches a little, several nearly all.
 */
export function taughtPace(room: Room, body: SeenBody, prior: GrowthPrior): Taught | null {
  if (body.species === null) return null;
  const others = pacesOf(room, body.species).filter(({ brood }) => brood !== body.name);
  if (others.length === 0) return null;
  const usual = paceOf({ ...prior, startAge: exactly(0), laterAge: lessDays(prior) }, []);
  const between = BROODS_DIFFER ** 2;
  let precision = 1 / Math.max(usual.sd ** 2 - between, usual.sd ** 2 / 4);
  let sum = usual.mean * precision;
  for (const other of others) {
    const weight = 1 / (other.variance + between);
    precision += weight;
    sum += other.mean * weight;
  }
  const sd = Math.sqrt(1 / precision + between);
  const start = prior.startAge.likely ?? prior.startAge.low;
  const age = (z: number): number => start + Math.exp(sum / precision + z * sd);
  return { laterAge: { low: age(-1.2816), likely: age(0), high: age(1.2816) }, broods: others.length };
}

function lessDays(prior: GrowthPrior): Interval {
  const start = prior.startAge.likely ?? prior.startAge.low;
  const { low, likely, high } = prior.laterAge;
  return { low: low - start, likely: (likely ?? (low + high) / 2) - start, high: high - start };
}

interface Pace {
  readonly mean: number;
  readonly variance: number;
}

type Paces = readonly (Pace & { readonly brood: string })[];

/** Paces worked out so far: a room never changes, and every row of an answer asks for the same ones. */
const known = new WeakMap<Room, Map<string, Paces>>();

function pacesOf(room: Room, species: string): Paces {
  const bySpecies = known.get(room) ?? new Map<string, Paces>();
  known.set(room, bySpecies);
  const before = bySpecies.get(species);
  if (before) return before;
  const over = overPaces(room, species);
  const paces = [...room.stock.broods.values()]
    .filter((brood) => brood.species === species && brood.oneOf.length === 0)
    .flatMap((brood) => {
      const pace = over(brood) ?? { pace: ownPace(room, brood) };
      return pace.pace === null ? [] : [{ brood: brood.name, ...pace.pace }];
    });
  bySpecies.set(species, paces);
  return paces;
}

/** Paces of the broods of one species that were over by a day, as plain data. */
export interface OverPaces {
  readonly species: string;
  readonly over: Day;
  /** All that they rest on beside the broods themselves. */
  readonly under: string;
  readonly paces: readonly OverPace[];
}

interface OverPace {
  readonly brood: string;
  /** How many lines told of it. */
  readonly lines: number;
  /** Null where its readings say nothing. */
  readonly pace: Pace | null;
}

const brought = new WeakMap<Room, readonly OverPaces[]>();

/** What was worked out of broods that were over by a day: later lines seldom tell more of them. */
export function takeOutPaces(room: Room, over: Day): readonly OverPaces[] {
  return [...(known.get(room) ?? [])].map(([species, paces]) => {
    const byName = new Map(paces.map(({ brood, mean, variance }) => [brood, { mean, variance }]));
    const old = [...room.stock.broods.values()].filter((brood) => brood.species === species && isOver(brood, over));
    return {
      species,
      over,
      under: underOf(room, species),
      paces: old.map(({ name, lines }) => ({ brood: name, lines: lines.length, pace: byName.get(name) ?? null })),
    };
  });
}

/** Brings back what `takeOutPaces` gave, for a room of the same lines up to that day and perhaps more after it. */
export function bringBackPaces(room: Room, paces: readonly OverPaces[]): void {
  brought.set(room, paces);
}

/** Finds the pace of a brood of which nothing was told since. */
function overPaces(room: Room, species: string): (brood: SeenBrood) => OverPace | null {
  const found = brought.get(room)?.find((one) => one.species === species && one.under === underOf(room, species));
  if (found === undefined) return () => null;
  const byName = new Map(found.paces.map((one) => [one.brood, one]));
  return (brood) => {
    const pace = byName.get(brood.name);
    return pace?.lines === brood.lines.length && isOver(brood, found.over) ? pace : null;
  };
}

/** How warm it was counts for some days after laying, whatever became of the brood. */
const WARMTH_COUNTS = 10;

function isOver({ ended, laid, oneOf }: SeenBrood, day: Day): boolean {
  const early = laid.likely ?? laid.high;
  return ended !== null && ended.day <= day && early !== null && early + WARMTH_COUNTS <= day && oneOf.length === 0;
}

function underOf(room: Room, species: string): string {
  return JSON.stringify([room.stock.species.get(species)?.traits, adultSizeOf(room, species)]);
}

/** What the readings of a brood alone say of its pace: the usual is taken out again, since it is not news. */
function ownPace(room: Room, brood: SeenBrood): Pace | null {
  if (brood.sizes.length === 0) return null;
  const start = startOf(room, brood);
  if (start === null) return null;
  const readings = readingsOf(room, brood, start.anchor).filter((reading) => !isSelected(room, brood, reading.seen));
  if (readings.every((reading) => reading.age < TAUGHT_AT)) return null;
  const before = paceOf(start.prior, []);
  const after = paceOf(start.prior, readings);
  const news = 1 / after.sd ** 2 - 1 / before.sd ** 2;
  if (news <= 0) return null;
  const mean = (after.mean / after.sd ** 2 - before.mean / before.sd ** 2) / news;
  return { mean, variance: 1 / news };
}
