/** Fish that died, went missing, were eaten or culled. Numbers and members are told apart from the sold. */
import type { EventOf, HowMany } from '../journal/event.ts';
import { isBrood } from './bodies.ts';
import type { Draft } from './draft.ts';
import { livingMembers, membersGone, pickMembers } from './members.ts';
import type { Fish, Group } from './stock.ts';
import { takeFish } from './tally.ts';
import { resolveFish } from './who.ts';
import type { Found } from './who.ts';

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

/** The told-apart fish that are lost: the one named, or all; a number of several sexed fish must say which. */
function losers(draft: Draft, event: EventOf<'lost'>, group: Group, found: Found): Fish[] | null {
  if (found.member !== null) return pickMembers(draft, group, found.member, event);
  const living = livingMembers(group).filter(
    (fish) => found.tank === null || fish.tank === null || fish.tank === found.tank,
  );
  if (living.length === 0 || typeof event.count === 'string' || event.count.total.low >= living.length) return living;
  const { males, females, total } = event.count;
  const told = living.filter((fish) => (fish.sex === 'male' ? (males?.low ?? 0) > 0 : (females?.low ?? 0) > 0));
  if (told.length === total.low) return told;
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
