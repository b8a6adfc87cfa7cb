/** Which fish of a room may still be meant: those that live, by tank and by family. */
import type { Day } from '../core/day.ts';
import { reached } from './broodlife.ts';
import type { Draft } from './draft.ts';
import type { Brood, Group } from './stock.ts';

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
export function bodiesAt(draft: Draft, tank: string): (Group | Brood)[] {
  const here = (body: Group | Brood): boolean => (body.parts.get(tank)?.high ?? 0) > 0;
  const broods = livingBroods(draft).filter((brood) => !brood.suspected);
  return [...[...draft.stock.groups.values()].filter(here), ...broods.filter(here)];
}

/** A group with its young that live. */
export function family(draft: Draft, name: string): (Group | Brood)[] {
  const group = draft.stock.groups.get(name);
  if (!group) return [];
  return [group, ...livingOf(draft, group).filter((brood) => !brood.suspected)];
}

/** No mouth is full for longer: after so many days a line was forgotten (ours). */
const LONGEST = 60;

/** What a group still holds once one mouthful is out or gone: of several females another may be holding yet. */
export function stillHeld(draft: Draft, group: Group, day: Day): Group['holding'] {
  const held = livingOf(draft, group)
    .filter(({ suspected, laid }) => !suspected && day - (laid.high ?? day) <= LONGEST)
    .findLast((brood) => !reached(brood, 'swam') && brood.looks.some(({ stage }) => stage === 'holding'));
  const place = held?.lines[0];
  const since = held?.looks[0]?.day;
  if (held === undefined || place === undefined || since === undefined) return null;
  return { day: since, mother: held.mothers.length === 1 ? (held.mothers[0] ?? null) : null, place };
}
