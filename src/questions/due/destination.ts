/** Where young could go, and the line that says they went. */
import { countWords } from '../../core/words.ts';
import { bodiesIn, isBrood, partIn, tanksOf } from '../../state/bodies.ts';
import type { SeenBrood } from '../../state/bodies.ts';
import type { Room } from '../../state/draft.ts';
import { walkOrder } from '../../state/tanks.ts';

/** The first tank in walking order that holds no fish; trays and quarantine tanks are left out. */
function freeTank(room: Room): string | null {
  return walkOrder(room).find((name) => isFree(room, name)) ?? null;
}

function isFree(room: Room, name: string): boolean {
  const tank = room.plumbing.tanks.get(name);
  return tank !== undefined && tank.inTank === null && !tank.quarantine && bodiesIn(room, name).length === 0;
}

/** The line that moves a brood, or most of it, out of its tank: to one that is free, else to where young are raised already. */
export function moveLine(
  room: Room,
  brood: SeenBrood,
  from = tanksOf(brood)[0] ?? null,
  which: 'all' | 'most' = 'most',
): { close: string; free: string | null } {
  const free = freeTank(room);
  const others = walkOrder(room).filter((name) => name !== from);
  const raising = tanksOf(brood).find((name) => name !== from) ?? others.find((name) => isNursery(room, name));
  const count = from === null ? brood.total : partIn(brood, from);
  const number = count.likely ?? (Number.isFinite(count.high) ? (count.low + count.high) / 2 : 40);
  const many =
    which === 'all'
      ? 'all'
      : count.low === count.high
        ? countWords(count)
        : `about ${String(Math.max(1, Math.round(number)))}`;
  return {
    close: `${from ?? brood.name}: moved ${many} ${brood.name} to ${free ?? raising ?? others[0] ?? 'C1'}`,
    free,
  };
}

/** A tank without breeders. */
function isNursery(room: Room, name: string): boolean {
  const tank = room.plumbing.tanks.get(name);
  return (
    tank !== undefined &&
    !tank.quarantine &&
    bodiesIn(room, name).every((body) => isBrood(body) || body.kind === 'group')
  );
}
