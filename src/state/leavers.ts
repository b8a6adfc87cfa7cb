/** Which of the fish of a group that can be told apart are those that a line counts out of it, or out of their tank. */
import { NONE } from '../core/interval.ts';
import type { Interval } from '../core/interval.ts';
import type { EventBase, Heads, HowMany } from '../journal/event.ts';
import type { Draft } from './draft.ts';
import { howMany, isWhole } from './heads.ts';
import { livingMembers, pickMembers } from './members.ts';
import type { Fish, Group } from './stock.ts';
import type { Found } from './meant.ts';

/** The words of the problem: «one of Rowan is lost», and how the line would say it of a fish that is told: `the male died`. */
interface Words {
  readonly says: string;
  readonly write: (fish: string) => string;
}

const NO_SEXES = { males: null, females: null };

/**
 * The told-apart fish that leave: the one named, or all where all go. A number of several that can be told apart
 * must say which, by name or by sex, unless there are so many others with them that none of these need be among
 * the number. Null after asking.
 */
export function leaversOf(
  draft: Draft,
  event: EventBase & { readonly count: HowMany },
  group: Group,
  found: Found,
  words: Words,
): Fish[] | null {
  if (found.member !== null) return pickMembers(draft, group, found.member, event);
  const living = livingMembers(group).filter(
    (fish) => found.tank === null || fish.tank === null || fish.tank === found.tank,
  );
  if (living.length === 0 || isWhole(event.count)) return living;
  const leaving = howMany(group, found.tank, event.count);
  const there = found.tank === null ? group.total : (group.parts.get(found.tank) ?? NONE);
  const chosen = amongThem(living, leaving, Math.max(0, there.low - living.length), event.count);
  if (chosen === null) draft.problems.push(whichOne(group, living, event, words));
  return chosen;
}

/** Null where the number leaves open which. */
function amongThem(living: Fish[], leaving: Interval, others: number, count: HowMany): Fish[] | null {
  if (leaving.low >= living.length + others) return living;
  const { males, females } = typeof count === 'string' ? NO_SEXES : count;
  const bySex = living.filter((fish) => (fish.sex === 'male' ? (males?.low ?? 0) > 0 : (females?.low ?? 0) > 0));
  if (bySex.length === leaving.low) return bySex;
  // Of one sex and without names, any of them will do.
  if (leaving.low === leaving.high && bySex.length > leaving.low && areAlike(bySex)) return bySex.slice(0, leaving.low);
  return bySex.length === 0 && leaving.high <= others ? [] : null;
}

function areAlike(fish: readonly Fish[]): boolean {
  return fish.every(({ name, sex }) => name === null && sex === fish[0]?.sex);
}

/** A named member is one fish, whatever the clause leaves unsaid. */
export function countOf(count: HowMany, fish: readonly Fish[], found: Found): HowMany {
  if (typeof count !== 'string' || found.member === null) return count;
  return headsOf(Math.max(1, fish.length));
}

/** The tank that the leaving fish are in, where the line names none: the one that they share. */
export function tankOfAll(tank: string | null, fish: readonly Fish[]): string | null {
  const first = fish[0]?.tank ?? null;
  return tank ?? (fish.every((one) => one.tank === first) ? first : null);
}

function headsOf(number: number): Heads {
  const total = { low: number, likely: number, high: number };
  return { total, males: null, females: null, young: null, as: 'counted' };
}

function whichOne(
  group: Group,
  living: readonly Fish[],
  event: EventBase,
  { says, write }: Words,
): Draft['problems'][number] {
  const named = living.find((fish) => fish.name !== null) ?? living[0];
  return {
    kind: 'which-member',
    weight: 'stops',
    says: `${says}, and this does not say which`,
    write: write(named?.name ?? `the ${named?.sex ?? 'male'}`),
    at: event.place,
    also: [group.declared],
  };
}
