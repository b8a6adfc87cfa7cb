/**
 * Which fish of the room would pair best: holdbacks and other young with each other, with bought groups
 * and with grown fish that have no mate. Pairs that live together are left in peace.
 */
import type { Place } from '../../core/span.ts';
import type { SeenBody } from '../../state/bodies.ts';
import type { Room } from '../../state/draft.ts';
import { promisedOf } from '../../state/promised.ts';
import { kinOf, type Kin } from './couple.ts';
import type { Animal, Pedigree } from './pedigree.ts';

export interface Pairing {
  readonly one: string;
  readonly other: string;
  readonly species: string;
  readonly kin: Kin;
  /** How many of the two stocks are kept back: 0 to 2. */
  readonly kept: number;
  /** One of them is grown and has no mate. */
  readonly widowed: boolean;
  readonly places: readonly Place[];
}

interface Candidate {
  readonly species: string | null;
  readonly fish: readonly Animal[];
  readonly name: string;
  readonly kept: boolean;
  /** A grown fish without a mate. */
  readonly lone: boolean;
}

/** Pairings shown for each species. */
const BEST = 3;

/** The best pairings of each species, the least inbred first; with holdbacks on hand, only pairings with one of them. */
export function pairingsIn(room: Room, pedigree: Pedigree): readonly Pairing[] {
  const all = candidates(room, pedigree);
  return [...new Set(all.flatMap(({ species }) => species ?? []))].flatMap((species) =>
    bestOf(
      pedigree,
      species,
      all.filter((one) => one.species === species),
    ),
  );
}

function bestOf(pedigree: Pedigree, species: string, all: readonly Candidate[]): readonly Pairing[] {
  const held = all.some(({ kept }) => kept);
  const pairings = all.flatMap((one, at) =>
    all.slice(at).flatMap((other): Pairing[] => {
      if (held && !one.kept && !other.kept && !one.lone && !other.lone) return [];
      const couple = coupleOf(one, other);
      if (couple === null) return [];
      const [a, b] = couple;
      return [
        {
          one: one.name,
          other: other.name,
          species,
          kin: kinOf(pedigree, a, b),
          kept: Number(one.kept) + Number(other.kept),
          widowed: one.lone || other.lone,
          places: [...a.lines, ...b.lines],
        },
      ];
    }),
  );
  return pairings.toSorted(byKin).slice(0, BEST);
}

/** Two different fish that are not of one sex. */
function coupleOf(one: Candidate, other: Candidate): readonly [Animal, Animal] | null {
  for (const a of one.fish) {
    const b = other.fish.find(({ id, sex }) => id !== a.id && (sex === null || a.sex === null || sex !== a.sex));
    if (b) return [a, b];
  }
  return null;
}

function candidates(room: Room, pedigree: Pedigree): readonly Candidate[] {
  const broods = [...room.stock.living.values()].filter(
    (brood) => !brood.suspected && brood.ended === null && brood.total.low >= 1 && isFree(brood),
  );
  const groups = [...room.stock.groups.values()].filter(({ kind, total }) => kind !== 'colony' && total.low >= 1);
  return [
    ...broods.map((brood) => ({
      species: brood.species,
      fish: pedigree.fishOf(brood.name),
      name: brood.oneOf.length > 0 ? brood.oneOf.join(' or ') : brood.name,
      kept: promisedOf(room, brood, room.on).keptCount.high > 0,
      lone: false,
    })),
    ...groups.flatMap((group): Candidate[] => {
      const { species } = group;
      const fish = pedigree.fishOf(group.name);
      // Two stand for any number of them; where one is left it has no mate among them.
      if (group.members.length === 0)
        return [{ species, fish: fish.slice(0, group.total.high), name: group.name, kept: false, lone: false }];
      const paired = new Set(fish.map(({ sex }) => sex)).size > 1 && group.bond !== 'split up';
      return paired ? [] : fish.map((one) => ({ species, fish: [one], name: one.name, kept: false, lone: true }));
    }),
  ];
}

/** Young that swim: eggs and wrigglers may still come to nothing. */
function isFree(brood: SeenBody): boolean {
  return !('laid' in brood) || brood.swam !== null || brood.released !== null || brood.moved;
}

function byKin(a: Pairing, b: Pairing): number {
  const most = ({ kin }: Pairing): number => Math.max(kin.f.high ?? 1, kin.ifSibs ?? 0);
  return a.kin.f.low - b.kin.f.low || most(a) - most(b) || Number(b.widowed) - Number(a.widowed) || b.kept - a.kept;
}
