/**
 * When a prefilter will spill. Clogging is convex (the last centimetres go fastest), so three robust
 * lines are drawn, through all readings since the clean, the last three and the last two, and the
 * window runs from the earliest of the three crossings to the middle one (ours; common practice, no source, for the anchor).
 */
import { crossing, robustLine, type Line, type Point } from './trend.ts';

/** A level read in the chamber, mm above its floor, on a day (any day count). */
interface LevelPoint {
  readonly day: number;
  readonly level: number;
}

export interface SpillForecast {
  /** Days on which the level reaches the spill, rounded down and up; the likely day between them. */
  readonly spill: { readonly low: number; readonly likely: number; readonly high: number };
  /** Clean between these days at the latest: a week before. */
  readonly cleanBy: { readonly low: number; readonly high: number };
  /** mm a day of the last readings. */
  readonly rate: number;
  readonly lines: { readonly all: Line; readonly lastThree: Line; readonly lastTwo: Line };
}

/** Days of warning before a spill (ours: a setting). */
export const WARN_DAYS = 7;
/** Share of the freeboard after a full clean at which it is due whatever the date (ours: a setting). */
export const WARN_FREEBOARD = 0.25;
/** What an eye at a wet lip is good for, mm either way (ours). */
export const EYE_ERROR = 2;

/** Readings since the last clean, oldest first; null under two of them, or where the level does not rise. */
export function spillForecast(levels: readonly LevelPoint[], spillsAt: number): SpillForecast | null {
  const points = levels.map((reading): Point => ({ x: reading.day, y: reading.level }));
  const all = robustLine(points);
  const lastThree = robustLine(points.slice(-3));
  const lastTwo = robustLine(points.slice(-2));
  if (all === null || lastThree === null || lastTwo === null) return null;
  const crossings = [all, lastThree, lastTwo]
    .flatMap((line) => (line.slope > 0 ? [crossing(line, spillsAt) ?? Infinity] : []))
    .filter((day) => Number.isFinite(day))
    .sort((a, b) => a - b);
  const first = crossings[0];
  const middle = crossings.length > 2 ? crossings[1] : crossings[crossings.length - 1];
  if (first === undefined || middle === undefined) return null;
  // Two readings make one line and no spread: what is left is how well an eye reads a level.
  const slack = points.length === 2 ? EYE_ERROR / Math.max(lastTwo.slope, 0.01) : 0;
  const low = Math.floor(first - slack + 1e-9);
  const high = Math.ceil(middle + slack - 1e-9);
  return {
    spill: { low, likely: Math.round((first + middle) / 2), high },
    cleanBy: { low: low - WARN_DAYS, high: high - WARN_DAYS },
    rate: lastTwo.slope,
    lines: { all, lastThree, lastTwo },
  };
}

/**
 * How much of a full clean's interval a clean of `layers` of `of` buys, before the room has taught it:
 * one half and one half of the share. A layer or two last about a month where all six last six weeks
 * (common practice, no source); the formula is ours.
 */
export function thoroughness(layers: number, of: number): number {
  return of <= 0 ? 1 : 0.5 + (0.5 * Math.min(layers, of)) / of;
}
