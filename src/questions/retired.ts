/** Retired tanks with fish on record: the fish are somewhere, and only a line of the day of retiring can say where. */
import { isoDay } from '../core/day.ts';
import type { Day } from '../core/day.ts';
import { linesOf, type LineRef } from '../core/span.ts';
import { listWords } from '../core/words.ts';
import { bodiesIn } from '../state/bodies.ts';
import type { Room } from '../state/draft.ts';
import { walkOrder } from '../state/tanks.ts';

export interface Retired {
  readonly since: Day;
  /** Who is on record there. */
  readonly names: readonly string[];
  /** The line that says where they went, its date included: of a retired tank no later line is read. */
  readonly jot: string;
  readonly lines: readonly LineRef[];
}

/** What there is to tell of a tank that is retired and has fish on record; null for any other. */
export function retiredWithFish(room: Room, tank: string): Retired | null {
  const retired = room.plumbing.tanks.get(tank)?.retired ?? null;
  if (retired === null || retired.day > room.on) return null;
  const names = bodiesIn(room, tank).map(({ name }) => name);
  const [first] = names;
  if (first === undefined) return null;
  const jot = `${isoDay(retired.day)} ${tank}: moved all ${first} to …`;
  return { since: retired.day, names, jot, lines: linesOf([retired.place]) };
}

/** `retired, Pebble and Rowan-1 still on record there`. */
export function retiredWords({ names }: Retired): string {
  return `retired, ${listWords(names)} still on record there`;
}

/** Tanks in walking order: those in use, then retired ones that have fish on record. */
export function tanksWithFishToo(room: Room): readonly string[] {
  const inUse = walkOrder(room);
  if (room.plumbing.order.length === inUse.length) return inUse;
  return [...inUse, ...room.plumbing.order.filter((tank) => retiredWithFish(room, tank) !== null)];
}
