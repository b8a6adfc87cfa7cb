/** Taking a count back that another one of the same moment replaces: of two, the later filed stands. */
import type { Day } from '../core/day.ts';
import { isSure } from '../core/interval.ts';
import type { Problem } from '../core/problem.ts';
import { sameClause } from '../core/span.ts';
import type { Draft } from './draft.ts';
import type { Body, Ceiling, CountSeen, Gone, Tally } from './stock.ts';
import type { Moment } from './tally.ts';

/**
 * What was known of the fish before a count. Needed only while the same day is folded, in which another count may
 * replace it: no part of the room.
 */
const stoodBefore = new WeakMap<
  Pick<Draft, 'problems'>,
  { readonly day: Day; readonly counts: Map<CountSeen, Before> }
>();

/** Keeps what was known before a count, for as long as another of the same day may replace it. */
export function keepBefore(draft: Pick<Draft, 'problems'>, count: CountSeen, before: Before): void {
  const kept = stoodBefore.get(draft);
  if (kept?.day === count.day) kept.counts.set(count, before);
  else stoodBefore.set(draft, { day: count.day, counts: new Map([[count, before]]) });
}

/** What stood before a count, and how many lines and losses had been told till then. */
export interface Before extends Tally {
  readonly told: number;
  readonly lost: number;
}

/** The count of the same moment and fish that stood till now: of two of them the later filed stands. */
export function sameMoment(body: Body, tank: string | null, { day, minute }: Moment): CountSeen | null {
  const same = (seen: CountSeen): boolean => seen.day === day && seen.minute === minute && seen.tank === tank;
  return body.counts.findLast((seen) => same(seen) && !seen.replaced) ?? null;
}

/** Whether anything else was told of these fish since that count: then it cannot be undone by itself. */
export function isTouched(body: Body, count: CountSeen): boolean {
  const last = body.lines.at(-1);
  const told = last !== undefined && !sameClause(last, count.place);
  return told || body.counts.at(-1) !== count;
}

/** Makes nothing of a count that another one replaces: what it narrowed, what it bounded, what it seemed to contradict. */
export function takeBack(draft: Pick<Draft, 'problems'>, body: Body, old: CountSeen, touched: boolean): void {
  old.replaced = true;
  const own = draft.problems.findIndex(({ kind, at }) => at === old.place && OF_COUNTS.has(kind));
  if (own >= 0) draft.problems.splice(own, 1);
  const before = stoodBefore.get(draft)?.counts.get(old);
  if (before === undefined) return;
  if (!touched) return restore(body, before);
  if (body.ceiling?.place === old.place) body.ceiling = raisedBack(body.ceiling, old, before.ceiling);
  for (const [tank, ceiling] of body.ceilings) {
    if (ceiling.place !== old.place) continue;
    const back = raisedBack(ceiling, old, before.ceilings.get(tank) ?? null);
    if (back === null) body.ceilings.delete(tank);
    else body.ceilings.set(tank, back);
  }
  returnForgotten(body, before);
}

/** Brings back the ceilings that a count broke and so made forgotten, where nothing but losses was told since. */
function returnForgotten(body: Body, before: Before): void {
  const lost = body.gone.slice(before.lost);
  const known = [...lost, ...body.counts].map(({ place }) => place);
  if (!body.lines.slice(before.told).every((place) => known.includes(place))) return;
  for (const [tank, ceiling] of before.ceilings) {
    if (body.ceilings.has(tank) || !body.parts.has(tank)) continue;
    body.ceilings.set(
      tank,
      lessLost(
        ceiling,
        lost.filter((one) => one.tank === tank),
      ),
    );
  }
  if (body.ceiling === null && before.ceiling !== null) body.ceiling = lessLost(before.ceiling, lost);
}

function lessLost(ceiling: Ceiling, lost: readonly Gone[]): Ceiling {
  const sure = lost.reduce((sum, { count }) => sum + (isSure(count) ? count.low : Math.min(1, count.low)), 0);
  return { ...ceiling, count: Math.max(0, ceiling.count - sure) };
}

const OF_COUNTS: ReadonlySet<Problem['kind']> = new Set(['counts-contradict', 'guess-above-count', 'guess-corrected']);

/** The ceiling that stood before a count, less what went since. */
function raisedBack(now: Ceiling, { count }: CountSeen, before: Ceiling | null): Ceiling | null {
  return before && { ...before, count: Math.max(0, before.count - (count.low - now.count)) };
}

/** What is known of the fish just now, to be kept with a count that may yet be taken back. */
export function knownOf(body: Body): Before {
  const { parts, total, ceilings, ceiling, lines, gone } = body;
  const [told, lost] = [lines.length, gone.length];
  return { parts: new Map(parts), total, ceilings: new Map(ceilings), ceiling, told, lost };
}

function restore(body: Tally, before: Tally): void {
  body.parts = new Map(before.parts);
  body.total = before.total;
  body.ceilings = new Map(before.ceilings);
  body.ceiling = before.ceiling;
}
