/**
 * The grid of paces, grown lengths and days of birth over which growth is weighed, and what it says of the
 * pace. Kept in flat arrays: a room of many years weighs thousands of broods, one that is read closely in
 * a dozen rounds.
 */
import { middle } from '../core/interval.ts';
import type { Draw, GrowthPrior, MeanReading } from './growth.ts';
import { quantiles } from './spread.ts';

/** Two-sided 80 %: every band of growth. */
const Z80 = 1.2816;
/**
 * What is usual has heavy tails, Student's t with four degrees of freedom on the same 80 % limits: a brood that is far
 * from it is believed by its own readings, where a normal prior would draw it back for good (Dawid 1973, Biometrika
 * 60:664; O'Hagan 1979, J. R. Stat. Soc. B 41:358, both from memory). The four are ours.
 */
const TAIL = 4;
/** The 90th of a hundred of that distribution. */
const T80 = 1.5332;
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
const PACES = 31;
/** How far from what is usual paces are looked at, in its scale: tails of less than one in two hundred are left (ours). */
const REACH = 5.5;

/** Logarithm of the days from the start to the later size: the likely one and its spread on either side. */
interface Pace {
  readonly mean: number;
  readonly below: number;
  readonly above: number;
}

/** Every combination of pace, grown length and day of birth, the size at the start worked out exactly within each. */
interface Grid {
  readonly paces: Float64Array;
  readonly weights: Float64Array;
  readonly mean: number;
  readonly sd: number;
  readonly step: number;
  readonly fits: Fits;
}

interface Fits {
  readonly grown: readonly number[];
  readonly births: readonly number[];
  readonly size: Float64Array;
  readonly sizeError: Float64Array;
  readonly k: Float64Array;
}

/** The chances of all curves through prior and readings. */
export function growthGrid(prior: GrowthPrior, readings: readonly MeanReading[]): Grid {
  const usual = usualPace(prior);
  let range = { low: usual.mean - REACH * usual.below, high: usual.mean + REACH * usual.above };
  let grid = weighed(prior, usual, readings, range);
  // Sharp readings leave few of the paces: look closer until the grid is finer than what they allow.
  for (let round = 0; round < 14 && grid.step > grid.sd / 2; round += 1) {
    const reach = Math.max(4 * grid.sd, 1.5 * grid.step);
    range = { low: Math.max(range.low, grid.mean - reach), high: Math.min(range.high, grid.mean + reach) };
    grid = weighed(prior, usual, readings, range);
  }
  return grid;
}

/** Days from the start to the later size, as logarithms: the likely one and its spread on either side. */
function usualPace(prior: GrowthPrior): Pace {
  const start = middle(prior.startAge);
  const log = (age: number): number => Math.log(Math.max(1, age - start));
  const mean = log(middle(prior.laterAge));
  const spread = (by: number): number => Math.max(0.01, by / T80);
  return { mean, below: spread(mean - log(prior.laterAge.low)), above: spread(log(prior.laterAge.high) - mean) };
}

/**
 * Chances of every pace, grown length and day of birth. The size at the start is linear in the curve, so
 * for one pace its posterior is normal and exact, and so is the chance of the readings (normal prior, normal
 * errors: e.g. Gelman et al., Bayesian Data Analysis, chapter 14, from memory).
 */
function weighed(
  prior: GrowthPrior,
  usual: Pace,
  readings: readonly MeanReading[],
  range: { readonly low: number; readonly high: number },
): Grid {
  const step = (range.high - range.low) / (PACES - 1);
  const births = prior.bornOff === undefined ? [0] : quantiles(prior.bornOff, 3);
  const grown = quantiles(GROWN_SHARE, 3).map((share) => Math.max(share * prior.grown, 1.15 * prior.laterSize));
  const fits = noFits(grown, births);
  const paces = new Float64Array(fits.k.length);
  const logs = new Float64Array(fits.k.length);
  const each = grown.length * births.length;
  for (let i = 0; i < PACES; i += 1) {
    const pace = range.low + i * step;
    // Half of all broods are faster than the likely pace, half slower, each side with its own spread.
    const side = pace < usual.mean ? usual.below : usual.above;
    paces.fill(pace, i * each, (i + 1) * each);
    const tails = -0.5 * (TAIL + 1) * Math.log1p(((pace - usual.mean) / side) ** 2 / TAIL);
    logs.fill(tails - Math.log(side), i * each, (i + 1) * each);
    readIn(prior, readings, fits, logs, i * each, Math.exp(pace));
  }
  return spreadOf(paces, shares(logs), step, fits);
}

function noFits(grown: readonly number[], births: readonly number[]): Fits {
  const count = PACES * grown.length * births.length;
  return {
    grown,
    births,
    size: new Float64Array(count),
    sizeError: new Float64Array(count),
    k: new Float64Array(count),
  };
}

/** Takes the readings into all curves of one pace, which stand from there on: what is known of each after them, and its chance. */
function readIn(
  prior: GrowthPrior,
  readings: readonly MeanReading[],
  fits: Fits,
  logs: Float64Array,
  from: number,
  days: number,
): void {
  const size = middle(prior.startSize);
  const sizeError = Math.max(1e-3, (prior.startSize.high - prior.startSize.low) / (2 * Z80));
  let at = from;
  for (const most of fits.grown) {
    const k = -Math.log1p(-(prior.laterSize - size) / (most - size)) / days;
    for (const off of fits.births) {
      const start = middle(prior.startAge) + off;
      let log = logs[at] ?? 0;
      let precision = 1 / sizeError ** 2;
      let best = size;
      for (const reading of readings) {
        const left = Math.exp(-k * Math.max(0, reading.age - start));
        const variance = reading.error ** 2 + Math.min(BEND * reading.mean, reading.error) ** 2;
        // One reading at a time: its chance by what was known before it, then what is known after it.
        const expected = most * (1 - left) + best * left;
        const spread = variance + left ** 2 / precision;
        log -= 0.5 * (Math.log(spread) + (reading.mean - expected) ** 2 / spread);
        const gain = left / (precision * spread);
        best += gain * (reading.mean - expected);
        precision += left ** 2 / variance;
      }
      logs[at] = log;
      fits.size[at] = best;
      fits.sizeError[at] = Math.sqrt(1 / precision);
      fits.k[at] = k;
      at += 1;
    }
  }
}

function spreadOf(paces: Float64Array, weights: Float64Array, step: number, fits: Fits): Grid {
  const mean = sumOf(weights, (weight, i) => weight * (paces[i] ?? 0));
  const sd = Math.sqrt(sumOf(weights, (weight, i) => weight * ((paces[i] ?? 0) - mean) ** 2));
  return { paces, weights, mean, sd, step, fits };
}

/** Logarithms of chances as chances that add up to one. */
function shares(logs: Float64Array): Float64Array {
  let best = -Infinity;
  for (const log of logs) best = Math.max(best, log);
  const weights = logs.map((log) => Math.exp(log - best));
  let sum = 0;
  for (const weight of weights) sum += weight;
  return weights.map((weight) => weight / sum);
}

function sumOf(values: Float64Array, each: (value: number, index: number) => number): number {
  let sum = 0;
  for (let i = 0; i < values.length; i += 1) sum += each(values[i] ?? 0, i);
  return sum;
}

/** All curves of a grid that have a chance worth counting. */
export function drawsOf(prior: GrowthPrior, { weights, fits }: Grid): readonly Draw[] {
  const { grown, births } = fits;
  const draws: Draw[] = [];
  for (let i = 0; i < weights.length; i += 1) {
    const weight = weights[i] ?? 0;
    if (weight < 1e-5) continue;
    const most = grown[Math.floor(i / births.length) % grown.length] ?? 0;
    const start = middle(prior.startAge) + (births[i % births.length] ?? 0);
    for (const point of NORMAL_POINTS) {
      draws.push({
        weight: weight * point.weight,
        start,
        size: Math.min((fits.size[i] ?? 0) + point.z * (fits.sizeError[i] ?? 0), 0.95 * most),
        grown: most,
        k: fits.k[i] ?? 0,
      });
    }
  }
  const kept = draws.reduce((all, draw) => all + draw.weight, 0);
  return draws.map((draw) => ({ ...draw, weight: draw.weight / kept }));
}
