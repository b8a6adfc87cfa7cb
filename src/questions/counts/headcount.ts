/**
 * A brood's number followed line by line as a belief: a guess weighs by its factor, a sure count settles
 * it, fish that went are taken off, and between lines some go unseen as in broods of that kind. Seven
 * kinds of brood are followed side by side, from those that hardly lose any to those that lose many; what
 * was counted says which kind it is likely to be.
 */
import type { Day } from '../../core/day.ts';
import { toDay } from '../../core/day.ts';
import type { Interval } from '../../core/interval.ts';
import { isSure } from '../../core/interval.ts';
import type { Belief } from '../../science/headcount.ts';
import {
  atLeast,
  below,
  counted,
  fit,
  guessed,
  spreadOf,
  sum,
  thinned,
  together,
  without,
} from '../../science/headcount.ts';
import { KINDS, livesOn } from '../../science/losses.ts';
import type { Entry } from './ledger.ts';
import { middleOf } from './ledger.ts';
import type { Stretch } from './phases.ts';

/** One belief for each kind of brood; null while nobody said any number. */
type Beliefs = readonly Belief[] | null;

export interface Headcount {
  readonly weights: readonly number[];
  readonly total: Beliefs;
  readonly parts: ReadonlyMap<string, Beliefs>;
}

const NOBODY_COUNTED: Headcount = { weights: KINDS.map(({ weight }) => weight), total: null, parts: new Map() };

/** Follows a brood to a day. `stretches` tells what share goes unseen a day, by when. */
export function follow(
  entries: readonly Entry[],
  stretches: (from: Day, to: Day) => readonly Stretch[],
  on: Day,
): Headcount {
  let state = NOBODY_COUNTED;
  let day = entries[0]?.day ?? on;
  for (const entry of entries) {
    state = told(age(state, stretches(day, entry.day)), entry);
    day = entry.day;
  }
  return age(state, stretches(day, toDay(Math.max(day, on))));
}

/** Days go by: some of each part are lost unseen. */
function age(state: Headcount, stretches: readonly Stretch[]): Headcount {
  if (stretches.length === 0) return state;
  const thin = (beliefs: Beliefs): Beliefs =>
    beliefs?.map((belief, index) =>
      stretches.reduce((left, { loss, days, own }) => {
        const times = KINDS[index]?.times ?? 1;
        return thinned(left, own ? { mean: Math.exp(-loss * times * days), variance: 0 } : livesOn(loss, days));
      }, belief),
    ) ?? null;
  return { ...state, total: thin(state.total), parts: mapped(state.parts, thin) };
}

function told(state: Headcount, entry: Entry): Headcount {
  switch (entry.kind) {
    case 'count':
      return settle(afterCount(state, entry.of.tank, entry.of.count));
    case 'gone':
      return settle(afterGone(state, entry.of));
    case 'move':
      return settle(afterMove(state, entry.of));
  }
}

function afterCount(state: Headcount, tank: string | null, count: Interval): Headcount {
  const alone = tank === null || state.parts.size === 0 || (state.parts.size === 1 && state.parts.has(tank));
  const before = alone ? state.total : (state.parts.get(tank) ?? null);
  const weights = weighed(state.weights, before, count);
  const after = seen(before, count);
  if (!alone) return { weights, total: state.total, parts: withPart(state.parts, tank, after) };
  const only = tank ?? (state.parts.size === 1 ? ([...state.parts.keys()][0] ?? null) : null);
  return { weights, total: after, parts: only === null ? state.parts : withPart(state.parts, only, after) };
}

/** What a look adds to a belief. An open number (`40+`, `some`) only cuts off below. */
function seen(before: Beliefs, count: Interval): Beliefs {
  if (count.high === 0 || isSure(count)) return KINDS.map(() => counted(count.low));
  if (!Number.isFinite(count.high)) return before?.map((belief) => atLeast(belief, count.low)) ?? null;
  const guess = guessOf(count);
  return before === null ? KINDS.map(() => guess) : before.map((belief) => together(belief, guess));
}

/** A number with bounds holds the truth four times of five. */
function guessOf(count: Interval): Belief {
  if (isSure(count)) return counted(count.low);
  const low = Math.max(0.5, count.low);
  const high = Number.isFinite(count.high) ? count.high : Math.max(2 * middleOf(count), low + 1);
  return guessed(count.likely ?? Math.sqrt(low * high), spreadOf(low, high));
}

function weighed(weights: readonly number[], before: Beliefs, count: Interval): readonly number[] {
  if (before === null || !Number.isFinite(count.high) || count.high === 0) return weights;
  const spread = isSure(count) ? 0 : spreadOf(Math.max(0.5, count.low), count.high);
  const fits = before.map((belief, index) => (weights[index] ?? 0) * fit(belief, middleOf(count), spread));
  const all = fits.reduce((total, one) => total + one, 0);
  return all > 0 ? fits.map((one) => one / all) : weights;
}

function afterGone(state: Headcount, gone: Extract<Entry, { kind: 'gone' }>['of']): Headcount {
  const { tank, count, whole } = gone;
  const part = tank === null ? null : (state.parts.get(tank) ?? null);
  if (whole) {
    if (tank === null || state.parts.size <= 1)
      return { ...state, total: KINDS.map(() => counted(0)), parts: new Map() };
    const parts = new Map([...state.parts].filter(([other]) => other !== tank));
    const total = sumOf(parts) ?? (part === null ? state.total : less(state.total, part));
    return { ...state, total, parts };
  }
  const out = KINDS.map(() => guessOf(count));
  const parts = tank === null || part === null ? state.parts : withPart(state.parts, tank, less(part, out));
  return { ...state, total: less(state.total, out), parts };
}

function afterMove(state: Headcount, move: Extract<Entry, { kind: 'move' }>['of']): Headcount {
  const from = move.from ?? (state.parts.size === 1 ? ([...state.parts.keys()][0] ?? null) : null);
  const source = from === null ? null : (state.parts.get(from) ?? (state.parts.size === 0 ? state.total : null));
  const out: Beliefs =
    move.as === 'all'
      ? source
      : move.as === 'half'
        ? (source?.map((belief) => thinned(belief, { mean: 0.5, variance: 0 })) ?? null)
        : KINDS.map(() => guessOf(move.count));
  const there = state.parts.get(move.to);
  const parts = new Map(state.parts);
  if (from !== null && move.as === 'all') parts.delete(from);
  else if (from !== null) parts.set(from, move.as === 'half' ? out : less(source, out));
  parts.set(move.to, there === undefined ? out : out === null || there === null ? null : added(there, out));
  const enough = state.total?.map((belief, index) => atLeast(belief, out?.[index]?.mean ?? 0)) ?? null;
  return { ...state, total: move.as === 'number' ? enough : state.total, parts };
}

/** All of them together are no less sure than the parts that make them up. */
function settle(state: Headcount): Headcount {
  const parts = sumOf(state.parts);
  if (parts === null) return state;
  const { total } = state;
  const better = total === null || spreadIn(parts) < spreadIn(total);
  return { ...state, total: better ? parts : total };
}

function spreadIn(beliefs: readonly Belief[]): number {
  return beliefs.reduce((all, { variance }) => all + variance, 0);
}

function sumOf(parts: ReadonlyMap<string, Beliefs>): readonly Belief[] | null {
  let all: readonly Belief[] | null = null;
  for (const part of parts.values()) {
    if (part === null) return null;
    all = all === null ? part : added(all, part);
  }
  return all;
}

function added(a: readonly Belief[], b: readonly Belief[]): readonly Belief[] {
  return a.map((belief, index) => sum(belief, b[index] ?? counted(0)));
}

function less(from: Beliefs, out: Beliefs): Beliefs {
  return from?.map((belief, index) => without(belief, out?.[index] ?? counted(0))) ?? null;
}

function withPart(parts: Headcount['parts'], tank: string, beliefs: Beliefs): Headcount['parts'] {
  return new Map([...parts, [tank, beliefs]]);
}

function mapped(parts: Headcount['parts'], change: (beliefs: Beliefs) => Beliefs): Headcount['parts'] {
  return new Map([...parts].map(([tank, beliefs]) => [tank, change(beliefs)]));
}

/** The middle of a belief and the bounds that hold the truth so often, whole fish, no more than `most`. */
export function windowOf(weights: readonly number[], beliefs: Beliefs, most: number, level: number): Interval | null {
  if (beliefs === null) return null;
  const at = (share: number): number => Math.min(most, Math.round(quantile(weights, beliefs, share)));
  return { low: at((1 - level) / 2), likely: at(0.5), high: at((1 + level) / 2) };
}

function quantile(weights: readonly number[], beliefs: readonly Belief[], share: number): number {
  let low = 0;
  let high = Math.max(1, ...beliefs.map(({ mean, variance }) => mean + 8 * Math.sqrt(variance)));
  for (let step = 0; step < 40; step++) {
    const middle = (low + high) / 2;
    const under = beliefs.reduce((all, belief, index) => all + (weights[index] ?? 0) * below(belief, middle), 0);
    if (under < share) low = middle;
    else high = middle;
  }
  return high;
}
