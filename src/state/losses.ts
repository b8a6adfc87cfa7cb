/** Fish that died, went missing, were eaten or culled. Numbers and members are told apart from the sold. */
import type { EventOf } from '../journal/event.ts';
import { isBrood } from './bodies.ts';
import type { Draft } from './draft.ts';
import { countOf, leaversOf, tankOfAll } from './leavers.ts';
import { membersGone } from './members.ts';
import type { Fish, Group } from './stock.ts';
import { takeFish } from './tally.ts';
import { resolveFish } from './who.ts';
import type { Found } from './meant.ts';

/** Fish died, went missing, were eaten or culled. */
export function lost(draft: Draft, event: EventOf<'lost'>): void {
  const found = resolveFish(draft, event, event.fish, event.count);
  if (!found) return;
  const { body, tank } = found;
  const fish = isBrood(body) ? [] : losersOf(draft, event, body, found);
  if (fish === null) return;
  const out = takeFish(draft, event, body, tankOfAll(tank, fish), countOf(event.count, fish, found), event.how);
  if (out === null) return;
  if (!isBrood(body)) membersGone(body, fish, event.how, event);
}

function losersOf(draft: Draft, event: EventOf<'lost'>, group: Group, found: Found): Fish[] | null {
  const words = { says: `one of ${group.name} is lost`, write: (one: string) => `${one} ${event.how}` };
  return leaversOf(draft, event, group, found, words);
}
