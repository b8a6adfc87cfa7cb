/**
 * Which fish a clause is about. A named fish is looked up, and must be where the line says; a clause
 * without a name means the one candidate in its tank. Several: the clause does not count, and the
 * problem lists them. A named fish carries into the later clauses of its line that fit it.
 */
import type { ProblemKind } from '../core/problem-kinds.ts';
import type { Problem } from '../core/problem.ts';
import type { EventBase, EventKind, HowMany } from '../journal/event.ts';
import type { FishRef, GroupKind, Member } from '../journal/subject.ts';
import { isBrood } from './bodies.ts';
import type { Draft } from './draft.ts';
import { fits, fitsWell } from './fits.ts';
import { onlyTank } from './heads.ts';
import { goneWords, isCalled, livingMembers } from './members.ts';
import type { Brood, Group } from './stock.ts';
import { lastSince } from './when.ts';

/** The fish that a clause was found to be about. */
export type Resolved =
  { readonly kind: 'group'; readonly group: string } | { readonly kind: 'brood'; readonly brood: string };

/** The fish that a clause is about, for the slices to change. */
export interface Found {
  readonly body: Group | Brood;
  /** Where it happens: the tank of the line, else the only one that they are in. */
  readonly tank: string | null;
  readonly member: Member | null;
}

/** An event whose fish are looked for. */
export type Clause = EventBase & { readonly kind: EventKind };

/** The fish of a clause, or null after pushing the problem. Records what it found in `draft.resolved`. */
export function resolveFish(draft: Draft, event: Clause, ref: FishRef, count: HowMany = 'unsaid'): Found | null {
  const tank = tankOf(event);
  if (ref.kind === 'brood') return named(draft, event, ref.brood, tank, null);
  if (ref.kind === 'group' && ref.group !== null) return named(draft, event, ref.group, tank, ref.member);
  if (ref.kind === 'group') {
    const found = groupOf(draft, { ...event, fish: ref }, (group) => fits(event.kind, group), event.kind);
    return found && settle(draft, event, found.group, tank, found.member);
  }
  return implied(draft, event, tank, count, ref.young === true);
}

/**
 * The group of a clause that only a group can be meant by: by its name, by its kind in the tank of the
 * line (`A1 pair`), by the line's own group, else the one group with grown fish in that tank that `suits`.
 * `doing` is the clause word for the message.
 */
export function groupOf(
  draft: Draft,
  event: Clause & { readonly fish: FishRef },
  suits: (group: Group) => boolean,
  doing: string,
): { group: Group; member: Member | null } | null {
  const { fish, subject } = event;
  const own = subject.kind === 'group' ? subject.group : null;
  const name = fish.kind === 'group' ? (fish.group ?? own) : own;
  const member = (fish.kind === 'group' ? fish.member : null) ?? (subject.kind === 'group' ? subject.member : null);
  if (name !== null) {
    const group = draft.stock.groups.get(name);
    if (!group) return unknownFish(draft, event, name);
    if (member !== null && isGone(group, member)) return noLonger(draft, event, group, member, doing);
    note(draft, event, group, fish.kind === 'group' && fish.group !== null);
    return { group, member };
  }
  if (fish.kind === 'brood') {
    draft.problems.push(
      problem(
        event,
        'no-such-fish',
        `${fish.brood} is a brood: «${doing}» is said of a pair or group`,
        'the name of the pair before it',
      ),
    );
    return null;
  }
  const tank = tankOf(event);
  const wanted = fish.kind === 'group' ? (fish.groupKind ?? null) : null;
  const near = groupsAt(draft, tank, wanted, member);
  const carried = carriedBody(draft, event);
  const kept = carried && !isBrood(carried) && near.includes(carried) && suits(carried) ? [carried] : [];
  const choice = kept.length > 0 ? kept : preferred(near.filter(suits));
  const group = choice[0];
  if (group && choice.length === 1) {
    note(draft, event, group, false);
    return { group, member };
  }
  const [bereft] = member === null || choice.length > 0 ? [] : groupsAt(draft, tank, wanted, null);
  if (bereft && member !== null && isGone(bereft, member)) return noLonger(draft, event, bereft, member, doing);
  draft.problems.push(choice.length > 1 ? which(event, doing, tank, choice) : nobody(event, doing, tank));
  return null;
}

/** True for a fish of that group that is known by name or sex, and of which none is left. */
function isGone(group: Group, member: Member): boolean {
  return (
    group.members.some((fish) => isCalled(fish, member)) && !livingMembers(group).some((fish) => isCalled(fish, member))
  );
}

function noLonger(draft: Draft, event: Clause, group: Group, member: Member, doing: string): null {
  const { says, write } = goneWords(group, member, tankOf(event), doing);
  draft.problems.push(problem(event, 'unknown-member', says, write));
  return null;
}

function tankOf(event: Clause): string | null {
  return event.subject.kind === 'tank' ? event.subject.tank : null;
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

function named(draft: Draft, event: Clause, name: string, tank: string | null, member: Member | null): Found | null {
  const { groups, broods } = draft.stock;
  const exact = groups.get(name) ?? broods.get(name);
  const mixes = livingBroods(draft).filter((brood) => brood.oneOf.includes(name));
  const all = [...(exact ? [exact] : []), ...mixes];
  const first = all[0];
  if (!first) return unknownFish(draft, event, name);
  const here =
    tank === null
      ? all.filter((body) => body.parts.size > 0)
      : all.filter((body) => (body.parts.get(tank)?.high ?? 0) > 0);
  const body = here[0] ?? all.find((one) => tank !== null && wasThere(one, tank));
  if (body) return settle(draft, event, body, tank, member, true);
  draft.problems.push(notThere(event, name, tank, all));
  return null;
}

/** Fish that were in that tank once: "all" seldom is all, so a few may have been left. */
function wasThere(body: Group | Brood, tank: string): boolean {
  if (!isBrood(body)) return body.home === tank;
  return body.natal === tank || body.left.has(tank);
}

function implied(draft: Draft, event: Clause, tank: string | null, count: HowMany, young: boolean): Found | null {
  const { subject } = event;
  if (subject.kind === 'brood') return named(draft, event, subject.brood, null, null);
  const own = subject.kind === 'group' ? subject.group : null;
  const pool = tank !== null ? bodiesAt(draft, tank) : own !== null ? family(draft, own) : [];
  const fitting = pool.filter((body) => fits(event.kind, body));
  const possible = young ? youngOf(fitting) : fitting;
  const carried = carriedBody(draft, event);
  if (carried && possible.includes(carried)) return settle(draft, event, carried, tank, null, true);
  const meant = carried && fits(event.kind, carried) && (!young || youngOf([carried]).length > 0) ? carried : null;
  // `moved all … to C1; largest 12 mm`: the named fish are no longer here, but they are still meant.
  if (meant && tank !== null && (possible.length === 0 || hasJustLeft(draft, event, meant, tank))) {
    return settle(draft, event, meant, onlyTank(meant), null, true);
  }
  const self = own === null ? null : possible.find((body) => body.name === own);
  const choice = self && event.kind !== 'sized' ? [self] : fitsWell(event.kind, possible, tank, count);
  const only = choice[0];
  if (only && choice.length === 1) {
    return settle(draft, event, only, tank, subject.kind === 'group' ? subject.member : null);
  }
  draft.problems.push(choice.length > 1 ? which(event, event.kind, tank, choice) : nobody(event, event.kind, tank));
  return null;
}

/** True for fish that an earlier clause of this very line moved out of that tank. */
function hasJustLeft(draft: Draft, { place }: Clause, body: Group | Brood, tank: string): boolean {
  const last = lastSince(draft.stock.moves, draft.on, (move) => move.body === body.name);
  return last?.from === tank && last.place.file === place.file && last.place.line === place.line;
}

/** The broods; where there are none, stock that may hold young. */
function youngOf(bodies: readonly (Group | Brood)[]): (Group | Brood)[] {
  const broods = bodies.filter((body) => isBrood(body));
  return broods.length > 0 ? broods : bodies.filter((body) => !isBrood(body) && HOLDS_YOUNG.has(body.kind));
}

const HOLDS_YOUNG: ReadonlySet<GroupKind> = new Set(['group', 'colony']);

/** The broods of which some may be left; those that ended since are struck off first. */
export function livingBroods(draft: Draft): Brood[] {
  const { living } = draft.stock;
  for (const [name, brood] of living) if (brood.ended !== null) living.delete(name);
  return [...living.values()];
}

/** Those of one group, oldest first: of a long history only these can still be meant. */
export function livingOf(draft: Draft, group: Group): Brood[] {
  const own = new Set<string>();
  for (const { name, group: of, ended, oneOf } of draft.stock.living.values()) {
    if (of === group.name && ended === null && oneOf.length === 0) own.add(name);
  }
  const found: Brood[] = [];
  for (let index = group.broods.length - 1; index >= 0 && found.length < own.size; index -= 1) {
    const name = group.broods[index] ?? '';
    const brood = own.has(name) ? draft.stock.living.get(name) : undefined;
    if (brood !== undefined) found.push(brood);
  }
  return found.reverse();
}

/** The groups and broods in a tank, for the slices to change. */
function bodiesAt(draft: Draft, tank: string): (Group | Brood)[] {
  const here = (body: Group | Brood): boolean => (body.parts.get(tank)?.high ?? 0) > 0;
  const broods = livingBroods(draft).filter((brood) => !brood.suspected);
  return [...[...draft.stock.groups.values()].filter(here), ...broods.filter(here)];
}

function family(draft: Draft, name: string): (Group | Brood)[] {
  const group = draft.stock.groups.get(name);
  if (!group) return [];
  return [group, ...livingOf(draft, group).filter((brood) => !brood.suspected)];
}

function settle(
  draft: Draft,
  event: Clause,
  body: Group | Brood,
  tank: string | null,
  member: Member | null,
  byName = false,
): Found {
  note(draft, event, body, byName);
  const tanks = [...body.parts.keys()];
  return { body, tank: tank ?? (tanks.length === 1 ? (tanks[0] ?? null) : null), member };
}

/** Writes down what a clause is about; a fish that was named carries into the rest of the line. */
export function note(draft: Draft, event: Clause, body: Group | Brood, byName: boolean): void {
  // A few that turn up after all went bring a brood back.
  if (isBrood(body)) draft.stock.living.set(body.name, body);
  draft.resolved.set(
    event.seq,
    isBrood(body) ? { kind: 'brood', brood: body.name } : { kind: 'group', group: body.name },
  );
  if (byName) draft.stock.named = { file: event.place.file, line: event.place.line, body: body.name };
}

function carriedBody(draft: Draft, event: Clause): Group | Brood | null {
  const { named: last, groups, broods } = draft.stock;
  if (last?.file !== event.place.file || last.line !== event.place.line) return null;
  return groups.get(last.body) ?? broods.get(last.body) ?? null;
}

function problem(event: Clause, kind: ProblemKind, says: string, write: string): Problem {
  return { kind, weight: 'stops', says, write, at: event.place, also: [] };
}

function which(event: Clause, doing: string, tank: string | null, choice: readonly (Group | Brood)[]): Problem {
  const names = choice.map((body) => body.name);
  const first = names[0] ?? '';
  return {
    ...problem(
      event,
      'which-fish',
      `${tank === null ? '' : `${tank} holds `}${names.join(' and ')}: this may be about ${names.length === 2 ? 'either' : 'any of them'}`,
      `${tank ?? first}: ${first} ${doing} …`,
    ),
    also: choice.map((body) => body.lines[0]).filter((place) => place !== undefined),
  };
}

function nobody(event: Clause, doing: string, tank: string | null): Problem {
  return problem(
    event,
    'no-such-fish',
    tank === null ? 'this line does not say which fish' : `${tank} holds no fish that this can be about`,
    tank === null
      ? `the tank or the name of the fish before it: A1: ${doing} …`
      : `the line that put them there, or the right tank`,
  );
}

function notThere(event: Clause, name: string, tank: string | null, all: readonly (Group | Brood)[]): Problem {
  const tanks = all.flatMap((body) => [...body.parts.keys()]);
  const where = tanks.length === 0 ? 'none of them are left' : `they are in ${tanks.join(' and ')}`;
  return {
    ...problem(
      event,
      'not-there',
      `${name} is not ${tank === null ? 'there any more' : `in ${tank}`}: ${where}`,
      tanks[0] ? `${tanks[0]}: ${name} …` : 'the name of the fish that are there',
    ),
    also: all.map((body) => body.lines.at(-1)).filter((place) => place !== undefined),
  };
}

function unknownFish(draft: Draft, event: Clause, name: string): null {
  draft.problems.push(
    problem(
      event,
      'unknown-brood',
      `there is no ${name} on that day`,
      `the line it began with, on its own day: A1: spawned brood ${name}`,
    ),
  );
  return null;
}
