/** Fish that died, went missing, were eaten or culled. Numbers and members are told apart from the sold. */
import type { EventOf } from '../journal/event.ts';
import { isBrood } from './bodies.ts';
import type { Draft } from './draft.ts';
import { countOf, leaversOf, tankOfAll } from './leavers.ts';
import { livingMembers, membersGone } from './members.ts';
import type { Brood, Fish, Group } from './stock.ts';
import { takeFish } from './tally.ts';
import { resolveFish } from './who.ts';
import type { Found } from './meant.ts';

/** Fish died, went missing, were eaten or culled. */
export function lost(draft: Draft, event: EventOf<'lost'>): void {
  const found = resolveFish(draft, event, event.fish, event.count);
  if (!found) return;
  const { body, tank } = found;
  if (isUnsaid(event, found)) {
    draft.problems.push(howManyOf(event, body));
    return;
  }
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

/** `Ash died` of more than one fish: one of them, or all? Only a brood is over where it was eaten, as with `eggs gone`. */
function isUnsaid({ count, how }: EventOf<'lost'>, { body, tank, member }: Found): boolean {
  if (count !== 'unsaid' || member !== null || (isBrood(body) && how === 'eaten')) return false;
  return ((tank === null ? body.total : body.parts.get(tank))?.high ?? 0) > 1;
}

function howManyOf({ how, place }: EventOf<'lost'>, body: Group | Brood): Draft['problems'][number] {
  const { name } = body;
  const apart = isBrood(body) ? [] : livingMembers(body);
  const told = apart.map((fish) => fish.name ?? `${name} ${fish.sex ?? 'fish'}`);
  const one =
    told.length > 0 ? [...new Set(told)].map((fish) => `\`${fish} ${how}\``).join(', ') : `\`1 ${name} ${how}\``;
  const says = `how many? This may be one of them (${one}) or all (\`all ${name} ${how}\`): write which`;
  const asked = {
    kind: 'something-missing',
    weight: 'stops',
    says,
    at: place,
    also: [body.lines[0] ?? place],
  } as const;
  // Of fish that are somebody no line is offered: taken over unread it would cost a pair its fish.
  const write = told.length > 0 ? `which of them: ${one}` : `${name}: some ${how}`;
  return told.length > 0 ? { ...asked, write } : { ...asked, write, mend: { words: 'some', instead: null } };
}
