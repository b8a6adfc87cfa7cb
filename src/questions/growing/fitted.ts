/**
 * A second opinion on growth: least squares through the lengths alone, with no word of what is usual. Told
 * in `why` only; the answers themselves weigh readings against what is usual.
 */
import { rangeWords } from '../../core/words.ts';
import { fitCurve, fitLine, gompertz, logistic, vonBertalanffy, type Curve, type Fit } from '../../science/fit.ts';
import type { Point } from '../../science/trend.ts';

/** Readings that a line, and a curve of three parameters, need before their limits say anything. */
const FOR_LINE = 3;
const FOR_CURVE = 5;
const LEVEL = 0.8;
/** A curve that goes on to so many times the longest reading was not told by the readings. */
const TOO_FAR = 4;

/** Steps for `why`: the straight line, and the best of three curves; nothing where there are too few readings. */
export function fittedSteps(points: readonly Point[]): string[] {
  const line = points.length < FOR_LINE ? null : fitLine(points);
  const slope = line?.parameters[1] ?? 0;
  if (line === null || slope <= 0) return [];
  const weekly = (line.errors?.[1] ?? 0) * 7;
  const best = points.length < FOR_CURVE ? null : bestCurve(points);
  // On a straight line nothing bounds how long they get: a curve is told only where it bends with the readings.
  const curve = best !== null && (best.fit.sd ?? Infinity) < (line.sd ?? 0) ? best : null;
  return [
    `a straight line through these ${String(points.length)} alone: ${(slope * 7).toFixed(1)} mm a week, standard error ${weekly.toFixed(1)}`,
    ...(curve === null
      ? []
      : [`${curve.name} curve through them alone: ${atWords(curve.fit, Math.max(...points.map(({ x }) => x)))}`]),
  ];
}

function atWords(fit: Fit, age: number): string {
  const limits = fit.limits(age, LEVEL)?.mean;
  const mean = `${fit.at(age).toFixed(1)} mm at the last of them`;
  return limits === undefined
    ? mean
    : `${mean}, 80 % ${rangeWords({ low: limits[0], likely: null, high: limits[1] }, 1)}`;
}

/** The curve of the three that leaves least unexplained, among those that settle on a length that can be. */
function bestCurve(points: readonly Point[]): { name: string; fit: Fit } | null {
  const longest = Math.max(...points.map(({ y }) => y));
  const oldest = Math.max(...points.map(({ x }) => x));
  const starts: readonly (readonly [string, Curve, readonly number[]])[] = [
    ['von Bertalanffy', vonBertalanffy, [1.3 * longest, 1.5 / oldest, 0]],
    ['logistic', logistic, [1.1 * longest, oldest / 2, oldest / 4]],
    ['Gompertz', gompertz, [1.2 * longest, 3, 3 / oldest]],
  ];
  const fits = starts.flatMap(([name, curve, start]) => {
    const fit = fitCurve(points, curve, start);
    const limit = fit?.parameters[0] ?? NaN;
    return fit === null || fit.errors === null || !(limit >= longest * 0.9 && limit <= TOO_FAR * longest)
      ? []
      : [{ name, fit }];
  });
  return fits.toSorted((a, b) => a.fit.rss - b.fit.rss)[0] ?? null;
}
