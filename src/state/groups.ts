/**
 * Groups: pairs, trios, harems, colonies and bought-in fish; how they are declared and amended, their
 * bond, and mates that come back or come new. "Bonded" is only what a line says is bonded.
 */
import { addDays } from '../core/day.ts';
import { exactly, NONE, plus } from '../core/interval.ts';
import type { DayWindow, Interval } from '../core/interval.ts';
import type { EventBase, EventOf, Heads } from '../journal/event.ts';
import { takeAlong } from './along.ts';
import type { Draft } from './draft.ts';
import type { Homes } from './home.ts';
import {
  livingMembers,
  memberName,
  membersGone,
  membersMoved,
  membersOf,
  newGroup,
  partedWords,
  pickMembers,
} from './members.ts';
import { endDispute } from './quarrel.ts';
import type { Brood, Fish, Group } from './stock.ts';
import { noteMoved } from './moved.ts';
import { correctsName, correctYoung } from './renamed.ts';
import { joinSexes, sexesOf } from './sexes.ts';
import { moveFish, newBody, putIn, takeFish } from './tally.ts';
import { groupOf } from './whichgroup.ts';
import { onlyTank } from './heads.ts';

export const GROUPS_HOMES: Homes<'group declared' | 'bonded' | 'split up' | 'resting' | 'member back' | 'new mate'> = {
  'group declared': (draft, event) => {
    const known = draft.stock.groups.get(event.group);
    if (known) amend(draft, known, event);
    else declare(draft, event);
  },
  bonded: (draft, event) => setBond(draft, event, 'bonded'),
  resting: (draft, event) => part(draft, event, 'resting'),
  'split up': (draft, event) => part(draft, event, 'split up'),
  'member back': memberBack,
  'new mate': newMate,
};

function declare(draft: Draft, event: EventOf<'group declared'>): void {
  const told = event.members.map(({ member, size }) => ({ ...member, size }));
  const heads = besides(event);
  const members = membersOf(event.groupKind, told, heads, event.tank);
  const group = newGroup(newBody(event.group, event.species), {
    kind: event.groupKind,
    day: event.day,
    place: event.place,
    tank: event.tank,
    members,
    from: event.from,
  });
  if (heads !== null && members.length === 0) joinSexes(group, NONE, sexesOf(heads));
  const count = heads ?? usualCount(event, members.length);
  const each = fromEach(count, event.parentsFrom.length);
  for (const name of event.parentsFrom) takeFrom(draft, event, name, each, group);
  draft.stock.groups.set(event.group, group);
  putIn(draft, group, event.tank, count, event);
  describe(group, event);
  notePurchase(draft, event, isHeads(count) ? count.total : count);
}

/** `male; 3 females`: where one sex is counted, those that are told of the other come on top. */
function besides({ heads, members }: EventOf<'group declared'>): Heads | null {
  const counted = heads?.males ?? heads?.females ?? null;
  if (heads === null || counted === null || (heads.males !== null && heads.females !== null)) return heads;
  if (counted.low !== heads.total.low || counted.high !== heads.total.high) return heads;
  const other = heads.males === null ? 'male' : 'female';
  const more = members.filter(({ member }) => member.sex === other).length;
  return more === 0 ? heads : { ...heads, total: plus(heads.total, exactly(more)), [`${other}s`]: exactly(more) };
}

function isHeads(count: Heads | Interval): count is Heads {
  return 'total' in count;
}

/** How many fish a line means that gives no number: those it names, three and more for a harem, else at least one. */
function usualCount(event: EventOf<'group declared'>, members: number): Interval {
  if (event.groupKind === 'pair' || event.groupKind === 'trio') return exactly(members);
  if (event.groupKind === 'harem' && members >= 3) return exactly(members);
  const least = event.groupKind === 'harem' ? 3 : 1;
  return { low: Math.max(least, members), likely: null, high: Infinity };
}

/** What a declaring line tells besides who and how many: said again, it replaces what was said before. */
function describe(group: Group, event: EventOf<'group declared'>): void {
  group.lines.push(event.place);
  if (event.species !== null) group.species = event.species;
  if (event.line !== null) group.line = event.line;
  if (event.from !== null) group.from = event.from;
  if (event.parentsFrom.length > 0) group.parentsFrom = [...event.parentsFrom];
  if (event.age !== null) group.born = bornOn(event);
  if (event.size !== null) {
    const { day, minute, tank, size, place } = event;
    group.sizes.push({ day, minute, tank, sizes: size, place, replaced: false });
  }
}

function bornOn(event: EventOf<'group declared'>): DayWindow | null {
  const { age, day } = event;
  if (age === null) return null;
  const back = (days: number): DayWindow['low'] => (Number.isFinite(days) ? addDays(day, -Math.round(days)) : null);
  return { low: back(age.high), likely: age.likely === null ? null : back(age.likely), high: back(age.low) };
}

function notePurchase(draft: Draft, event: EventOf<'group declared'>, count: Interval): void {
  if (event.price === null) return;
  draft.sale.purchases.push({
    group: event.group,
    species: event.species ?? '',
    tank: event.tank,
    count,
    price: event.price,
    from: event.from,
    day: event.day,
    place: event.place,
  });
}

/** The same name declared again: amends what it says, moves the group where it says another tank. */
function amend(draft: Draft, group: Group, event: EventOf<'group declared'>): void {
  group.kind = event.groupKind;
  const called = group.species;
  describe(group, event);
  if (correctsName(event)) correctYoung(draft, group, called);
  for (const { member, size } of event.members) {
    const known =
      group.members.find((fish) => fish.gone === null && member.name !== null && fish.name === member.name) ??
      group.members.find((fish) => fish.gone === null && fish.sex === member.sex && fish.name === null);
    if (known) {
      known.name = member.name ?? known.name;
      known.sex = member.sex ?? known.sex;
      known.size = size ?? known.size;
    } else if (member.name !== null || group.members.every((fish) => fish.sex !== member.sex)) {
      group.members.push({ ...member, size, tank: group.home, gone: null });
    }
  }
  if (event.tank === null || event.tank === group.home) return;
  const from = group.home;
  group.home = event.tank;
  const out = moveFish(draft, event, group, from, event.tank, 'all');
  if (out !== null) carried(draft, event, group.name, from, event.tank, out);
  const along = livingMembers(group).filter((fish) => fish.tank === from);
  takeAlong(draft, event, group, along, { from, to: event.tank, with: null });
  membersMoved(group, along, event.tank, event);
}

/** How many of a new group came from each of the stocks that its line names: at least one, and not more than leaves one for each other. */
function fromEach(count: Heads | Interval, sources: number): Heads | Interval {
  if (sources < 2) return count;
  const { high } = isHeads(count) ? count.total : count;
  const most = Math.max(1, high - (sources - 1));
  return { low: high < sources ? 0 : 1, likely: most === 1 ? 1 : null, high: most };
}

/** Fish that a new group was made of: they leave the brood or group that they were, and perhaps its tank. */
function takeFrom(draft: Draft, event: EventBase, name: string, count: Heads | Interval, group: Group): void {
  const source: Group | Brood | undefined = draft.stock.broods.get(name) ?? draft.stock.groups.get(name);
  if (!source) return;
  // Of a stock in several tanks those were taken that were in the new group's tank already.
  const home = group.home !== null && source.parts.has(group.home) ? group.home : null;
  const from = onlyTank(source) ?? home;
  const out = takeFish(draft, event, source, from, isHeads(count) ? count : headsOf(count), 'joined');
  if (out !== null) carried(draft, event, group.name, from, group.home, out);
}

/** Fish that changed tanks without a `moved`: what is in their water went along, so holds must know. */
function carried(
  draft: Draft,
  { day, minute, place }: EventBase,
  body: string,
  from: string | null,
  to: string | null,
  count: Interval,
): void {
  if (from === null || to === null || from === to) return;
  noteMoved(draft, { day, minute, body, from, to, count, as: 'number', which: 'any', with: null, place });
}

function headsOf(total: Interval): Heads {
  return { total, males: null, females: null, young: null, as: 'counted' };
}

function setBond(draft: Draft, event: EventOf<'bonded' | 'split up' | 'resting'>, bond: Group['bond']): Group | null {
  const found = groupOf(draft, event, { doing: event.kind });
  if (!found) return null;
  found.group.bond = bond;
  found.group.bondSince = { day: event.day, place: event.place };
  if (bond !== 'resting') found.group.bonded = bond === 'bonded' ? found.group.bondSince : null;
  found.group.lines.push(event.place);
  return found.group;
}

/** A pair that rests or splits up is parted: its dispute is over. */
function part(draft: Draft, event: EventOf<'split up' | 'resting'>, bond: 'split up' | 'resting'): void {
  const group = setBond(draft, event, bond);
  if (group) endDispute(group, { day: event.day, how: 'separated', place: event.place });
}

/** `male back`: to his group's own tank. */
function memberBack(draft: Draft, event: EventOf<'member back'>): void {
  const found = groupOf(draft, event, {
    doing: 'back',
    suits: (group) => livingMembers(group).some((fish) => isAway(group, fish)),
  });
  if (!found) return;
  const { group } = found;
  group.lines.push(event.place);
  const { home } = group;
  const away = livingMembers(group).filter((fish) => isAway(group, fish));
  const fish = pickMembers(draft, { ...group, members: away.length > 0 ? away : group.members }, found.member, event);
  if (home === null || fish === null) return;
  for (const one of fish) {
    if (one.tank === null || one.tank === home) continue;
    const out = moveFish(draft, event, group, one.tank, home, headsOf(exactly(1)));
    if (out === null) continue;
    carried(draft, event, group.name, one.tank, home, out);
    takeAlong(draft, event, group, [one], { from: one.tank, to: home, with: null });
  }
  membersMoved(group, fish, home, event);
  group.upset = { day: event.day, how: 'member back', place: event.place };
}

function isAway(group: Group, fish: Fish): boolean {
  return fish.tank !== null && fish.tank !== group.home;
}

/** `new male from Ash`: one fish of that group joins this one; its bond begins anew. */
function newMate(draft: Draft, event: EventOf<'new mate'>): void {
  const found = groupOf(draft, event, { doing: 'new mate' });
  if (!found) return;
  const { group } = found;
  const source =
    event.from === null ? undefined : (draft.stock.groups.get(event.from) ?? draft.stock.broods.get(event.from));
  if (source && !takeMate(draft, source, event, group)) return;
  group.lines.push(event.place);
  const resident = livingMembers(group).find((fish) => fish.sex === event.sex && fish.tank === group.home);
  if (resident && group.kind === 'pair') draft.problems.push(stillThere(group, event, resident));
  const { sex, name, from, day, place } = event;
  // One more female of a harem changes nothing for the others.
  if (group.kind === 'pair' || partedWords(group) !== null) group.together.push({ day, how: 'new mate', place });
  group.members.push({ sex, name, size: null, tank: group.home, gone: null, joined: { day, from, place } });
  if (group.home !== null) putIn(draft, group, group.home, exactly(1), event);
  group.bond = 'unsaid';
  group.bondSince = null;
  group.bonded = null;
  group.upset = { day: event.day, how: 'new mate', place: event.place };
}

/** Takes the new mate out of the group or brood that it came from; false where that has none to give. */
function takeMate(draft: Draft, source: Group | Brood, event: EventOf<'new mate'>, group: Group): boolean {
  const males = event.sex === 'male' ? exactly(1) : null;
  const females = event.sex === 'female' ? exactly(1) : null;
  const fish = 'members' in source ? mateOf(draft, source, event) : [];
  if (fish === null) return false;
  const tank = fish[0]?.tank ?? onlyTank(source);
  const heads: Heads = { total: exactly(1), males, females, young: null, as: 'counted' };
  if (takeFish(draft, event, source, tank, heads, 'joined') === null) return false;
  if ('members' in source) membersGone(source, fish.slice(0, 1), 'joined', event);
  carried(draft, event, group.name, tank, group.home, heads.total);
  return true;
}

/** Which fish of its group the new mate was: by its name, else by its sex; of several with names nobody is taken by chance. */
function mateOf(draft: Draft, source: Group, event: EventOf<'new mate'>): Fish[] | null {
  const those = livingMembers(source).filter((fish) => fish.sex === event.sex);
  const own = those.filter((fish) => fish.name !== null && fish.name === event.name);
  if (own.length > 0 || those.length < 2) return own.length > 0 ? own : those;
  return pickMembers(draft, source, { sex: event.sex, name: null }, event);
}

function stillThere(group: Group, event: EventOf<'new mate'>, resident: Fish): Draft['problems'][number] {
  return {
    kind: 'two-mates',
    weight: 'doubt',
    says: `${group.name} still has ${memberName(resident)} with it`,
    write: `what became of the other: ${event.sex} died, or moved the ${event.sex} to …`,
    at: event.place,
    also: [group.declared],
  };
}
