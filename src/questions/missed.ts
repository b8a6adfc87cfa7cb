/** Which tanks of a loop a change of its water did not reach: valved off that day, and not changed by themselves since. */
import type { DeepReadonly } from '../core/readonly.ts';
import type { WaterAmount } from '../journal/event.ts';
import type { Room } from '../state/draft.ts';
import { holderOf, homeLoopOf, liveTanks } from '../state/tanks.ts';
import type { WaterFact } from '../state/water.ts';

/** Tanks that missed a change of the loop, in walking order; none where the line was about a tank. */
export function missedBy(room: Room, loop: string, change: DeepReadonly<WaterFact<{ amount: WaterAmount }>>): string[] {
  if (change.where !== loop) return [];
  return liveTanks(room, change.day)
    .map(({ name }) => name)
    .filter((tank) => holderOf(room, tank) === tank && homeLoopOf(room, tank, change.day) === loop)
    .filter((tank) => !change.tanks.includes(tank) && !hadItsOwn(room, tank, change.day));
}

function hadItsOwn(room: Room, tank: string, since: number): boolean {
  return room.water.changes.some((one) => one.day >= since && one.tanks.includes(tank));
}
