/**
 * What to take to an auction: the types of a plan. Each bag is one lot on the auction's table; a bag holds
 * fish of one stock out of one tank, so lines and broods never mix. Numbers are those that can surely be promised.
 */
import type { Because } from '../../core/because.ts';
import type { Day } from '../../core/day.ts';
import type { Interval } from '../../core/interval.ts';
import type { Measure } from '../../core/quantity.ts';
import type { LineRef } from '../../core/span.ts';

/** One lot on the table, with its label. */
export interface PlanBag {
  /** From 1, through the whole plan in the order of its lots: what stands on the label. */
  readonly number: number;
  /** Fish that are sold together under this number. */
  readonly count: number;
  /** Bags of water that they travel in: one, or one for each fish that travels alone. */
  readonly packs: number;
  readonly alone: boolean;
  /** Litres of water, and of air above it, in each pack. */
  readonly water: number;
  readonly air: number;
  /** Boxes, from 1, that its packs travel in. */
  readonly boxes: readonly number[];
}

/** The bags of one stock out of one tank. */
export interface PlanLot {
  readonly id: string;
  /** The stock's own name, as journal lines take it. */
  readonly stock: string;
  /** As it may be called: a mix of broods is "one or the other". */
  readonly name: string;
  readonly species: string | null;
  readonly latin: string | null;
  readonly tank: string;
  /** All fish of its bags together. */
  readonly count: number;
  /** mm of the typical fish on that day; null where nothing tells. */
  readonly size: Measure<'mm'> | null;
  /** Somebody measured them: else the size is what is usual for their age. */
  readonly sizeRead: boolean;
  /** A pair is sold as bonded only where the journal says so. */
  readonly bondedPair: boolean;
  /** Line or source, of a group. */
  readonly line: string | null;
  /** Groups that it comes of; several where nobody can tell which. */
  readonly parents: readonly string[];
  /** What each fish likely brings, before the split, and where that comes from. */
  readonly price: number | null;
  readonly priceFrom: string;
  /** The least that a bag may go for; null where the auction sets none. */
  readonly minimum: number | null;
  readonly bags: readonly PlanBag[];
  /** Income of all its bags after the split. */
  readonly income: PlanIncome;
  /** Part of its tank that goes free with them, times the weeks till they could next be sold. */
  readonly tankWeeks: number;
  /** Days without food before they are bagged. */
  readonly fastDays: number;
  readonly cautions: readonly string[];
  readonly because: Because;
  readonly lines: readonly LineRef[];
}

export interface PlanIncome {
  /** Every bag at the auction's minimum, else at the least that such fish brought; null where neither is known. */
  readonly low: number | null;
  readonly likely: number;
}

/** Fish that stay at home, and every reason for it. */
export interface PlanLeft {
  readonly id: string;
  readonly stock: string;
  readonly name: string;
  readonly species: string | null;
  readonly tank: string;
  /** Fish of it that stay although they could be promised; 0 where something blocks them. */
  readonly free: number;
  readonly why: readonly string[];
  readonly lines: readonly LineRef[];
}

/** One box with the packs in it. */
export interface PlanBox {
  readonly number: number;
  readonly litres: number;
  /** How many packs of which bag. */
  readonly packs: readonly { readonly bag: number; readonly packs: number }[];
}

export interface SalePlan {
  readonly id: string;
  /** Null where a day was named and no auction. */
  readonly auction: string | null;
  readonly on: Day;
  readonly past: boolean;
  readonly currency: string | null;
  readonly rules: PlanRules;
  readonly lots: readonly PlanLot[];
  readonly boxes: readonly PlanBox[];
  readonly leftOut: readonly PlanLeft[];
  /** What was made as large as it can be, in words. */
  readonly objective: string;
  readonly income: PlanIncome;
  readonly tankWeeks: number;
  readonly tankWeekValue: { readonly amount: number; readonly from: string };
  /** Tanks in which nothing stays. */
  readonly emptied: readonly string[];
  /** Likely income and what the freed glass is worth: what was maximised. */
  readonly worth: number;
  readonly fish: number;
  readonly warnings: readonly string[];
  readonly because: Because;
  readonly lines: readonly LineRef[];
}

/** What the plan had to obey, and what it took for granted. */
export interface PlanRules {
  /** Bags that one seller may bring. */
  readonly lots: number | null;
  readonly bagsPerSpecies: number | null;
  /** Fish in a bag: exactly so many where the auction says so. */
  readonly bagOf: Interval;
  readonly bagOfSaid: boolean;
  readonly sellerShare: Interval;
  readonly minimum: number | null;
  /** From bagging to unpacking. */
  readonly hours: number;
  readonly oxygen: boolean;
  /** Null where as many boxes may go as are needed. */
  readonly boxes: number | null;
  readonly boxLitres: number;
}
