/** What a fish likely brings on an auction table: what its species brought there before, else the price that was set. */
import { middle } from '../../core/interval.ts';
import { linesOf, type LineRef } from '../../core/span.ts';
import { median } from '../../core/stats.ts';
import { plural } from '../../core/words.ts';
import type { Room } from '../../state/draft.ts';
import { auctionOf } from '../money/income.ts';
import type { Lot } from '../sale.ts';

export interface Expected {
  /** Each, before the split; null where no price is known. */
  readonly likely: number | null;
  /** The least that any brought; null where none was sold at an auction. */
  readonly least: number | null;
  readonly from: string;
  readonly lines: readonly LineRef[];
}

/** What one fish of a lot likely brings, in the room’s currency; null where nothing tells. */
export function expectedPrice(room: Room, lot: Lot): Expected {
  const sold = room.sale.sales
    .filter((sale) => sale.species === lot.species && lot.species !== null && auctionOf(room, sale) !== null)
    .flatMap(({ price, count, place }) => {
      const each =
        price === null ? null : price.per === 'each' ? price.amount : price.amount / Math.max(1, middle(count));
      return each === null ? [] : [{ each, place }];
    });
  const paid = sold.map(({ each }) => each);
  const likely = median(paid);
  if (likely !== null) {
    return {
      likely,
      least: Math.min(...paid),
      from: `the middle of ${plural(paid.length, 'sale')} of ${lot.species ?? ''} at auctions`,
      lines: linesOf(sold.map(({ place }) => place)),
    };
  }
  if (lot.price?.per === 'each')
    return { likely: lot.price.amount, least: null, from: 'the price set; none was sold at an auction yet', lines: [] };
  return { likely: null, least: null, from: 'no price is written', lines: [] };
}
