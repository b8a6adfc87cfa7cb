/** What the room's other broods teach of how fast such fish grow here. */
import type { Interval } from '../../core/interval.ts';
import { exactly } from '../../core/interval.ts';
import { paceOf } from '../../science/growth.ts';
import type { GrowthPrior } from '../../science/growth.ts';
import type { SeenBody, SeenBrood } from '../../state/bodies.ts';
import type { Room } from '../../state/draft.ts';
import { isSelected, readingsOf, startOf } from './start.ts';

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

type Paces = readonly { readonly brood: string; readonly mean: number; readonly variance: number }[];

/** Paces worked out so far: a room never changes, and every row of an answer asks for the same ones. */
const known = new WeakMap<Room, Map<string, Paces>>();

function pacesOf(room: Room, species: string): Paces {
  const bySpecies = known.get(room) ?? new Map<string, Paces>();
  known.set(room, bySpecies);
  const before = bySpecies.get(species);
  if (before) return before;
  const paces = [...room.stock.broods.values()]
    .filter((brood) => brood.species === species && brood.oneOf.length === 0)
    .flatMap((brood) => {
      const pace = ownPace(room, brood);
      return pace === null ? [] : [{ brood: brood.name, ...pace }];
    });
  bySpecies.set(species, paces);
  return paces;
}

/** What the readings of a brood alone say of its pace: the usual is taken out again, since it is not news. */
function ownPace(room: Room, brood: SeenBrood): { mean: number; variance: number } | null {
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
