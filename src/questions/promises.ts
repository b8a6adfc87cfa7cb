/**
 * What is promised to whom until when, what is wanted, and whether there surely are as many. Buyers'
 * names stand in fields of their own, so that an answer for other eyes can leave them out.
 */
import type { Because } from '../core/because.ts';
import { addDays, isoDay, type Day } from '../core/day.ts';
import { less, type Interval } from '../core/interval.ts';
import type { Measure } from '../core/quantity.ts';
import type { DeepReadonly } from '../core/readonly.ts';
import { linesOf, type LineRef } from '../core/span.ts';
import { countWords, dayWords, plural } from '../core/words.ts';
import { isBrood, type SeenBody } from '../state/bodies.ts';
import type { Room } from '../state/draft.ts';
import type { Reservation, Want } from '../state/sale.ts';
import { stands } from '../state/selling.ts';
import { rowId } from './id.ts';
import { sale, type Lot } from './sale.ts';
import { openWant } from './sale/wants.ts';
import { promisedOf, stockName, stockNamed, sureOf } from '../state/promised.ts';
import type { WhyRow } from './whyrow.ts';

export interface ReservedRow {
  readonly id: string;
  readonly stock: string;
  readonly tank: string | null;
  readonly count: Interval;
  readonly until: Day | null;
  readonly to: string | null;
  readonly deposit: number | null;
  readonly since: Day;
  /** Lapsed in the last fortnight: no longer counted. */
  readonly lapsed: boolean;
  /** Surely so many are there besides what is kept back, for this and every other promise of that stock. */
  readonly covered: boolean;
  /** What two fish of a pair may be called: only the journal makes them bonded. */
  readonly as: 'bonded pair' | 'not known to be bonded' | null;
  readonly because: Because;
  readonly lines: readonly LineRef[];
}

export interface WantedRow {
  readonly id: string;
  readonly species: string;
  readonly count: Interval;
  readonly size: Measure<'mm'> | null;
  readonly by: Day | null;
  readonly to: string | null;
  readonly matches: readonly Match[];
  readonly because: Because;
  readonly lines: readonly LineRef[];
}

/** A stock that would meet a want: now, or from a day on. */
export interface Match {
  readonly stock: string;
  readonly tank: string;
  readonly free: number;
  readonly ready: boolean;
  readonly from: Day | null;
}

export interface KeptRow {
  readonly stock: string;
  readonly count: Interval;
  readonly lines: readonly LineRef[];
}

/** More promised of a stock than are surely there. */
export interface OverRow {
  readonly id: string;
  readonly stock: string;
  readonly sure: number;
  readonly promised: number;
  readonly because: Because;
  readonly lines: readonly LineRef[];
}

export interface PromisesAnswer {
  readonly reserved: readonly ReservedRow[];
  readonly wanted: readonly WantedRow[];
  readonly kept: readonly KeptRow[];
  readonly over: readonly OverRow[];
}

/** Days for which a lapsed promise is still shown. */
const LAPSED_SHOWN_DAYS = 14;

export function promises(room: Room): PromisesAnswer {
  const wants = room.sale.wants.filter((want) => stands({ ...want, until: want.by }, room.on));
  const lots = wants.length === 0 ? [] : sale(room, { ahead: 0, auction: null, projected: false }).lots;
  const named = [...room.sale.reservations, ...room.sale.keptBack].map(
    ({ stock }) => stockNamed(room, stock)?.name ?? stock,
  );
  const stocks = [...new Set(named)];
  const over = stocks.flatMap((stock) => overRow(room, stock));
  const short = new Set(over.map(({ stock }) => stock));
  return {
    reserved: room.sale.reservations
      .filter((promise) => isShown(room, promise))
      .map((promise) => reservedRow(room, promise, short))
      .toSorted((a, b) => (a.until ?? Infinity) - (b.until ?? Infinity)),
    wanted: wants.map((want) => wantedRow(room, want, lots)),
    kept: stocks.flatMap((stock) => keptRow(room, stock)),
    over,
  };
}

export function promisesWhy(room: Room): readonly WhyRow[] {
  const { reserved, wanted, over } = promises(room);
  return [
    ...reserved.map((row) => ({ ...row, title: `${countWords(row.count)} ${row.stock} reserved` })),
    ...wanted.map((row) => ({ ...row, title: `${row.species} wanted` })),
    ...over.map((row) => ({ ...row, title: `${row.stock} promised too often` })),
  ].map(({ id, title, because, lines }) => ({ id, title, because, lines }));
}

function isShown(room: Room, promise: DeepReadonly<Reservation>): boolean {
  const until = promise.until === null ? null : addDays(promise.until, LAPSED_SHOWN_DAYS);
  return stands({ ...promise, until }, room.on);
}

function reservedRow(room: Room, promise: DeepReadonly<Reservation>, short: ReadonlySet<string>): ReservedRow {
  const body = stockNamed(room, promise.stock);
  const lapsed = !stands(promise, room.on);
  const name = body === null ? promise.stock : stockName(body);
  const lines = linesOf([promise.place, ...promise.metBy]);
  return {
    id: rowId(promise.stock, 'reserved', isoDay(promise.day), again(room.sale.reservations, promise, 'stock')),
    stock: name,
    tank: promise.tank,
    count: less(promise.count, promise.met),
    until: promise.until,
    to: promise.to,
    deposit: promise.deposit,
    since: promise.day,
    lapsed,
    covered: !short.has(name),
    as: pairWords(body),
    because: {
      rule: 'a reservation stands until its last day, or until as many went to that buyer; then its fish are free again',
      source: 'the journal',
      steps: [
        `${countWords(promise.count)} ${name} reserved on ${dayWords(promise.day, room.on)}${promise.until === null ? ', no last day' : `, until ${dayWords(promise.until, room.on)}`}`,
        ...(promise.met.high > 0 ? [`${countWords(promise.met)} went to that buyer since`] : []),
        ...(lapsed ? ['lapsed: those fish are free again'] : []),
      ],
      lines,
    },
    lines,
  };
}

function pairWords(body: SeenBody | null): ReservedRow['as'] {
  if (body === null || isBrood(body) || body.kind !== 'pair') return null;
  return body.bond === 'bonded' ? 'bonded pair' : 'not known to be bonded';
}

function wantedRow(room: Room, want: DeepReadonly<Want>, lots: readonly Lot[]): WantedRow {
  const matches = lots
    .filter((lot) => lot.species === want.species && lot.free > 0 && fitsSize(lot, want))
    .filter((lot) => lot.from !== null && (want.by === null || lot.from <= want.by))
    .map(({ stock, tank, free, ready, from }): Match => ({ stock, tank, free, ready, from }));
  const lines = linesOf([want.place, ...want.metBy]);
  const size = want.size === null ? '' : ` at ${String(want.size.low)} mm`;
  return {
    id: rowId(want.species, 'wanted', isoDay(want.day), again(room.sale.wants, want, 'species')),
    species: want.species,
    count: openWant(room, want),
    size: want.size,
    by: want.by,
    to: want.to,
    matches,
    because: {
      rule: 'a want is met by ready stock of its species and size on or before its day',
      source: 'the journal',
      steps: [
        `${countWords(want.count)} ${want.species}${size} wanted since ${dayWords(want.day, room.on)}${want.by === null ? '' : `, by ${dayWords(want.by, room.on)}`}`,
        ...matches.map(
          ({ stock, tank, free, from }) =>
            `${stock} in ${tank}: ${String(free)}, from ${dayWords(from ?? room.on, room.on)}`,
        ),
        ...(matches.length === 0 ? ['nothing in the room meets it in time'] : []),
      ],
      lines,
    },
    lines,
  };
}

/** Tells apart what the same day's lines say of the same fish: nothing for the first, then 2, 3 … */
function again<K extends 'stock' | 'species', T extends { readonly day: Day } & Readonly<Record<K, string>>>(
  all: readonly T[],
  one: T,
  key: K,
): string {
  const before = all.slice(0, all.indexOf(one)).filter((other) => other.day === one.day && other[key] === one[key]);
  return before.length === 0 ? '' : String(before.length + 1);
}

/** A lot that is not ready yet will have grown by then: only what is ready is measured. */
function fitsSize(lot: Lot, want: DeepReadonly<Want>): boolean {
  if (want.size === null || !lot.ready) return true;
  return lot.size !== null && (lot.size.likely ?? lot.size.low) >= want.size.low;
}

function keptRow(room: Room, stock: string): KeptRow[] {
  const body = stockNamed(room, stock);
  if (body === null || body.total.high <= 0) return [];
  const { kept, keptCount } = promisedOf(room, body, room.on);
  if (keptCount.high <= 0) return [];
  return [{ stock: stockName(body), count: keptCount, lines: linesOf(kept.map(({ place }) => place)) }];
}

function overRow(room: Room, stock: string): OverRow[] {
  const body = stockNamed(room, stock);
  if (body === null) return [];
  const { sure, kept, reserved, lines } = sureOf(room, body, room.on);
  if (reserved === 0 || kept + reserved <= sure) return [];
  const name = stockName(body);
  return [
    {
      id: rowId(stock, 'promised too often'),
      stock: name,
      sure,
      promised: kept + reserved,
      because: {
        rule: 'no more may be promised than are surely alive: the low number',
        source: 'the journal',
        steps: [
          `${countWords(body.total)} ${name}: ${plural(sure, 'fish', 'fish')} surely`,
          `${String(kept)} kept back and ${String(reserved)} reserved: ${String(kept + reserved)}`,
        ],
        lines,
      },
      lines,
    },
  ];
}
