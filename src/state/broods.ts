/**
 * Spawnings and what looks find of them. A stage goes to the one brood that can be at it; where none
 * can, it begins a brood, cast back. In a colony young are no brood unless the line names one.
 */
import type { Day } from '../core/day.ts';
import { NONE, plus } from '../core/interval.ts';
import type { DeepReadonly } from '../core/readonly.ts';
import type { EventOf, HowMany } from '../journal/event.ts';
import { isBrood } from './bodies.ts';
import type { Draft } from './draft.ts';
import type { Homes } from './home.ts';
import { reached } from './broodlife.ts';
import { onlyTank } from './heads.ts';
import { clockOf } from './stageclock.ts';
import type { Brood, Group } from './stock.ts';
import { spawned } from './spawning.ts';
import { stageSeen } from './stageseen.ts';
import { takeFish } from './tally.ts';
import { livingOf, stillHeld } from './living.ts';
import { note, tankOf } from './meant.ts';
import { nobodyFits, severalFit } from './unclear.ts';
import { groupOf } from './whichgroup.ts';
import { resolveFish } from './who.ts';

export const BROODS_HOMES: Homes<
  'about to spawn' | 'no eggs' | 'spawned' | 'eggs white' | 'eggs gone' | 'stage seen' | 'parents chase fry'
> = {
  'about to spawn': aboutToSpawn,
  'no eggs': noEggs,
  spawned,
  'eggs white': eggsWhite,
  'eggs gone': eggsGone,
  'stage seen': stageSeen,
  'parents chase fry': parentsChase,
};

function aboutToSpawn(draft: Draft, event: EventOf<'about to spawn'>): void {
  const found = groupOf(draft, event, { doing: 'about to spawn' });
  if (!found) return;
  const mother = found.member?.name ?? null;
  found.group.suspected.push({ day: event.day, kind: 'about to spawn', mother, place: event.place });
  found.group.lines.push(event.place);
}

/** A hard look: nothing was laid before it. It settles what was suspected, and doubts eggs that should still be there. */
function noEggs(draft: Draft, event: EventOf<'no eggs'>): void {
  const found = groupOf(draft, event, { doing: 'no eggs' });
  if (!found) return;
  const { group } = found;
  const looked = event.when?.high ?? event.day;
  const mother = found.member?.name ?? null;
  group.noEggs = { day: looked, mother, place: event.place };
  group.suspected = group.suspected.filter(
    (one) => one.kind !== 'maybe' || one.day > looked || !isHers({ mothers: namesOf(one.mother) }, mother),
  );
  group.lines.push(event.place);
  for (const brood of livingOf(draft, group)) {
    if (isUnhatched(brood) && isHers(brood, mother) && !isSeenAfter(brood, looked))
      eggsMissed(draft, event, group, brood);
  }
}

function namesOf(mother: string | null): readonly string[] {
  return mother === null ? [] : [mother];
}

/** A look that is told late says nothing of eggs that were first seen after it. */
function isSeenAfter(brood: Brood, looked: Day): boolean {
  const seen = brood.looks[0]?.day ?? brood.laid.high;
  return seen !== null && seen > looked;
}

function isUnhatched(brood: Brood): boolean {
  return !reached(brood, 'hatched');
}

function isHers(brood: Pick<DeepReadonly<Brood>, 'mothers'>, mother: string | null): boolean {
  return mother === null || brood.mothers.length === 0 || brood.mothers.includes(mother);
}

/** Eggs that a look did not find: never laid, gone, or hatched and moved by their mother. */
function eggsMissed(draft: Draft, event: EventOf<'no eggs'>, group: Group, brood: Brood): void {
  if (brood.suspected) {
    end(brood, event);
    return;
  }
  const clock = clockOf(draft, brood);
  if (clock.release !== null || brood.natal === null || !brood.parts.has(brood.natal)) return;
  const oldest = brood.laid.low === null ? Infinity : (group.noEggs?.day ?? event.day) - brood.laid.low;
  const gone = oldest < (clock.hatch?.low ?? 0);
  if (gone) end(brood, event);
  draft.problems.push({
    kind: 'eggs-missing',
    weight: 'doubt',
    says: `no eggs with ${group.name}, and ${brood.name} was still eggs when last seen${gone ? ': taken as gone' : ''}`,
    write: `what became of them: ${brood.natal}: ${brood.name} ${gone ? 'eggs gone' : 'wrigglers   (or: eggs gone)'}`,
    at: event.place,
    also: brood.lines.slice(-1),
  });
}

function eggsWhite(draft: Draft, event: EventOf<'eggs white'>): void {
  const found = clutchOf(draft, event, event.count);
  if (!found) return;
  const out = takeFish(draft, event, found.brood, found.tank, event.count, 'died');
  if (out !== null) found.brood.white = plus(found.brood.white ?? NONE, out);
}

function eggsGone(draft: Draft, event: EventOf<'eggs gone'>): void {
  const found = clutchOf(draft, event, 'unsaid');
  if (!found) return;
  const { brood } = found;
  takeFish(draft, event, brood, found.tank, 'all', 'missing');
  if (brood.parts.size === 0) end(brood, event);
  const group = brood.group === null ? undefined : draft.stock.groups.get(brood.group);
  if (group) group.holding = stillHeld(draft, group, event.day);
}

/** The eggs of a clause: of the brood it names, or of the pair or female that it names, or the only ones there. */
function clutchOf(
  draft: Draft,
  event: EventOf<'eggs white' | 'eggs gone'>,
  count: HowMany,
): { readonly brood: Brood; readonly tank: string | null } | null {
  const { fish } = event;
  const parents = fish.kind === 'group' ? groupOf(draft, { ...event, fish }, { doing: event.kind }) : null;
  if (fish.kind === 'group' && parents === null) return null;
  if (parents === null) {
    const found = resolveFish(draft, event, fish, count);
    return found !== null && isBrood(found.body) ? { brood: found.body, tank: found.tank } : null;
  }
  const tank = tankOf(event);
  const clutches = livingOf(draft, parents.group).filter(
    (brood) =>
      !brood.suspected &&
      isUnhatched(brood) &&
      isHers(brood, parents.member?.name ?? null) &&
      (tank === null || brood.parts.has(tank)),
  );
  const [brood] = clutches;
  if (brood === undefined || clutches.length > 1) {
    draft.problems.push(
      brood === undefined
        ? nobodyFits(event, event.kind, tank ?? parents.group.name)
        : severalFit(event, event.kind, tank, clutches),
    );
    return null;
  }
  note(draft, event, brood, true);
  return { brood, tank: tank ?? onlyTank(brood) };
}

function end(brood: Brood, event: EventOf<'no eggs' | 'eggs gone'>): void {
  brood.ended = { how: 'eggs gone', day: event.day, place: event.place };
  brood.parts.clear();
}

function parentsChase(draft: Draft, event: EventOf<'parents chase fry'>): void {
  const found = groupOf(draft, event, { doing: 'parents chase fry' });
  if (!found) return;
  found.group.lines.push(event.place);
  draft.stock.chasedFry.set(found.group.name, { day: event.day, place: event.place });
}
