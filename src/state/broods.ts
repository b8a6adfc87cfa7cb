/**
 * Spawnings and what looks find of them. A stage goes to the one brood that can be at it; where none
 * can, it begins a brood, cast back. In a colony young are no brood unless the line names one.
 */
import { NONE, plus } from '../core/interval.ts';
import type { EventOf } from '../journal/event.ts';
import type { Draft } from './draft.ts';
import type { Homes } from './home.ts';
import { reached } from './broodlife.ts';
import { clockOf } from './stageclock.ts';
import type { Brood, Group } from './stock.ts';
import { spawned } from './spawning.ts';
import { stageSeen } from './stageseen.ts';
import { takeFish } from './tally.ts';
import { livingOf } from './living.ts';
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
  group.noEggs = { day: event.when?.high ?? event.day, mother: found.member?.name ?? null, place: event.place };
  group.suspected = group.suspected.filter((one) => one.kind !== 'maybe');
  group.lines.push(event.place);
  for (const brood of livingOf(draft, group)) {
    if (isUnhatched(brood) && isHers(brood, found.member?.name ?? null)) eggsMissed(draft, event, group, brood);
  }
}

function isUnhatched(brood: Brood): boolean {
  return !reached(brood, 'hatched');
}

function isHers(brood: Brood, mother: string | null): boolean {
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
  const found = resolveFish(draft, event, event.fish, event.count);
  if (!found) return;
  const out = takeFish(draft, event, found.body, found.tank, event.count, 'died');
  if (out !== null && 'laid' in found.body) found.body.white = plus(found.body.white ?? NONE, out);
}

function eggsGone(draft: Draft, event: EventOf<'eggs gone'>): void {
  const found = resolveFish(draft, event, event.fish);
  if (!found || !('laid' in found.body)) return;
  const brood = found.body;
  takeFish(draft, event, brood, found.tank, 'all', 'missing');
  if (brood.parts.size === 0) end(brood, event);
  const group = brood.group === null ? undefined : draft.stock.groups.get(brood.group);
  if (group) group.holding = null;
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
