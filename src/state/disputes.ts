/**
 * What opens, feeds and ends a dispute. In a colony or harem, and for a holding mouthbrooder, chasing
 * and fasting alone are daily life and open none; worse signs do.
 */
import type { EventOf } from '../journal/event.ts';
import type { Member, Sex } from '../journal/subject.ts';
import type { Draft } from './draft.ts';
import type { Homes } from './home.ts';
import { canQuarrel, livingMembers } from './members.ts';
import { addSign, endDispute, openDispute } from './quarrel.ts';
import type { DisputeSign } from './quarrel.ts';
import type { Group } from './stock.ts';
import { groupOf } from './whichgroup.ts';
import { isHolding } from './withoutword.ts';

export const DISPUTES_HOMES: Homes<'dispute sign' | 'calmer' | 'shimmying' | 'made up'> = {
  'dispute sign': signSeen,
  calmer: calmerSeen,
  shimmying: (draft, event) => {
    const found = groupOf(draft, event, { doing: event.kind });
    if (!found) return;
    found.group.lines.push(event.place);
    endDispute(found.group, { day: event.day, how: 'shimmying', place: event.place });
  },
  'made up': madeUp,
};

function signSeen(draft: Draft, event: EventOf<'dispute sign'>): void {
  const found = groupOf(draft, event, { doing: event.sign, weigh: (group) => mayBe(group, event) });
  if (!found) return;
  const { group } = found;
  if (!sidesLive(draft, group, event)) return;
  group.lines.push(event.place);
  if (!openDispute(group) && isDailyLife(draft, group, event)) return;
  addSign(group, {
    day: event.when?.likely ?? event.when?.high ?? event.day,
    minute: event.when === null ? event.minute : null,
    sign: event.sign,
    ...partiesOf(group, event, found.member),
    place: event.place,
  });
}

/**
 * How well a sign goes with the fish on record of a group: 0 where no two of it can be meant. Where the line says
 * both sides, a group that is known to have both goes with it better than one whose fish nobody sexed.
 */
function mayBe(group: Group, { doer, sufferer }: EventOf<'dispute sign'>): 0 | 1 | 2 {
  const fish = livingMembers(group);
  if (canQuarrel(fish, { doer, sufferer })) return doer !== null && sufferer !== null ? 2 : 1;
  return group.total.high > fish.length || fish.some(({ sex }) => sex === null) ? 1 : 0;
}

/** Only what is open can calm down or be made up: that of those whose dispute it is. */
function quarrels(group: Group): 0 | 1 {
  return openDispute(group) === null ? 0 : 1;
}

/** False, with the problem told, where a fish that the line names as a side is no longer there. */
function sidesLive(draft: Draft, group: Group, event: EventOf<'dispute sign'>): boolean {
  return [event.doer, event.sufferer].every((side) => {
    if (side === null || side.name === null || !group.members.some((fish) => fish.name === side.name)) return true;
    const fish = { kind: 'group', group: group.name, member: side } as const;
    return groupOf(draft, { ...event, fish }, { doing: event.sign }) !== null;
  });
}

/** Chasing and fasting that nobody needs to act on: many fish together, or a mouth full of eggs. */
function isDailyLife(draft: Draft, group: Group, event: Pick<EventOf<'dispute sign'>, 'sign' | 'day'>): boolean {
  if (event.sign !== 'chasing' && event.sign !== 'not eating') return false;
  const isCrowd = group.kind === 'colony' || group.kind === 'harem' || group.kind === 'group';
  return isCrowd || isHolding(draft, group, event.day);
}

/**
 * Who did it and who suffered it: as `X on Y` says; else the fish named before the word does the
 * chasing and suffers everything else. Of two, the other one is the other side; a sex is its only fish.
 */
function partiesOf(
  group: Group,
  event: EventOf<'dispute sign'>,
  named: Member | null,
): Pick<DisputeSign, 'doer' | 'sufferer'> {
  const sides = { doer: asDeclared(group, event.doer), sufferer: asDeclared(group, event.sufferer) };
  const fish = asDeclared(group, named);
  const isSide = fish !== null && fish.name !== null && [sides.doer?.name, sides.sufferer?.name].includes(fish.name);
  const order = event.sign === 'chasing' ? (['doer', 'sufferer'] as const) : (['sufferer', 'doer'] as const);
  const own = fish === null || isSide ? undefined : order.find((side) => fits(fish, sides[side]));
  if (own !== undefined) sides[own] = fish;
  const doer = sides.doer ?? otherOf(group, sides.sufferer);
  const sufferer = sides.sufferer ?? otherOf(group, doer);
  return { doer: onlyOne(group, doer), sufferer: onlyOne(group, sufferer) };
}

/** A named fish with the sex that it was declared with. */
function asDeclared(group: Group, named: Member | null): Member | null {
  if (named === null) return null;
  const fish = named.name === null ? undefined : group.members.find((one) => one.name === named.name);
  return { sex: fish?.sex ?? named.sex, name: named.name };
}

function fits(fish: Member, side: Member | null): boolean {
  return side === null || (side.name === null && (fish.sex === null || side.sex === fish.sex));
}

/** The only other fish that it can be: the mate in a pair, the male of a trio where a female is meant. */
function otherOf(group: Group, one: Member | null): Member | null {
  return one === null || one.sex === null ? null : only(group, (sex) => sex !== one.sex);
}

/** Of a sex that lives in the group once, that fish, by its name where it has one. */
function onlyOne(group: Group, side: Member | null): Member | null {
  if (side === null || side.name !== null || side.sex === null) return side;
  return only(group, (sex) => sex === side.sex) ?? side;
}

/** The one living fish of such a sex; null where there are none or more. */
function only(group: Group, such: (sex: Sex | null) => boolean): Member | null {
  const [one, ...others] = livingMembers(group).filter((fish) => such(fish.sex));
  return one && others.length === 0 ? { sex: one.sex, name: one.name } : null;
}

function calmerSeen(draft: Draft, event: EventOf<'calmer'>): void {
  const found = groupOf(draft, event, { doing: event.kind, weigh: quarrels });
  if (!found) return;
  found.group.lines.push(event.place);
  openDispute(found.group)?.calmer.push({ day: event.day, minute: event.minute, place: event.place });
}

function madeUp(draft: Draft, event: EventOf<'made up'>): void {
  const found = groupOf(draft, event, { doing: event.kind, weigh: quarrels });
  if (!found) return;
  found.group.lines.push(event.place);
  if (endDispute(found.group, { day: event.day, how: 'made up', place: event.place })) return;
  draft.problems.push({
    kind: 'no-dispute',
    weight: 'doubt',
    says: `${found.group.name} had no dispute open`,
    write: 'the line that began it, on its own day: … chasing, male on female',
    at: event.place,
    also: [],
  });
}
