/**
 * What can be sold on a day: each stock in each tank with the number that can surely be promised, or
 * with everything that stands in its way. Only the low number is ever promised.
 */
import type { Because } from '../core/because.ts';
import { addDays, type Day } from '../core/day.ts';
import type { Interval } from '../core/interval.ts';
import type { Measure, Price } from '../core/quantity.ts';
import type { DeepReadonly } from '../core/readonly.ts';
import { linesOf, type LineRef } from '../core/span.ts';
import { countWords, dayWords, listWords, plural } from '../core/words.ts';
import { bodiesIn, isBrood, partIn, speciesOf, type SeenBody } from '../state/bodies.ts';
import type { Room } from '../state/draft.ts';
import type { Auction } from '../state/sale.ts';
import { likelyCounts } from './counts.ts';
import { rowId } from './id.ts';
import { saleableFrom, sizeOn } from './saleable.ts';
import { blockersOf, latest, sizedOf, type Blocker, type When } from './sale/blockers.ts';
import { promisedOf, stockName, type Promised } from '../state/promised.ts';
import { tanksWithFishToo } from './retired.ts';
import { cautionsOf } from './sale/cautions.ts';
import { countMore } from './sale/leftover.ts';
import { reasonOf } from './sale/reason.ts';
import { takenHere, type DraftLot, type Taken } from './sale/taken.ts';
import { wantsFor, type WantRow } from './sale/wants.ts';
import { openHolds } from './holds/reach.ts';
import type { WhyRow } from './whyrow.ts';

export interface Lot {
  readonly id: string;
  /** The stock's own name, as journal lines take it. */
  readonly name: string;
  /** As it may be called: a mix of broods is "one or the other". */
  readonly stock: string;
  readonly species: string | null;
  readonly tank: string;
  readonly count: Interval;
  /** mm of the typical fish on that day. */
  readonly size: Measure<'mm'> | null;
  readonly sizeRead: boolean;
  readonly price: DeepReadonly<Price> | null;
  /** Of these, how many surely have their sale size or age, and which share of them may, 0 to 1. */
  readonly grown: number;
  readonly share: Interval | null;
  /** How many can surely be promised once nothing stands in the way: of those grown, if some are. */
  readonly free: number;
  readonly keptBack: number;
  readonly reserved: number;
  readonly ready: boolean;
  readonly blockers: readonly Blocker[];
  /** The day from which nothing stands in the way any more, as far as can be told. */
  readonly from: Day | null;
  readonly wants: readonly WantRow[];
  readonly bags: number | null;
  /** What to mind before any go, each a sentence without its stop. */
  readonly cautions: readonly string[];
  /** Too few of those promised are likely still alive: the count is too old. */
  readonly stale: boolean;
  readonly because: Because;
  readonly lines: readonly LineRef[];
}

/** A stock where counting would let more be promised. */
export interface CountMore {
  readonly stock: string;
  readonly tank: string;
  readonly sure: number;
  /** Not more than one fish is surely there: nobody knows whether it is a stock at all. */
  readonly unknown: boolean;
  readonly perhaps: number | null;
  readonly write: string;
}

export interface SaleAnswer {
  readonly at: Day;
  readonly ahead: boolean;
  readonly auction: {
    readonly name: string;
    readonly on: Day;
    readonly past: boolean;
    readonly bagOf: number | null;
  } | null;
  /** ISO 4217 as the journal set it, or null. */
  readonly currency: string | null;
  /** Holds that are taken to have ended by then: true only if no new sign comes. */
  readonly assumed: readonly { readonly place: string; readonly text: string; readonly clear: Day }[];
  readonly lots: readonly Lot[];
  readonly count: readonly CountMore[];
}

export interface SaleOptions {
  /** Days beyond the room's day to project to. */
  readonly ahead: number;
  /** The auction that it is for: its day is the day asked about. */
  readonly auction: DeepReadonly<Auction> | null;
  /** The room's day itself is still to come. */
  readonly projected: boolean;
}

/** What may go on a day, and of what may not every reason why not. */
export function sale(room: Room, { ahead, auction, projected }: SaleOptions): SaleAnswer {
  const on = auction?.on ?? addDays(room.on, ahead);
  const past = on < room.on;
  const at = past ? room.on : on;
  const when: When = { at, ahead: projected || at > room.on };
  const drafts = tanksWithFishToo(room).flatMap((tank) =>
    bodiesIn(room, tank)
      .filter((body) => isStock(body))
      .map((body) => draftLot(room, body, tank, when)),
  );
  const lots = drafts.map((draft) => finish(room, draft, drafts, when, past ? null : auction));
  return {
    at,
    ahead: when.ahead,
    auction:
      auction === null || auction.on === null
        ? null
        : { name: auction.name, on: auction.on, past, bagOf: auction.bagOf },
    currency: room.settings.currency,
    assumed: when.ahead ? clearing(room, at) : [],
    lots: lots.toSorted(byUse),
    count: lots.flatMap((lot) => countMore(lot)),
  };
}

function clearing(room: Room, at: Day): SaleAnswer['assumed'] {
  return openHolds(room)
    .filter(({ clear }) => clear <= at)
    .map(({ hold, clear }) => ({ place: hold.where, text: hold.text, clear }));
}

export function saleWhy(room: Room): readonly WhyRow[] {
  return sale(room, { ahead: 0, auction: null, projected: false }).lots.map((lot) => ({
    id: lot.id,
    title: `${lot.stock} in ${lot.tank}: ${lot.ready ? 'ready' : 'not ready'} for sale`,
    because: lot.because,
    lines: lot.lines,
  }));
}

/** Young, grow-outs and colonies; pairs, trios and harems breed and are not stock. */
function isStock(body: SeenBody): boolean {
  return isBrood(body) || body.kind === 'group' || body.kind === 'colony';
}

function draftLot(room: Room, body: SeenBody, tank: string, when: When): DraftLot {
  const ripe = saleableFrom(room, body, when.at, tank);
  const count = partIn(body, tank);
  const promised = promisedOf(room, body, when.at);
  const blockers = [...blockersOf(room, body, tank, ripe, when), ...wholeColony(body, promised)];
  const grown = sizedOf(count, ripe, when.at);
  const sized = grown > 0 ? grown : Math.floor(count.low);
  return { body, tank, count, grown, sized, ripe, blockers, promised };
}

/** A colony breeds on: only what is above the number kept back is stock. */
function wholeColony(body: SeenBody, { kept }: Promised): Blocker[] {
  if (isBrood(body) || body.kind !== 'colony' || kept.length > 0) return [];
  const why = `say how many must stay: kept back 12 ${body.name}`;
  return [{ kind: 'colony', why, until: null, lines: linesOf([body.declared]) }];
}

function finish(
  room: Room,
  draft: DraftLot,
  all: readonly DraftLot[],
  { at }: When,
  auction: DeepReadonly<Auction> | null,
): Lot {
  const { body, tank, count, sized, grown, ripe, promised } = draft;
  const size = sizeOn(room, body, at, tank);
  const taken = takenHere(draft, all);
  const free = Math.max(0, sized - taken.kept - taken.reserved);
  const blockers = [...draft.blockers, ...(free > 0 ? [] : [noneFree(draft, taken)])];
  const ready = blockers.length === 0;
  const species = speciesOf(room, body);
  const stale = ready ? staleCount(room, draft) : null;
  const bagOf = auction?.bagOf ?? null;
  const lines = linesOf([
    ...(ripe?.because.lines ?? []),
    ...body.counts.filter((seen) => seen.tank === tank).map(({ place }) => place),
    ...promised.kept.map(({ place }) => place),
    ...promised.reserved.map(({ place }) => place),
    ...blockers.flatMap((blocker) => blocker.lines),
  ]);
  return {
    id: rowId(body.name, tank, 'sale'),
    name: body.name,
    stock: stockName(body),
    species: body.species,
    tank,
    count,
    size,
    grown,
    share: ripe?.share ?? null,
    sizeRead: body.sizes.length > 0,
    price: (isBrood(body) ? body.price : null) ?? species?.traits.price ?? null,
    free,
    keptBack: taken.kept,
    reserved: taken.reserved,
    ready,
    blockers,
    from: ready ? at : latest(blockers, at),
    wants: wantsFor(room, body.species, size, at),
    bags: bagOf === null || !ready ? null : Math.floor(free / bagOf),
    cautions: cautionsOf(room, draft, at, stale),
    stale: stale !== null,
    because: reasonOf(room, draft, { at, taken, free, blockers, lines }),
    lines,
  };
}

function noneFree(draft: DraftLot, taken: Taken): Blocker {
  const { count, tank, body } = draft;
  const spoken = taken.kept + taken.reserved;
  const unsure = count.low < 1 || count.high > Math.max(count.low, spoken);
  const why = spoken > 0 ? spokenWords(draft, taken) : `not one surely there: ${countWords(count)}`;
  return {
    kind: 'count',
    why: unsure ? `${why}; count them` : why,
    until: null,
    lines: linesOf(placesOfCount(body, tank)),
  };
}

/** `11 fish surely there, 27 reserved`; in several tanks, what is promised of all of them: each fish is taken once. */
function spokenWords({ count, sized }: DraftLot, { kept, reserved, short }: Taken): string {
  const sure = Math.floor(count.low);
  const here = `${plural(sure, 'fish', 'fish')} surely there`;
  const big = sized < sure ? [`${String(sized)} of them big enough`] : [];
  const promised = (of: { readonly kept: number; readonly reserved: number }): string[] => [
    ...(of.kept > 0 ? [`${String(of.kept)} kept back`] : []),
    ...(of.reserved > 0 ? [`${String(of.reserved)} reserved`] : []),
  ];
  if (short === null || short.there === sized)
    return [here, ...big, ...promised(short ?? { kept, reserved })].join(', ');
  return `${[here, ...big].join(', ')}; ${listWords(promised(short))}, of ${String(short.there)} in all its tanks`;
}

function placesOfCount(body: SeenBody, tank: string): readonly LineRef[] {
  const counted = body.counts.filter((seen) => seen.tank === tank || seen.tank === null).map(({ place }) => place);
  return counted.length > 0 ? counted.slice(-1) : body.lines.slice(-1);
}

/** Fewer than this share of the number promised still alive, four times of five: the count is too old to promise on. */
const STALE_SHARE = 0.9;

/** Nobody sees every fish that dies: what was counted long ago is to be counted again before it is promised. */
function staleCount(room: Room, { body, tank, count }: DraftLot): string | null {
  if (!isBrood(body)) return null;
  const likely = likelyCounts(room, body).parts.get(tank) ?? null;
  if (likely === null || likely.low >= STALE_SHARE * count.low) return null;
  // Eggs that were counted are no fish yet.
  const swam = body.swam ?? body.released;
  const last = body.counts.findLast(({ sure, day }) => sure && day >= (swam?.low ?? day))?.day ?? null;
  const when = last === null ? 'never counted' : `last counted ${dayWords(last, room.on)}`;
  return `${when}, and some die unseen: likely ${countWords(likely)} there; count before you promise`;
}

/** Ready ones first, the most first; then by the day from which they are. */
function byUse(a: Lot, b: Lot): number {
  if (a.ready !== b.ready) return a.ready ? -1 : 1;
  if (a.ready) return b.free - a.free;
  return (a.from ?? Infinity) - (b.from ?? Infinity);
}
