/** Words and lists of places that several answers about water need. */
import type { WaterAmount } from '../journal/event.ts';
import type { Room } from '../state/draft.ts';
import { holderOf, liveTanks, loopOf } from '../state/tanks.ts';

/** One body of water: a loop, or a tank that shares its water with none (a tray counts with its tank). */
export interface WaterBody {
  readonly name: string;
  readonly kind: 'loop' | 'tank';
  /** The tanks in it, in walking order. */
  readonly tanks: readonly string[];
}

/** Every body of water in the room on its day: loops as declared, then tanks in walking order. */
export function bodiesOfWater(room: Room): readonly WaterBody[] {
  const before = known.get(room);
  if (before !== undefined) return before;
  const bodies = workOut(room);
  known.set(room, bodies);
  return bodies;
}

/** Worked out once a room: every chore asks for the water of its place. */
const known = new WeakMap<Room, readonly WaterBody[]>();

function workOut(room: Room): readonly WaterBody[] {
  const tanks = liveTanks(room).map(({ name }) => name);
  const loops = [...room.plumbing.loops.keys()].map((name): WaterBody => {
    return { name, kind: 'loop', tanks: tanks.filter((tank) => loopOf(room, tank) === name) };
  });
  const held = new Map<string, string[]>();
  for (const tank of tanks) {
    const holder = holderOf(room, tank);
    const there = held.get(holder);
    if (there === undefined) held.set(holder, [tank]);
    else there.push(tank);
  }
  const alone = tanks.filter((tank) => loopOf(room, tank) === null && holderOf(room, tank) === tank);
  return [
    ...loops,
    ...alone.map((name): WaterBody => ({
      name,
      kind: 'tank',
      tanks: held.get(name) ?? [],
    })),
  ];
}

/** The water that a tank or loop is part of on the room's day. */
export function bodyOfWater(room: Room, place: string): WaterBody | null {
  return bodiesOfWater(room).find((body) => body.name === place || body.tanks.includes(place)) ?? null;
}

/** `30 %`, `40 L`, `10–20 L`. */
export function amountWords(amount: WaterAmount): string {
  const scale = amount.unit === 'share' ? 100 : 1;
  const low = Math.round(amount.low * scale);
  const high = Math.round(amount.high * scale);
  return `${low === high ? low : `${low}–${high}`} ${amount.unit === 'share' ? '%' : 'L'}`;
}
