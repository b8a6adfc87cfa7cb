/** A picture as data: what was read, what is expected, and the marks that matter. Days along, one measure up. */
import type { Day } from '../../core/day.ts';
import type { LineRef } from '../../core/span.ts';

export interface ChartPoint {
  readonly day: Day;
  readonly value: number;
}

export interface BandPoint {
  readonly day: Day;
  readonly low: number;
  readonly high: number;
}

export type Series =
  | { readonly kind: 'readings'; readonly name: string; readonly points: readonly ChartPoint[] }
  | { readonly kind: 'line'; readonly name: string; readonly points: readonly ChartPoint[] }
  | { readonly kind: 'steps'; readonly name: string; readonly points: readonly ChartPoint[] }
  | { readonly kind: 'band'; readonly name: string; readonly points: readonly BandPoint[] };

export interface Chart {
  readonly title: string;
  /** What goes up, with its unit: `length, mm`. */
  readonly up: string;
  readonly series: readonly Series[];
  /** Level lines: the spill, the sale size. */
  readonly marks: readonly { readonly name: string; readonly value: number }[];
  /** The day that the answer is about. */
  readonly on: Day;
  /** What the picture rests on, in words. */
  readonly basis: readonly string[];
  readonly lines: readonly LineRef[];
}
