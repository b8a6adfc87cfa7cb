/** Every way to bag a stock, each with what it is worth and what it takes of the auction's rules and of the boxes. */
import { middle } from '../../core/interval.ts';
import { FILLING, largestBag } from '../../science/boxes.ts';
import type { Choice } from '../../science/choose.ts';
import { packingFor, type Packing } from '../../science/transport.ts';
import type { Day } from '../../core/day.ts';
import type { Room } from '../../state/draft.ts';
import { sureOf } from '../../state/promised.ts';
import type { Candidate } from './candidates.ts';
import { mostIn } from './glass.ts';
import type { PlanRules } from './plan.ts';

/** Bags of one size of one stock. */
export interface Offer extends Choice {
  readonly of: Candidate;
  readonly bag: number;
  readonly packing: Packing;
  /** Of one bag, after the split. */
  readonly income: { readonly low: number | null; readonly likely: number };
  readonly tankWeeks: number;
}

export interface Market {
  readonly rules: PlanRules;
  readonly weeks: number;
  readonly weekValue: number;
}

/** Litres of the largest bag, water and air (ours). */
const LARGEST_BAG = 10;

/** Litres of the largest bag that these rules let go: a small box takes none of ten. */
function largestFor({ boxLitres }: PlanRules): number {
  return Math.min(LARGEST_BAG, largestBag(boxLitres));
}

/** `10 L`, or `5 L, the most that goes well into a box of 20 L`. */
export function largestWords(rules: PlanRules): string {
  const litres = largestFor(rules);
  const small = litres < LARGEST_BAG ? `, the most that goes well into a box of ${String(rules.boxLitres)} L` : '';
  return `${String(Number(litres.toFixed(2)))} L${small}`;
}

/** The offers of a stock; or why it cannot be bagged within the rules. */
export function offersOf(room: Room, of: Candidate, market: Market): readonly Offer[] | string {
  const { rules } = market;
  if (of.free < (of.bondedPair ? 2 : rules.bagOf.low)) return `${of.free} can go, no full bag of ${rules.bagOf.low}`;
  const offers = bagSizes(of, rules).map((bag) => offerOf(room, of, bag, market));
  const packed = offers.filter((offer) => offer !== null);
  if (packed.length === 0) return `one of ${of.grams.toFixed(0)} g is too heavy for a bag of ${largestWords(rules)}`;
  const dear = packed.filter((offer) => rules.minimum === null || grossOf(of, offer.bag) >= rules.minimum);
  const [first] = packed;
  if (dear.length > 0 || first === undefined) return dear;
  return `a bag of ${first.bag} would likely bring ${grossOf(of, first.bag).toFixed(2)}, under the minimum of ${(rules.minimum ?? 0).toFixed(2)}`;
}

/** Where no price is known nobody can say that a bag is under the minimum. */
function grossOf({ expected }: Candidate, bag: number): number {
  return expected.likely === null ? Infinity : expected.likely * bag;
}

/** Fewer than usual only where the auction's line leaves it open: then the largest bags come first. */
function bagSizes(of: Candidate, { bagOf }: PlanRules): readonly number[] {
  if (of.bondedPair) return [2];
  const sizes: number[] = [];
  for (let bag = Math.min(bagOf.high, of.free); bag >= bagOf.low; bag -= 1) sizes.push(bag);
  return sizes;
}

function offerOf(room: Room, of: Candidate, bag: number, { rules, weeks, weekValue }: Market): Offer | null {
  const trip = { ...rules, celsius: of.celsius };
  const packing = packingFor(bag, of.grams, of.alone !== null, trip, largestFor(rules));
  if (packing === null) return null;
  const most = mostIn(room, of.tank);
  const tankWeeks = most === null ? 0 : (bag / most) * weeks;
  const income = incomeOf(of, bag, rules);
  return {
    of,
    bag,
    packing,
    income,
    tankWeeks,
    worth: income.likely + tankWeeks * weekValue,
    most: Math.floor(of.free / bag),
    takes: new Map([
      [LIMIT.bags, 1],
      [LIMIT.species(of), 1],
      [LIMIT.stock(of), bag],
      [LIMIT.body(of), bag],
      [LIMIT.litres, packing.packs * (packing.water + packing.air)],
    ]),
  };
}

function incomeOf({ expected }: Candidate, bag: number, { minimum, sellerShare }: PlanRules): Offer['income'] {
  const gross = (expected.likely ?? 0) * bag;
  const least = minimum ?? (expected.least === null ? null : expected.least * bag);
  const low = least === null ? null : Math.min(least, gross) * sellerShare.low;
  return { low, likely: gross * middle(sellerShare) };
}

/** Names of the limits that bags take from. */
export const LIMIT = {
  bags: 'bags',
  litres: 'litres',
  species: ({ species, body }: Candidate): string => `species ${species ?? body.name}`,
  stock: ({ body, tank }: Candidate): string => `stock ${body.name} in ${tank}`,
  body: ({ body }: Candidate): string => `stock ${body.name}`,
};

/** What the rules, the boxes and the promises leave room for. */
export function limitsOf(
  room: Room,
  at: Day,
  all: readonly Candidate[],
  rules: PlanRules,
): ReadonlyMap<string, number> {
  const limits = new Map<string, number>();
  if (rules.lots !== null) limits.set(LIMIT.bags, rules.lots);
  if (rules.boxes !== null) limits.set(LIMIT.litres, rules.boxes * rules.boxLitres * FILLING);
  for (const of of all) {
    if (rules.bagsPerSpecies !== null) limits.set(LIMIT.species(of), rules.bagsPerSpecies);
    limits.set(LIMIT.stock(of), of.free);
    limits.set(LIMIT.body(of), of.bondedPair ? 2 : freeOf(room, of, at));
  }
  return limits;
}

/** Of a stock in all its tanks together: what is surely alive and promised to nobody. */
function freeOf(room: Room, { body }: Candidate, at: Day): number {
  const { sure, kept, reserved } = sureOf(room, body, at);
  return Math.max(0, sure - kept - reserved);
}
