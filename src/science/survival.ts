/**
 * Survival with fish that left alive (sold, moved): Kaplan & Meier 1958, Greenwood's standard error, and
 * log-log limits. On a tied day deaths come before removals.
 */

/** So many fish that died, left alive, or came under watch, on a day (days since the brood's anchor). */
export interface Leaving {
  readonly day: number;
  readonly died: number;
  readonly left: number;
  /** Fish that are only known of from that day on: they are at risk after it. */
  readonly entered?: number;
}

export interface SurvivalStep {
  readonly day: number;
  readonly atRisk: number;
  readonly died: number;
  readonly survival: number;
  /** Null once none is left: no spread can be told. */
  readonly se: number | null;
  readonly low: number | null;
  readonly high: number | null;
}

const Z95 = 1.959963984540054;

/** The curve at each day with a death; `start` fish at day 0. */
export function survivalCurve(start: number, leavings: readonly Leaving[], z = Z95): readonly SurvivalStep[] {
  const days = byDay(leavings);
  const steps: SurvivalStep[] = [];
  let atRisk = start;
  let survival = 1;
  let greenwood = 0;
  for (const { day, died, left, entered } of days) {
    if (died > 0 && atRisk > 0) {
      survival *= 1 - died / atRisk;
      greenwood += died / (atRisk * (atRisk - died));
      steps.push({ day, atRisk, died, survival, ...limits(survival, greenwood, z) });
    }
    atRisk += entered - died - left;
  }
  return steps;
}

/** One entry a day: what happens on one day happens to the same fish at risk. */
function byDay(leavings: readonly Leaving[]): Required<Leaving>[] {
  const days = new Map<number, Required<Leaving>>();
  for (const { day, died, left, entered = 0 } of leavings) {
    const old = days.get(day) ?? { day, died: 0, left: 0, entered: 0 };
    days.set(day, { day, died: old.died + died, left: old.left + left, entered: old.entered + entered });
  }
  return [...days.values()].sort((a, b) => a.day - b.day);
}

function limits(survival: number, greenwood: number, z: number): Pick<SurvivalStep, 'se' | 'low' | 'high'> {
  if (survival <= 0 || survival >= 1 || !Number.isFinite(greenwood)) return { se: null, low: null, high: null };
  const se = survival * Math.sqrt(greenwood);
  const spread = (z * se) / (survival * Math.log(survival));
  return { se, low: survival ** Math.exp(-spread), high: survival ** Math.exp(spread) };
}

/** First day at which half are gone; null while more live. */
export function medianSurvival(steps: readonly SurvivalStep[]): number | null {
  return steps.find((step) => step.survival <= 0.5)?.day ?? null;
}
