/**
 * When a prefilter will spill, as a window that means what it says: eight times in ten the lip is
 * reached inside it. Every mix of a life (load-days from clean to lip), a shape and a starting level is
 * weighed by how well it explains the levels; what is usual in the room or for prefilters is the prior.
 * Errors have heavy tails (Student's t, four degrees of freedom), so that one wild reading bends nothing.
 */

import { Worked } from './worked.ts';

/** A level, mm above the chamber's floor, after so many load-days since the clean and so many flushes of the pipes. */
interface LoadedLevel {
  readonly load: number;
  readonly flushes: number;
  readonly level: number;
}

/** What is believed of a clean's life before its own levels are seen. */
export interface LifePrior {
  /** Median load-days from clean to lip, and the spread of their logarithm. */
  readonly median: number;
  readonly spread: number;
  /** How likely each of `SHAPES` is; sums to 1. */
  readonly shapes: readonly number[];
}

export interface LifeWindow {
  /** Load-days from clean to lip: one time in ten sooner, one in two, one in ten later. */
  readonly low: number;
  readonly likely: number;
  readonly high: number;
  /** How well each shape explains the levels, for learning; sums to 1. */
  readonly shapes: readonly number[];
}

/**
 * How much of the way to the lip the level has come when a share `t` of the life is over. Clogging is
 * convex: the pores that are left take all the flow. Powers of ours, and the laws of blocking filtration
 * at a constant flow (Hermia 1982, Trans. IChemE 60:183, from memory): a straight line where a cake
 * grows, an exponential where some pores close, (1 − c t)^−n where they narrow or shut (n 2 and 1).
 */
export const SHAPES: readonly ((t: number) => number)[] = [
  (t) => t,
  (t) => t ** 1.5,
  (t) => t * t,
  (t) => t ** 2.7,
  (t) => Math.expm1(1.5 * t) / Math.expm1(1.5),
  (t) => Math.expm1(2.5 * t) / Math.expm1(2.5),
  (t) => Math.expm1(4 * t) / Math.expm1(4),
  (t) => blocking(t, 0.5, 2),
  (t) => blocking(t, 0.8, 1),
];

function blocking(t: number, closed: number, power: number): number {
  return ((1 - closed * t) ** -power - 1) / ((1 - closed) ** -power - 1);
}

/** About six weeks between cleans, a week short of the lip; a third of them outside 33 to 72 days (ours; common practice, no source, for the six weeks). */
export const USUAL_LIFE: LifePrior = {
  median: 49,
  spread: 0.38,
  shapes: [0.02, 0.06, 0.14, 0.12, 0.06, 0.16, 0.14, 0.14, 0.16],
};

/** What an eye at a wet lip is good for, and how far flow and feeding let a level stray from any curve (ours): mm, and a share of the rise. */
const EYE = 1;
const STRAY = 0.03;
const OFFSETS = [-1.5, 0, 1.5];
/** Shares of the usual life that a flush of the pipes may bring at once. */
const FLUSHES = [0, 0.08, 0.18, 0.3];
const COARSE = 20;
const FINE = 24;
const TENTH = 0.1;

interface Weighed {
  readonly life: number;
  readonly weight: number;
}

/**
 * The life of a clean by its levels (oldest first, in load-days) and the prior; without levels the
 * prior alone. `spillsAt` in mm above the floor. Null where a level stands at the lip already. A rough one
 * is good enough to learn from, at half the reckoning.
 */
export function lifeWindow(
  levels: readonly LoadedLevel[],
  spillsAt: number,
  prior: LifePrior,
  rough = false,
): LifeWindow | null {
  const of = [rough ? 1 : 0, spillsAt, prior.median, prior.spread, ...prior.shapes];
  const inputs = [...of, ...levels.flatMap(({ load, flushes, level }) => [load, flushes, level])];
  return windows.of(inputs, () => workOut(levels, spillsAt, prior, rough));
}

const windows = new Worked(isWindowOrNone, 'asked');

function isWindowOrNone(value: unknown): value is LifeWindow | null {
  return value === null || (typeof value === 'object' && 'low' in value && 'shapes' in value);
}

function workOut(
  levels: readonly LoadedLevel[],
  spillsAt: number,
  prior: LifePrior,
  rough: boolean,
): LifeWindow | null {
  if (levels.some(({ level }) => level >= spillsAt)) return null;
  const shapes = SHAPES.map(() => 0);
  const middle = Math.log(prior.median);
  const reach = Math.max(4 * prior.spread, 1);
  const coarse = weigh(levels, spillsAt, prior, middle - reach, middle + reach, COARSE, rough ? shapes : null);
  const top = Math.max(...coarse.map(({ weight }) => weight));
  if (!(top > 0)) return null;
  const step = (2 * reach) / (COARSE - 1);
  const held = coarse.filter(({ weight }) => weight > top * 1e-4);
  const from = Math.log(held[0]?.life ?? prior.median) - step;
  const to = Math.log(held.at(-1)?.life ?? prior.median) + step;
  const fine = rough ? coarse : weigh(levels, spillsAt, prior, from, to, FINE, shapes);
  const total = shapes.reduce((sum, one) => sum + one, 0);
  return {
    low: quantile(fine, TENTH),
    likely: quantile(fine, 0.5),
    high: quantile(fine, 1 - TENTH),
    shapes: shapes.map((one) => one / total),
  };
}

/** Weights of lives evenly spaced in their logarithm; adds each shape's share to `shapes` where given. */
function weigh(
  levels: readonly LoadedLevel[],
  spillsAt: number,
  prior: LifePrior,
  from: number,
  to: number,
  count: number,
  shapes: number[] | null,
): Weighed[] {
  const flushed = levels.some(({ flushes }) => flushes > 0);
  const jumps = flushed ? FLUSHES.map((share) => share * prior.median) : [0];
  return Array.from({ length: count }, (_, at) => {
    const log = from + ((to - from) * at) / (count - 1);
    const life = Math.exp(log);
    const usual = Math.exp(-0.5 * ((log - Math.log(prior.median)) / prior.spread) ** 2);
    let weight = 0;
    SHAPES.forEach((shape, index) => {
      const share = prior.shapes[index] ?? 0;
      if (share === 0) return;
      let fits = 0;
      for (const jump of jumps) fits += fit(levels, spillsAt, life, shape, jump);
      const part = (usual * share * fits) / jumps.length;
      if (shapes !== null) shapes[index] = (shapes[index] ?? 0) + part;
      weight += part;
    });
    return { life, weight };
  });
}

/** How well one life, shape and jump explain the levels, over the levels at which the first may really have stood. */
function fit(
  levels: readonly LoadedLevel[],
  spillsAt: number,
  life: number,
  shape: (t: number) => number,
  jump: number,
): number {
  const [first] = levels;
  if (first === undefined) return 1;
  const ways = levels.map(({ load, flushes }) => shape(Math.min(1.02, (load + flushes * jump) / life)));
  const come = ways[0] ?? 0;
  if (come >= 1) return 0;
  let sum = 0;
  for (const offset of OFFSETS) {
    const start = (first.level + offset - spillsAt * come) / (1 - come);
    if (start < 0) continue;
    let weight = 1;
    for (let at = 0; at < levels.length; at += 1) {
      const rise = (spillsAt - start) * (ways[at] ?? 0);
      const variance = EYE ** 2 + (STRAY * rise) ** 2;
      const miss = (levels[at]?.level ?? 0) - start - rise;
      // Student's t with four degrees of freedom: (1 + miss² / 4 s²)^(−5/2) / s.
      const odds = 1 + (miss * miss) / (4 * variance);
      weight /= odds * odds * Math.sqrt(odds * variance);
    }
    sum += weight;
  }
  return sum;
}

/** The life that a share of the weight lies under, between the middles of the cells. */
function quantile(lives: readonly Weighed[], share: number): number {
  const total = lives.reduce((sum, { weight }) => sum + weight, 0);
  let below = 0;
  for (let at = 0; at < lives.length; at += 1) {
    const { life, weight } = lives[at] ?? { life: NaN, weight: 0 };
    if (below + weight >= share * total && weight > 0) {
      const step = Math.log((lives[1]?.life ?? life) / (lives[0]?.life ?? life));
      return life * Math.exp(((share * total - below) / weight - 0.5) * step);
    }
    below += weight;
  }
  return lives.at(-1)?.life ?? NaN;
}

/**
 * What a room's earlier lives teach: their median, with a spread between the usual one and their own
 * (three lives of the room weigh as much as the default). Shapes that explained them are believed more.
 */
export function learnedLife(lives: readonly LifeWindow[], usual: LifePrior = USUAL_LIFE): LifePrior {
  const logs = lives.map(({ likely }) => Math.log(likely)).sort((a, b) => a - b);
  const middle = medianOf(logs);
  if (middle === null) return usual;
  const own = logs.reduce((sum, log) => sum + (log - middle) ** 2, 0);
  // How far single cleans of one room lie apart: believed to be 15 % until they have shown it (ours).
  const between = (OWN_WEIGHT * OWN_SPREAD ** 2 + own) / (OWN_WEIGHT + logs.length);
  const spread = Math.min(usual.spread, Math.sqrt(between * (1 + Math.PI / 2 / logs.length)));
  const raw = usual.shapes.map((share, index) =>
    lives.reduce((product, { shapes }) => product * Math.sqrt(((shapes[index] ?? 0) + FLOOR) / (share + FLOOR)), share),
  );
  const total = raw.reduce((sum, one) => sum + one, 0);
  return { median: Math.exp(middle), spread, shapes: raw.map((one) => one / total) };
}

const OWN_SPREAD = 0.15;
const OWN_WEIGHT = 3;
const FLOOR = 0.02;

function medianOf(sorted: readonly number[]): number | null {
  const half = (sorted.length - 1) / 2;
  const low = sorted[Math.floor(half)];
  const high = sorted[Math.ceil(half)];
  return low === undefined || high === undefined ? null : (low + high) / 2;
}
