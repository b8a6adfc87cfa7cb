/**
 * Counting fish: how many of a body are in which tank, and all together. Parts and total are intervals
 * of their own that tighten each other. Beside what is believed stands a ceiling: the most that sure
 * facts allow. A guess that proves wrong is corrected; what breaks a ceiling contradicts a sure fact.
 */
import type { Interval } from '../core/interval.ts';
import { NONE, clamp, isSure, less, meet, plus } from '../core/interval.ts';
import type { Place } from '../core/span.ts';
import type { Day } from '../core/day.ts';
import type { Heads, HowMany } from '../journal/event.ts';
import type { Problem } from '../core/problem.ts';
import { mostIn, whySoFew } from './ceilings.ts';
import { cannotCount, headsOf, howMany, isCounted, isRunning, isWhole, isWritten, isYoung, onlyTank } from './heads.ts';
import type { Body, Ceiling, Gone, Stock, Tally } from './stock.ts';

/** What counting needs of an event. */
export interface Moment {
  readonly day: Day;
  readonly minute: number | null;
  readonly place: Place;
}

interface Problems {
  readonly problems: Problem[];
}

/** What taking fish out changes besides them. */
interface Leaving extends Problems {
  readonly stock: Pick<Stock, 'stocked'>;
}

/** Notes tanks that fish came to or left. */
export function noteStocked({ stock }: Pick<Leaving, 'stock'>, ...tanks: readonly (string | null)[]): void {
  for (const tank of tanks) if (tank !== null) stock.stocked.add(tank);
}

/** A body with no fish yet. */
export function newBody(name: string, species: string | null): Body {
  return {
    name,
    species,
    parts: new Map(),
    total: NONE,
    ceilings: new Map(),
    ceiling: null,
    gone: [],
    sizes: [],
    counts: [],
    lines: [],
  };
}

/** Fish come in: declared, bought, born. A sure count sets a ceiling as well. */
export function putIn(_draft: Problems, body: Body, tank: string | null, count: Heads | Interval, event: Moment): void {
  const heads = 'total' in count ? headsOf(count, cannotCount(body)) : count;
  const sure = !isRunning(body) && ('total' in count ? isCounted(count) : isSure(count));
  const first = body.parts.size === 0 && body.total.high === 0;
  body.total = plus(body.total, heads);
  body.ceiling = raised(body.ceiling, first, sure, heads.low, event.place);
  if (tank === null) return;
  const fresh = (body.parts.get(tank)?.high ?? 0) === 0;
  body.parts.set(tank, plus(body.parts.get(tank) ?? NONE, heads));
  setCeiling(body, tank, raised(body.ceilings.get(tank) ?? null, fresh, sure, heads.low, event.place));
}

function raised(old: Ceiling | null, fresh: boolean, sure: boolean, by: number, place: Place): Ceiling | null {
  if (!sure || (old === null && !fresh)) return null;
  return { count: (fresh ? 0 : (old?.count ?? 0)) + by, place };
}

/**
 * Fish leave for good. Returns how many went, or null after pushing `more-out-than-in`: then nothing
 * has changed. More than was guessed to be there only shows that the guess was low.
 */
export function takeFish(
  draft: Leaving,
  event: Moment,
  body: Body,
  tank: string | null,
  count: HowMany,
  how: Gone['how'],
): Interval | null {
  const from = tank ?? onlyTank(body);
  const out = outOf(draft, event, body, from, count, 0);
  if (out === null) return null;
  if (from !== null) takePart(body, from, out, count);
  else if (isWhole(count)) body.parts.clear();
  else for (const [one, part] of body.parts) body.parts.set(one, lowered(part, out.high));
  const gone = isWhole(count) && body.parts.size === 0;
  body.total = gone ? NONE : less(body.total, out);
  body.ceiling = body.ceiling && sunk(body.ceiling, out, isWritten(count) && isSure(out));
  noteStocked(draft, from);
  body.gone.push({ how, count: out, whole: isWhole(count), day: event.day, tank: from, place: event.place });
  if (body.lines.at(-1) !== event.place) body.lines.push(event.place);
  if (isYoung(body) && body.parts.size === 0) body.ended ??= { how: 'gone', day: event.day, place: event.place };
  tighten(body);
  return out;
}

/**
 * Fish change tanks; the total stays. `keep` is how many surely stay behind (`rest stay`: at least
 * one). Null after pushing `more-out-than-in`.
 */
export function moveFish(
  draft: Problems,
  event: Moment,
  body: Body,
  from: string | null,
  to: string,
  count: HowMany,
  keep: 0 | 1 = 0,
): Interval | null {
  const source = from ?? onlyTank(body);
  const out = outOf(draft, event, body, source, count, keep);
  if (out === null) return null;
  const most = isSure(out) && count !== 'half' ? out.low : source === null ? null : mostIn(body, source);
  const fresh = (body.parts.get(to)?.high ?? 0) === 0;
  const old = fresh ? 0 : (body.ceilings.get(to)?.count ?? null);
  if (source !== null) {
    takePart(body, source, out, count);
    if (keep > 0) raisePart(body, source, keep);
  }
  body.parts.set(to, plus(body.parts.get(to) ?? NONE, out));
  setCeiling(body, to, most === null || old === null ? null : { count: most + old, place: event.place });
  body.total = { ...body.total, low: Math.max(body.total.low, Math.min(body.total.high, out.low + keep)) };
  tighten(body);
  return out;
}

/** How many go out: checked against the ceiling, with a guess raised that proves too low. */
function outOf(
  draft: Problems,
  event: Moment,
  body: Body,
  tank: string | null,
  count: HowMany,
  keep: number,
): Interval | null {
  const asked = howMany(body, tank, count);
  if (!isWritten(count)) return keep > 0 ? less(asked, { low: keep, likely: keep, high: keep }) : asked;
  const most = tank === null ? (body.ceiling?.count ?? null) : mostIn(body, tank);
  if (most !== null && asked.low + keep > most) {
    draft.problems.push(moreOutThanIn(event, body, tank, asked.low, most, keep));
    return null;
  }
  const believed = (tank === null ? body.total : (body.parts.get(tank) ?? NONE)).high;
  if (asked.low + keep > believed) draft.problems.push(guessTooLow(event, body, tank, asked.low + keep, believed));
  if (tank !== null) raisePart(body, tank, asked.low + keep);
  else if (body.total.high < asked.low) body.total = atLeast(asked.low, most);
  const limit = (tank === null ? body.total : (body.parts.get(tank) ?? NONE)).high - keep;
  return meet(asked, { low: 0, likely: null, high: Math.max(asked.low, limit) }) ?? asked;
}

/** A part turns out to hold at least so many: a guess that was too low grows, and the total with it. */
function raisePart(body: Body, tank: string, least: number): void {
  const part = body.parts.get(tank) ?? NONE;
  if (part.low >= least) return;
  const likely = part.likely === null ? null : Math.max(part.likely, least);
  body.parts.set(
    tank,
    least > part.high ? atLeast(least, mostIn(body, tank)) : { low: least, likely, high: part.high },
  );
  makeRoom(body, tank);
}

/**
 * A part surely holds more than the total leaves it. Where all of them were surely counted once, the
 * others must be fewer; else the total was a low guess.
 */
export function makeRoom(body: Body, tank: string): void {
  const sum = [...body.parts.values()].reduce((all, one) => all + one.low, 0);
  const over = sum - body.total.high;
  if (over <= 0) return;
  if (body.ceiling && body.ceiling.count < sum) lowerOthers(body, tank, over);
  else body.total = atLeast(sum, body.ceiling?.count ?? null);
}

/** A guess that proved too low: at least so many, as much above as a guess may be off, and `most` (null: no bound) at most. */
function atLeast(least: number, most: number | null): Interval {
  return { low: least, likely: least, high: Math.max(least, Math.min(Math.ceil(least * 1.25), most ?? Infinity)) };
}

function lowerOthers(body: Body, tank: string, over: number): void {
  let left = over;
  for (const [other, part] of body.parts) {
    if (other === tank) continue;
    const by = Math.min(left, part.low);
    left -= by;
    body.parts.set(other, { ...part, low: part.low - by, likely: part.likely === null ? null : part.likely - by });
  }
}

function takePart(body: Body, tank: string, out: Interval, count: HowMany): void {
  const part = body.parts.get(tank) ?? NONE;
  const rest = count === 'half' ? otherHalf(part) : less(part, out);
  if (rest.high <= 0 || isWhole(count)) body.parts.delete(tank);
  else body.parts.set(tank, rest);
  const ceiling = body.ceilings.get(tank);
  // "All" seldom is: a few that were left behind contradict nothing.
  if (isWhole(count)) body.ceilings.delete(tank);
  else if (ceiling) body.ceilings.set(tank, sunk(ceiling, out, isWritten(count) && isSure(out)));
}

function otherHalf(part: Interval): Interval {
  const likely = part.likely === null ? null : part.likely - Math.round(part.likely / 2);
  return { low: Math.floor(part.low / 2), likely, high: Math.ceil(part.high / 2) };
}

/** A ceiling after fish went: by the number where it is sure, else by one, if any surely went. */
function sunk(ceiling: Ceiling, out: Interval, sure: boolean): Ceiling {
  const by = sure ? out.low : Math.min(1, out.low);
  return { ...ceiling, count: Math.max(0, ceiling.count - by) };
}

function lowered(part: Interval, by: number): Interval {
  return { ...part, low: Math.max(0, part.low - by) };
}

function setCeiling(body: Body, tank: string, ceiling: Ceiling | null): void {
  if (ceiling === null) body.ceilings.delete(tank);
  else body.ceilings.set(tank, ceiling);
}

/** Lets total and parts bound each other: the total within the sum of the parts, each part within what the others leave. */
export function tighten(body: Tally): void {
  for (const [tank, part] of body.parts) if (part.high <= 0) body.parts.delete(tank);
  const parts = [...body.parts.values()];
  if (parts.length === 0) return;
  const sum = parts.reduce(plus, NONE);
  const wish = body.total.likely ?? sum.likely;
  const total = meet({ ...sum, likely: null }, { ...body.total, likely: null }) ?? sum;
  body.total = { ...total, likely: wish === null ? null : clamp(wish, total.low, total.high) };
  for (const [tank, part] of [...body.parts]) {
    const others = [...body.parts].filter(([other]) => other !== tank).map(([, one]) => one);
    const rest = others.reduce(plus, NONE);
    const low = Math.max(part.low, total.low - rest.high);
    const high = Math.min(part.high, total.high - rest.low);
    if (low > high) continue;
    body.parts.set(tank, { low, likely: part.likely === null ? null : clamp(part.likely, low, high), high });
  }
}

function guessTooLow(event: Moment, body: Body, tank: string | null, least: number, believed: number): Problem {
  const earlier = body.counts.at(-1)?.place ?? body.lines[0];
  return {
    kind: 'guess-corrected',
    weight: 'doubt',
    says: `at least ${String(least)} ${body.name}${tank === null ? '' : ` in ${tank}`}, where no more than ${String(believed)} were guessed: the guess was low`,
    write: 'nothing, if the number is right',
    at: event.place,
    also: earlier ? [earlier] : [],
  };
}

function moreOutThanIn(
  event: Moment,
  body: Body,
  tank: string | null,
  asked: number,
  most: number,
  keep: number,
): Problem {
  const there = tank === null ? 'there were' : `${tank} held`;
  return {
    kind: 'more-out-than-in',
    weight: 'stops',
    says: `${String(asked)} of ${body.name} went${keep > 0 ? ' and the rest stay' : ''}, but ${there} no more than ${String(most)}`,
    write: `the right number, or what was counted there before: ${tank ?? 'A1'}: ${body.name} counted ${String(asked + keep)}`,
    at: event.place,
    also: whySoFew(body, tank),
  };
}
