/**
 * What is promised to whom until when, what is wanted, and whether there surely are as many. Buyers'
 * names stand in fields of their own, so that an answer for other eyes can leave them out.
 */
import type { Because } from '../core/because.ts';
import { addDays, isoDay, type Day } from '../core/day.ts';
import { less, type Interval } from '../core/interval.ts';
import type { DeepReadonly } from '../core/readonly.ts';
import { linesOf, type LineRef } from '../core/span.ts';
import { countWords, dayWords } from '../core/words.ts';
import { isBrood, tanksOf, type SeenBody } from '../state/bodies.ts';
import type { Room } from '../state/draft.ts';
import type { Reservation } from '../state/sale.ts';
import { stands } from '../state/selling.ts';
import { oncePerRoom } from './holds/once.ts';
import { rowId } from './id.ts';
import { again } from './promises/again.ts';
import { overRows, promisedStocks, type OverRow } from './promises/over.ts';
import { wantedRows, type WantedRow } from './promises/wanted.ts';
import { promisedOf, stockName, stockNamed } from '../state/promised.ts';
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

export interface KeptRow {
  readonly stock: string;
  readonly count: Interval;
  readonly lines: readonly LineRef[];
}

/** Deposits that buyers paid for what is still promised, and for what lapsed in the last fortnight. */
export interface Deposits {
  readonly held: number;
  readonly lapsed: number;
}

export interface PromisesAnswer {
  readonly reserved: readonly ReservedRow[];
  readonly wanted: readonly WantedRow[];
  readonly kept: readonly KeptRow[];
  readonly over: readonly OverRow[];
  readonly deposits: Deposits;
  readonly currency: string | null;
}

export interface PromisesOptions {
  /** False: wants are matched with what is ready now alone. */
  readonly forecast: boolean;
}

/** Days for which a lapsed promise is still shown. */
const LAPSED_SHOWN_DAYS = 14;

/** Worked out once a room: the daily list and every `why` ask for it. */
export function promises(room: Room, { forecast }: PromisesOptions = { forecast: true }): PromisesAnswer {
  return forecast ? withForecast(room) : withoutForecast(room);
}

const withForecast = oncePerRoom((room) => askedOf(room, true));
const withoutForecast = oncePerRoom((room) => askedOf(room, false));

function askedOf(room: Room, forecast: boolean): PromisesAnswer {
  const stocks = promisedStocks(room);
  const over = overRows(room);
  const short = new Set(over.map(({ stock }) => stock));
  const reserved = room.sale.reservations
    .filter((promise) => isShown(room, promise))
    .map((promise) => reservedRow(room, promise, short))
    .toSorted((a, b) => (a.until ?? Infinity) - (b.until ?? Infinity));
  return {
    reserved,
    wanted: wantedRows(room, forecast),
    kept: stocks.flatMap((stock) => keptRow(room, stock)),
    over,
    deposits: { held: paid(reserved, false), lapsed: paid(reserved, true) },
    currency: room.settings.currency,
  };
}

function paid(rows: readonly ReservedRow[], lapsed: boolean): number {
  return rows.reduce((sum, row) => sum + (row.lapsed === lapsed ? (row.deposit ?? 0) : 0), 0);
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
    tank: tankNow(body, promise.tank),
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
        ...(promise.deposit === null ? [] : [`${promise.deposit.toFixed(2)} paid as a deposit`]),
        ...(lapsed ? ['lapsed: those fish are free again'] : []),
      ],
      lines,
    },
    lines,
  };
}

/** Where they are to be fetched: the tank that the line named while some are there, else the only one that they are in. */
function tankNow(body: SeenBody | null, named: string | null): string | null {
  if (body === null || named === null || body.parts.has(named)) return named;
  const [only, ...others] = tanksOf(body);
  return others.length === 0 ? (only ?? named) : null;
}

function pairWords(body: SeenBody | null): ReservedRow['as'] {
  if (body === null || isBrood(body) || body.kind !== 'pair') return null;
  return body.bond === 'bonded' ? 'bonded pair' : 'not known to be bonded';
}

function keptRow(room: Room, stock: string): KeptRow[] {
  const body = stockNamed(room, stock);
  if (body === null || body.total.high <= 0) return [];
  const { kept, keptCount } = promisedOf(room, body, room.on);
  if (keptCount.high <= 0) return [];
  return [{ stock: stockName(body), count: keptCount, lines: linesOf(kept.map(({ place }) => place)) }];
}
