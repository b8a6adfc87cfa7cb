/** How many of a stock are already spoken for: kept back, and reserved on a day. */
import type { Day } from '../core/day.ts';
import { less, plus, NONE, type Interval } from '../core/interval.ts';
import type { DeepReadonly } from '../core/readonly.ts';
import { linesOf, type LineRef } from '../core/span.ts';
import type { Room } from './draft.ts';
import { bodyNamed, type SeenBody } from './bodies.ts';
import type { KeptBack, Reservation } from './sale.ts';
import { stands } from './selling.ts';

export interface Promised {
  readonly kept: readonly DeepReadonly<KeptBack>[];
  readonly reserved: readonly DeepReadonly<Reservation>[];
  /** Fish still kept back: those that went into a group of their own since are no longer here. */
  readonly keptCount: Interval;
  readonly reservedCount: Interval;
}

/** What of a stock is kept back or reserved on a day: neither is for sale. */
export function promisedOf(room: Room, body: SeenBody, on: Day): Promised {
  const names = namesOf(room, body);
  const kept = room.sale.keptBack.filter(({ stock }) => names.includes(stock));
  const reserved = room.sale.reservations.filter((one) => names.includes(one.stock) && stands(one, on));
  const first = kept[0];
  const joined = body.gone
    .filter((gone) => gone.how === 'joined' && first !== undefined && gone.day >= first.day)
    .reduce<Interval>((sum, { count }) => plus(sum, count), NONE);
  return {
    kept,
    reserved,
    keptCount: less(sum(kept.map(({ count }) => count)), joined),
    reservedCount: sum(reserved.map(({ count, met }) => less(count, met))),
  };
}

/** The names under which promises bind a stock: its own, and those of stocks that went into it whole. */
function namesOf(room: Room, body: SeenBody): readonly string[] {
  const parts = 'oneOf' in body ? body.oneOf : [];
  return [body.name, ...parts.filter((name) => room.stock.broods.get(name)?.ended?.how === 'mixed')];
}

/** The stock that a name in an older line means now: the mix, where its fish went into one. */
export function stockNamed(room: Room, name: string): SeenBody | null {
  const body = bodyNamed(room, name);
  if (body === null || !('ended' in body) || body.ended?.how !== 'mixed') return body;
  return [...room.stock.living.values()].find((mix) => mix.ended === null && mix.oneOf.includes(name)) ?? body;
}

/** Fish of a stock that are surely alive, and how many of them are spoken for on a day. */
export function sureOf(
  room: Room,
  body: SeenBody,
  on: Day,
): { readonly sure: number; readonly kept: number; readonly reserved: number; readonly lines: readonly LineRef[] } {
  const { kept, reserved, keptCount, reservedCount } = promisedOf(room, body, on);
  return {
    sure: Math.floor(body.total.low),
    kept: mostOf(keptCount),
    reserved: mostOf(reservedCount),
    lines: linesOf([
      ...kept.map(({ place }) => place),
      ...reserved.map(({ place }) => place),
      ...body.counts.slice(-1).map(({ place }) => place),
    ]),
  };
}

/** The number to count with where more must not be promised: the high one, or the likely one of an open guess. */
export function mostOf(count: Interval): number {
  return Number.isFinite(count.high) ? count.high : (count.likely ?? count.low);
}

/** How a stock is called in an answer: a mix stays "one or the other". */
export function stockName(body: SeenBody): string {
  return 'oneOf' in body && body.oneOf.length > 0 ? body.oneOf.join(' or ') : body.name;
}

function sum(counts: readonly Interval[]): Interval {
  return counts.reduce((all, one) => plus(all, one), NONE);
}
