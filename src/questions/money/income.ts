/** What came in for fish and what was spent, as the lines say. Buyers are nobody's business here: no name leaves this file. */
import type { Day } from '../../core/day.ts';
import { exactly, times, type Interval } from '../../core/interval.ts';
import type { Price } from '../../core/quantity.ts';
import type { DeepReadonly } from '../../core/readonly.ts';
import type { Place } from '../../core/span.ts';
import { countWords, dayWords, rangeWords, sumWords } from '../../core/words.ts';
import type { Room } from '../../state/draft.ts';
import type { Auction, Sold } from '../../state/sale.ts';

/** One sale after what the auction keeps. */
export interface Income {
  readonly stock: string;
  readonly day: Day;
  readonly count: Interval;
  /** As it was paid; null where no price was written. */
  readonly gross: Interval | null;
  readonly net: Interval | null;
  /** The sum in words: `12 × 5.50 less 30 % at Spring, 28 Mar: 46.20`. */
  readonly says: string;
  readonly place: Place;
}

export interface Spent {
  /** The stock or species that it was for, else the place of the line. */
  readonly for: string;
  readonly amount: number;
  /** What it was spent on, as the line says; null for fish, or where it does not say. */
  readonly text: string | null;
  readonly says: string;
  readonly day: Day;
  readonly place: Place;
}

export function incomes(room: Room, since: Day | null): readonly Income[] {
  return room.sale.sales
    .filter(({ gift, day }) => !gift && (since === null || day >= since))
    .map((sale) => incomeOf(room, sale));
}

/** Purchases of fish, and `spent` lines. */
export function spendings(room: Room, since: Day | null): readonly Spent[] {
  const { purchases, spent } = room.sale;
  const bought = purchases.flatMap(({ group, count, price, day, place }): Spent[] => {
    if (price === null) return [];
    const amount = price.per === 'all' ? price.amount : price.amount * (count.likely ?? count.low);
    return [
      {
        for: group,
        amount,
        text: null,
        says: `${countWords(count)} ${group} bought, ${dayWords(day, room.on)}`,
        day,
        place,
      },
    ];
  });
  const written = spent.map(({ where, amount, text, day, place }): Spent => {
    const what = text === null ? 'spent' : `"${text}"`;
    return { for: where, amount, text, says: `${what}, ${where}, ${dayWords(day, room.on)}`, day, place };
  });
  return [...bought, ...written]
    .filter(({ day }) => since === null || day >= since)
    .toSorted((a, b) => a.day - b.day || a.place.line - b.place.line);
}

function incomeOf(room: Room, sale: DeepReadonly<Sold>): Income {
  // As it was called that day: what was sold before a mix was surely of the one brood, and of its pair.
  const { stock, day, count, price, place } = sale;
  const gross = price === null ? null : grossOf(count, price);
  const auction = auctionOf(room, sale);
  const share = auction?.sellerShare ?? null;
  const net = gross === null || share === null ? gross : product(gross, share);
  const each =
    price === null ? '' : price.per === 'each' ? ` × ${price.amount.toFixed(2)}` : ` for ${price.amount.toFixed(2)}`;
  const split = share === null ? '' : ` less ${percent(share)} % kept`;
  const at = auction === null ? '' : ` at ${auction.name}`;
  const sum = net === null ? 'no price written' : sumWords(net);
  return {
    stock,
    day,
    count,
    gross,
    net,
    says: `${dayWords(day, room.on)}: ${countWords(count)}${each}${split}${at}: ${sum}`,
    place,
  };
}

function percent(share: Interval): string {
  return rangeWords({ low: 100 * (1 - share.high), likely: null, high: 100 * (1 - share.low) });
}

function grossOf(count: Interval, price: Price): Interval {
  return price.per === 'all' ? exactly(price.amount) : times(count, price.amount);
}

function product(a: Interval, b: Interval): Interval {
  const likely = a.likely === null || b.likely === null ? null : a.likely * b.likely;
  return { low: a.low * b.low, likely, high: a.high * b.high };
}

/**
 * The auction at which fish were sold: the one that the line names, else one held that day, where the
 * line names no buyer or says "auction" or its name in the buyer's place.
 */
export function auctionOf(room: Room, sale: DeepReadonly<Sold>): DeepReadonly<Auction> | null {
  if (sale.auction !== null) return room.sale.auctions.get(sale.auction) ?? null;
  const buyer = sale.to?.toLowerCase() ?? null;
  for (const auction of room.sale.auctions.values()) {
    if (auction.on !== sale.day) continue;
    if (buyer === null || buyer.includes('auction') || buyer.includes(auction.name.toLowerCase())) return auction;
  }
  return null;
}
