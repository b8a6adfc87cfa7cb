/**
 * A look that counts. A sure count inside what was believed narrows it; outside a guess it corrects the
 * guess, with a notice where the guess must have been too low; only a sure count above what sure facts
 * allow contradicts them. Fish die unseen, so a lower count shows no earlier line to be wrong.
 */
import type { Interval } from '../core/interval.ts';
import { NONE, UNKNOWN_COUNT, clamp, isSure, meet, plus } from '../core/interval.ts';
import type { Problem } from '../core/problem.ts';
import type { Place } from '../core/span.ts';
import { countWords } from '../core/words.ts';
import type { EventOf } from '../journal/event.ts';
import type { Draft } from './draft.ts';
import type { Body, CountSeen } from './stock.ts';
import { mostIn, whySoFew } from './ceilings.ts';
import { cannotCount, headsOf, isCounted, isRunning, isYoung, onlyTank } from './heads.ts';
import { isTouched, keepBefore, knownOf, sameMoment, takeBack } from './recount.ts';
import { sexesOf } from './sexes.ts';
import { swamUnsaid } from './swamunsaid.ts';
import { makeRoom, tighten } from './tally.ts';
import type { Moment } from './tally.ts';
import { resolveFish } from './who.ts';

/** `counted 43`. */
export function counted(draft: Draft, event: EventOf<'counted'>): void {
  const found = resolveFish(draft, event, event.fish, event.heads);
  if (!found) return;
  const { body, tank } = found;
  if (event.heads.total.low > 0) swamUnsaid(draft, body, event);
  if (!isYoung(body) && (tank ?? onlyTank(body)) === onlyTank(body)) body.sexes = sexesOf(event.heads) ?? body.sexes;
  const heads = headsOf(event.heads, cannotCount(body));
  observe(draft, body, tank, heads, isCounted(event.heads), event);
  body.lines.push(event.place);
}

/** Takes in a count of the fish of a body in a tank (null: wherever they are, all of them). */
export function observe(
  draft: Pick<Draft, 'problems'>,
  body: Body,
  tank: string | null,
  count: Interval,
  sure: boolean,
  event: Moment,
): void {
  const where = tank ?? onlyTank(body);
  const again = sameMoment(body, where, event);
  const touched = again !== null && isTouched(body, again);
  if (again) takeBack(draft, body, again, touched);
  const before = knownOf(body);
  const stands = sure || touched;
  const news =
    where === null ? ofAll(body, count, sure, event, stands) : ofPart(body, where, count, sure, event, stands);
  if (news) draft.problems.push(news);
  const { day, minute, place } = event;
  const counted: CountSeen = { day, minute, tank: where, count, sure, place, replaced: false, total: body.total };
  keepBefore(draft, counted, before);
  body.counts.push(counted);
  if (isYoung(body) && body.ended?.how === 'gone' && body.total.high > 0) body.ended = null;
}

/** `stands`: nothing that was believed before narrows this count. */
function ofPart(
  body: Body,
  tank: string,
  count: Interval,
  sure: boolean,
  event: Moment,
  stands: boolean,
): Problem | null {
  if (isRunning(body)) {
    body.parts.set(tank, count);
    body.total = [...body.parts.values()].reduce(plus, NONE);
    return null;
  }
  const old = body.parts.get(tank) ?? UNKNOWN_COUNT;
  const most = mostIn(body, tank);
  const why = whySoFew(body, tank);
  const earlier = why.length > 0 ? why : toldLast(body);
  if (most !== null && count.low > most && !sure) return aboveSure(body, count, most, event, why);
  const broken = sure && most !== null && count.low > most;
  const wasGuess = !isSure(old) && Number.isFinite(old.high);
  const next = stands ? count : guessOnGuess(old, count);
  const dropped = Math.max(0, old.low - next.high);
  body.parts.set(tank, next);
  if (broken) forgetCeilings(body);
  if (isSure(old)) lessLikely(body, dropped);
  settleTotal(body, tank, next, isSure(old) ? 0 : dropped);
  if (sure) {
    body.ceilings.set(tank, { count: count.low, place: event.place });
    if (body.parts.size <= 1 && !movedApart(body)) body.ceiling = { count: count.low, place: event.place };
  }
  tighten(body);
  if (broken) return contradiction(body, tank, count.low, most, event, earlier);
  if (!sure || !wasGuess) return null;
  return count.low > old.high ? corrected(body, tank, old, count.low, event, earlier) : null;
}

function ofAll(body: Body, count: Interval, sure: boolean, event: Moment, stands: boolean): Problem | null {
  const old = body.total;
  if (isRunning(body)) {
    body.total = count;
    return null;
  }
  const most = body.ceiling?.count ?? null;
  const why = whySoFew(body, null);
  const earlier = why.length > 0 ? why : body.counts.slice(-1).map(({ place }) => place);
  if (most !== null && count.low > most && !sure) return aboveSure(body, count, most, event, earlier);
  const broken = sure && most !== null && count.low > most;
  body.total = stands ? count : guessOnGuess(old, count);
  for (const [tank, part] of body.parts) body.parts.set(tank, { ...part, low: Math.min(part.low, count.high) });
  const sums = [...body.parts.values()];
  const highs = sums.reduce((all, part) => all + part.high, 0);
  if (highs < body.total.low)
    for (const [tank, part] of body.parts) body.parts.set(tank, { ...part, high: body.total.high });
  const lows = sums.reduce((all, part) => all + part.low, 0);
  if (lows > body.total.high) for (const [tank, part] of body.parts) body.parts.set(tank, { ...part, low: 0 });
  if (sure) body.ceiling = { count: count.low, place: event.place };
  if (broken) body.ceilings.clear();
  tighten(body);
  if (broken) return contradiction(body, null, count.low, most, event, earlier);
  const guess = !isSure(old) && Number.isFinite(old.high) && old.high > 0;
  return sure && guess && count.low > old.high ? corrected(body, null, old, count.low, event, earlier) : null;
}

/**
 * A guess after a guess. Where the new one holds the old likely number they agree, and both bound it;
 * else fish went unseen and the new one tells how few. Numbers never rise, unless the old guess was low.
 */
function guessOnGuess(old: Interval, count: Interval): Interval {
  if (count.low > old.high) return count;
  const agrees = old.likely !== null && old.likely >= count.low && old.likely <= count.high;
  const low = agrees ? Math.max(old.low, count.low) : count.low;
  const high = Math.min(old.high, count.high);
  if (agrees && low <= high) return meet(old, count) ?? count;
  return {
    low: Math.min(low, high),
    likely: count.likely === null ? null : clamp(count.likely, Math.min(low, high), high),
    high,
  };
}

/**
 * After a part changed. What was guessed to have been moved here and was not may still be elsewhere, so
 * the other parts may be that much larger; a part above the total shows that the total was guessed low:
 * where it is the only one, what is believed of it is believed of all.
 */
function settleTotal(body: Body, tank: string, part: Interval, dropped: number): void {
  const others = [...body.parts].filter(([other]) => other !== tank);
  if (others.length === 0 && (!movedApart(body) || part.low > body.total.high)) {
    body.total = part;
    return;
  }
  for (const [other, count] of others) {
    const sure = isSure(count);
    if (!sure && dropped > 0) body.parts.set(other, { ...count, high: count.high + dropped });
  }
  makeRoom(body, tank);
  const parts = [...body.parts.values()];
  const low = parts.reduce((sum, count) => sum + count.low, 0);
  const high = parts.reduce((sum, count) => sum + count.high, 0);
  const { total } = body;
  const likely = total.likely === null ? null : clamp(total.likely, low, Math.min(total.high, high));
  body.total = { low, likely, high: Math.max(low, Math.min(total.high, high)) };
}

/** Fish that surely were in a tank and are not: they died there unseen, and are in no other. */
function lessLikely(body: Body, dropped: number): void {
  const { total } = body;
  body.total = { ...total, likely: total.likely === null ? null : Math.max(0, total.likely - dropped) };
}

function movedApart(body: Body): boolean {
  return isYoung(body) && body.moved;
}

/** The last count of them, else the last line about them. */
function toldLast(body: Body): readonly Place[] {
  const last = body.counts.at(-1)?.place ?? body.lines.at(-1);
  return last === undefined ? [] : [last];
}

function forgetCeilings(body: Body): void {
  body.ceilings.clear();
  body.ceiling = null;
}

function contradiction(
  body: Body,
  tank: string | null,
  count: number,
  most: number,
  event: Moment,
  earlier: readonly Place[],
): Problem {
  const place = tank === null ? '' : ` in ${tank}`;
  return {
    kind: 'counts-contradict',
    weight: 'doubt',
    says: `${String(count)} ${body.name} counted${place}, but no more than ${String(most)} can be left of an earlier sure count: one of the two is wrong`,
    write: `the wrong one with «about», or the fish that came in between: ${tank ?? 'A1'}: ${body.name} counted about ${String(count)}`,
    at: event.place,
    also: earlier,
  };
}

function aboveSure(body: Body, count: Interval, most: number, event: Moment, earlier: readonly Place[]): Problem {
  return {
    kind: 'guess-above-count',
    weight: 'doubt',
    says: `a guess of ${countWords(count)} ${body.name}, but ${String(most)} were surely counted: the count stands`,
    write: `a sure count, without «about»: ${body.name} counted ${String(most)}`,
    at: event.place,
    also: earlier,
  };
}

function corrected(
  body: Body,
  tank: string | null,
  old: Interval,
  count: number,
  event: Moment,
  earlier: readonly Place[],
): Problem {
  return {
    kind: 'guess-corrected',
    weight: 'doubt',
    says: `${String(count)} ${body.name} counted${tank === null ? '' : ` in ${tank}`}, where ${countWords(old)} were guessed: the count stands`,
    write: 'nothing, if the count is right',
    at: event.place,
    also: earlier.filter((place) => place !== event.place),
  };
}
