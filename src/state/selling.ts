/** Fish promised, kept back, sold and given away. The stock's own arithmetic says what could leave. */
import { exactly, isSure, less, meet, plus, type Interval } from '../core/interval.ts';
import type { Place } from '../core/span.ts';
import type { EventOf } from '../journal/event.ts';
import type { Draft } from './draft.ts';
import { countOf, leaversOf, tankOfAll } from './leavers.ts';
import { livingMembers, membersGone } from './members.ts';
import type { KeptBack, Reservation, Sold, Want } from './sale.ts';
import { isBrood } from './bodies.ts';
import type { Fish, Group } from './stock.ts';
import { howMany } from './heads.ts';
import { swamUnsaid } from './swamunsaid.ts';
import { takeFish } from './tally.ts';
import { resolveFish } from './who.ts';
import type { Found } from './meant.ts';

/** Days after its last day on which a promise is still met by a sale to that buyer (ours). */
const LATE_DAYS = 14;

/** Notes how many of a stock stay. `kept back 0` lets the earlier ones go. */
export function keepBack(draft: Draft, event: EventOf<'kept back'>): void {
  const found = resolveFish(draft, event, event.fish, event.count);
  if (!found) return;
  const { body, tank } = found;
  const count = howMany(body, tank, event.count);
  const entry: KeptBack = { stock: body.name, tank, count, day: event.day, place: event.place };
  if (count.high === 0) {
    draft.sale.keptBack = draft.sale.keptBack.filter(
      (one) => one.stock !== body.name || (tank !== null && one.tank !== null && one.tank !== tank),
    );
    return;
  }
  draft.sale.keptBack.push(entry);
}

/** Notes a promise: it stands until its last day, or until as many went to that buyer. */
export function reserve(draft: Draft, event: EventOf<'reserved'>): void {
  const found = resolveFish(draft, event, event.fish, event.count);
  if (!found) return;
  const { until, to, deposit, day, place } = event;
  const count = howMany(found.body, found.tank, event.count);
  const stock = found.body.name;
  draft.sale.reservations.push({
    stock,
    tank: found.tank,
    count,
    until,
    to,
    deposit,
    day,
    place,
    met: exactly(0),
    metBy: [],
  });
}

/** Somebody wants fish of a species; a number that is left out is at least one. */
export function want(draft: Draft, event: EventOf<'wanted'>): void {
  const { species, size, by, to, day, place } = event;
  const count = typeof event.count === 'object' ? event.count.total : { low: 1, likely: null, high: Infinity };
  draft.sale.wants.push({ species, count, size, by, to, day, place, met: exactly(0), metBy: [] });
}

/** Fish that left for good: out of the stock, and off what was promised to that buyer. */
export function sell(draft: Draft, event: EventOf<'sold'> | EventOf<'gave away'>): void {
  const found = resolveFish(draft, event, event.fish, event.count);
  if (!found) return;
  const { body } = found;
  const fish = isBrood(body) ? [] : soldOf(draft, event, body, found);
  if (fish === null) return;
  const tank = tankOfAll(found.tank, fish);
  const count = takeFish(draft, event, body, tank, countOf(event.count, fish, found), event.kind);
  if (count === null) return;
  if (isBrood(body)) swamUnsaid(draft, body, event);
  else membersGone(body, body.total.high === 0 ? livingMembers<Fish>(body) : fish, event.kind, event);
  const { day, minute, place, to } = event;
  const sale: Sold = {
    stock: body.name,
    species: body.species,
    tank,
    count,
    price: event.kind === 'sold' ? event.price : null,
    to,
    auction: event.kind === 'sold' ? auctionOf(event) : null,
    gift: event.kind === 'gave away',
    day,
    minute,
    place,
  };
  draft.sale.sales.push(sale);
  settle(draft, sale, 'oneOf' in body ? [body.name, ...body.oneOf] : [body.name]);
}

function soldOf(
  draft: Draft,
  event: EventOf<'sold'> | EventOf<'gave away'>,
  group: Group,
  found: Found,
): Fish[] | null {
  const words = { says: `one of ${group.name} goes`, write: (one: string) => `${event.kind} ${one}` };
  return leaversOf(draft, event, group, found, words);
}

function auctionOf(event: EventOf<'sold'>): string | null {
  return event.auction ?? (event.subject.kind === 'auction' ? event.subject.auction : null);
}

/**
 * Takes a sale off the promises that it met: those to the same buyer, oldest first, even when they came
 * a few days late. Where neither the promise nor the sale names anybody, only an equal number can be the
 * promised one.
 */
function settle(draft: Draft, sale: Sold, stocks: readonly string[]): void {
  let left = sale.count;
  const promised = draft.sale.reservations.filter(({ stock }) => stocks.includes(stock));
  for (const promise of [...meantBy(promised, sale), ...promised]) {
    if (!isFor(promise, sale, left)) continue;
    left = meetPromise(promise, left, sale.place);
    if (sale.to !== null && isPlaceholder(sale.to)) sale.to = promise.to;
  }
  left = sale.count;
  for (const wish of draft.sale.wants) {
    if (wish.species !== sale.species || (wish.by !== null && wish.by < sale.day)) continue;
    if (sale.to !== null && sameName(wish.to, sale.to)) left = meetPromise(wish, left, sale.place);
  }
}

function meetPromise(promise: Reservation | Want, left: Interval, place: Place): Interval {
  const open = less(promise.count, promise.met);
  const used = meet(left, { ...open, low: 0 }) ?? open;
  if (used.high <= 0) return left;
  promise.met = plus(promise.met, used);
  promise.metBy.push(place);
  return less(left, used);
}

/** True while a promise still counts on a day: not lapsed, not met. */
export function stands(
  promise: { readonly until: number | null; readonly count: Interval; readonly met: Interval },
  day: number,
): boolean {
  return (promise.until === null || promise.until >= day) && less(promise.count, promise.met).high > 0;
}

function isFor(promise: Reservation, { to, day }: Sold, left: Interval): boolean {
  if (to !== null && (isPlaceholder(to) || sameName(promise.to, to))) {
    const until = promise.until === null ? null : promise.until + LATE_DAYS;
    return stands({ ...promise, until }, day);
  }
  if (to !== null || promise.to !== null || !stands(promise, day)) return false;
  const open = less(promise.count, promise.met);
  return isSure(open) && isSure(left) && open.low === left.low;
}

/**
 * The promise that a sale to `"…"` keeps first: the list offers such a line for each of them, of its tank and its number.
 * Of several that fit alike it is the oldest.
 */
function meantBy(promised: readonly Reservation[], sale: Sold): readonly Reservation[] {
  if (sale.to === null || !isPlaceholder(sale.to)) return [];
  const fits = ({ tank, count, met }: Reservation): number => {
    const open = less(count, met);
    const isSame = open.low === sale.count.low && open.high === sale.count.high;
    return (tank === sale.tank ? 2 : 0) + (isSame ? 1 : 0);
  };
  return promised
    .filter((promise) => isFor(promise, sale, sale.count))
    .toSorted((a, b) => fits(b) - fits(a))
    .slice(0, 1);
}

/** `to "…"`, as the daily list offers it: whoever they are reserved for. */
function isPlaceholder(to: string): boolean {
  return to.trim() === '…' || to.trim() === '...';
}

/** The same name, whatever its case. */
export function sameName(a: string | null, b: string): boolean {
  return a !== null && a.trim().toLowerCase() === b.trim().toLowerCase();
}
