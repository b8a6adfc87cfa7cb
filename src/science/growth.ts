/**
 * Growth of a brood: mean total length by age from laying (birth), as a band. Young grow nearly linearly
 * between swimming free and sale; a Bayesian line takes the guild's usual numbers as prior and every
 * reading by its weight, so that one bad reading moves little and none leaves the prior alone. Within a
 * brood lengths spread by a coefficient of variation of about 12 %, and an eye errs by about 1.5 mm
 * (both ours: defaults).
 */
import { normalAt, normalBelow } from '../core/stats.ts';
import type { Interval } from '../core/interval.ts';

/** Spread of lengths within a brood, as a share of the mean. */
export const BROOD_CV = 0.12;
/** Standard deviation of a length judged by eye, mm. */
export const EYE_ERROR = 1.5;
/** Two-sided 80 %: every band here. */
const Z80 = 1.2816;
/** "First" and "all" of a brood whose number nobody knows: the 5th and 95th of a hundred. */
const Z95 = 1.6449;
/** How far a whole brood may be off the straight line between the ages at which it was read, mm (ours). */
const BEND = 2;
/** No brood grows more slowly than this share of the slow end of what is usual, mm a day. */
const SLOWEST = 0.25;

/** What is usual for such fish: where growth starts, and when a length is reached. Days and mm. */
export interface GrowthPrior {
  readonly startAge: Interval;
  readonly startSize: Interval;
  readonly laterAge: Interval;
  readonly laterSize: number;
}

/** What a line says of the mean length at an age: mm and its standard error, age in days. */
export interface MeanReading {
  readonly age: Interval;
  readonly mean: number;
  readonly error: number;
}

/** A line with its uncertainty: mean length at an age, mm. */
export interface GrowthLine {
  /** mm a day. */
  readonly rate: Interval;
  /** Mean and standard error at an age. */
  at(age: number): { readonly mean: number; readonly error: number };
}

/**
 * The line through prior and readings. Precision-weighted normal regression of the mean length on age,
 * with a normal prior on the size at the start and on the rate (conjugate, so exact: e.g. Gelman et al.,
 * Bayesian Data Analysis, chapter 14, from memory).
 */
export function growthLine(prior: GrowthPrior, readings: readonly MeanReading[]): GrowthLine {
  const start = prior.startAge.likely ?? (prior.startAge.low + prior.startAge.high) / 2;
  const size = prior.startSize.likely ?? (prior.startSize.low + prior.startSize.high) / 2;
  const rates = usualRates(prior);
  const sizeError = (prior.startSize.high - prior.startSize.low) / (2 * Z80) + BEND;
  const rateError = Math.max(1e-3, (rates.high - rates.low) / (2 * Z80));
  // Precision matrix [[a, b], [b, d]] and the weighted right-hand side [p, q] of (size, rate).
  let a = 1 / sizeError ** 2;
  let b = 0;
  let d = 1 / rateError ** 2;
  let p = size / sizeError ** 2;
  let q = rates.likely / rateError ** 2;
  for (const reading of readings) {
    const age = (reading.age.likely ?? (reading.age.low + reading.age.high) / 2) - start;
    const ageError = ((reading.age.high - reading.age.low) / (2 * Z80)) * rates.likely;
    const weight = 1 / (reading.error ** 2 + ageError ** 2);
    a += weight;
    b += weight * age;
    d += weight * age ** 2;
    p += weight * reading.mean;
    q += weight * age * reading.mean;
  }
  const det = a * d - b ** 2;
  const rate = Math.max((a * q - b * p) / det, rates.low * SLOWEST);
  // The best size for that rate; where the rate was not held back, that of the joint fit.
  const best = (p - b * rate) / a;
  const error = Math.sqrt(a / det);
  return {
    rate: { low: Math.max(rates.low * SLOWEST, rate - Z80 * error), likely: rate, high: rate + Z80 * error },
    at: (age) => {
      const t = age - start;
      return { mean: best + rate * t, error: Math.sqrt((d - 2 * b * t + a * t ** 2) / det) };
    },
  };
}

/** Usual rates of growth, mm a day: the likely one, and the ends of the age at the later size. */
export function usualRates(prior: GrowthPrior): Interval & { readonly likely: number } {
  const size = prior.laterSize - (prior.startSize.likely ?? prior.startSize.low);
  const start = prior.startAge.likely ?? prior.startAge.low;
  const rate = (age: number): number => Math.max(1e-3, size / Math.max(1, age - start));
  const middle = prior.laterAge.likely ?? (prior.laterAge.low + prior.laterAge.high) / 2;
  return { low: rate(prior.laterAge.high), likely: rate(middle), high: rate(prior.laterAge.low) };
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

/**
 * Ages at which a part of the brood reaches a size: 80 % limits of the line, in days. The upper end is
 * open where the slow side never gets there within four years.
 */
export function ageAtSize(line: GrowthLine, size: number, part: Part): Interval {
  const z = part === 'first' ? Z95 : part === 'all' ? -Z95 : 0;
  const needed = size / (1 + BROOD_CV * z);
  const reached = (side: number) => (age: number) => {
    const { mean, error } = line.at(age);
    return mean + side * Z80 * error >= needed;
  };
  const likely = firstAge(reached(0));
  const low = firstAge(reached(1));
  return {
    low: Math.min(low, likely),
    likely: Number.isFinite(likely) ? likely : null,
    high: Math.max(firstAge(reached(-1)), likely),
  };
}

const OLDEST = 4 * 365;

/** The first whole age from which a test holds, by halving; Infinity where it never does. */
function firstAge(holds: (age: number) => boolean): number {
  if (!holds(OLDEST)) return Infinity;
  let low = 0;
  let high = OLDEST;
  while (low < high) {
    const middle = Math.floor((low + high) / 2);
    if (holds(middle)) high = middle;
    else low = middle + 1;
  }
  return low;
}

/** Mean length at an age with its 80 % limits, never below none, mm. */
export function bandAt(line: GrowthLine, age: number): Interval {
  const { mean, error } = line.at(age);
  return { low: Math.max(0, mean - Z80 * error), likely: Math.max(0, mean), high: Math.max(0, mean + Z80 * error) };
}
