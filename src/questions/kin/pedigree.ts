/**
 * Who descends from whom, as the journal says it. A fish that can be told apart is somebody; of a brood or
 * a bought group two fish stand for all, since two young of one brood may be paired as well.
 */
import type { DayWindow } from '../../core/interval.ts';
import type { Place } from '../../core/span.ts';
import type { Sex } from '../../journal/subject.ts';
import { ancestry, type Couple, type Possible } from '../../science/pedigree.ts';
import type { SeenBrood, SeenGroup } from '../../state/bodies.ts';
import type { Room } from '../../state/draft.ts';
import { livingMembers } from '../../state/members.ts';
import { sexesLeft } from '../../state/sexes.ts';
import { oncePerRoom } from '../holds/once.ts';

type SeenFish = SeenGroup['members'][number];

export interface Animal extends Possible {
  /** In a sentence: `Wren`, `the male of Aspen`, `Aspen-1`. */
  readonly name: string;
  /** The group or brood that it is of. */
  readonly body: string;
  readonly sex: Sex | null;
  readonly species: string | null;
  /** Where it comes from, in words: `from Aspen-1`, `from "a friend"`, `parents not on record`. */
  readonly origin: string;
  /** For one without known parents: a purchase or line that it may share with its sibs. */
  readonly stem: { readonly key: string; readonly says: string } | null;
  /** The line that it stands for where its parents are unknown: the line's name, else its group's. */
  readonly line: string;
  readonly lines: readonly Place[];
}

export interface Pedigree {
  readonly animals: ReadonlyMap<string, Animal>;
  /** The fish of a group that can be told apart, or the two that stand for a brood or a bought group. */
  fishOf(body: string): readonly Animal[];
}

export const pedigree: (room: Room) => Pedigree = oncePerRoom((room) => {
  const animals = new Map<string, Animal>();
  const byBody = new Map<string, Animal[]>();
  const add = (animal: Animal): void => {
    animals.set(animal.id, animal);
    byBody.set(animal.body, [...(byBody.get(animal.body) ?? []), animal]);
  };
  for (const group of room.stock.groups.values()) {
    group.members.forEach((fish, index) => {
      if (sameFish(room, fish) === null) add(memberOf(room, group, fish, index));
    });
    if (group.members.length === 0) for (const n of [1, 2]) add(someOf(room, group, n));
  }
  for (const brood of room.stock.broods.values()) {
    if (!brood.suspected) for (const n of [1, 2]) add(youngOf(room, brood, n));
  }
  return { animals, fishOf: (body) => fishOf(room, animals, byBody, body) };
});

function fishOf(
  room: Room,
  animals: ReadonlyMap<string, Animal>,
  byBody: ReadonlyMap<string, readonly Animal[]>,
  body: string,
): readonly Animal[] {
  const group = room.stock.groups.get(body);
  if (!group || group.members.length === 0) return byBody.get(body) ?? [];
  return group.members.flatMap((fish, index) => {
    const found = fish.gone === null ? animals.get(idOf(room, group, fish, index)) : undefined;
    return found ? [found] : [];
  });
}

/** Everybody that an animal may descend from whose own parents nobody wrote, itself included. */
export function foundersOf({ animals }: Pedigree, ids: readonly string[]): readonly Animal[] {
  return [...ancestry(animals, ids)].flatMap((id) => {
    const animal = animals.get(id);
    return animal && isFounder(animal) ? [animal] : [];
  });
}

/** Parents that nobody wrote among the ancestors of these animals: founders, and single unknown parents. */
export function unknownFounders({ animals }: Pedigree, ids: readonly string[]): number {
  return [...ancestry(animals, ids)].reduce((sum, id) => {
    const couples = animals.get(id)?.couples ?? [];
    if (couples.length === 0) return sum + 1;
    return sum + (couples.some(({ sire, dam }) => (sire === null) !== (dam === null)) ? 1 : 0);
  }, 0);
}

function isFounder({ couples }: Animal): boolean {
  return couples.every(({ sire, dam }) => sire === null && dam === null);
}

function idOf(room: Room, group: SeenGroup, fish: SeenFish, index: number): string {
  const before = sameFish(room, fish);
  return before ?? `${group.name}#${String(index)}`;
}

/** The id under which a new mate stood in its earlier group: it is the same fish, with the same young. */
function sameFish(room: Room, fish: SeenFish): string | null {
  const from = fish.joined?.from ?? null;
  const source = from === null ? undefined : room.stock.groups.get(from);
  if (!source) return null;
  const index = source.members.findIndex(
    ({ sex, gone }) => sex === fish.sex && gone?.how === 'joined' && gone.place.line === fish.joined?.place.line,
  );
  const found = source.members[index];
  return found ? idOf(room, source, found, index) : null;
}

function memberOf(room: Room, group: SeenGroup, fish: SeenFish, index: number): Animal {
  const sources = fish.joined === undefined ? group.parentsFrom : fish.joined.from === null ? [] : [fish.joined.from];
  const id = `${group.name}#${String(index)}`;
  const apart = fish.joined === undefined ? oneOfEach(room, group, index) : null;
  return {
    ...descent(room, group, sources, id, fish.joined === undefined),
    ...apart,
    id,
    name: fish.name ?? `${articleOf(group, fish)} ${fish.sex ?? 'fish'} of ${group.name}`,
    body: group.name,
    sex: fish.sex,
    species: group.species,
    lines: [fish.joined?.place ?? group.declared],
  };
}

/** Two fish out of two stocks are one of each, either way round: as the one came, the other did not. Null for any others. */
function oneOfEach(room: Room, group: SeenGroup, index: number): Pick<Animal, 'choice' | 'couples'> | null {
  const declared = group.members.filter(({ joined }) => joined === undefined);
  if (declared.length !== 2 || group.parentsFrom.length !== 2) return null;
  const [some = [], others = []] = group.parentsFrom.map((name) => couplesOf(room, originsOf(room, [name])));
  if (some.length + others.length === 0) return null;
  const ways = orUnknown(some).flatMap((one) => orUnknown(others).map((other) => ({ one, other })));
  const straight = ways.map(({ one }) => one);
  const crossed = ways.map(({ other }) => other);
  const first = group.members.findIndex(({ joined }) => joined === undefined) === index;
  return {
    choice: `pair ${group.name}`,
    couples: first ? [...straight, ...crossed] : [...crossed, ...straight],
  };
}

function orUnknown(couples: readonly Couple[]): readonly Couple[] {
  return couples.length > 0 ? couples : [UNKNOWN];
}

/** `the male`, `a female` where there are several, `an earlier male` where it is gone. */
function articleOf(group: SeenGroup, fish: SeenFish): string {
  if (fish.gone !== null && livingMembers(group).some(({ sex }) => sex === fish.sex)) return 'an earlier';
  return livingMembers(group).filter(({ sex, name }) => name === null && sex === fish.sex).length > 1 ? 'a' : 'the';
}

function someOf(room: Room, group: SeenGroup, n: number): Animal {
  const id = `${group.name}~${String(n)}`;
  return {
    ...descent(room, group, group.parentsFrom, id, true),
    id,
    name: group.name,
    body: group.name,
    sex: onlySex(group),
    species: group.species,
    lines: [group.declared],
  };
}

/** Of a group of males or of females alone each is one. */
function onlySex(group: SeenGroup): Sex | null {
  const sexes = sexesLeft(group);
  if (sexes === null || (sexes.males > 0 && sexes.females > 0)) return null;
  return sexes.males > 0 ? 'male' : sexes.females > 0 ? 'female' : null;
}

function youngOf(room: Room, brood: SeenBrood, n: number): Animal {
  const origins = originsOf(room, [brood.name]);
  const group = brood.group === null ? undefined : room.stock.groups.get(brood.group);
  const couples = couplesOf(room, origins);
  return {
    id: `${brood.name}~${String(n)}`,
    choice: origins.length === 1 ? `brood ${brood.name}` : `${brood.name}~${String(n)}`,
    couples,
    name: brood.oneOf.length > 0 ? brood.oneOf.join(' or ') : brood.name,
    body: brood.name,
    sex: null,
    species: brood.species,
    origin: brood.oneOf.length > 0 ? `one of ${brood.oneOf.join(', ')}` : `young of ${brood.group ?? 'nobody written'}`,
    stem: couples.length > 0 ? null : group ? stemOf(group) : { key: `brood ${brood.name}`, says: brood.name },
    line: group?.line ?? brood.group ?? brood.name,
    lines: brood.lines.slice(0, 1),
  };
}

/** Parents of a fish of a group, by where the group's line says that its fish come from. */
function descent(
  room: Room,
  group: SeenGroup,
  sources: readonly string[],
  id: string,
  asDeclared: boolean,
): Pick<Animal, 'choice' | 'couples' | 'origin' | 'stem' | 'line'> {
  const origins = originsOf(room, sources);
  const [only] = origins;
  const couples = couplesOf(room, origins);
  const bought = origins.length === 1 && only ? room.stock.groups.get(only) : undefined;
  const own = asDeclared ? stemOf(group) : null;
  const text =
    asDeclared && group.from !== null ? `from "${group.from}", parents not on record` : 'parents not on record';
  return {
    choice: origins.length === 1 && only ? `brood ${only}` : id,
    couples,
    origin: sources.length > 0 ? `from ${sources.join(' or ')}` : text,
    stem: couples.length > 0 ? null : bought ? stemOf(bought) : own,
    line: (asDeclared ? group.line : null) ?? bought?.line ?? bought?.name ?? group.name,
  };
}

/** Fish of one purchase, one colony or one line may be sibs; a pair of which nothing is said may not be. */
function stemOf(group: SeenGroup): Animal['stem'] {
  if (group.line !== null) {
    return { key: `line ${group.species ?? ''} ${group.line}`, says: `the line "${group.line}"` };
  }
  if (group.kind === 'colony') return { key: `group ${group.name}`, says: `the colony ${group.name}` };
  if (group.from === null && group.kind !== 'group') return null;
  return { key: `group ${group.name}`, says: `one purchase, ${group.name}` };
}

/** Names followed back to broods, or to groups of which the parents are not known. */
function originsOf(room: Room, names: readonly string[]): readonly string[] {
  const found = new Set<string>();
  const seen = new Set<string>();
  const open = [...names];
  for (let name = open.pop(); name !== undefined; name = open.pop()) {
    if (seen.has(name)) continue;
    seen.add(name);
    const further = room.stock.broods.get(name)?.oneOf ?? room.stock.groups.get(name)?.parentsFrom ?? [];
    if (further.length > 0) open.push(...further);
    else found.add(name);
  }
  return [...found].toSorted();
}

/** Every couple that the fish of these origins may come from; none where any of them is not known. */
function couplesOf(room: Room, origins: readonly string[]): readonly Couple[] {
  const each = origins.map((name) => {
    const brood = room.stock.broods.get(name);
    const group = room.stock.groups.get(brood?.group ?? '');
    return brood && group ? parentsOf(room, brood, group) : [];
  });
  if (each.some((couples) => couples.length === 0))
    return each.length > 1 && each.some((one) => one.length > 0) ? [UNKNOWN, ...each.flat()] : [];
  return each.flat();
}

const UNKNOWN: Couple = { sire: null, dam: null };

/** The males and females of the group that were with it when the eggs were laid. */
function parentsOf(room: Room, brood: SeenBrood, group: SeenGroup): readonly Couple[] {
  const fish = group.members.flatMap((one, index) =>
    wasThere(one, brood.laid) ? [{ ...one, id: idOf(room, group, one, index) }] : [],
  );
  const sires = fish.filter(({ sex }) => sex === 'male').map(({ id }) => id);
  const mothers = fish.filter(({ name }) => name !== null && brood.mothers.includes(name));
  const dams = (mothers.length > 0 ? mothers : fish.filter(({ sex }) => sex === 'female')).map(({ id }) => id);
  if (sires.length === 0 && dams.length === 0) return [];
  const orNone = (ids: readonly string[]): readonly (string | null)[] => (ids.length > 0 ? ids : [null]);
  return orNone(sires).flatMap((sire) => orNone(dams).map((dam): Couple => ({ sire, dam })));
}

function wasThere(fish: SeenFish, laid: DayWindow): boolean {
  const came = fish.joined?.day ?? -Infinity;
  const went = fish.gone?.day ?? Infinity;
  return came <= (laid.high ?? Infinity) && went >= (laid.low ?? -Infinity);
}
