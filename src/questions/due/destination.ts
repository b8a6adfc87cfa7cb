/** Where young could go, and the line that says they went. */
import { countWords } from '../../core/words.ts';
import { bodiesIn, isBrood, partIn, tanksOf } from '../../state/bodies.ts';
import type { SeenBrood } from '../../state/bodies.ts';
import type { Room } from '../../state/draft.ts';
import { walkOrder } from '../../state/tanks.ts';
import { oncePerRoom } from '../holds/once.ts';
import { heldTanks } from '../holds/reach.ts';
import { sickIn } from '../holds/sickness.ts';
import { watches } from '../watch.ts';

/** The first tank in walking order that holds no fish; trays, quarantine tanks and tanks shut to fish are left out. */
function freeTank(room: Room, from: string | null): string | null {
  return walkOrder(room).find((name) => isFree(room, name) && isOpen(room, from, name)) ?? null;
}

/** Tanks on a filter that is watched. */
const onWatch = oncePerRoom((room) => new Set(watches(room).flatMap(({ body }) => body.tanks)));

/** No young go to a tank that is held, sick or on a filter that is watched, unless theirs is as well. */
function isOpen(room: Room, from: string | null, name: string): boolean {
  const shut = (tank: string): boolean => heldTanks(room).has(tank) || sickIn(room, tank) !== null;
  const here = from !== null && shut(from);
  return (here || !shut(name)) && ((from !== null && onWatch(room).has(from)) || !onWatch(room).has(name));
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
): { close: string; where: string } {
  const free = freeTank(room, from);
  const others = walkOrder(room).filter((name) => name !== from && isOpen(room, from, name));
  const own = tanksOf(brood).find((name) => name !== from && isOpen(room, from, name));
  const raising = own ?? others.find((name) => isNursery(room, name));
  const count = from === null ? brood.total : partIn(brood, from);
  const number = count.likely ?? (Number.isFinite(count.high) ? (count.low + count.high) / 2 : 40);
  const many =
    which === 'all'
      ? 'all'
      : count.low === count.high
        ? countWords(count)
        : `about ${String(Math.max(1, Math.round(number)))}`;
  return {
    close: `${from ?? brood.name}: moved ${many} ${brood.name} to ${free ?? raising ?? '…'}`,
    where: free === null ? noneFree(raising, own !== undefined) : `${free} is free`,
  };
}

/** Where the line names a tank all the same, why that one. */
function noneFree(raising: string | undefined, isTheirs: boolean): string {
  if (raising === undefined) return 'no tank is free';
  return `no tank is free, but ${raising} ${isTheirs ? 'has some of them already' : 'has only young and grow-outs'}`;
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
