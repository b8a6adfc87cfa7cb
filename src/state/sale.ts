/**
 * Promises, wants, sales, purchases, auctions and money, as the lines say. What can be promised on top
 * of them, and which promises have lapsed, is worked out when it is asked for.
 */
import type { Homes } from './home.ts';
import type { Day } from '../core/day.ts';
import type { Interval } from '../core/interval.ts';
import type { Measure, Price } from '../core/quantity.ts';
import type { Place } from '../core/span.ts';
import { buy } from './buying.ts';
import { keepBack, reserve, sell, want } from './selling.ts';
import { whereOf } from './where.ts';

export interface Sale {
  keptBack: KeptBack[];
  reservations: Reservation[];
  wants: Want[];
  sales: Sold[];
  purchases: Purchase[];
  spent: { where: string; amount: number; text: string | null; day: Day; place: Place }[];
  auctions: Map<string, Auction>;
  awards: Map<string, AwardRule>;
}

/** Fish that the keeper will not part with. A line that keeps back none lets all of them go. */
export interface KeptBack {
  stock: string;
  tank: string | null;
  count: Interval;
  day: Day;
  place: Place;
}

export interface Reservation {
  stock: string;
  tank: string | null;
  count: Interval;
  /** The last day on which it still stands; null where nobody said. */
  until: Day | null;
  to: string | null;
  deposit: number | null;
  day: Day;
  place: Place;
  /** Sold or given against it. */
  met: Interval;
  metBy: Place[];
}

export interface Want {
  species: string;
  count: Interval;
  size: Measure<'mm'> | null;
  by: Day | null;
  to: string | null;
  day: Day;
  place: Place;
  met: Interval;
  metBy: Place[];
}

export interface Sold {
  stock: string;
  species: string | null;
  tank: string | null;
  count: Interval;
  price: Price | null;
  to: string | null;
  auction: string | null;
  gift: boolean;
  day: Day;
  minute: number | null;
  place: Place;
}

export interface Purchase {
  group: string;
  species: string;
  tank: string | null;
  count: Interval;
  price: Price | null;
  from: string | null;
  day: Day;
  place: Place;
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
  boxes: number | null;
  boxLitres: Measure<'L'> | null;
  day: Day;
  place: Place;
}

/** What a club asks before it credits a brood: so many young of an age, and word of the spawning in time. */
export interface AwardRule {
  name: string;
  young: number;
  age: Measure<'days'>;
  from: 'hatched' | 'released';
  notice: Measure<'days'> | null;
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
  bought: buy,
  'kept back': keepBack,
  reserved: reserve,
  wanted: want,
  sold: sell,
  'gave away': sell,
  spent: (draft, event) => {
    const { amount, text, day, place } = event;
    draft.sale.spent.push({ where: whereOf(event.subject), amount, text, day, place });
  },
  'auction declared': (draft, event) => {
    const known = draft.sale.auctions.get(event.auction);
    draft.sale.auctions.set(event.auction, {
      name: event.auction,
      on: event.on ?? known?.on ?? null,
      lots: event.lots ?? known?.lots ?? null,
      bagOf: event.bagOf ?? known?.bagOf ?? null,
      bagsPerSpecies: event.bagsPerSpecies ?? known?.bagsPerSpecies ?? null,
      sellerShare: event.sellerShare ?? known?.sellerShare ?? null,
      fast: event.fast ?? known?.fast ?? null,
      minimum: event.minimum ?? known?.minimum ?? null,
      hours: event.hours ?? known?.hours ?? null,
      boxes: event.boxes ?? known?.boxes ?? null,
      boxLitres: event.boxLitres ?? known?.boxLitres ?? null,
      day: known?.day ?? event.day,
      place: event.place,
    });
  },
  'award rule set': (draft, event) => {
    const { name, young, age, from, notice, day, place } = event;
    draft.sale.awards.set(name, { name, young, age, from, notice, day, place });
  },
};
