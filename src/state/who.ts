/**
 * Which fish a clause is about. A named fish is looked up, and must be where the line says; a clause
 * without a name means the one candidate in its tank. Several: the clause does not count, and the
 * problem lists them. A named fish carries into the later clauses of its line that fit it.
 */
import type { HowMany } from '../journal/event.ts';
import type { FishRef, GroupKind, Member } from '../journal/subject.ts';
import { isBrood } from './bodies.ts';
import type { Draft } from './draft.ts';
import { fits, fitsWell } from './fits.ts';
import { onlyTank } from './heads.ts';
import { bodiesAt, family, livingBroods } from './living.ts';
import { carriedBody, settle, tankOf } from './meant.ts';
import type { Clause, Found } from './meant.ts';
import type { Brood, Group } from './stock.ts';
import { nobodyFits, notThere, noYoung, severalFit, unknownFish } from './unclear.ts';
import { lastSince } from './when.ts';
import { groupOf } from './whichgroup.ts';

/** The fish of a clause, or null after pushing the problem. Records what it found in `draft.resolved`. */
export function resolveFish(draft: Draft, event: Clause, ref: FishRef, count: HowMany = 'unsaid'): Found | null {
  const tank = tankOf(event);
  if (ref.kind === 'brood') return left(draft, event, count, named(draft, event, ref.brood, tank, null));
  const own = breedersOf(draft, ref, count);
  if (own !== null) return implied(draft, event, tank, count, { young: true, species: null, of: own });
  if (ref.kind === 'group' && ref.group !== null) return named(draft, event, ref.group, tank, ref.member);
  if (ref.kind === 'group') {
    const found = groupOf(
      draft,
      { ...event, fish: ref },
      { doing: event.kind, suits: (group) => fits(event.kind, group) },
    );
    return found && settle(draft, event, found.group, tank, found.member);
  }
  const young = ref.young === true || countsYoung(count);
  return implied(draft, event, tank, count, { young, species: ref.species ?? null, of: null });
}

/** `3 fry`: a number of young and of nothing else. */
function countsYoung(count: HowMany): boolean {
  return typeof count !== 'string' && count.young !== null && count.males === null && count.females === null;
}

/** The group that a line names where it tells of its young (`Rowan 3 fry dead`), which are none of its own number. */
function breedersOf(draft: Draft, ref: FishRef, count: HowMany): string | null {
  if (ref.kind !== 'group' || ref.group === null || ref.member !== null || !countsYoung(count)) return null;
  const kind = draft.stock.groups.get(ref.group)?.kind;
  return kind === undefined || HOLDS_YOUNG.has(kind) ? null : ref.group;
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

/**
 * The fish found, unless "all", "the rest" or "half" are told of young of which none are left anywhere: that says nothing,
 * and the line means others.
 */
function left(draft: Draft, event: Clause, count: HowMany, found: Found | null): Found | null {
  const isShare = count === 'all' || count === 'rest' || count === 'half';
  const isNone = isShare || (count === 'unsaid' && event.kind === 'moved');
  if (found === null || !isNone || !isBrood(found.body) || found.body.parts.size > 0) return found;
  const tank = tankOf(event);
  const others = tank === null ? [] : bodiesAt(draft, tank).filter((body) => isBrood(body));
  draft.problems.push(notThere(event, found.body.name, tank, [found.body], others));
  return null;
}

/** Fish that were in that tank once, and went: "all" seldom is all, so a few may have been left. */
function wasThere(body: Group | Brood, tank: string): boolean {
  if (!isBrood(body)) return body.home === tank;
  return body.natal === tank || body.left.has(tank) || body.gone.some((gone) => gone.tank === tank);
}

/** What a clause says of fish that it does not name. */
interface Told {
  readonly young: boolean;
  readonly species: string | null;
  /** The group whose young they are; null where the line does not say. */
  readonly of: string | null;
}

function implied(draft: Draft, event: Clause, tank: string | null, count: HowMany, told: Told): Found | null {
  const { young, species, of } = told;
  const { subject } = event;
  if (subject.kind === 'brood') return named(draft, event, subject.brood, null, null);
  const own = subject.kind === 'group' ? subject.group : null;
  const pool = tank !== null ? bodiesAt(draft, tank) : own !== null ? family(draft, own) : [];
  const isTold = (body: Group | Brood): boolean =>
    (species === null || body.species === species) && (of === null || (isBrood(body) && body.group === of));
  const fitting = pool.filter((body) => isTold(body) && fits(event.kind, body));
  const possible = young ? youngOf(fitting) : fitting;
  const carried = carriedBody(draft, event);
  if (carried && possible.includes(carried)) return settle(draft, event, carried, tank, null, true);
  const meant =
    carried && isTold(carried) && fits(event.kind, carried) && (!young || youngOf([carried]).length > 0)
      ? carried
      : null;
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
  if (choice.length > 1) draft.problems.push(severalFit(event, event.kind, tank, choice, species));
  else draft.problems.push(young ? noYoung(event, tank, pool.filter(isTold)) : nobodyFits(event, event.kind, tank));
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
