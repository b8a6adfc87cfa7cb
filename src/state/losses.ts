/** Fish that died, went missing, were eaten or culled. Numbers and members are told apart from the sold. */
import { NONE } from '../core/interval.ts';
import type { EventOf, HowMany } from '../journal/event.ts';
import { isBrood } from './bodies.ts';
import type { Draft } from './draft.ts';
import { howMany, isWhole } from './heads.ts';
import { livingMembers, membersGone, pickMembers } from './members.ts';
import type { Fish, Group } from './stock.ts';
import { takeFish } from './tally.ts';
import { resolveFish } from './who.ts';
import type { Found } from './who.ts';

const NO_SEXES = { males: null, females: null };

/** Fish died, went missing, were eaten or culled. */
export function lost(draft: Draft, event: EventOf<'lost'>): void {
  const found = resolveFish(draft, event, event.fish, event.count);
  if (!found) return;
  const { body, tank } = found;
  const fish = isBrood(body) ? [] : losers(draft, event, body, found);
  if (fish === null) return;
  const out = takeFish(draft, event, body, tank ?? fish[0]?.tank ?? null, countOf(event.count, fish, found), event.how);
  if (out === null) return;
  if (!isBrood(body)) membersGone(body, fish, event.how, event);
}

/** A named member is one fish, whatever the clause leaves unsaid. */
function countOf(count: HowMany, fish: readonly Fish[], found: Found): HowMany {
  if (typeof count !== 'string' || found.member === null) return count;
  const one = { low: Math.max(1, fish.length), likely: Math.max(1, fish.length), high: Math.max(1, fish.length) };
  return { total: one, males: null, females: null, young: null, as: 'counted' };
}

/**
 * The told-apart fish that are lost: the one named, or all. A number of several sexed fish must say which,
 * unless there are so many others with them that nobody told apart need be among the lost.
 */
function losers(draft: Draft, event: EventOf<'lost'>, group: Group, found: Found): Fish[] | null {
  if (found.member !== null) return pickMembers(draft, group, found.member, event);
  const living = livingMembers(group).filter(
    (fish) => found.tank === null || fish.tank === null || fish.tank === found.tank,
  );
  if (living.length === 0 || isWhole(event.count)) return living;
  const lost = howMany(group, found.tank, event.count);
  const there = found.tank === null ? group.total : (group.parts.get(found.tank) ?? NONE);
  const others = Math.max(0, there.low - living.length);
  if (lost.low >= living.length + others) return living;
  const { males, females } = typeof event.count === 'string' ? NO_SEXES : event.count;
  const told = living.filter((fish) => (fish.sex === 'male' ? (males?.low ?? 0) > 0 : (females?.low ?? 0) > 0));
  if (told.length === lost.low) return told;
  if (told.length === 0 && lost.high <= others) return [];
  draft.problems.push({
    kind: 'which-member',
    weight: 'stops',
    says: `one of ${group.name} is lost, and this does not say which`,
    write: `male ${event.how}`,
    at: event.place,
    also: [group.declared],
  });
  return null;
}
