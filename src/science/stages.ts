/**
 * Stage clocks: how long from laying to hatching, swimming free or release at a temperature.
 * D(T) = D_ref · Q10^((T_ref − T)/10). Evidence for Q10 is wide (about 1.8 from the zebrafish hours
 * formula of Kimmel et al. 1995; 5.8 from a mouthbrooding tilapia, 14.7 d at 25 °C and 7.3 d at 29 °C),
 * so the likely value uses 2.5 and the ends use both.
 */
import type { Guild } from '../core/guild.ts';
import { plus, middle } from '../core/interval.ts';
import type { Measure } from '../core/quantity.ts';
import { measure } from '../core/quantity.ts';
import { guildDefaults } from './guilds.ts';

export type ClockStage = 'hatch' | 'swim' | 'release';

/** °C at which the guilds' defaults are stated. */
export const REFERENCE_TEMPERATURE = 26;
/** Hours at 28.5 °C of any stage: it cancels out of a ratio. */
const ANY_STAGE = 48;
/** Rounded as the evidence allows: zebrafish between 25 and 30 °C, a mouthbrooding tilapia between 25 and 29 °C. */
export const Q10 = {
  low: tenths(
    q10Between({ days: zebrafishHours(ANY_STAGE, 25), at: 25 }, { days: zebrafishHours(ANY_STAGE, 30), at: 30 }),
  ),
  likely: 2.5,
  high: tenths(q10Between({ days: 14.7, at: 25 }, { days: 7.3, at: 29 })),
};

interface Took {
  readonly days: number;
  /** °C. */
  readonly at: number;
}

/** By how many times as fast something goes 10 °C warmer, from how long it took at two temperatures. */
export function q10Between(a: Took, b: Took): number {
  return (a.days / b.days) ** (10 / (b.at - a.at));
}

function tenths(value: number): number {
  return Math.round(value * 10) / 10;
}

/** What a warm room is taken to be where nobody measured (ours: a default). */
export const USUAL_TEMPERATURE: Measure<'C'> = measure('C', 25, 26, 27);

/** Factor on a duration stated at `reference` °C, when the water is `temperature` °C. */
export function q10Factor(q10: number, reference: number, temperature: number): number {
  return q10 ** ((reference - temperature) / 10);
}

/** A duration stated at 26 °C, at another temperature: both ends of the evidence for Q10. */
function atTemperature(duration: Measure<'days'>, temperature: Measure<'C'>): Measure<'days'> {
  const at = (days: number, celsius: number): number[] =>
    [Q10.low, Q10.likely, Q10.high].map((q) => days * q10Factor(q, REFERENCE_TEMPERATURE, celsius));
  const likely = middle(duration);
  const warm = middle(temperature);
  return measure(
    'days',
    Math.min(...at(duration.low, temperature.high), ...at(duration.low, temperature.low)),
    likely * q10Factor(Q10.likely, REFERENCE_TEMPERATURE, warm),
    Math.max(...at(duration.high, temperature.low), ...at(duration.high, temperature.high)),
  );
}

type StageDays = Measure<'days'> | null;

/** Clocks are asked for at every look: those of one reading of a thermometer are kept with it. */
const kept = new WeakMap<Measure<'C'>, Map<string, StageDays>>();

/** Days from laying to a stage, or null where that guild has no such stage (a livebearer does not hatch). */
export function stageDays(guild: Guild | null, stage: ClockStage, temperature: Measure<'C'> | null): StageDays {
  const celsius = temperature ?? USUAL_TEMPERATURE;
  const key = `${stage} ${guild ?? ''}`;
  const clocks = kept.get(celsius) ?? new Map<string, StageDays>();
  kept.set(celsius, clocks);
  const before = clocks.get(key);
  if (before !== undefined) return before;
  const days = workOutDays(guild, stage, celsius);
  clocks.set(key, days);
  return days;
}

function workOutDays(guild: Guild | null, stage: ClockStage, celsius: Measure<'C'>): StageDays {
  const usual = guildDefaults(guild);
  const base = stage === 'hatch' ? usual.hatch : stage === 'release' ? usual.release : sum(usual.hatch, usual.swim);
  return base === null ? null : atTemperature(base, celsius);
}

function sum(a: Measure<'days'> | null, b: Measure<'days'> | null): Measure<'days'> | null {
  return a === null || b === null ? null : { unit: 'days', ...plus(a, b) };
}

/**
 * Development time of zebrafish, hours at `celsius` for a stage that takes `hoursAt28` hours at 28.5 °C:
 * h / (0.055 T − 0.57). Kimmel et al. 1995, Dev. Dyn. 203:253. Kept as the published anchor of the clocks.
 */
export function zebrafishHours(hoursAt28: number, celsius: number): number {
  return hoursAt28 / (0.055 * celsius - 0.57);
}

/** Degree-days: Σ max(0, mean of the day − base). Definition: Dictionary of Ichthyology, "degree-day". */
export function degreeDays(dailyMeans: readonly number[], base: number): number {
  return dailyMeans.reduce((sum, mean) => sum + Math.max(0, mean - base), 0);
}
