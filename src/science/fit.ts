/**
 * Least-squares fits with honest limits. Linear by the textbook; curves by Levenberg–Marquardt (a
 * library), polished by Gauss–Newton until nothing moves, with s² = RSS/(n − p), cov = s²(JᵀJ)⁻¹ and
 * limits by the delta method (Bates & Watts 1988). No limits where n ≤ p.
 */
import { levenbergMarquardt } from 'ml-levenberg-marquardt';
import { inverse, Matrix, solve } from 'ml-matrix';
import { studentT } from '../core/distributions.ts';
import type { Point } from './trend.ts';

/** A curve y = f(x; parameters). */
export type Curve = (parameters: readonly number[]) => (x: number) => number;

export interface Fit {
  readonly parameters: readonly number[];
  /** Standard errors; null where n ≤ p. */
  readonly errors: readonly number[] | null;
  readonly rss: number;
  /** Residual standard deviation; null where n ≤ p. */
  readonly sd: number | null;
  /** n − p. */
  readonly df: number;
  at(x: number): number;
  /** Limits at x for the mean curve and for one new reading, at a two-sided level; null where n ≤ p. */
  limits(x: number, level: number): { mean: readonly [number, number]; reading: readonly [number, number] } | null;
}

/** Fits a curve from a start; null where it does not settle on finite values. */
export function fitCurve(points: readonly Point[], curve: Curve, start: readonly number[]): Fit | null {
  if (points.length < start.length) return null;
  const data = { x: points.map((p) => p.x), y: points.map((p) => p.y) };
  const rough = levenbergMarquardt(data, curve, {
    initialValues: [...start],
    damping: 1e-2,
    gradientDifference: start.map((value) => Math.max(1e-8, Math.abs(value) * 1e-6)),
    centralDifference: true,
    maxIterations: 500,
    errorTolerance: 1e-12,
  });
  const parameters = polish(points, curve, rough.parameterValues);
  return parameters === null ? null : describe(points, curve, parameters);
}

const sumOfSquares = (points: readonly Point[], f: (x: number) => number): number =>
  points.reduce((sum, { x, y }) => sum + (y - f(x)) ** 2, 0);

function slopes(curve: Curve, parameters: readonly number[], x: number): number[] {
  return parameters.map((value, i) => {
    const step = Math.max(1e-7, Math.abs(value) * 1e-5);
    const shifted = (by: number): number => curve(parameters.map((v, k) => (k === i ? v + by : v)))(x);
    return (shifted(step) - shifted(-step)) / (2 * step);
  });
}

function polish(points: readonly Point[], curve: Curve, start: readonly number[]): readonly number[] | null {
  let parameters = start;
  for (let round = 0; round < 60; round += 1) {
    if (!parameters.every(Number.isFinite)) return null;
    const f = curve(parameters);
    const before = sumOfSquares(points, f);
    const jacobian = new Matrix(points.map(({ x }) => slopes(curve, parameters, x)));
    const residuals = Matrix.columnVector(points.map(({ x, y }) => y - f(x)));
    const step = solve(jacobian, residuals, true).to1DArray();
    let scale = 1;
    let next = parameters;
    for (let half = 0; half < 30; half += 1, scale /= 2) {
      next = parameters.map((v, i) => v + scale * (step[i] ?? 0));
      if (sumOfSquares(points, curve(next)) <= before) break;
    }
    const moved = next.some((v, i) => Math.abs(v - (parameters[i] ?? 0)) > 1e-12 * Math.max(1, Math.abs(v)));
    if (sumOfSquares(points, curve(next)) > before) return parameters;
    parameters = next;
    if (!moved) break;
  }
  return parameters.every(Number.isFinite) ? parameters : null;
}

function describe(points: readonly Point[], curve: Curve, parameters: readonly number[]): Fit {
  const f = curve(parameters);
  const rss = sumOfSquares(points, f);
  const df = points.length - parameters.length;
  const jacobian = new Matrix(points.map(({ x }) => slopes(curve, parameters, x)));
  const normalised = df > 0 ? inverseOrNull(jacobian.transpose().mmul(jacobian)) : null;
  const variance = df > 0 ? rss / df : 0;
  const errors = normalised === null ? null : parameters.map((_, i) => Math.sqrt(variance * normalised.get(i, i)));
  return {
    parameters,
    errors,
    rss,
    sd: df > 0 ? Math.sqrt(variance) : null,
    df,
    at: f,
    limits: (x, level) => {
      if (normalised === null) return null;
      const g = Matrix.rowVector(slopes(curve, parameters, x));
      const meanVariance = variance * g.mmul(normalised).mmul(g.transpose()).get(0, 0);
      const t = studentT(0.5 + level / 2, df);
      const around = (spread: number): [number, number] => [f(x) - spread, f(x) + spread];
      return { mean: around(t * Math.sqrt(meanVariance)), reading: around(t * Math.sqrt(variance + meanVariance)) };
    },
  };
}

function inverseOrNull(matrix: Matrix): Matrix | null {
  // Parameters of very different size (0.0005 beside 240) spoil the inverse unless it is scaled first.
  const scale = matrix.diagonal().map((v) => (v > 0 ? 1 / Math.sqrt(v) : 0));
  if (scale.some((v) => v === 0)) return null;
  const d = Matrix.diag(scale);
  try {
    const result = d.mmul(inverse(d.mmul(matrix).mmul(d))).mmul(d);
    return result.to1DArray().every(Number.isFinite) ? result : null;
  } catch {
    return null; // a singular matrix: the readings cannot tell the parameters apart
  }
}

/** The least-squares line y = a + b x, as a fit; null under two different x. */
export function fitLine(points: readonly Point[]): Fit | null {
  const n = points.length;
  const mx = points.reduce((sum, p) => sum + p.x, 0) / n;
  const my = points.reduce((sum, p) => sum + p.y, 0) / n;
  const sxx = points.reduce((sum, p) => sum + (p.x - mx) ** 2, 0);
  if (n < 2 || sxx === 0) return null;
  const slope = points.reduce((sum, p) => sum + (p.x - mx) * (p.y - my), 0) / sxx;
  const intercept = my - slope * mx;
  const f = (x: number): number => intercept + slope * x;
  const rss = sumOfSquares(points, f);
  const df = n - 2;
  const sd = df > 0 ? Math.sqrt(rss / df) : null;
  return {
    parameters: [intercept, slope],
    errors: sd === null ? null : [sd * Math.sqrt(1 / n + mx ** 2 / sxx), sd / Math.sqrt(sxx)],
    rss,
    sd,
    df,
    at: f,
    limits: (x, level) => {
      if (sd === null) return null;
      const t = studentT(0.5 + level / 2, df);
      const lever = 1 / n + (x - mx) ** 2 / sxx;
      const around = (spread: number): [number, number] => [f(x) - spread, f(x) + spread];
      return { mean: around(t * sd * Math.sqrt(lever)), reading: around(t * sd * Math.sqrt(1 + lever)) };
    },
  };
}

/** von Bertalanffy, L∞(1 − e^(−K(x − t0))); parameters L∞, K, t0. */
export const vonBertalanffy: Curve =
  ([limit = NaN, k = NaN, t0 = NaN]) =>
  (x) =>
    limit * (1 - Math.exp(-k * (x - t0)));

/** Logistic, A / (1 + e^((m − x)/s)); parameters A, m, s. */
export const logistic: Curve =
  ([limit = NaN, middle = NaN, scale = NaN]) =>
  (x) =>
    limit / (1 + Math.exp((middle - x) / scale));

/** Gompertz, A e^(−b e^(−k x)); parameters A, b, k. */
export const gompertz: Curve =
  ([limit = NaN, b = NaN, k = NaN]) =>
  (x) =>
    limit * Math.exp(-b * Math.exp(-k * x));
