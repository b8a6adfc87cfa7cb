/** What a plan has to obey: the auction's line, then what the keeper says, then what is usual. */
import { DAY_HOURS } from '../../science/transport.ts';
import type { Interval } from '../../core/interval.ts';
import { exactly } from '../../core/interval.ts';
import type { DeepReadonly } from '../../core/readonly.ts';
import type { Auction } from '../../state/sale.ts';
import type { PlanRules } from './plan.ts';

/** What a keeper can say beside the journal. */
export interface Trip {
  /** From bagging to unpacking. */
  readonly hours?: number;
  readonly oxygen?: boolean;
  readonly boxes?: number;
  readonly boxLitres?: number;
}

/** Unsexed young in a bag, where the auction says nothing: common practice, no source. */
const USUAL_BAG: Interval = { low: 4, likely: 6, high: 6 };
/** Litres of a box for bags (ours). */
export const USUAL_BOX_LITRES = 40;

/** Litres of the smallest box that a bag goes into, and of the largest that anybody carries (ours). */
export const BOX_LITRES = { least: 5, most: 500 };

/** The smaller where the line leaves it open. */
function boxOf(auction: DeepReadonly<Auction> | null): number {
  const litres = auction?.boxLitres?.low ?? USUAL_BOX_LITRES;
  return Math.min(BOX_LITRES.most, Math.max(BOX_LITRES.least, litres));
}

/** What a plan has to obey, each rule from the nearest that says it. */
export function rulesOf(auction: DeepReadonly<Auction> | null, trip: Trip): PlanRules {
  const travel = (auction?.hours?.high ?? 0) / 60;
  // A bag of none is no rule that anybody could follow.
  const bagOf = (auction?.bagOf ?? 0) < 1 ? null : (auction?.bagOf ?? null);
  return {
    lots: auction?.lots ?? null,
    bagsPerSpecies: auction?.bagsPerSpecies ?? null,
    bagOf: bagOf === null ? USUAL_BAG : exactly(bagOf),
    bagOfSaid: bagOf !== null,
    sellerShare: auction?.sellerShare ?? exactly(1),
    minimum: auction?.minimum ?? null,
    hours: trip.hours ?? Math.max(DAY_HOURS, travel),
    oxygen: trip.oxygen ?? false,
    boxes: trip.boxes ?? auction?.boxes ?? null,
    boxLitres: trip.boxLitres ?? boxOf(auction),
  };
}
