/** What a room of `lines.ts` tells of its one brood, in few words. */
import type { Room } from '../../src/state/draft.ts';
import { ROOM } from './lines.ts';

const SETUP = ROOM.split('\n').length - 1;

function show(count: { low: number; high: number } | undefined): string {
  return count ? `${String(count.low)}–${String(count.high)}` : 'none';
}

/** How many there are of Rowan-1, low to high. */
export function totalTold(room: Room): string {
  return show(room.stock.broods.get('Rowan-1')?.total);
}

/** How many of them in a tank; `none` where it holds none. */
export function partTold(room: Room, tank: string): string {
  return show(room.stock.broods.get('Rowan-1')?.parts.get(tank));
}

/** Kind of each doubt, its line and the line beside it; lines counted from those after the room's own. */
export function doubtsTold(room: Room): string[] {
  return room.problems.map(({ kind, at, also }) =>
    [kind, String(at.line - SETUP), ...also.map(({ line }) => String(line - SETUP))].join(' '),
  );
}
