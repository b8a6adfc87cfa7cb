/** Which group a clause is about that only a group can be meant by: a bond, a quarrel, a spawning. */
import type { Problem } from '../core/problem.ts';
import { listWords } from '../core/words.ts';
import type { FishRef, GroupKind, Member } from '../journal/subject.ts';
import { isBrood } from './bodies.ts';
import type { Draft } from './draft.ts';
import { bodiesAt } from './living.ts';
import { carriedBody, note, tankOf } from './meant.ts';
import type { Clause } from './meant.ts';
import { goneWords, isCalled, livingMembers } from './members.ts';
import type { Group } from './stock.ts';
import { nobodyFits, severalFit, signOfYoung, unclear, unknownFish } from './unclear.ts';

/** What a clause asks of the group that it is about. */
interface Wanted {
  /** The clause word, for the message. */
  readonly doing: string;
  /** Groups of which it cannot be said are none of those that it may be about. */
  readonly suits?: (group: Group) => boolean;
  /** How well it goes with what is on record of a group: of several only those that it goes with best may be meant. */
  readonly weigh?: (group: Group) => number;
}

interface OfGroup {
  readonly group: Group;
  readonly member: Member | null;
}

/**
 * The group of a clause that only a group can be meant by: by its name, by its kind in the tank of the
 * line (`A1 pair`), by the line's own group, else the one group with grown fish in that tank that is wanted.
 */
export function groupOf(draft: Draft, event: Clause & { readonly fish: FishRef }, wanted: Wanted): OfGroup | null {
  const { fish, subject } = event;
  const own = subject.kind === 'group' ? subject.group : null;
  const name = fish.kind === 'group' ? (fish.group ?? own) : own;
  const member = (fish.kind === 'group' ? fish.member : null) ?? (subject.kind === 'group' ? subject.member : null);
  if (name !== null) {
    const group = draft.stock.groups.get(name);
    if (!group) return unknownFish(draft, event, name);
    if (member !== null && isGone(group, member)) return noLonger(draft, event, group, member, wanted.doing);
    note(draft, event, group, fish.kind === 'group' && fish.group !== null);
    return { group, member };
  }
  if (fish.kind !== 'brood') return groupHere(draft, event, member, wanted);
  const says = `${fish.brood} is a brood: «${wanted.doing}» is said of a pair or group`;
  draft.problems.push(
    signOfYoung(event, wanted.doing, tankOf(event) ?? fish.brood, fish.brood) ??
      unclear(event, 'no-such-fish', says, 'the name of the pair before it'),
  );
  return null;
}

/** The one group in the tank of the line that a clause without a name may be about. */
function groupHere(
  draft: Draft,
  event: Clause & { readonly fish: FishRef },
  member: Member | null,
  { doing, suits = () => true, weigh = () => 0 }: Wanted,
): OfGroup | null {
  const { fish } = event;
  const tank = tankOf(event);
  const kind = fish.kind === 'group' ? (fish.groupKind ?? null) : null;
  const near = groupsAt(draft, tank, kind, member);
  const carried = carriedBody(draft, event);
  const kept = carried && !isBrood(carried) && near.includes(carried) && suits(carried) ? [carried] : [];
  const choice = kept.length > 0 ? kept : preferred(best(near.filter(suits), weigh));
  const group = choice[0];
  if (group && choice.length === 1) {
    note(draft, event, group, false);
    return { group, member };
  }
  const [bereft] = member === null || choice.length > 0 ? [] : groupsAt(draft, tank, kind, null);
  if (bereft && member !== null && isGone(bereft, member)) return noLonger(draft, event, bereft, member, doing);
  draft.problems.push(
    choice.length > 1
      ? severalFit(event, doing, tank, choice)
      : (youngAlone(draft, event, doing, tank) ?? nobodyFits(event, doing, tank)),
  );
  return null;
}

/** A sign in a tank where only young are; null where there are none. */
function youngAlone(draft: Draft, event: Clause, doing: string, tank: string | null): Problem | null {
  const young = tank === null ? [] : bodiesAt(draft, tank);
  if (tank === null || young.length === 0 || !young.every((body) => isBrood(body))) return null;
  return signOfYoung(event, doing, tank, listWords(young.map(({ name }) => name)));
}

/** Those that weigh most. */
function best(groups: readonly Group[], weigh: (group: Group) => number): readonly Group[] {
  const most = Math.max(...groups.map(weigh));
  return groups.filter((group) => weigh(group) === most);
}

/** True for a fish of that group that is known by name or sex, and of which none is left. */
function isGone(group: Group, member: Member): boolean {
  return (
    group.members.some((fish) => isCalled(fish, member)) && !livingMembers(group).some((fish) => isCalled(fish, member))
  );
}

function noLonger(draft: Draft, event: Clause, group: Group, member: Member, doing: string): null {
  const { says, write } = goneWords(group, member, tankOf(event), doing);
  draft.problems.push(unclear(event, 'unknown-member', says, write));
  return null;
}

/** Groups with fish in a tank, or whose tank it is while a fish of theirs is away; of one kind, with such a member. */
function groupsAt(draft: Draft, tank: string | null, kind: GroupKind | null, member: Member | null): Group[] {
  if (tank === null) return [];
  const has = (group: Group): boolean =>
    member === null || livingMembers(group).length === 0 || livingMembers(group).some((fish) => isCalled(fish, member));
  const all = [...draft.stock.groups.values()].filter((group) => kind === null || group.kind === kind).filter(has);
  const here = all.filter((group) => (group.parts.get(tank)?.high ?? 0) > 0);
  return here.length > 0 ? here : all.filter((group) => group.home === tank);
}

/** Breeding groups before stock that merely lives there. */
function preferred(groups: readonly Group[]): readonly Group[] {
  const breeders = groups.filter((group) => group.kind !== 'group');
  return breeders.length > 0 ? breeders : groups;
}
