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
const BETWEEN = BROODS_DIFFER ** 2;

/**
 * When this room's broods of that species reach the later size: what is usual, moved by what the others
 * did, each by its certainty (normal means of means: e.g. Gelman et al., chapter 5, from memory). One
 * brood teaches a little, several nearly all.
 */
export function taughtPace(room: Room, body: SeenBody, prior: GrowthPrior): Taught | null {
  if (body.species === null) return null;
  const all = pacesOf(room, body.species);
  // All of them together are added up once: a room has thousands, and each is told by all others.
  const itself = all.paces.get(body.name);
  const own = itself === undefined ? { precision: 0, sum: 0 } : weightOf(itself);
  const broods = all.paces.size - (itself === undefined ? 0 : 1);
  if (broods === 0) return null;
  const usual = paceOf({ ...prior, startAge: exactly(0), laterAge: lessDays(prior) }, []);
  const before = 1 / Math.max(usual.sd ** 2 - BETWEEN, usual.sd ** 2 / 4);
  const precision = before + (all.precision - own.precision);
  const sum = usual.mean * before + (all.sum - own.sum);
  const sd = Math.sqrt(1 / precision + BETWEEN);
  const start = prior.startAge.likely ?? prior.startAge.low;
  const age = (z: number): number => start + Math.exp(sum / precision + z * sd);
  return { laterAge: { low: age(-1.2816), likely: age(0), high: age(1.2816) }, broods };
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

/** How much a pace counts, one over its variance, and that times its mean. */
interface Weight {
  readonly precision: number;
  readonly sum: number;
}

function weightOf({ mean, variance }: Pace): Weight {
  const precision = 1 / (variance + BETWEEN);
  return { precision, sum: mean * precision };
}

/** Paces of a species by brood, and what all together count. */
interface Paces extends Weight {
  readonly paces: ReadonlyMap<string, Pace>;
}

/** Paces worked out so far: a room never changes, and every row of an answer asks for the same ones. */
const known = new WeakMap<Room, Map<string, Paces>>();

function pacesOf(room: Room, species: string): Paces {
  const bySpecies = known.get(room) ?? new Map<string, Paces>();
  known.set(room, bySpecies);
  const all = bySpecies.get(species) ?? addedUp(room, species);
  bySpecies.set(species, all);
  return all;
}

function addedUp(room: Room, species: string): Paces {
  const { broods } = room.stock;
  const over = overPaces(room, species);
  const paces = new Map<string, Pace>();
  let [precision, sum] = [0, 0];
  for (const name of broods.keys()) {
    const pace = over(name) ?? paceIn(room, species, broods.get(name));
    if (pace === 'none') continue;
    const weight = weightOf(pace);
    paces.set(name, pace);
    precision += weight.precision;
    sum += weight.sum;
  }
  return { paces, precision, sum };
}

/** What a brood says of the pace of such fish, where it says anything. */
type Says = Pace | 'none';

function paceIn(room: Room, species: string, brood: SeenBrood | undefined): Says {
  if (brood?.species !== species || brood.oneOf.length > 0) return 'none';
  return ownPace(room, brood) ?? 'none';
}

/** Paces of the broods of one species that were over by a day, as plain data. */
export interface OverPaces {
  readonly species: string;
  /** All that they rest on beside the broods themselves. */
  readonly under: string;
  readonly paces: readonly { readonly brood: string; readonly pace: Pace | null }[];
}

/** What was brought back for a room, by brood. */
type Brought = ReadonlyMap<string, { readonly species: string; readonly under: string; readonly pace: Says }>;

const brought = new WeakMap<Room, Brought>();

/**
 * What was worked out of broods that were over by a day. `lines` tells how many lines told of each then: one
 * of which later lines told more is left out.
 */
export function takeOutPaces(room: Room, over: Day, lines: ReadonlyMap<string, number>): readonly OverPaces[] {
  return [...(known.get(room) ?? [])].map(([species, { paces }]) => {
    const old = [...room.stock.broods.values()].filter(
      (brood) => brood.species === species && isOver(brood, over) && lines.get(brood.name) === brood.lines.length,
    );
    return {
      species,
      under: underOf(room, species),
      paces: old.map(({ name }) => ({ brood: name, pace: paces.get(name) ?? null })),
    };
  });
}

/**
 * Brings back what `takeOutPaces` gave, for a room of the same lines up to that day and perhaps more after it.
 * `isAsThen` tells that nothing of a brood can have changed since.
 */
export function bringBackPaces(room: Room, paces: readonly OverPaces[], isAsThen: (brood: string) => boolean): void {
  const byBrood = paces.flatMap((one) =>
    one.paces
      .filter(({ brood }) => isAsThen(brood))
      .map(({ brood, pace }) => [brood, { pace: pace ?? 'none', ...one }] as const),
  );
  brought.set(room, new Map(byBrood));
}

/** What was brought back of a brood by name, so that it need not be looked at; null where it has to be. */
function overPaces(room: Room, species: string): (brood: string) => Says | null {
  const known = brought.get(room);
  const under = underOf(room, species);
  return (name) => {
    const one = known?.get(name);
    if (one === undefined) return null;
    if (one.species !== species) return 'none';
    return one.under === under ? one.pace : null;
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
