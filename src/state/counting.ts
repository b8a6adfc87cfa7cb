/**
 * A look that counts. A sure count inside what was believed narrows it; outside a guess it corrects the
 * guess, with a notice where the guess must have been too low; only a sure count above what sure facts
 * allow contradicts them. Fish die unseen, so a lower count shows no earlier line to be wrong.
 */
import type { Interval } from '../core/interval.ts';
import { NONE, UNKNOWN_COUNT, clamp, isSure, meet, plus } from '../core/interval.ts';
import type { Problem } from '../core/problem.ts';
import { countWords, rangeWords } from '../core/words.ts';
import type { EventOf } from '../journal/event.ts';
import type { Draft } from './draft.ts';
import type { Body, CountSeen, Tally } from './stock.ts';
import { cannotCount, headsOf, isCounted, isRunning, isYoung, onlyTank } from './heads.ts';
import { makeRoom, mostIn, tighten, whySoFew } from './tally.ts';
import type { Moment } from './tally.ts';
import { resolveFish } from './who.ts';

/** `counted 43`. */
export function counted(draft: Draft, event: EventOf<'counted'>): void {
  const found = resolveFish(draft, event, event.fish, event.heads);
  if (!found) return;
  const { body, tank } = found;
  const heads = headsOf(event.heads, cannotCount(body));
  observe(draft, body, tank, heads, isCounted(event.heads), event);
  body.lines.push(event.place);
}

/** No fish that is kept in such tanks is longer, mm; where the species says how long it grows, half as much again is too long (ours). */
const LONGEST = 1000;
const TOO_LONG = 1.5;

/** A length that no such fish can have: told, and not counted. */
function impossible(draft: Draft, body: Body, event: EventOf<'sized'>): Problem | null {
  const species = body.species === null ? undefined : draft.stock.species.get(body.species);
  const adult = species?.traits.adult ?? null;
  const most = adult === null ? LONGEST : TOO_LONG * adult.high;
  const wrong = event.sizes.values.find(({ low, high }) => high <= 0 || low > most);
  if (wrong === undefined) return null;
  const said = rangeWords(wrong);
  const { of } = event.sizes;
  const word = of === 'bulk' ? 'size' : of === 'sample' ? 'sizes' : of;
  const why =
    wrong.high <= 0
      ? 'a fish has some length'
      : adult === null
        ? 'none is so long'
        : `${body.species ?? 'they'} grow to ${rangeWords(adult)} mm`;
  return {
    kind: 'impossible-length',
    weight: 'stops',
    says: `${said} mm cannot be the length of ${body.name}: ${why}`,
    write: `the length in mm, or with its unit: ${body.name} ${word} ${String(wrong.low > 0 ? wrong.low / 10 : 22)} mm`,
    at: event.place,
    also: wrong.high > 0 && adult !== null && species ? [species.place] : [],
  };
}

/** `largest 30 mm`. A later line of the same moment replaces an earlier one of the same fish and kind of length. */
export function sized(draft: Draft, event: EventOf<'sized'>): void {
  const found = resolveFish(draft, event, event.fish);
  if (!found) return;
  const { body } = found;
  const { tank } = found;
  const wrong = impossible(draft, body, event);
  if (wrong !== null) {
    draft.problems.push(wrong);
    return;
  }
  for (const seen of body.sizes) {
    const same = seen.day === event.day && seen.minute === event.minute && seen.tank === tank;
    if (same && seen.sizes.of === event.sizes.of) seen.replaced = true;
  }
  const { day, minute, sizes, place } = event;
  body.sizes.push({ day, minute, tank, sizes, place, replaced: false });
  body.lines.push(place);
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
  if (again) restore(body, again.before);
  const seen = { day: event.day, minute: event.minute, tank: where, count, sure, place: event.place };
  const before = snapshot(body);
  const news = where === null ? ofAll(body, count, sure, event) : ofPart(body, where, count, sure, event);
  if (news) draft.problems.push(news);
  body.counts.push({ ...seen, before, total: body.total });
  if (isYoung(body) && body.ended?.how === 'gone' && body.total.high > 0) body.ended = null;
}

/** The last count, where this one is of the same moment and fish and nothing happened between: the later stands. */
function sameMoment(body: Body, tank: string | null, event: Moment): CountSeen | null {
  const last = body.counts.at(-1);
  const same = last?.day === event.day && last.minute === event.minute && last.tank === tank;
  const touched = body.lines.at(-1);
  return last && same && (touched === undefined || touched === last.place || touched.line === last.place.line)
    ? last
    : null;
}

function snapshot(body: Tally): Tally {
  const { parts, total, ceilings, ceiling } = body;
  return { parts: new Map(parts), total, ceilings: new Map(ceilings), ceiling };
}

function restore(body: Tally, before: Tally): void {
  body.parts = new Map(before.parts);
  body.total = before.total;
  body.ceilings = new Map(before.ceilings);
  body.ceiling = before.ceiling;
}

function ofPart(body: Body, tank: string, count: Interval, sure: boolean, event: Moment): Problem | null {
  if (isRunning(body)) {
    body.parts.set(tank, count);
    body.total = [...body.parts.values()].reduce(plus, NONE);
    return null;
  }
  const old = body.parts.get(tank) ?? UNKNOWN_COUNT;
  const most = mostIn(body, tank);
  const earlier = whySoFew(body, tank) ?? body.counts.at(-1)?.place ?? null;
  if (most !== null && count.low > most && !sure) return aboveSure(body, count, most, event, whySoFew(body, tank));
  const broken = sure && most !== null && count.low > most;
  const wasGuess = !isSure(old) && Number.isFinite(old.high);
  const next = sure ? count : guessOnGuess(old, count);
  const dropped = Math.max(0, old.low - next.high);
  body.parts.set(tank, next);
  if (broken) forgetCeilings(body);
  settleTotal(body, tank, next, dropped);
  if (sure) {
    body.ceilings.set(tank, { count: count.low, place: event.place });
    if (body.parts.size <= 1 && !movedApart(body)) body.ceiling = { count: count.low, place: event.place };
  }
  tighten(body);
  if (broken) return contradiction(body, tank, count.low, most, event, earlier);
  if (!sure || !wasGuess) return null;
  return count.low > old.high ? corrected(body, tank, old, count.low, event, earlier) : null;
}

function ofAll(body: Body, count: Interval, sure: boolean, event: Moment): Problem | null {
  const old = body.total;
  if (isRunning(body)) {
    body.total = count;
    return null;
  }
  const most = body.ceiling?.count ?? null;
  const earlier = body.ceiling?.place ?? body.counts.at(-1)?.place ?? null;
  if (most !== null && count.low > most && !sure) return aboveSure(body, count, most, event, earlier);
  const broken = sure && most !== null && count.low > most;
  body.total = sure ? count : guessOnGuess(old, count);
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
export function guessOnGuess(old: Interval, count: Interval): Interval {
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
 * the other parts may be that much larger; a part above the total shows that the total was guessed low.
 */
function settleTotal(body: Body, tank: string, part: Interval, dropped: number): void {
  const others = [...body.parts].filter(([other]) => other !== tank);
  if (others.length === 0 && !movedApart(body)) {
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

function movedApart(body: Body): boolean {
  return isYoung(body) && body.moved;
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
  earlier: CountSeen['place'] | null,
): Problem {
  const place = tank === null ? '' : ` in ${tank}`;
  return {
    kind: 'counts-contradict',
    weight: 'doubt',
    says: `${String(count)} ${body.name} counted${place}, but no more than ${String(most)} can be left of an earlier sure count: one of the two is wrong`,
    write: `the wrong one with «about», or the fish that came in between: ${tank ?? 'A1'}: ${body.name} counted about ${String(count)}`,
    at: event.place,
    also: earlier ? [earlier] : [],
  };
}

function aboveSure(
  body: Body,
  count: Interval,
  most: number,
  event: Moment,
  earlier: CountSeen['place'] | null,
): Problem {
  return {
    kind: 'guess-above-count',
    weight: 'doubt',
    says: `a guess of ${countWords(count)} ${body.name}, but ${String(most)} were surely counted: the count stands`,
    write: `a sure count, without «about»: ${body.name} counted ${String(most)}`,
    at: event.place,
    also: earlier ? [earlier] : [],
  };
}

function corrected(
  body: Body,
  tank: string | null,
  old: Interval,
  count: number,
  event: Moment,
  earlier: CountSeen['place'] | null,
): Problem {
  return {
    kind: 'guess-corrected',
    weight: 'doubt',
    says: `${String(count)} ${body.name} counted${tank === null ? '' : ` in ${tank}`}, where ${countWords(old)} were guessed: the count stands`,
    write: 'nothing, if the count is right',
    at: event.place,
    also: earlier && earlier !== event.place ? [earlier] : [],
  };
}
