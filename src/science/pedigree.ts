/**
 * Kinship where the journal leaves open who the parents were: bounds over every reading of it. Parents
 * that nobody wrote count as unrelated founders, so the lower bound holds whatever is found out later.
 */
import { kinship, type Pedigreed } from './kin.ts';

export interface Couple {
  readonly sire: string | null;
  readonly dam: string | null;
}

/** An animal whose parents are one of these couples; none: unknown. Those with the same `choice` have the same couple. */
export interface Possible {
  readonly id: string;
  readonly choice: string;
  readonly couples: readonly Couple[];
}

/** Bounds of a coefficient of kinship; `high` is null where it was not worked out. */
export interface Bounds {
  readonly low: number;
  readonly high: number | null;
}

/** Readings of an open pedigree that are tried; where there are more, whoever is in doubt counts as unknown. */
const MOST_READINGS = 512;

/** The animals named, and everybody they may descend from. */
export function ancestry(animals: ReadonlyMap<string, Possible>, ids: readonly string[]): ReadonlySet<string> {
  const seen = new Set<string>();
  const open = [...ids];
  for (let id = open.pop(); id !== undefined; id = open.pop()) {
    const animal = animals.get(id);
    if (seen.has(id) || !animal) continue;
    seen.add(id);
    for (const { sire, dam } of animal.couples) open.push(...[dam, sire].filter((parent) => parent !== null));
  }
  return seen;
}

/**
 * The least and the most kinship of two animals, that is the inbreeding that their young would have,
 * over every reading of the pedigree. Method: tabular (Wright 1922; Falconer & Mackay 1996, ch. 5).
 */
export function kinshipBounds(animals: ReadonlyMap<string, Possible>, one: string, other: string): Bounds {
  const all = [...ancestry(animals, [one, other])].flatMap((id) => animals.get(id) ?? []);
  const choices = new Map<string, number>();
  for (const { choice, couples } of all) if (couples.length > 1) choices.set(choice, couples.length);
  const readings = [...choices.values()].reduce((product, count) => product * count, 1);
  if (readings > MOST_READINGS) {
    const sure = all.map((animal) => settled(animal, animal.couples.length > 1 ? null : 0));
    return { low: kinship(sure)?.of(one, other) ?? 0, high: null };
  }
  const found = Array.from({ length: readings }, (_, reading) => {
    const picked = pick(choices, reading);
    return kinship(all.map((animal) => settled(animal, picked.get(animal.choice) ?? 0)))?.of(one, other) ?? null;
  });
  const values = found.filter((value) => value !== null);
  if (values.length < found.length) return { low: values.length === 0 ? 0 : Math.min(0, ...values), high: null };
  return { low: Math.min(...values), high: Math.max(...values) };
}

/** The choices of one reading: its number written in a base of its own for each. */
function pick(choices: ReadonlyMap<string, number>, reading: number): ReadonlyMap<string, number> {
  let rest = reading;
  return new Map(
    [...choices].map(([choice, count]) => {
      const index = rest % count;
      rest = Math.floor(rest / count);
      return [choice, index];
    }),
  );
}

function settled({ id, couples }: Possible, index: number | null): Pedigreed {
  const couple = index === null ? undefined : couples[index];
  return { id, sire: couple?.sire ?? null, dam: couple?.dam ?? null };
}
