/**
 * Lines: fish that go back to the same founders. Which ends, or hangs on a few young, if one fish dies,
 * and how many breeders it stands on.
 */
import { NONE, plus, type Interval } from '../../core/interval.ts';
import type { Place } from '../../core/span.ts';
import { countWords, listWords } from '../../core/words.ts';
import { effectiveBreeders } from '../../science/kin.ts';
import { isBrood, type SeenBody, type SeenBrood } from '../../state/bodies.ts';
import type { Room } from '../../state/draft.ts';
import { livingMembers } from '../../state/members.ts';
import { promisedOf, stockName } from '../../state/promised.ts';
import { sexesLeft } from '../../state/sexes.ts';
import type { Sexes } from '../../state/sexes.ts';
import { foundersOf, type Animal, type Pedigree } from './pedigree.ts';

export interface Line {
  readonly name: string;
  readonly species: string | null;
  readonly groups: readonly string[];
  readonly males: number;
  readonly females: number;
  /** Grown fish whose sex nobody wrote. */
  readonly unsexed: Interval;
  readonly kept: readonly Reserve[];
  readonly young: readonly Reserve[];
  /** Effective number of breeders, and the inbreeding that each generation adds. */
  readonly ne: number;
  readonly deltaF: number;
  /** What is lost with one fish; null where nothing hangs on one. */
  readonly risk: { readonly weight: 'ends' | 'thin'; readonly says: string } | null;
  readonly places: readonly Place[];
}

interface Reserve {
  readonly stock: string;
  readonly count: Interval;
}

interface Gathered {
  readonly groups: Set<string>;
  readonly sexes: ('male' | 'female' | null)[];
  readonly kept: Reserve[];
  readonly young: Reserve[];
  readonly places: Place[];
  species: string | null;
  unsexed: Interval;
}

/** Lines with grown fish, young or holdbacks in the room, those at risk first. Colonies are none: no single fish bears one. */
export function linesIn(room: Room, pedigree: Pedigree): readonly Line[] {
  const found = new Map<string, Gathered>();
  const of = (animal: Animal): Gathered => {
    const key = `${animal.species ?? ''} ${lineOf(pedigree, animal)}`;
    const known = found.get(key) ?? empty(animal.species);
    found.set(key, known);
    return known;
  };
  for (const group of room.stock.groups.values()) {
    if (group.kind === 'colony' || group.total.high <= 0) continue;
    const fish = pedigree.fishOf(group.name);
    if (livingMembers(group).length > 0 || group.members.length === 0)
      for (const one of fish) of(one).groups.add(group.name);
    if (group.members.length > 0) for (const one of fish) of(one).sexes.push(one.sex);
    const [any] = fish;
    const sexes = sexesLeft(group);
    if (any && group.members.length === 0) {
      if (sexes === null) of(any).unsexed = plus(of(any).unsexed, group.total);
      else of(any).sexes.push(...fishBySex(sexes));
    }
    if (any) of(any).places.push(group.declared);
  }
  for (const brood of room.stock.living.values()) {
    const [any] = pedigree.fishOf(brood.name);
    if (!any || brood.suspected || brood.ended !== null || brood.total.high <= 0) continue;
    addYoung(room, brood, of(any));
  }
  return [...found].map(([key, one]) => lineRow(key.slice((one.species ?? '').length + 1), one)).toSorted(byRisk);
}

function fishBySex({ males, females }: Sexes): ('male' | 'female')[] {
  return [
    ...Array.from({ length: males }, () => 'male' as const),
    ...Array.from({ length: females }, () => 'female' as const),
  ];
}

/** The line of a fish: the lines of its founders, each once. */
export function lineOf(pedigree: Pedigree, animal: Animal): string {
  const lines = foundersOf(pedigree, [animal.id]).map(({ line }) => line);
  return [...new Set(lines)].toSorted().join(' × ');
}

function empty(species: string | null): Gathered {
  return { groups: new Set(), sexes: [], kept: [], young: [], places: [], species, unsexed: NONE };
}

function addYoung(room: Room, brood: SeenBrood, line: Gathered): void {
  const { keptCount, kept } = promisedOf(room, brood, room.on);
  const stock = nameOf(brood);
  if (keptCount.high > 0) line.kept.push({ stock, count: keptCount });
  line.young.push({ stock, count: brood.total });
  line.places.push(...kept.map(({ place }) => place), ...brood.lines.slice(0, 1));
}

function nameOf(body: SeenBody): string {
  return isBrood(body) ? stockName(body) : body.name;
}

function lineRow(name: string, one: Gathered): Line {
  const males = one.sexes.filter((sex) => sex === 'male').length;
  const females = one.sexes.filter((sex) => sex === 'female').length;
  const { ne, deltaF } = effectiveBreeders(males, females);
  const { groups, kept, young, unsexed, species, places } = one;
  const row = { name, species, groups: [...groups], males, females, unsexed, kept, young, ne, deltaF, places };
  return { ...row, risk: riskOf(row) };
}

/** What one death would leave. Two of each sex: nothing hangs on one fish. */
function riskOf(line: Omit<Line, 'risk'>): Line['risk'] {
  const { males, females, unsexed, kept, young } = line;
  if (males >= 2 && females >= 2) return null;
  const bred = males + females > 0;
  const single = kept.length > 0 && total(kept).high === 1 ? 'a single holdback' : null;
  const reserves = [
    ...kept.map(({ stock, count }) => `${countWords(count)} kept back of ${stock}`),
    ...young
      .filter(({ stock }) => kept.every((one) => one.stock !== stock))
      .map(({ stock, count }) => `${countWords(count)} ${stock}`),
    ...(unsexed.high > 0 ? [`${countWords(unsexed)} not sexed`] : []),
  ];
  const who = males === 1 && females === 1 ? 'either' : males === 1 ? 'the male' : females === 1 ? 'the female' : 'now';
  if (reserves.length === 0)
    return bred ? { weight: 'ends', says: `${who}: the line ends, no young, none kept back` } : null;
  const only = `${single === null ? '' : 'a single holdback, '}${listWords(reserves)}`;
  const weight = single === null ? 'thin' : 'ends';
  return { weight, says: bred ? `${who}: goes on in ${only}` : `no pair yet, only ${only}` };
}

function total(reserves: readonly Reserve[]): Interval {
  return reserves.reduce<Interval>((sum, { count }) => plus(sum, count), NONE);
}

const WEIGHTS = { ends: 0, thin: 1 } as const;

function byRisk(a: Line, b: Line): number {
  const weight = ({ risk }: Line): number => (risk === null ? 2 : WEIGHTS[risk.weight]);
  return weight(a) - weight(b);
}
