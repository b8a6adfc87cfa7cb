/** Readers of the stock: who lives where, and how many. */
import type { Interval } from '../core/interval.ts';
import { NONE } from '../core/interval.ts';
import type { DeepReadonly } from '../core/readonly.ts';
import type { Place } from '../core/span.ts';
import type { Room } from './draft.ts';
import type { Body, Brood, Group, Species } from './stock.ts';

export type SeenGroup = DeepReadonly<Group>;
export type SeenBrood = DeepReadonly<Brood>;
export type SeenBody = SeenGroup | SeenBrood;

/** True for young of one spawning (or a mix of them), false for a group. */
export function isBrood(body: Group | Brood): body is Brood;
/** True for a brood, which has a day of laying; a group has none. */
export function isBrood(body: SeenBody): body is SeenBrood;
export function isBrood(body: SeenBody): boolean {
  return 'laid' in body;
}

/** How many of a body may be in a tank; none where it holds none. */
export function partIn(body: DeepReadonly<Body>, tank: string): Interval {
  return body.parts.get(tank) ?? NONE;
}

/** All of them that are alive and still here. */
export function aliveTotal(body: DeepReadonly<Body>): Interval {
  return body.total;
}

/** Everything that may live in a tank: groups first, then broods, each oldest first. Suspected broods are none yet. */
export function bodiesIn(room: Room, tank: string): SeenBody[] {
  const here = (body: SeenBody): boolean => partIn(body, tank).high > 0;
  return [
    ...[...room.stock.groups.values()].filter(here),
    ...[...room.stock.living.values()].filter((brood) => !brood.suspected && brood.ended === null && here(brood)),
  ];
}

/** A group or brood by name. */
export function bodyNamed(room: Room, name: string): SeenBody | null {
  return room.stock.groups.get(name) ?? room.stock.broods.get(name) ?? null;
}

/** The line that a body began with. */
export function beginningOf(body: SeenBody): readonly Place[] {
  return isBrood(body) ? body.lines.slice(0, 1) : [body.declared];
}

/** The declared species of a body, or null where it names none. */
export function speciesOf(room: Room, body: SeenBody): DeepReadonly<Species> | null {
  return body.species === null ? null : (room.stock.species.get(body.species) ?? null);
}

/** Tanks in which a body may be, in the order in which it came there. */
export function tanksOf(body: DeepReadonly<Body>): string[] {
  return [...body.parts].filter(([, count]) => count.high > 0).map(([tank]) => tank);
}
