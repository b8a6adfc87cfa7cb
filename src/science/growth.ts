/**
 * Growth of a brood: mean total length by age from laying (birth), as a band. Young grow fast and slow down
 * towards grown size (von Bertalanffy 1938: L = C − (C − L₀)·exp(−k·t)). What is usual, or what the room's
 * own broods did, is the prior; every reading counts by its certainty (Bayes' rule, on a grid of paces), so
 * that one bad reading moves little and none leaves the prior alone. Within a brood lengths spread by about
 * 12 %, and an eye errs by about 1.5 mm (both ours: defaults).
 */
import type { Interval } from '../core/interval.ts';
import { middle } from '../core/interval.ts';
import { normalAt, normalBelow } from '../core/stats.ts';
import { drawsOf, growthGrid } from './growthgrid.ts';
import { Worked } from './worked.ts';

/** Spread of lengths within a brood, as a share of the mean. */
export const BROOD_CV = 0.12;
/** Standard deviation of a length judged by eye, mm. */
export const EYE_ERROR = 1.5;
/** "First" and "all" of a brood whose number nobody knows: the 5th and 95th of a hundred. */
const Z95 = 1.6449;
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
export interface Draw {
  readonly weight: number;
  readonly start: number;
  readonly size: number;
  readonly grown: number;
  readonly k: number;
}

/** All curves that may be true, each with its chance. They are worked out when one of them is first asked for. */
export interface GrowthLine {
  /** All that they rest on, in order. */
  readonly inputs: readonly (number | null)[];
  /** mm a day from the start to the later size: 80 % limits. */
  readonly rate: Interval;
  /** Logarithm of the days from the start to the later size, for a room that learns. */
  readonly pace: { readonly mean: number; readonly sd: number };
  readonly draws: readonly Draw[];
  /** Mean and standard error at an age. */
  at(age: number): { readonly mean: number; readonly error: number };
}

/** The curves through prior and readings. */
export function growthLine(prior: GrowthPrior, readings: readonly MeanReading[]): GrowthLine {
  const inputs = inputsOf(prior, readings);
  let known: Curves | null = null;
  const curves = (): Curves => (known ??= curvesOf(prior, readings));
  return {
    inputs,
    get rate() {
      return rates.of(inputs, () => curves().rate);
    },
    get pace() {
      return curves().pace;
    },
    get draws() {
      return curves().draws;
    },
    at: (age) => meanAt(curves().draws, age),
  };
}

type Curves = Pick<GrowthLine, 'rate' | 'pace' | 'draws'>;

function curvesOf(prior: GrowthPrior, readings: readonly MeanReading[]): Curves {
  const grid = growthGrid(prior, readings);
  const { mean, sd } = grid;
  const start = middle(prior.startSize);
  const rates = Array.from(grid.weights, (weight, i) => ({
    value: (prior.laterSize - start) / Math.exp(grid.paces[i] ?? 0),
    weight,
  }));
  return { rate: spreadOf(rates), pace: { mean, sd }, draws: drawsOf(prior, grid) };
}

function meanAt(draws: readonly Draw[], age: number): { mean: number; error: number } {
  let sum = 0;
  let squares = 0;
  for (const draw of draws) {
    const length = lengthOf(draw, age);
    sum += draw.weight * length;
    squares += draw.weight * length ** 2;
  }
  return { mean: sum, error: Math.sqrt(Math.max(0, squares - sum ** 2)) };
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

/** The pace alone of the curves through prior and readings, for a room that learns. */
export function paceOf(prior: GrowthPrior, readings: readonly MeanReading[]): GrowthLine['pace'] {
  return paces.of(inputsOf(prior, readings), () => {
    const { mean, sd } = growthGrid(prior, readings);
    return { mean, sd };
  });
}

function inputsOf(prior: GrowthPrior, readings: readonly MeanReading[]): (number | null)[] {
  const { startAge, startSize, laterAge, laterSize, grown, bornOff } = prior;
  const ranges = [startAge, startSize, laterAge, bornOff ?? NONE].flatMap(({ low, likely, high }) => [
    low,
    likely,
    high,
  ]);
  return [...ranges, laterSize, grown, ...readings.flatMap(({ age, mean, error }) => [age, mean, error])];
}

/** Not the same as a day of birth that is known for certain: that is nought. */
const NONE = { low: null, likely: null, high: null };
const paces = new Worked(isPace, 'all');
/** They change from day to day: those that one answer asked for are asked for again by the next. */
const rates = new Worked(isSpread, 'asked');
const bands = new Worked(isSpread, 'asked');
const ages = new Worked(isSpread, 'asked');

function isSpread(value: unknown): value is Interval {
  return typeof value === 'object' && value !== null && 'low' in value && 'likely' in value && 'high' in value;
}

function isPace(value: unknown): value is GrowthLine['pace'] {
  return typeof value === 'object' && value !== null && 'mean' in value && 'sd' in value;
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
  return ages.of([...line.inputs, needed], () => {
    const all = spreadOf(line.draws.map((draw) => ({ value: ageOf(draw, needed), weight: draw.weight })));
    const likely = all.likely === null || !Number.isFinite(all.likely) ? null : Math.ceil(all.likely);
    return { low: Math.ceil(all.low), likely, high: Math.ceil(all.high) };
  });
}

/** Mean length at an age with its 80 % limits, never below none, mm. */
export function bandAt(line: GrowthLine, age: number): Interval {
  return bands.of([...line.inputs, age], () =>
    spreadOf(line.draws.map((draw) => ({ value: Math.max(0, lengthOf(draw, age)), weight: draw.weight }))),
  );
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
