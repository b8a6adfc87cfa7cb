/**
 * The grown fish of a group that can be told apart: which of them a clause means, and what happens to
 * the group when they move or are gone. Counting fish is the stock's business; this keeps who is who.
 */
import type { Problem } from '../core/problem.ts';
import type { Place } from '../core/span.ts';
import type { Day } from '../core/day.ts';
import { isSure } from '../core/interval.ts';
import type { Interval } from '../core/interval.ts';
import type { Measure } from '../core/quantity.ts';
import type { Heads } from '../journal/event.ts';
import type { GroupKind, Member, Sex, Subject } from '../journal/subject.ts';
import type { Body, Fish, Group } from './stock.ts';
import { endDispute, openDispute } from './quarrel.ts';
import type { Dispute } from './quarrel.ts';

interface At {
  readonly day: Day;
  readonly place: Place;
  readonly subject: Subject;
}

/** How many fish a group means by its very kind, where its line counts none (`pair` 2: common practice, no source). */
const BY_KIND: { readonly [K in GroupKind]: readonly Sex[] } = {
  pair: ['male', 'female'],
  trio: ['male', 'female', 'female'],
  harem: ['male'],
  colony: [],
  group: [],
};

/** A member as a line tells it, before it is anybody's. */
export interface Told {
  readonly sex: Sex | null;
  readonly name: string | null;
  readonly size: Measure<'mm'> | null;
}

/**
 * The fish of a new group that can be told apart: those that the line names, those that it counts by
 * sex, and for a pair or trio those that the word itself means.
 */
export function membersOf(kind: GroupKind, told: readonly Told[], heads: Heads | null, tank: string | null): Fish[] {
  const fish: Fish[] = told.map((one) => ({ ...one, tank, gone: null }));
  const counted = heads === null ? [] : countedSexes(kind, heads);
  const wanted = counted.length > 0 ? counted : BY_KIND[kind];
  for (const sex of SEXES) {
    const missing = wanted.filter((one) => one === sex).length - fish.filter((one) => one.sex === sex).length;
    const unsexed = fish.filter((one) => one.sex === null).length;
    for (let n = unsexed; n < missing; n += 1) fish.push({ sex, name: null, size: null, tank, gone: null });
  }
  return fish;
}

const SEXES: readonly Sex[] = ['male', 'female'];

/** Sexes that a line counts for sure, in a group small enough for each fish to be somebody. */
function countedSexes(kind: GroupKind, heads: Heads): Sex[] {
  if (kind === 'colony' || kind === 'group') return [];
  const sure = (count: Interval | null): number => (count !== null && isSure(count) ? count.low : 0);
  return SEXES.flatMap((sex) => Array.from({ length: sure(sex === 'male' ? heads.males : heads.females) }, () => sex));
}

/** A group with nobody counted in it yet. */
export function newGroup(
  body: Body,
  given: { kind: GroupKind; day: Day; place: Place; tank: string | null; members: Fish[]; from: string | null },
): Group {
  return {
    kind: given.kind,
    day: given.day,
    declared: given.place,
    home: given.tank,
    members: given.members,
    sexes: null,
    line: null,
    from: given.from,
    parentsFrom: [],
    born: null,
    bond: 'unsaid',
    bondSince: null,
    bonded: null,
    upset: null,
    partedOn: null,
    together: [],
    disputes: [],
    broods: [],
    suspected: [],
    noEggs: null,
    holding: null,
    ...body,
  };
}

/** Members of a group that are still alive and still its own. */
export function livingMembers<F extends { readonly gone: unknown }>(group: { readonly members: readonly F[] }): F[] {
  return group.members.filter((fish) => fish.gone === null);
}

/** How a fish is called in a sentence: by its name, else "the male", "a female", "one fish". */
export function memberName(member: Member): string {
  if (member.name !== null) return member.name;
  return member.sex === null ? 'one fish' : `the ${member.sex}`;
}

/**
 * The fish of a group that a clause means: all that live where it names none, the one by name, or the
 * one of that sex. Several of that sex with names of their own: a `which-member` problem, and null.
 * Fish without names cannot be told apart, so any one of them will do. A group that keeps no members
 * (a colony) gives an empty list.
 */
export function pickMembers(
  draft: { problems: Problem[] },
  group: Group,
  member: Member | null,
  event: At,
): Fish[] | null {
  const living = livingMembers(group);
  if (member === null) return living;
  const fits = living.filter((fish) => isCalled(fish, member));
  const first = fits[0];
  if (fits.length <= 1) {
    if (first) return [first];
    if (member.name === null && !living.some((fish) => fish.sex !== null)) return [];
    draft.problems.push(noSuchMember(group, member, event.place));
    return null;
  }
  const here = event.subject.kind === 'tank' ? event.subject.tank : null;
  const near = here === null ? fits : fits.filter((fish) => fish.tank === here);
  const choice = near.length > 0 ? near : fits;
  const only = choice[0];
  if (only && (choice.length === 1 || choice.every((fish) => fish.name === null))) return [only];
  draft.problems.push(whichMember(group, member, choice, event.place));
  return null;
}

/** True where a fish is the one that these words mean, as far as they say. */
export function isCalled(fish: { readonly sex: Sex | null; readonly name: string | null }, member: Member): boolean {
  if (member.name !== null) return fish.name === member.name;
  return member.sex === null || fish.sex === member.sex;
}

/** `single` where one sex is left, `apart` where male and female share no tank; null where they are together. */
export function partedWords(group: {
  readonly members: readonly { readonly sex: Sex | null; readonly tank: string | null; readonly gone: unknown }[];
}): 'single' | 'apart' | null {
  const living = livingMembers(group);
  const males = living.filter((fish) => fish.sex === 'male');
  const females = living.filter((fish) => fish.sex === 'female');
  const told = group.members.some((fish) => fish.sex === 'male') && group.members.some((fish) => fish.sex === 'female');
  if (!told) return null;
  if (males.length === 0 || females.length === 0) return 'single';
  return males.some((male) => females.some((female) => female.tank === male.tank)) ? null : 'apart';
}

/** Puts members in a tank; a dispute between fish that no longer share one ends as separated. */
export function membersMoved(group: Group, fish: readonly Fish[], to: string, event: At): void {
  const { day, place } = event;
  const wereParted = partedWords(group) !== null;
  for (const one of fish) one.tank = to;
  if (fish.length > 0) group.upset = { day, how: 'moved', place };
  const areParted = partedWords(group) !== null;
  if (!wereParted && areParted) group.partedOn = day;
  // Moved on one day, one after the other, they never were without their mate.
  if (wereParted && !areParted && group.partedOn !== day) group.together.push({ day, how: 'back', place });
  endIfApart(group, 'separated', event);
}

/** Members that died, were sold or given away: no longer of this group. */
export function membersGone(group: Group, fish: readonly Fish[], how: string, event: At): void {
  for (const one of fish) one.gone = { how, day: event.day, place: event.place };
  endIfApart(group, how === 'died' || how === 'culled' || how === 'eaten' ? 'died' : 'separated', event);
}

function endIfApart(group: Group, how: 'separated' | 'died', event: At): void {
  const open = openDispute(group);
  if (!open || group.members.length === 0 || canGoOn(group, open)) return;
  endDispute(group, { day: event.day, how, place: event.place });
}

/** True while those that the signs tell of, or any that may be, still share a tank. */
function canGoOn(group: Group, dispute: Dispute): boolean {
  const living = livingMembers(group);
  const told = dispute.signs.filter((sign) => sign.doer !== null || sign.sufferer !== null);
  return (told.length > 0 ? told : dispute.signs).some((sign) => canQuarrel(living, sign));
}

/** True where one of these fish may be the doer and shares a tank with another that may be the sufferer. */
export function canQuarrel(
  fish: readonly Fish[],
  { doer, sufferer }: { readonly doer: Member | null; readonly sufferer: Member | null },
): boolean {
  const suffers = (one: Fish, by: Fish): boolean =>
    one !== by && one.tank === by.tank && (sufferer === null || isCalled(one, sufferer));
  return fish.some((one) => (doer === null || isCalled(one, doer)) && fish.some((other) => suffers(other, one)));
}

function noSuchMember(group: Group, member: Member, place: Place): Problem {
  const who = member.name ?? `${member.sex ?? 'such'} fish`;
  return {
    kind: 'unknown-member',
    weight: 'stops',
    says: member.name === null ? `${group.name} has no ${who} left` : `${who} is no longer one of ${group.name}`,
    write: `the line that brought it: new ${member.sex ?? 'male'} from …, or take back the line that lost it`,
    at: place,
    also: [group.declared],
  };
}

/** What is said of a fish that is gone, and which living one of its sex the clause may mean. */
export function goneWords(
  group: Group,
  member: Member,
  tank: string | null,
  doing: string,
): { readonly says: string; readonly write: string } {
  const known = group.members.find((fish) => isCalled(fish, member));
  const sex = member.sex ?? known?.sex ?? null;
  const who = member.name ?? `the ${sex ?? 'fish'}`;
  const gone = `${who} is no longer one of ${group.name}`;
  const living = livingMembers(group).filter((fish) => fish.sex === sex);
  const other = living.find((fish) => fish.name !== null) ?? living[0];
  const place = tank ?? group.name;
  if (other === undefined) {
    const says = `${gone}, and no ${sex ?? 'other'} of it lives on record`;
    return { says, write: `first the line that brought one: ${place}: new ${sex ?? 'male'} from …` };
  }
  return { says: gone, write: `${place}: ${other.name ?? `${group.name} ${sex ?? ''}`.trim()} ${doing}` };
}

function whichMember(group: Group, member: Member, choice: readonly Fish[], place: Place): Problem {
  const names = choice.map((fish) => fish.name ?? `an unnamed ${fish.sex ?? 'fish'}`);
  return {
    kind: 'which-member',
    weight: 'stops',
    says: `${group.name} has ${String(choice.length)} of them: ${names.join(', ')}`,
    write: `the name of the ${member.sex ?? 'fish'}: ${choice.find((fish) => fish.name !== null)?.name ?? 'name them first'} …`,
    at: place,
    also: [group.declared],
  };
}
