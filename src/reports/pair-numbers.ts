/** The numbers of a pair as JSON. */
import type { PairNumbers } from '../questions/pairs/numbers.ts';
import type { Durations } from '../questions/pairs/quarrels.ts';
import { countJson, linesJson } from './json.ts';

export function numbersJson({ disputes, broods }: PairNumbers): object {
  const { durations, recurrence, gaps, lightsOff } = disputes;
  const { afterEarly, afterKept, failures, white, clutches, raised, survival } = broods;
  return {
    disputes: {
      durations: durationsJson(durations),
      recurrence: recurrence === null ? null : { ...recurrence, per90: countJson(recurrence.per90) },
      peaceDays: gaps.days,
      peaceShortens: gaps.closing,
      lightsOff: {
        with: durationsJson(lightsOff.with),
        without: durationsJson(lightsOff.without),
        verdict: lightsOff.verdict,
      },
      lines: linesJson(disputes.because.lines),
    },
    broods: {
      daysToNext: { afterEarly, afterKept },
      failures,
      whiteEggs: white,
      clutches,
      raised:
        raised === null
          ? null
          : { young: countJson(raised.young), tankWeeks: raised.tankWeeks, perTankWeek: countJson(raised.perWeek) },
      survival: { broods: survival.broods, medianDays: survival.median, curve: survival.steps },
      lines: linesJson(broods.because.lines),
    },
  };
}

function durationsJson({ ended, atLeast, median, curve }: Durations): object {
  return { ended, atLeast, medianDays: median, curve };
}
