/**
 * Growth of a brood: mean total length by age from laying (birth), as a band. Young grow fast and slow down
 * towards grown size (von Bertalanffy 1938: L = C − (C − L₀)·exp(−k·t)). What is usual, or what the room's
 * own broods did, is the prior; every reading counts by its certainty (Bayes' rule, on a grid of paces), so
 * that one bad reading moves little and none leaves the prior alone. Within a brood lengths spread by about
 * 12 %, and an eye errs by about 1.5 mm (both ours: defaults).
 */
import type { Interval } from '../core/interval.ts';
import { normalAt, normalBelow } from '../core/stats.ts';
import { quantiles } from './spread.ts';

/** Spread of lengths within a brood, as a share of the mean. */
export const BROOD_CV = 0.12;
/** Standard deviation of a length judged by eye, mm. */
export const EYE_ERROR = 1.5;
/** Two-sided 80 %: every band here. */
const Z80 = 1.2816;
/** "First" and "all" of a brood whose number nobody knows: the 5th and 95th of a hundred. */
const Z95 = 1.6449;
/** No curve is true to better than this share of a length (ours). */
const BEND = 0.03;
/** Young of both sexes stop short of the length that the species is said to reach: shares of it (ours). */
const GROWN_SHARE = { low: 0.7, likely: 0.9, high: 1.1 };
/** Middle and ends of a normal distribution that stand for it: three-point Gauss–Hermite. */
const NORMAL_POINTS = [
  { z: -Math.sqrt(3), weight: 1 / 6 },
  { z: 0, weight: 2 / 3 },
  { z: Math.sqrt(3), weight: 1 / 6 },
] as const;
const OLDEST = 4 * 365;

/** What is usual for such fish: where growth starts, and when a length is reached (80 % of broods). Days and mm. */
export interface GrowthPrior {
  readonly startAge: Interval;
  readonly startSize: Interval;
  readonly laterAge: Interval;
  readonly laterSize: number;
  /** Length that the species reaches. */
  readonly grown: number;
  /** Days by which they may have been laid (born) before or after the day that ages count from. */
  readonly bornOff?: Interval;
}

/** What a line says of the mean length at an age: mm and its standard error, age in days. */
export interface MeanReading {
  readonly age: number;
  readonly mean: number;
  readonly error: number;
}

/** One curve that may be true: days are after the start. */
interface Draw {
  readonly weight: number;
  readonly start: number;
  readonly size: number;
  readonly grown: number;
  readonly k: number;
}

/** All curves that may be true, each with its chance. */
export interface GrowthLine {
  /** mm a day from the start to the later size: 80 % limits. */
  readonly rate: Interval;
  /** Logarithm of the days from the start to the later size, for a room that learns. */
  readonly pace: { readonly mean: number; readonly sd: number };
  readonly draws: readonly Draw[];
  /** Mean and standard error at an age. */
  at(age: number): { readonly mean: number; readonly error: number };
}

interface Pace {
  readonly mean: number;
  readonly below: number;
  readonly above: number;
}

/** The curves through prior and readings. */
export function growthLine(prior: GrowthPrior, readings: readonly MeanReading[]): GrowthLine {
  const usual = usualPace(prior);
  let range = { low: usual.mean - 3.5 * usual.below, high: usual.mean + 3.5 * usual.above };
  let grid = weighed(prior, usual, readings, range);
  // Sharp readings leave few of the paces: look closer until the grid is finer than what they allow.
  for (let round = 0; round < 14 && grid.step > grid.sd / 2; round += 1) {
    const reach = Math.max(4 * grid.sd, 1.5 * grid.step);
    range = { low: Math.max(range.low, grid.mean - reach), high: Math.min(range.high, grid.mean + reach) };
    grid = weighed(prior, usual, readings, range);
  }
  const { draws, mean, sd } = grid;
  const start = middle(prior.startSize);
  const rates = grid.paces.map(({ pace, weight }) => ({
    value: (prior.laterSize - start) / Math.exp(pace),
    weight,
  }));
  return {
    rate: spreadOf(rates),
    pace: { mean, sd },
    draws,
    at: (age) => {
      let sum = 0;
      let squares = 0;
      for (const draw of draws) {
        const length = lengthOf(draw, age);
        sum += draw.weight * length;
        squares += draw.weight * length ** 2;
      }
      return { mean: sum, error: Math.sqrt(Math.max(0, squares - sum ** 2)) };
    },
  };
}

/** Days from the start to the later size, as logarithms: the likely one and its spread on either side. */
function usualPace(prior: GrowthPrior): Pace {
  const start = middle(prior.startAge);
  const log = (age: number): number => Math.log(Math.max(1, age - start));
  const mean = log(middle(prior.laterAge));
  const spread = (by: number): number => Math.max(0.01, by / Z80);
  return { mean, below: spread(mean - log(prior.laterAge.low)), above: spread(log(prior.laterAge.high) - mean) };
}

interface Grid {
  readonly draws: readonly Draw[];
  readonly paces: readonly { readonly pace: number; readonly weight: number }[];
  readonly mean: number;
  readonly sd: number;
  readonly step: number;
}

const PACES = 31;

/** Chances of every pace, grown length and day of birth; the size at the start is worked out exactly within each. */
function weighed(
  prior: GrowthPrior,
  usual: Pace,
  readings: readonly MeanReading[],
  range: { readonly low: number; readonly high: number },
): Grid {
  const step = (range.high - range.low) / (PACES - 1);
  const grown = quantiles(GROWN_SHARE, 3).map((share) => Math.max(share * prior.grown, 1.15 * prior.laterSize));
  const births = prior.bornOff === undefined ? [0] : quantiles(prior.bornOff, 3);
  const fits = Array.from({ length: PACES }, (_, i) => range.low + i * step).flatMap((pace) =>
    grown.flatMap((most) => births.map((off) => fitAt(prior, usual, readings, pace, most, off))),
  );
  const best = Math.max(...fits.map((fit) => fit.log));
  const sum = fits.reduce((all, fit) => all + Math.exp(fit.log - best), 0);
  const paces = fits.map(({ pace, log }) => ({ pace, weight: Math.exp(log - best) / sum }));
  const mean = paces.reduce((all, one) => all + one.weight * one.pace, 0);
  const sd = Math.sqrt(paces.reduce((all, one) => all + one.weight * (one.pace - mean) ** 2, 0));
  const draws = fits.flatMap((fit, i) => {
    const weight = paces[i]?.weight ?? 0;
    if (weight < 1e-5) return [];
    return NORMAL_POINTS.map((point) => ({
      weight: weight * point.weight,
      start: fit.start,
      size: Math.min(fit.size + point.z * fit.sizeError, 0.95 * fit.grown),
      grown: fit.grown,
      k: fit.k,
    }));
  });
  const kept = draws.reduce((all, draw) => all + draw.weight, 0);
  return { draws: draws.map((draw) => ({ ...draw, weight: draw.weight / kept })), paces, mean, sd, step };
}

/**
 * The size at the start is linear in the curve, so for one pace its posterior is normal and exact, and so
 * is the chance of the readings (normal prior, normal errors: e.g. Gelman et al., Bayesian Data Analysis,
 * chapter 14, from memory).
 */
function fitAt(
  prior: GrowthPrior,
  usual: Pace,
  readings: readonly MeanReading[],
  pace: number,
  grown: number,
  off: number,
): Omit<Draw, 'weight'> & { readonly pace: number; readonly sizeError: number; readonly log: number } {
  const start = middle(prior.startAge) + off;
  const size = middle(prior.startSize);
  const sizeError = Math.max(1e-3, (prior.startSize.high - prior.startSize.low) / (2 * Z80));
  const k = -Math.log1p(-(prior.laterSize - size) / (grown - size)) / Math.exp(pace);
  // Half of all broods are faster than the likely pace, half slower, each side with its own spread.
  const side = pace < usual.mean ? usual.below : usual.above;
  let log = -0.5 * ((pace - usual.mean) / side) ** 2 - Math.log(side);
  let precision = 1 / sizeError ** 2;
  let best = size;
  for (const reading of readings) {
    const left = Math.exp(-k * Math.max(0, reading.age - start));
    const variance = reading.error ** 2 + Math.min(BEND * reading.mean, reading.error) ** 2;
    // One reading at a time: its chance by what was known before it, then what is known after it.
    const expected = grown * (1 - left) + best * left;
    const spread = variance + left ** 2 / precision;
    log -= 0.5 * (Math.log(spread) + (reading.mean - expected) ** 2 / spread);
    const gain = left / (precision * spread);
    best += gain * (reading.mean - expected);
    precision += left ** 2 / variance;
  }
  return { start, size: best, sizeError: Math.sqrt(1 / precision), grown, k, pace, log };
}

function lengthOf(draw: Draw, age: number): number {
  const t = Math.max(0, age - draw.start);
  return draw.size - (draw.grown - draw.size) * Math.expm1(-draw.k * t);
}

/** The age at which a curve reaches a length; Infinity where it never does within four years. */
function ageOf(draw: Draw, length: number): number {
  if (length <= draw.size) return draw.start;
  if (length >= draw.grown) return Infinity;
  const age = draw.start - Math.log1p(-(length - draw.size) / (draw.grown - draw.size)) / draw.k;
  return age <= OLDEST ? age : Infinity;
}

/** Usual rates of growth, mm a day: the likely one, and the ends of the age at the later size. */
export function usualRates(prior: GrowthPrior): Interval & { readonly likely: number } {
  const size = prior.laterSize - middle(prior.startSize);
  const start = middle(prior.startAge);
  const rate = (age: number): number => Math.max(1e-3, size / Math.max(1, age - start));
  return { low: rate(prior.laterAge.high), likely: rate(middle(prior.laterAge)), high: rate(prior.laterAge.low) };
}

/** Share of fish at or above a size, where lengths are normal about a mean with a coefficient of variation. */
export function shareAtLeast(size: number, mean: number, cv: number = BROOD_CV): number {
  if (mean <= 0) return 0;
  return 1 - normalBelow((size - mean) / (cv * mean));
}

/** By how many standard deviations the largest of `count` is expected above the mean (Blom's rank formula, from memory). */
export function topOf(count: number): number {
  return count < 2 ? 0 : normalAt((count - 0.375) / (count + 0.25));
}

/** The mean of a brood whose largest (smallest: `top` negative) fish is so long. */
export function meanFromExtreme(size: number, top: number, cv: number = BROOD_CV): number {
  return size / Math.max(0.2, 1 + cv * top);
}

/** Which of them: the first few, half, or all but the last few. */
export type Part = 'first' | 'half' | 'all';

/** Ages at which a part of the brood reaches a size: 80 % limits, in whole days; the upper end is open where some curves never get there. */
export function ageAtSize(line: GrowthLine, size: number, part: Part): Interval {
  const z = part === 'first' ? Z95 : part === 'all' ? -Z95 : 0;
  const needed = size / (1 + BROOD_CV * z);
  const ages = spreadOf(line.draws.map((draw) => ({ value: ageOf(draw, needed), weight: draw.weight })));
  const likely = ages.likely === null || !Number.isFinite(ages.likely) ? null : Math.ceil(ages.likely);
  return { low: Math.ceil(ages.low), likely, high: Math.ceil(ages.high) };
}

/** Mean length at an age with its 80 % limits, never below none, mm. */
export function bandAt(line: GrowthLine, age: number): Interval {
  const { low, likely, high } = spreadOf(
    line.draws.map((draw) => ({ value: Math.max(0, lengthOf(draw, age)), weight: draw.weight })),
  );
  return { low, likely, high };
}

/** The 10th, 50th and 90th of a hundred of weighted values. */
function spreadOf(values: { readonly value: number; readonly weight: number }[]): Interval {
  const sorted = values.toSorted((a, b) => a.value - b.value);
  let low: number | null = null;
  let likely: number | null = null;
  let passed = 0;
  for (const { value, weight } of sorted) {
    passed += weight;
    if (low === null && passed >= 0.1) low = value;
    if (likely === null && passed >= 0.5) likely = value;
    if (passed >= 0.9) return { low: low ?? value, likely: likely ?? value, high: value };
  }
  const last = sorted.at(-1)?.value ?? 0;
  return { low: low ?? last, likely: likely ?? last, high: last };
}

function middle(range: Interval): number {
  return range.likely ?? (range.low + range.high) / 2;
}
