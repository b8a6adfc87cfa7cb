/** Promises, wants, sales, purchases, auctions and money. */
import type { Homes } from './home.ts';
import type { Day } from '../core/day.ts';
import type { Interval } from '../core/interval.ts';
import type { Measure, Price } from '../core/quantity.ts';
import type { Place } from '../core/span.ts';

export interface Sale {
  reservations: {
    stock: string;
    tank: string | null;
    count: Interval;
    until: Day | null;
    to: string | null;
    deposit: number | null;
    day: Day;
    place: Place;
    /** Sold or handed over against it. */ met: Interval;
  }[];
  wants: {
    species: string;
    count: Interval;
    size: Measure<'mm'> | null;
    by: Day | null;
    to: string | null;
    day: Day;
    place: Place;
  }[];
  sales: {
    stock: string;
    tank: string | null;
    count: Interval;
    price: Price | null;
    to: string | null;
    auction: string | null;
    gift: boolean;
    day: Day;
    place: Place;
  }[];
  purchases: {
    group: string;
    species: string;
    count: Interval;
    price: Price | null;
    from: string | null;
    day: Day;
    place: Place;
  }[];
  spent: { where: string; amount: number; text: string | null; day: Day; place: Place }[];
  auctions: Map<string, Auction>;
}

export interface Auction {
  name: string;
  on: Day | null;
  lots: number | null;
  bagOf: number | null;
  bagsPerSpecies: number | null;
  sellerShare: Measure<'share'> | null;
  fast: Measure<'days'> | null;
  minimum: number | null;
  hours: Measure<'minutes'> | null;
  day: Day;
  place: Place;
}

export const SALE_HOMES: Homes<
  | 'bought'
  | 'kept back'
  | 'reserved'
  | 'wanted'
  | 'sold'
  | 'gave away'
  | 'spent'
  | 'auction declared'
  | 'award rule set'
> = {
  bought: () => undefined,
  'kept back': () => undefined,
  reserved: () => undefined,
  wanted: () => undefined,
  sold: () => undefined,
  'gave away': () => undefined,
  spent: () => undefined,
  'auction declared': () => undefined,
  'award rule set': () => undefined,
};
