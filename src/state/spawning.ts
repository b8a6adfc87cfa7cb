/** `spawned`, `eggs seen`, `maybe spawned`: a new brood, or more about one that is already there. */
import type { DayWindow } from '../core/interval.ts';
import type { EventBase, EventOf } from '../journal/event.ts';
import type { Member } from '../journal/subject.ts';
import { nextBroodName } from './broodnames.ts';
import { beginBrood, confirmBrood, isNameless, laidWindow } from './broodstart.ts';
import { rankSeen } from './broodlife.ts';
import { observe } from './counting.ts';
import type { Draft } from './draft.ts';
import { livingMembers } from './members.ts';
import { endDispute } from './quarrel.ts';
import { agesAt, canBeAt, clockOf, guildOf } from './stageclock.ts';
import { lookAt, narrow } from './stagewindows.ts';
import type { Brood, Fish, Group } from './stock.ts';
import { headsOf, isCounted } from './heads.ts';
import { livingOf } from './living.ts';
import { note } from './meant.ts';
import { groupOf } from './whichgroup.ts';

/** The words of each way of telling it, as a line writes them. */
const DOING = { laid: 'spawned', seen: 'eggs seen', maybe: 'maybe spawned' } as const;

/** A group has spawned, was seen with eggs or may have: begins a brood, or dates the one that it is. */
export function spawned(draft: Draft, event: EventOf<'spawned'>): void {
  const found = groupOf(draft, event, {
    doing: DOING[event.as],
    suits: (group) => guildOf(draft, group.species) !== 'livebearer',
  });
  if (!found) return;
  const { group } = found;
  group.lines.push(event.place);
  if (event.as !== 'maybe') {
    endDispute(group, { day: event.day, how: 'spawned', place: event.place });
    settleSuspicions(group, {
      laid: { high: event.when?.high ?? event.day },
      mothers: namesOf(found.member === null ? [] : [found.member]),
    });
    if (guildOf(draft, group.species) === 'mouthbrooder') {
      group.holding = { day: event.day, mother: found.member?.name ?? null, place: event.place };
    }
  } else {
    group.suspected.push({ day: event.day, kind: 'maybe', mother: found.member?.name ?? null, place: event.place });
  }
  if (group.kind === 'colony' && event.brood === null) return;
  const how = event.as === 'seen' ? 'eggs' : event.as;
  const mothers = mothersOf(draft, event, group, how, found.member);
  const tank = tankOfSpawn(event, group, mothers);
  const brood = sameBrood(draft, event, group, mothers, tank) ?? fresh(draft, event, group, mothers, tank);
  if (!brood) return;
  if (event.as !== 'maybe') confirmBrood(draft, brood);
  if (!brood.suspected || draft.stock.takenNames.has(brood.name)) note(draft, event, brood, true);
  brood.lines.push(event.place);
  if (event.as === 'maybe') return;
  lookAt(draft, brood, 'eggs', event, event.eggs && headsOf(event.eggs, true));
  if (event.eggs) {
    const eggs = headsOf(event.eggs, true);
    brood.eggs = eggs;
    observe(draft, brood, tank, eggs, isCounted(event.eggs), event);
  }
}

/**
 * Lets go of what was suspected and can have been these eggs. What was seen later than they were laid, or of another
 * female, is still to come.
 */
export function settleSuspicions(
  group: Group,
  { laid, mothers }: { readonly laid: Pick<DayWindow, 'high'>; readonly mothers: readonly string[] },
): void {
  group.suspected = group.suspected.filter(({ day, mother }) => {
    const isAnother = mother !== null && mothers.length > 0 && !mothers.includes(mother);
    return isAnother || (laid.high !== null && laid.high < day - 1);
  });
}

/**
 * The female that spawned, or all that it may have been: those in the tank of the line, where none has moved since the
 * eggs can have been laid. None where the group keeps no members.
 */
export function mothersOf(
  draft: Draft,
  event: EventBase,
  group: Group,
  how: Parameters<typeof laidWindow>[3],
  member: Member | null,
): readonly string[] {
  if (member !== null && member.name !== null) return [member.name];
  const females = livingMembers(group).filter((fish) => fish.sex !== 'male');
  const all = namesOf(females);
  const tank = event.subject.kind === 'tank' ? event.subject.tank : null;
  const here = females.filter((fish) => fish.tank === tank);
  if (here.length === 0 || here.length === females.length) return all;
  const { low } = laidWindow(draft, event, group, how, all, tank);
  return group.upset !== null && (low === null || group.upset.day > low) ? all : namesOf(here);
}

function namesOf(fish: readonly Pick<Fish, 'name'>[]): string[] {
  return fish.map(({ name }) => name).filter((name) => name !== null);
}

/** Where it was: the tank of the line, else where the mother is, else the one tank of the group. */
export function tankOfSpawn(
  event: Pick<EventOf<'spawned'>, 'subject'>,
  group: Group,
  mothers: readonly string[],
): string | null {
  if (event.subject.kind === 'tank') return event.subject.tank;
  const mother = mothers.length === 1 ? group.members.find((fish) => fish.name === mothers[0]) : undefined;
  return mother?.tank ?? [...group.parts.keys()][0] ?? group.home;
}

/**
 * The brood that this line tells more about: the one with the name it writes, one that was only
 * suspected, or eggs of the same mother that can have been laid on the same days.
 */
function sameBrood(
  draft: Draft,
  event: EventOf<'spawned'>,
  group: Group,
  mothers: readonly string[],
  tank: string | null,
): Brood | null {
  const laid = laidWindow(draft, event, group, event.as === 'seen' ? 'eggs' : event.as, mothers, tank);
  if (event.brood !== null) {
    const known = draft.stock.broods.get(event.brood);
    const suspected = known === undefined ? nameless(draft, event, group, mothers) : undefined;
    if (suspected) {
      refine(suspected, laid, event);
      confirmBrood(draft, suspected, event.brood);
      return suspected;
    }
    if (known?.group !== group.name || !overlap(known.laid, laid)) return null;
    if (tank !== null && !known.parts.has(tank)) known.parts.set(tank, { low: 1, likely: null, high: Infinity });
    refine(known, laid, event);
    return known;
  }
  const seen = event.when?.high ?? event.day;
  for (const brood of livingOf(draft, group).reverse()) {
    if (rankSeen(brood) > 0 || !sameMother(brood, mothers)) continue;
    if (tank !== null && brood.natal !== null && brood.natal !== tank) continue;
    const again = event.as === 'seen' ? canBeAt(draft, brood, 'eggs', seen) : overlap(brood.laid, laid);
    if (!again && !(brood.suspected && canBeAt(draft, brood, 'eggs', seen))) continue;
    refine(brood, laid, event);
    return brood;
  }
  return null;
}

/** What was only suspected of that mother, without a name, and can be these eggs. */
function nameless(
  draft: Draft,
  event: EventOf<'spawned'>,
  group: Group,
  mothers: readonly string[],
): Brood | undefined {
  if (event.as === 'maybe') return undefined;
  const seen = event.when?.high ?? event.day;
  return livingOf(draft, group).findLast(
    (brood) => isNameless(draft, brood) && sameMother(brood, mothers) && canBeAt(draft, brood, 'eggs', seen),
  );
}

/** Takes the surer of two windows of laying: a day that was seen beats days that were worked out. */
function refine(brood: Brood, laid: DayWindow, event: EventOf<'spawned'>): void {
  if (event.as === 'maybe') return;
  if (event.as === 'laid' && brood.laidKnown !== 'seen') {
    brood.laid = laid;
    brood.laidKnown = 'seen';
  } else if (brood.suspected && !overlap(brood.laid, laid)) {
    brood.laid = laid;
    brood.laidKnown = 'bounded';
  } else {
    brood.laid = narrow(brood.laid, { ...laid, likely: null });
  }
  if (brood.total.low === 0) brood.total = { low: 1, likely: null, high: Infinity };
  for (const [tank, part] of brood.parts) if (part.low === 0) brood.parts.set(tank, { ...part, low: 1 });
}

function overlap(a: DayWindow, b: DayWindow): boolean {
  return (a.low ?? -Infinity) <= (b.high ?? Infinity) && (b.low ?? -Infinity) <= (a.high ?? Infinity);
}

/** True where the eggs of these females may be that brood's; nobody named may be anybody. */
export function sameMother(brood: Brood, mothers: readonly string[]): boolean {
  if (brood.mothers.length === 0 || mothers.length === 0) return true;
  return brood.mothers.some((name) => mothers.includes(name));
}

function fresh(
  draft: Draft,
  event: EventOf<'spawned'>,
  group: Group,
  mothers: readonly string[],
  tank: string | null,
): Brood | null {
  if (event.brood !== null && nameTaken(draft, event, event.brood, group)) return null;
  const before = stillEggs(draft, event, group, mothers);
  const how = event.as === 'seen' ? 'eggs' : event.as;
  const brood = beginBrood(draft, event, group, how, event.brood, mothers, tank);
  if (before && event.as !== 'maybe') {
    draft.problems.push({
      kind: 'two-spawns',
      weight: 'doubt',
      says: `${before.name} was still eggs when ${group.name} spawned again: two spawns, or the same one told twice`,
      write: `what became of the first, or its name: ${tank ?? group.name}: spawned brood ${before.name}`,
      at: event.place,
      also: before.lines.slice(-1),
    });
  }
  return brood;
}

/** A name that another brood has, on days when this one cannot be the same: told, with a free number. */
export function nameTaken(draft: Draft, event: Pick<EventOf<'spawned'>, 'place'>, name: string, group: Group): boolean {
  const known = draft.stock.broods.get(name);
  if (!known) return false;
  draft.problems.push({
    kind: 'brood-name-taken',
    weight: 'stops',
    says: `${name} is already the name of another brood`,
    write: `a free one: brood ${nextBroodName(draft.stock, group.name)}`,
    at: event.place,
    also: known.lines.slice(0, 1),
  });
  return true;
}

/** An earlier brood of the same mother that should still be eggs. */
function stillEggs(draft: Draft, event: EventOf<'spawned'>, group: Group, mothers: readonly string[]): Brood | null {
  for (const brood of livingOf(draft, group).reverse()) {
    if (brood.suspected || rankSeen(brood) > 0 || !sameMother(brood, mothers)) continue;
    const eggs = agesAt(clockOf(draft, brood), 'eggs', false);
    if (brood.laid.high !== null && event.day - brood.laid.high < eggs.high) return brood;
  }
  return null;
}
