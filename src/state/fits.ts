/** Which clauses are possible for which fish, by kind, stage and number: what narrows down a clause without a name. */
import type { EventKind, HowMany } from '../journal/event.ts';
import { isBrood } from './bodies.ts';
import { reached } from './broodlife.ts';
import type { Body, Brood, Group } from './stock.ts';
import { headsOf, isCounted } from './heads.ts';
import { mostIn } from './ceilings.ts';

/** True where a clause of that kind can be about those fish, by what they are and how far they have come. */
export function fits(kind: EventKind, body: Group | Brood): boolean {
  return isBrood(body) ? fitsBrood(kind, body) : fitsGroup(kind, body);
}

function fitsBrood(kind: EventKind, brood: Brood): boolean {
  switch (kind) {
    case 'eggs white':
    case 'eggs gone':
      return !reached(brood, 'hatched');
    case 'sized':
      return reached(brood, 'hatched');
    case 'lost':
      return reached(brood, 'hatched');
    case 'kept back':
    case 'reserved':
    case 'sold':
    case 'gave away':
      return reached(brood, 'swam');
    case 'counted':
    case 'moved':
    case 'mixed':
    case 'parents chase fry':
      return true;
    default:
      return false;
  }
}

function fitsGroup(kind: EventKind, group: Group): boolean {
  switch (kind) {
    case 'eggs white':
    case 'eggs gone':
      return false;
    case 'kept back':
      return group.kind === 'group' || group.kind === 'colony';
    default:
      return true;
  }
}

/** True where so many can be there: by what is sure, for a guess can always have been too low. */
function enough(body: Body, tank: string | null, count: HowMany): boolean {
  if (typeof count === 'string') return true;
  const most = tank === null ? (body.ceiling?.count ?? null) : mostIn(body, tank);
  return most === null || headsOf(count, false).low <= most;
}

/**
 * Of several that fit, those that fit well: so many can be there, of the sexes and ages that the count
 * tells, by what is believed; young rather than breeders for a length. A number never rules out the last.
 */
export function fitsWell(
  kind: EventKind,
  candidates: readonly (Group | Brood)[],
  tank: string | null,
  count: HowMany,
): readonly (Group | Brood)[] {
  const isRaised = (body: Group | Brood): boolean => isBrood(body) || body.kind === 'group' || body.kind === 'colony';
  const choice = kind === 'sized' ? orAll(candidates, isRaised) : candidates;
  if (typeof count === 'string') return choice;
  const sexed = count.males !== null || count.females !== null;
  const can = orAll(choice, (body) => enough(body, tank, count));
  // Young are sold in pairs as well.
  const grown = sexed && !(SALES.has(kind) && count.males !== null && count.females !== null);
  const told = grown ? orAll(can, (body) => !isBrood(body)) : count.young === null ? can : orAll(can, isYoung);
  const asked = headsOf(count, false).low;
  const believed = orAll(told, (body) => ((tank === null ? body.total : body.parts.get(tank))?.high ?? 0) >= asked);
  // Grown fish are counted, young are guessed.
  return kind === 'counted' && !isCounted(count) ? orAll(believed, isYoung) : believed;
}

const SALES: ReadonlySet<EventKind> = new Set<EventKind>(['sold', 'gave away', 'reserved']);

/** Those for which a test holds; all of them where it holds for none. */
function orAll(bodies: readonly (Group | Brood)[], test: (body: Group | Brood) => boolean): readonly (Group | Brood)[] {
  const those = bodies.filter(test);
  return those.length > 0 ? those : bodies;
}

function isYoung(body: Group | Brood): boolean {
  return isBrood(body);
}
