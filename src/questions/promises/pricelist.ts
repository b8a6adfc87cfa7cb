/** What may be offered today, for a message to whoever asks: each stock with its sure number, its size and its price. */
import type { Interval } from '../../core/interval.ts';
import type { Price } from '../../core/quantity.ts';
import type { DeepReadonly } from '../../core/readonly.ts';
import type { LineRef } from '../../core/span.ts';
import type { Room } from '../../state/draft.ts';
import { sale } from '../sale.ts';
import { isLeftover } from '../sale/leftover.ts';

export interface Offered {
  /** The row of `sale` that it is: `why` takes it. */
  readonly id: string;
  readonly stock: string;
  readonly species: string | null;
  readonly latin: string | null;
  readonly count: number;
  readonly size: Interval | null;
  readonly price: DeepReadonly<Price> | null;
  /** For the keeper, before it is sent. */
  readonly cautions: readonly string[];
  readonly lines: readonly LineRef[];
}

export interface PriceList {
  readonly currency: string | null;
  readonly offered: readonly Offered[];
}

/** Only what is ready now, of it only what is neither reserved nor kept back; by the name of the species. What `sale` says to count first is not offered. */
export function priceList(room: Room): PriceList {
  const answer = sale(room, { ahead: 0, auction: null, projected: false });
  const { lots, currency } = answer;
  const offered = lots
    .filter((lot) => lot.ready && lot.free > 0 && !isLeftover(lot, answer))
    .map(({ id, stock, species, free, size, price, cautions, lines }): Offered => {
      const latin = species === null ? null : (room.stock.species.get(species)?.traits.latin ?? null);
      return { id, stock, species, latin, count: free, size, price, cautions, lines };
    });
  return { currency, offered: offered.toSorted((a, b) => (nameOf(a) < nameOf(b) ? -1 : 1)) };
}

function nameOf({ latin, species, stock }: Offered): string {
  return `${latin ?? species ?? stock} ${stock}`;
}
