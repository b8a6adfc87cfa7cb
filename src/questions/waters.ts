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
export function bodiesOfWater(room: Room): WaterBody[] {
  const tanks = liveTanks(room).map(({ name }) => name);
  const loops = [...room.plumbing.loops.keys()].map((name): WaterBody => {
    return { name, kind: 'loop', tanks: tanks.filter((tank) => loopOf(room, tank) === name) };
  });
  const alone = tanks.filter((tank) => loopOf(room, tank) === null && holderOf(room, tank) === tank);
  return [
    ...loops,
    ...alone.map((name): WaterBody => ({
      name,
      kind: 'tank',
      tanks: tanks.filter((tank) => holderOf(room, tank) === name),
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
