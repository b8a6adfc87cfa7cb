/** A picture as data: what was read, what is expected, and the marks that matter. Days along, one measure up. */
import type { Because } from '../../core/because.ts';
import type { Day } from '../../core/day.ts';
import type { LineRef } from '../../core/span.ts';

export interface ChartPoint {
  readonly day: Day;
  readonly value: number;
  /** How far off it may be, where the line says so or its kind has it. */
  readonly low?: number;
  readonly high?: number;
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
  /** As `why` takes it: `chart-growth-rowan-1`. */
  readonly id: string;
  readonly title: string;
  /** What goes up, with its unit: `length, mm`. */
  readonly up: string;
  /** Drawn from none up; false where nothing is at none: a temperature, a pH. */
  readonly fromZero: boolean;
  readonly series: readonly Series[];
  /** Level lines: the spill, the sale size. */
  readonly marks: readonly { readonly name: string; readonly value: number }[];
  /** What happened on a day, shown along the foot: cleans, water changes. */
  readonly moments: readonly { readonly name: string; readonly days: readonly Day[] }[];
  /** The day that the answer is about. */
  readonly on: Day;
  /** What the picture rests on and says, in words. */
  readonly basis: readonly string[];
  readonly because: Because;
  readonly lines: readonly LineRef[];
}
