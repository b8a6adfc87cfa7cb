/**
 * How many there really are, as a log-normal belief: guesses are compared by factors (a guess of 40 may
 * well be 30 or 50), and fish that go unseen thin a number by a share. A belief is kept by mean and variance.
 */
import { normalAt, normalBelow } from '../core/stats.ts';

export interface Belief {
  readonly mean: number;
  readonly variance: number;
}

/** A share that lives on: its mean and variance over broods. */
export interface Share {
  readonly mean: number;
  readonly variance: number;
}

/** A number that was counted one by one. */
export function counted(number: number): Belief {
  return { mean: number, variance: 0 };
}

/** A guess of `likely`, as often too high as too low, with that standard deviation of its logarithm. */
export function guessed(likely: number, spread: number): Belief {
  const mean = likely * Math.exp(spread ** 2 / 2);
  return { mean, variance: mean ** 2 * (Math.exp(spread ** 2) - 1) };
}

/** Mean and standard deviation of the logarithm. The mean must be above 0. */
function logOf({ mean, variance }: Belief): { mu: number; sigma: number } {
  const spread = Math.log1p(variance / mean ** 2);
  return { mu: Math.log(mean) - spread / 2, sigma: Math.sqrt(spread) };
}

function fromLog(mu: number, sigma: number): Belief {
  return guessed(Math.exp(mu), sigma);
}

/** Two independent sources about one number: logarithms weighted by their precision. */
export function together(a: Belief, b: Belief): Belief {
  if (a.mean <= 0 || a.variance === 0) return a;
  if (b.mean <= 0 || b.variance === 0) return b;
  const [x, y] = [logOf(a), logOf(b)];
  const [p, q] = [1 / x.sigma ** 2, 1 / y.sigma ** 2];
  return fromLog((x.mu * p + y.mu * q) / (p + q), Math.sqrt(1 / (p + q)));
}

/** What is left after each lived on by chance with a share that is itself not certain: binomial within, shared between. */
export function thinned({ mean, variance }: Belief, share: Share): Belief {
  const { mean: p, variance: q } = share;
  return { mean: mean * p, variance: variance * p ** 2 + mean * p * (1 - p) + (mean ** 2 + variance) * q };
}

/** What is left after others went, whose number is known about as well. */
export function without(belief: Belief, out: Belief): Belief {
  const least = atLeast(belief, out.mean);
  return { mean: Math.max(0, least.mean - out.mean), variance: least.variance + out.variance };
}

/** Both together, as numbers that know nothing of each other: means and variances add up. */
export function sum(a: Belief, b: Belief): Belief {
  return { mean: a.mean + b.mean, variance: a.variance + b.variance };
}

/**
 * The belief once it is known that there were no fewer: moments of a log-normal cut off below,
 * E X^r = exp(rμ + r²σ²/2) Φ(rσ − a) / Φ(−a), a = (ln least − μ)/σ (Johnson & Kotz, from memory).
 */
export function atLeast(belief: Belief, least: number): Belief {
  if (least <= 0) return belief;
  if (belief.mean <= 0 || belief.variance === 0) return belief.mean >= least ? belief : counted(least);
  const { mu, sigma } = logOf(belief);
  const cut = (Math.log(least) - mu) / sigma;
  const above = normalBelow(-cut);
  // So far off that the belief says nothing: barely above what is known.
  if (above < 1e-4) return guessed(least * (1 + sigma / 4), sigma / 4);
  const moment = (r: number): number =>
    (Math.exp(r * mu + (r * sigma) ** 2 / 2) * normalBelow(r * sigma - cut)) / above;
  const mean = Math.max(least, moment(1));
  return { mean, variance: Math.max(0, moment(2) - mean ** 2) };
}

/** Share of the belief at or below a number. */
export function below(belief: Belief, number: number): number {
  if (belief.mean <= 0 || belief.variance <= 0) return number >= belief.mean ? 1 : 0;
  if (number <= 0) return 0;
  const { mu, sigma } = logOf(belief);
  return normalBelow((Math.log(number) - mu) / sigma);
}

/** How well a belief foretold what was then seen, with that spread of the seeing: a density of the logarithm. */
export function fit(belief: Belief, seen: number, spread: number): number {
  if (belief.mean <= 0 || seen <= 0) return 1e-12;
  const { mu, sigma } = logOf(belief);
  // No eye is finer than half a fish.
  const width = Math.sqrt(sigma ** 2 + spread ** 2 + (0.5 / seen) ** 2);
  return Math.max(1e-12, Math.exp(-(((Math.log(seen) - mu) / width) ** 2) / 2) / width);
}

/** Standard deviation of the logarithm of a guess that holds the truth between two numbers so often (0.8: four times of five). */
export function spreadOf(low: number, high: number, level = 0.8): number {
  return Math.log(high / low) / 2 / normalAt(0.5 + level / 2);
}
