/** Names of a room that a command may be asked about. */
import type { Room } from '../../state/draft.ts';
import { walkOrder } from '../../state/tanks.ts';

export type NameKind = 'tank' | 'loop' | 'group' | 'brood' | 'species' | 'jar' | 'auction';

export const EVERY_KIND: readonly NameKind[] = ['tank', 'loop', 'group', 'brood', 'species', 'jar', 'auction'];

/**
 * The names of those kinds that a line may hold, of what is in the room still: who sold the last of a brood asks
 * little about it. What was given no name (`Aspen-1 or Fir-2`, for fish of either) is called in words, with blanks.
 */
export function namesOf(room: Room, kinds: readonly NameKind[]): readonly string[] {
  return kinds.flatMap((kind) => BY_KIND[kind](room)).filter((name) => !name.includes(' '));
}

const BY_KIND: Readonly<Record<NameKind, (room: Room) => readonly string[]>> = {
  tank: walkOrder,
  loop: ({ plumbing }) => [...plumbing.loops.keys()],
  group: ({ stock }) => [...stock.groups.values()].filter(({ total }) => total.high > 0).map(({ name }) => name),
  brood: ({ stock }) => [...stock.living.values()].filter(({ ended }) => ended === null).map(({ name }) => name),
  species: ({ stock }) => [...stock.species.keys()],
  jar: ({ cultures }) => [...cultures.jars.keys()],
  auction: ({ sale }) => [...sale.auctions.keys()],
};
