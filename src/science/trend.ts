/** A straight line that one wild reading cannot bend: the median of all pairwise slopes (Theil–Sen; Sen 1968, JASA 63:1379). */
import { median } from '../core/stats.ts';

export interface Point {
  readonly x: number;
  readonly y: number;
}

export interface Line {
  readonly slope: number;
  /** The "joint" rule: median of y − slope·x over the points. */
  readonly intercept: number;
}

/** The robust line through the points; null under two different x. */
export function robustLine(points: readonly Point[]): Line | null {
  const slopes = points.flatMap((a, i) =>
    points.slice(i + 1).flatMap((b) => (a.x === b.x ? [] : [(b.y - a.y) / (b.x - a.x)])),
  );
  const slope = median(slopes);
  if (slope === null) return null;
  return { slope, intercept: median(points.map((p) => p.y - slope * p.x)) ?? 0 };
}

/** Where the line reaches `y`; null for a level line. */
export function crossing(line: Line, y: number): number | null {
  return line.slope === 0 ? null : (y - line.intercept) / line.slope;
}
