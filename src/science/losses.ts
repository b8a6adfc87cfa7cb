/**
 * How many young go unseen a day, by where they stand in their life. Every number is ours, a default
 * between what keepers tell (common practice, no source); broods differ by a factor of two to three,
 * and the room's own counts take over where there are any.
 */
import type { Guild } from '../core/guild.ts';
import type { Share } from './headcount.ts';

/** Where young stand: in the egg, hatched, their first four weeks of swimming, after that. */
export type Phase = 'egg' | 'wriggler' | 'fry' | 'young';

/** Days after swimming free that they are small fry. */
export const FRY_DAYS = 28;

/** Standard deviation of the logarithm of the daily loss between broods (ours). */
const BETWEEN_BROODS = 0.8;

const USUAL: { readonly [P in Phase]: number } = { egg: 0.08, wriggler: 0.03, fry: 0.008, young: 0.001 };

const OTHERWISE: { readonly [G in Guild]?: Partial<typeof USUAL> } = {
  'open spawner': { egg: 0.15, wriggler: 0.05, fry: 0.015 },
  'egg scatterer': { egg: 0.25, wriggler: 0.08, fry: 0.02 },
  'bubble nester': { egg: 0.1, wriggler: 0.06, fry: 0.025 },
  mouthbrooder: { egg: 0.015, wriggler: 0.01, fry: 0.003 },
  livebearer: { egg: 0, wriggler: 0, fry: 0.005 },
};

/** Share of the young that is usually lost unseen a day. */
export function usualLoss(guild: Guild | null, phase: Phase): number {
  return (guild === null ? undefined : OTHERWISE[guild]?.[phase]) ?? USUAL[phase];
}

/** Deaths that the default weighs as much as: a room's own soon count for more (ours). */
const WORTH_DEATHS = 2;

/**
 * The daily loss that a room's own counts teach, drawn towards the usual: a gamma prior with Poisson
 * deaths, (2 + lost)/(2/usual + fish-days).
 */
export function learntLoss(usual: number, lost: number, fishDays: number): number {
  return usual <= 0 ? usual : (WORTH_DEATHS + lost) / (WORTH_DEATHS / usual + fishDays);
}

/** Broods as they differ: nodes and weights of a seven-point Gauss–Hermite rule for a standard normal. */
const NODES = [0, 1.1544053947399682, 2.366759410734541, 3.750439717725742];
const WEIGHTS = [0.45714285714285713, 0.2401231786050127, 0.030757123967586495, 0.000548268855972218];

/** Kinds of brood, by how many times the usual loss they have, with their shares; the shares come to 1. */
export const KINDS: readonly { readonly times: number; readonly weight: number }[] = NODES.flatMap((node, index) => {
  const weight = WEIGHTS[index] ?? 0;
  const at = (z: number): { times: number; weight: number } => ({ times: Math.exp(BETWEEN_BROODS * z), weight });
  return node === 0 ? [at(0)] : [at(-node), at(node)];
});

/** Share that lives through so many days at a daily loss, over broods as they differ. */
export function livesOn(loss: number, days: number): Share {
  const shares = KINDS.map(({ times, weight }) => ({ share: Math.exp(-loss * times * days), weight }));
  const mean = shares.reduce((all, { share, weight }) => all + share * weight, 0);
  return { mean, variance: shares.reduce((all, { share, weight }) => all + weight * (share - mean) ** 2, 0) };
}
