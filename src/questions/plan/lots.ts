/** The lots of a plan: the bags of one stock out of one tank, and why they go. */
import type { Day } from '../../core/day.ts';
import { linesOf } from '../../core/span.ts';
import { plural, rangeWords } from '../../core/words.ts';
import { speciesOf } from '../../state/bodies.ts';
import type { Room } from '../../state/draft.ts';
import { largestWords } from './offers.ts';
import { rowId } from '../id.ts';
import { originOf, type Candidate } from './candidates.ts';
import { mostIn, type Weeks } from './glass.ts';
import type { Market, Offer } from './offers.ts';
import type { PlanBag, PlanLot } from './plan.ts';

/** Bags of one size of one stock that go. */
export interface Taken {
  readonly offer: Offer;
  readonly bags: readonly PlanBag[];
}

export interface Setting {
  readonly auction: string | null;
  readonly on: Day;
  readonly weeks: Weeks;
}

export function lotsOf(room: Room, taken: readonly Taken[], market: Market, setting: Setting): readonly PlanLot[] {
  const stocks = [...new Set(taken.map(({ offer }) => offer.of))];
  return stocks.map((of) =>
    lotOf(
      room,
      of,
      taken.filter(({ offer }) => offer.of === of),
      market,
      setting,
    ),
  );
}

function lotOf(room: Room, of: Candidate, taken: readonly Taken[], market: Market, setting: Setting): PlanLot {
  const bags = taken.flatMap(({ bags: some }) => some);
  const many = (part: (offer: Offer) => number): number =>
    taken.reduce((sum, { offer, bags: some }) => sum + part(offer) * some.length, 0);
  const low = taken.some(({ offer }) => offer.income.low === null) ? null : many(({ income }) => income.low ?? 0);
  const income = { low, likely: many((offer) => offer.income.likely) };
  const { expected } = of;
  const lines = linesOf([...of.lines, ...expected.lines]);
  const count = many(({ bag }) => bag);
  const tankWeeks = many((offer) => offer.tankWeeks);
  return {
    id: rowId(setting.auction ?? 'sale', of.body.name, of.tank, 'plan'),
    stock: of.body.name,
    name: of.name,
    species: of.species,
    latin: speciesOf(room, of.body)?.traits.latin ?? null,
    tank: of.tank,
    count,
    size: of.size,
    sizeRead: of.sizeRead,
    bondedPair: of.bondedPair,
    ...originOf(room, of.body),
    price: expected.likely,
    priceFrom: expected.from,
    minimum: market.rules.minimum,
    bags,
    income,
    tankWeeks,
    fastDays: of.fastDays,
    cautions: of.cautions,
    because: {
      rule: 'of all bags that the rules, the boxes and the promises allow, those go that are worth most together: likely income after the split, and the glass that goes free at what a tank-week is worth',
      source:
        'the journal; bag loads are ours, far below published ones; water a third of the bag (common practice, no source)',
      steps: [
        `${of.free} can surely be promised out of ${of.tank}; ${plural(bags.length, 'bag')} of them go, ${count} fish`,
        ...taken.map(({ offer, bags: some }) => moneyStep(offer, some.length, market)),
        `each: ${expected.likely === null ? 'not known' : expected.likely.toFixed(2)}, ${expected.from}`,
        glassStep(room, of, count, tankWeeks, market, setting.weeks),
        ...taken.map(({ offer }) => bagStep(offer, market)),
        `no food for ${plural(of.fastDays, 'day')} before they are bagged`,
      ],
      lines,
    },
    lines,
  };
}

function moneyStep({ of, bag, income }: Offer, bags: number, { rules }: Market): string {
  const { likely, low, high } = rules.sellerShare;
  const share = likely ?? (low + high) / 2;
  if (of.expected.likely === null) return `${bags} × ${bag}: no price is known, so no income is counted`;
  const sum = `${bags} × ${bag} × ${of.expected.likely.toFixed(2)} × ${Math.round(share * 100)} % = ${(income.likely * bags).toFixed(2)}`;
  return income.low === null ? sum : `${sum}; at the least ${(income.low * bags).toFixed(2)}`;
}

function glassStep(
  room: Room,
  { tank }: Candidate,
  count: number,
  freed: number,
  market: Market,
  weeks: Weeks,
): string {
  const most = mostIn(room, tank);
  if (most === null) return `nobody knows how many are in ${tank}: no glass is counted as free`;
  return `${count} of at most ${most} fish in ${tank}, for ${weeks.weeks.toFixed(1)} weeks (${weeks.from}): ${freed.toFixed(1)} tank-weeks at ${market.weekValue.toFixed(2)} = ${(freed * market.weekValue).toFixed(2)}`;
}

function bagStep({ of, bag, packing }: Offer, { rules }: Market): string {
  const { packs, fishInPack, water, air, load } = packing;
  const mass = fishInPack * of.grams;
  const size = of.size === null ? `grown, ${of.length.toFixed(0)} mm` : `${rangeWords(of.size)} mm`;
  const together = of.alone === null ? '' : `; each alone: ${of.alone}`;
  return `bag of ${bag}: ${size}, ${of.grams.toFixed(2)} g each, ${mass.toFixed(1)} g in ${plural(packs, 'pack')} of ${fishInPack}${together}; ${mass.toFixed(1)} g ÷ ${load.toFixed(2)} g/L for ${rules.hours} h at ${of.celsius} C: ${water.toFixed(1)} L water, ${air.toFixed(1)} L ${rules.oxygen ? 'oxygen' : 'air'}, no bag above ${largestWords(rules)}`;
}
