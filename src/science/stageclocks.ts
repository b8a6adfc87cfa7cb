/**
 * Stage clocks of a brood: how many days after laying it hatches and swims free, as a few hundred equally likely
 * ones. Stage times are spread triangular between their ends, over the evidence for Q10 and the temperature.
 */
import type { Interval } from '../core/interval.ts';
import { quantiles } from './spread.ts';
import { Q10, REFERENCE_TEMPERATURE, q10Factor } from './stages.ts';

/** Days that each stage takes at 26 °C; null where such fish have none (nobody sees a held brood hatch). */
export interface StageTimes {
  /** From laying to hatching. */
  readonly hatch: Interval | null;
  /** From hatching to swimming free. */
  readonly swim: Interval | null;
  /** From laying to release from the mouth; stands in for swimming where it is set. */
  readonly release: Interval | null;
  /** °C while they were young. */
  readonly temperature: Interval;
}

/**
 * Days from laying to hatching and to swimming free by each clock, and the whole days that none exceeds. To each
 * time of hatching belong as many of swimming free, one behind the other.
 */
export interface Clocks {
  readonly hatch: Float64Array;
  readonly swim: Float64Array;
  readonly longest: number;
}

/** Times of each stage, and of the other, that are tried. */
const POINTS = 9;
/** A thermometer's error, °C either way (ours). */
const THERMOMETER = 0.5;

/**
 * Equally likely clocks: every combination of a few stage times and paces. Broods of one tank that kept
 * its temperature share their clocks, so the latest few are kept.
 */
export function clockDraws(times: StageTimes): Clocks {
  const key = [times.hatch, times.swim, times.release, times.temperature]
    .map((one) => (one === null ? '' : `${one.low} ${one.likely ?? ''} ${one.high}`))
    .join();
  const before = kept.get(key);
  if (before !== undefined) return before;
  const made = makeClocks(times);
  if (kept.size >= KEPT) kept.clear();
  kept.set(key, made);
  return made;
}

const KEPT = 64;
const kept = new Map<string, Clocks>();

function makeClocks(times: StageTimes): Clocks {
  const none = [0];
  const hatches = times.hatch === null ? none : quantiles(times.hatch, POINTS);
  const rest = times.release ?? times.swim;
  const swims = rest === null ? none : quantiles(rest, POINTS);
  const speeds = paces(times.temperature);
  const hatch = speeds.flatMap((pace) => hatches.map((h) => h * pace));
  const swim = speeds.flatMap((pace) =>
    hatches.flatMap((h) => swims.map((s) => (times.release === null ? h + s : s) * pace)),
  );
  const longest = Math.max(...hatch, ...swim);
  return { hatch: Float64Array.from(hatch), swim: Float64Array.from(swim), longest: Math.ceil(longest) + 1 };
}

/** Factors on all stage times from the temperature and Q10, neither of which is known. */
function paces(temperature: Interval): number[] {
  const spread = { ...temperature, low: temperature.low - THERMOMETER, high: temperature.high + THERMOMETER };
  const logs = quantiles({ low: Math.log(Q10.low), likely: Math.log(Q10.likely), high: Math.log(Q10.high) }, 3);
  return quantiles(spread, 3).flatMap((celsius) =>
    logs.map((q) => q10Factor(Math.exp(q), REFERENCE_TEMPERATURE, celsius)),
  );
}
