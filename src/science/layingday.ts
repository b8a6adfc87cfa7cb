/**
 * The day on which a brood was laid, as a chance for each day of a hard window: all days alike before
 * anything is known of its stages, then weighed by every look (Bayes' rule on a grid). How long eggs take
 * to hatch and wrigglers to swim is spread over what is usual for such fish, triangular between its ends,
 * and over the evidence for Q10 and the temperature; all looks at one brood share one such clock.
 */
import type { Interval } from '../core/interval.ts';
import { clockDraws } from './stageclocks.ts';
import type { Clocks, StageTimes } from './stageclocks.ts';
import { Worked } from './worked.ts';

/** What a look found: `held` in the mouth, or the stage itself. */
export type Found = 'eggs' | 'held' | 'wrigglers' | 'swimming' | 'taken out';

export interface StageLook {
  readonly day: number;
  readonly found: Found;
  /** The stage began no earlier than this day, where the line says so. */
  readonly beganFrom: number | null;
}

/** Chances by day: `from` is the day of the first. They add up to one. */
export interface DayChances {
  readonly from: number;
  readonly chances: readonly number[];
}

export interface BroodDays {
  readonly laid: DayChances;
  readonly hatched: DayChances | null;
  readonly swam: DayChances;
}

/** The share of a range of days that is named as most likely. */
const MOST_LIKELY = 0.8;
/** Chance that a look is misread or misdated (ours): one such look must not rule out the truth. */
const MISREAD = 0.01;
/** Hours of the day at which eggs may be laid, as shares of it; looks are taken at its middle. */
const LAID_AT = [1 / 6, 3 / 6, 5 / 6];
/** Half of all full mouths are noticed within so many days, a few much later (ours). */
const MOUTH_NOTICED = 5;

/**
 * Chances of laying, hatching and swimming free for a brood laid within whole days `low` to `high`.
 * `low` above `high` gives the last day alone. `quiet`: days on which somebody stood there and wrote of no eggs.
 * Only how far days lie apart counts: the same looks a year later give the same chances a year later.
 */
export function layingDays(
  low: number,
  high: number,
  times: StageTimes,
  looks: readonly StageLook[],
  quiet: readonly number[] = [],
): BroodDays {
  const first = Math.min(low, high);
  const seen = looks.map((look) => ({
    day: look.day - first,
    found: look.found,
    beganFrom: look.beganFrom === null ? null : look.beganFrom - first,
  }));
  const passed = quiet.map((day) => day - first);
  const stages = [times.hatch, times.swim, times.release, times.temperature].flatMap(ends);
  const told = seen.flatMap(({ day, found, beganFrom }) => [day, found, beganFrom]);
  const inputs = [high - first, ...stages, ...told, 'quiet', ...passed];
  const days = broods.of(inputs, () => chancesFrom(high - first, times, seen, passed));
  return {
    laid: later(days.laid, first),
    hatched: days.hatched && later(days.hatched, first),
    swam: later(days.swam, first),
  };
}

const broods = new Worked(isBroodDays, 'all');

function ends(range: Interval | null): (number | string | null)[] {
  return range === null ? ['none'] : [range.low, range.likely, range.high];
}

function isBroodDays(value: unknown): value is BroodDays {
  return typeof value === 'object' && value !== null && 'laid' in value && 'hatched' in value && 'swam' in value;
}

function later({ from, chances }: DayChances, by: number): DayChances {
  return { from: from + by, chances };
}

/** The same for a brood laid within days 0 to `last`. */
function chancesFrom(
  last: number,
  times: StageTimes,
  looks: readonly StageLook[],
  quiet: readonly number[],
): BroodDays {
  const clocks = clockDraws(times);
  const [sight] = looks.toSorted((a, b) => a.day - b.day);
  const noticed = (at: number): number =>
    sight?.found === 'held' ? (1 + Math.max(0, sight.day + 0.5 - at) / MOUTH_NOTICED) ** -2 : 1;
  const days = last + 1;
  const laid = new Float64Array(days);
  const scales: Scales = {
    clocks,
    weights: new Float64Array(clocks.swim.length),
    hatched: new Days(days + clocks.longest),
    swam: new Days(days + clocks.longest),
  };
  for (let i = 0; i < days; i += 1) {
    for (const hour of LAID_AT) {
      const at = i + hour;
      const missed = overlooked(quiet.filter((day) => day + 0.5 > at).length);
      const asked = looks.map((look) => askedOf(look, at)).filter(asksAnything);
      laid[i] = (laid[i] ?? 0) + weigh(scales, at, noticed(at) * missed, asked);
    }
  }
  return {
    laid: shared(0, [...laid]),
    hatched: times.hatch === null ? null : scales.hatched.chances(),
    swam: scales.swam.chances(),
  };
}

/**
 * The chance that so many looks in a row tell nothing of a brood that is there: how often this keeper looks
 * past one is not known, any share as likely as another, so the mean of m^n over m from 0 to 1.
 */
function overlooked(looks: number): number {
  return 1 / (looks + 1);
}

/** What one moment of laying is weighed with: made once for a brood, since it has some hundred thousand clocks. */
interface Scales {
  readonly clocks: Clocks;
  /** The weight of each time of swimming free. */
  readonly weights: Float64Array;
  readonly hatched: Days;
  readonly swam: Days;
}

/**
 * Weighs every clock for a brood laid at a moment, adds its weight to the days on which it hatches and swims then, and
 * gives the sum. What rests on hatching alone is asked once for all times of swimming free behind it.
 */
function weigh(
  { clocks, weights, hatched, swam }: Scales,
  at: number,
  before: number,
  asked: readonly Asked[],
): number {
  const { hatch, swim } = clocks;
  const each = swim.length / hatch.length;
  for (let h = 0; h < hatch.length; h += 1) {
    const hatches = hatch[h] ?? 0;
    let weight = before;
    for (const one of asked) if (!isWithin(hatches, one.hatch)) weight *= MISREAD;
    weights.fill(weight, h * each, (h + 1) * each);
  }
  for (const one of asked) if (one.swim !== ANY) misreadSwim(one, clocks, weights);
  let all = 0;
  for (let h = 0; h < hatch.length; h += 1) {
    const sum = swam.addEach(at, swim, weights, h * each, (h + 1) * each);
    hatched.add(Math.floor(at + (hatch[h] ?? 0)), sum);
    all += sum;
  }
  return all;
}

/** Takes down the clocks that swim on other days than a look allows, where it does not rule out their hatching already. */
function misreadSwim(asked: Asked, { hatch, swim }: Clocks, weights: Float64Array): void {
  const { above, from, to } = asked.swim;
  const each = swim.length / hatch.length;
  for (let h = 0; h < hatch.length; h += 1) {
    if (!isWithin(hatch[h] ?? 0, asked.hatch)) continue;
    for (let s = h * each; s < (h + 1) * each; s += 1) {
      const swims = swim[s] ?? 0;
      if (!(swims > above && swims >= from && swims <= to)) weights[s] = (weights[s] ?? 0) * MISREAD;
    }
  }
}

/** Days that go with a look: more than `above`, no fewer than `from`, no more than `to`. */
interface Bounds {
  readonly above: number;
  readonly from: number;
  readonly to: number;
}

/** Between which days from laying a brood hatches and swims that is at what a look found. */
interface Asked {
  readonly hatch: Bounds;
  readonly swim: Bounds;
}

const ANY: Bounds = { above: -Infinity, from: -Infinity, to: Infinity };
const NEVER: Bounds = { ...ANY, above: Infinity };

function isWithin(days: number, { above, from, to }: Bounds): boolean {
  return days > above && days >= from && days <= to;
}

/** False for a look that any clock goes with. */
function asksAnything({ hatch, swim }: Asked): boolean {
  return hatch !== ANY || swim !== ANY;
}

/** What a look asks of a brood laid at a moment. */
function askedOf(look: StageLook, laid: number): Asked {
  const age = look.day + 0.5 - laid;
  const since = look.beganFrom === null ? -Infinity : look.beganFrom - laid;
  switch (look.found) {
    case 'eggs':
      // On the day of laying there are eggs, however fast they hatch.
      return { hatch: age <= -1 ? NEVER : age < 0.5 ? ANY : { ...ANY, above: age }, swim: ANY };
    case 'held':
      return { hatch: age <= -1 ? NEVER : ANY, swim: { ...ANY, above: age } };
    case 'wrigglers':
      return { hatch: { ...ANY, from: since, to: age }, swim: { ...ANY, above: age } };
    case 'swimming':
      return { hatch: ANY, swim: { ...ANY, from: since, to: age } };
    case 'taken out':
      return { hatch: { ...ANY, to: age }, swim: ANY };
  }
}

/** Chances of days in a row from day 0, counted up one by one. */
class Days {
  private readonly sums: Float64Array;
  private least = Infinity;
  private most = -Infinity;

  constructor(count: number) {
    this.sums = new Float64Array(count);
  }

  add(day: number, weight: number): void {
    this.sums[day] = (this.sums[day] ?? 0) + weight;
    if (day < this.least) this.least = day;
    if (day > this.most) this.most = day;
  }

  /** The same for each of `days` between two of them, counted from a moment; gives the sum of their weights. */
  addEach(at: number, days: Float64Array, weights: Float64Array, first: number, end: number): number {
    const { sums } = this;
    let { least, most } = this;
    let sum = 0;
    for (let i = first; i < end; i += 1) {
      const day = Math.floor(at + (days[i] ?? 0));
      const weight = weights[i] ?? 0;
      sums[day] = (sums[day] ?? 0) + weight;
      if (day < least) least = day;
      if (day > most) most = day;
      sum += weight;
    }
    this.least = least;
    this.most = most;
    return sum;
  }

  chances(): DayChances {
    return shared(this.least, [...this.sums.subarray(this.least, this.most + 1)]);
  }
}

function shared(from: number, weights: readonly number[]): DayChances {
  const sum = weights.reduce((all, weight) => all + weight, 0);
  return { from, chances: sum > 0 ? weights.map((w) => w / sum) : weights.map(() => 1 / weights.length) };
}

/** Chances within a hard window, of which nothing is left out; null where they share no day. */
export function within(days: DayChances, low: number, high: number): DayChances | null {
  const from = Math.max(days.from, low);
  const to = Math.min(days.from + days.chances.length - 1, high);
  if (from > to) return null;
  const kept = days.chances.slice(from - days.from, to - days.from + 1);
  return kept.some((chance) => chance > 0) ? shared(from, kept) : null;
}

/** The fewest days in a row that hold four in five of the chances, and the middle day (the median). */
export function mostLikely(
  days: DayChances,
  share: number = MOST_LIKELY,
): { low: number; likely: number; high: number } {
  const { chances, from } = days;
  let best = { start: 0, end: chances.length - 1, sum: 1 };
  for (let start = 0; start < chances.length; start += 1) {
    let sum = 0;
    for (let end = start; end < chances.length; end += 1) {
      sum += chances[end] ?? 0;
      if (sum < share - 1e-9) continue;
      const shorter = end - start < best.end - best.start;
      if (shorter || (end - start === best.end - best.start && sum > best.sum)) best = { start, end, sum };
      break;
    }
  }
  let passed = 0;
  const middle = chances.findIndex((chance) => (passed += chance) >= 0.5);
  const likely = Math.min(best.end, Math.max(best.start, middle));
  return { low: from + best.start, likely: from + likely, high: from + best.end };
}
