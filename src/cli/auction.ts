/** The auction that an option names. */
import type { DeepReadonly } from '../core/readonly.ts';
import { nearest } from '../core/suggest.ts';
import type { Room } from '../state/draft.ts';
import type { Auction } from '../state/sale.ts';
import { misuse } from './exit.ts';

const SALE = (name: string): string => `tankside sale --for ${name}`;

/**
 * The auction of that name, or null where none is asked for. Throws a `Stop`: no such auction, or it has no day.
 * `how`: the command to type with the name of one that there is.
 */
export function auctionOf(
  room: Room,
  asked: string | null,
  how: (name: string) => string = SALE,
): DeepReadonly<Auction> | null {
  if (asked === null) return null;
  const all = [...room.sale.auctions.values()];
  const found = all.find(({ name }) => name.toLowerCase() === asked.toLowerCase());
  if (found?.on === null)
    throw misuse(`the auction ${found.name} has no day yet`, `jot: auction ${found.name}: on 2026-09-05`);
  if (found !== undefined) return found;
  const names = all.map(({ name }) => name);
  const [near] = [...nearest(asked, names), ...names];
  throw misuse(
    `no auction is called «${asked}»`,
    near === undefined ? 'jot: auction Autumn: on 2026-09-05; bags of 6' : how(near),
  );
}
