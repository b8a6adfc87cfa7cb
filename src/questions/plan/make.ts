/**
 * Makes the plan: of every way to bag what is ready, those bags that together are worth most within the
 * auction's rules, the boxes and what can surely be promised.
 */
import { chooseBest } from '../../science/choose.ts';
import type { Day } from '../../core/day.ts';
import type { DeepReadonly } from '../../core/readonly.ts';
import { linesOf } from '../../core/span.ts';
import { listWords, plural } from '../../core/words.ts';
import { partIn, bodiesIn } from '../../state/bodies.ts';
import type { Room } from '../../state/draft.ts';
import type { Auction } from '../../state/sale.ts';
import { walkOrder } from '../../state/tanks.ts';
import { rowId } from '../id.ts';
import { sale, type SaleAnswer } from '../sale.ts';
import { boxed } from './boxed.ts';
import { candidatesOf, offeredPairs } from './candidates.ts';
import { weekValue, weeksToNext } from './glass.ts';
import { leftBehind } from './left.ts';
import { lotsOf } from './lots.ts';
import { limitsOf, offersOf, type Market, type Offer } from './offers.ts';
import type { PlanIncome, PlanLot, SalePlan } from './plan.ts';
import { rulesOf, type Trip } from './rules.ts';
import { objectiveOf, planBecause } from './words.ts';

export interface PlanOptions extends Trip {
  /** Its day is the day of the plan. */
  readonly auction: DeepReadonly<Auction> | null;
  /** The day, where no auction is named. */
  readonly on: Day;
  /** The room's day itself is still to come. */
  readonly projected: boolean;
  /** What a week of a whole tank is worth, in the room's currency. */
  readonly tankWeek?: number;
  /** Pairs that are offered besides what is for sale. */
  readonly offer?: readonly string[];
}

/** The plan of an auction or of a day; what it cannot prove to be the best it says. */
export function salePlan(room: Room, options: PlanOptions): SalePlan {
  const { auction, projected } = options;
  const answer = sale(room, {
    ahead: Math.max(0, options.on - room.on),
    auction,
    projected,
  });
  const rules = rulesOf(auction, options);
  const value = weekValue(room, options.tankWeek ?? null);
  const weeks = weeksToNext(room, answer.at);
  const market: Market = { rules, weeks: weeks.weeks, weekValue: value.amount };
  const { taken, unproven, refused, ways, limits } = chosen(room, options, answer, market);
  const packed = boxed(taken, rules.boxLitres);
  const lots = lotsOf(room, packed.taken, market, { auction: auction?.name ?? null, on: answer.at, weeks });
  const income = totalOf(lots);
  const tankWeeks = lots.reduce((sum, lot) => sum + lot.tankWeeks, 0);
  const found = {
    id: rowId(auction?.name ?? 'sale', 'plan'),
    auction: auction?.name ?? null,
    on: auction?.on ?? answer.at,
    past: answer.auction?.past ?? false,
    currency: room.settings.currency,
    rules,
    lots,
    boxes: packed.boxes,
    leftOut: [...refused, ...leftBehind(room, { plan: auction?.name ?? 'sale', answer, ways, taken, limits, rules })],
    income,
    tankWeeks,
    tankWeekValue: value,
    weeks,
    emptied: emptiedBy(room, lots),
    worth: income.likely + tankWeeks * value.amount,
    fish: lots.reduce((sum, { count }) => sum + count, 0),
    warnings: [...unproven, ...warningsOf(answer, lots, auction), ...wantsAtRisk(answer, lots)],
    lines: linesOf(auction === null ? [] : [auction.place]),
  };
  return { ...found, objective: objectiveOf(found), because: planBecause(found, room.on) };
}

/** What is bagged of all that may be, in walking order, with what was refused and every way that there was. */
function chosen(room: Room, options: PlanOptions, answer: SaleAnswer, market: Market) {
  const when = { at: answer.at, ahead: answer.ahead };
  const { pairs, refused } = offeredPairs(room, options.offer ?? [], answer, when);
  const candidates = inOrder(room, [...candidatesOf(room, answer), ...pairs]);
  const ways = candidates.map((of) => ({ of, offers: offersOf(room, of, market) }));
  const offers = byUrgency(ways.flatMap(({ offers: found }) => (typeof found === 'string' ? [] : found)));
  const limits = limitsOf(room, answer.at, candidates, market.rules);
  const { amounts, proven, short } = chooseBest(offers, limits);
  const all = offers.map((offer, index) => ({ tank: offer.of.tank, offer, bags: amounts[index] ?? 0 }));
  const unproven = proven ? [] : [`not every plan could be tried: another may be worth up to ${short.toFixed(2)} more`];
  return { taken: inOrder(room, all).filter(({ bags }) => bags > 0), unproven, refused, ways, limits };
}

/** In walking order, as they are caught; stocks of one tank stay as they were. */
function inOrder<T extends { readonly tank: string }>(room: Room, all: readonly T[]): readonly T[] {
  const order = walkOrder(room);
  return all.toSorted((a, b) => order.indexOf(a.tank) - order.indexOf(b.tank));
}

/** Of bags that are worth the same, the largest fish go first: they have waited longest. */
function byUrgency(offers: readonly Offer[]): readonly Offer[] {
  const length = ({ of }: Offer): number => of.size?.likely ?? of.length;
  return offers.toSorted((a, b) => length(b) - length(a));
}

function totalOf(lots: readonly PlanLot[]): PlanIncome {
  const lows = lots.map(({ income }) => income.low);
  return {
    low: lows.includes(null) ? null : lows.reduce<number>((sum, low) => sum + (low ?? 0), 0),
    likely: lots.reduce((sum, { income }) => sum + income.likely, 0),
  };
}

/** Tanks of which every fish that may be there goes. */
function emptiedBy(room: Room, lots: readonly PlanLot[]): readonly string[] {
  const tanks = [...new Set(lots.map(({ tank }) => tank))];
  return tanks.filter((tank) => {
    const going = lots.filter((lot) => lot.tank === tank).reduce((sum, { count }) => sum + count, 0);
    return bodiesIn(room, tank).reduce((sum, body) => sum + partIn(body, tank).high, 0) <= going;
  });
}

function warningsOf(
  answer: SaleAnswer,
  lots: readonly PlanLot[],
  auction: DeepReadonly<Auction> | null,
): readonly string[] {
  const bagOf = auction?.bagOf ?? null;
  const holds = answer.assumed.map(({ place, text }) => `${place} (${text})`);
  return [
    ...(holds.length > 0 ? [`taken as off hold by then, if no new sign comes: ${listWords(holds)}`] : []),
    ...(bagOf !== null && lots.some(({ bondedPair }) => bondedPair)
      ? [`a bonded pair goes as two: ask whether it may, where bags hold ${bagOf}`]
      : []),
    ...(auction !== null && auction.sellerShare === null
      ? [
          `what the auction keeps is not written, so nothing is taken off; jot  auction ${auction.name}: seller gets 70 %`,
        ]
      : []),
  ];
}

/** Wants that the plan leaves too few for: the keeper may rather keep those fish for who asked. */
function wantsAtRisk({ lots: stock }: SaleAnswer, lots: readonly PlanLot[]): readonly string[] {
  const species = [...new Set(lots.map((lot) => lot.species))];
  return species.flatMap((one) => {
    const same = stock.filter((lot) => lot.species === one && lot.ready);
    const wants = [...new Map(same.flatMap((lot) => lot.wants).map((want) => [want.line.line, want])).values()];
    const wanted = wants.reduce((sum, { count }) => sum + Math.ceil(count.low), 0);
    const going = lots.filter((lot) => lot.species === one).reduce((sum, { count }) => sum + count, 0);
    const left = same.reduce((sum, { free }) => sum + free, 0) - going;
    if (one === null || wanted === 0 || left >= wanted) return [];
    return [
      `${plural(wanted, one, one)} wanted, and the plan leaves ${left} to promise: reserve them first if they are to go there`,
    ];
  });
}
