/** What became of a brood, as lines of text and as JSON. */
import type { StageSurvival, Survival } from '../questions/survival.ts';
import { countJson, dayJson, linesJson } from './json.ts';
import type { Look } from './look.ts';
import { dayText, plural, shareWords } from './words.ts';

/** Three lines at most: from stage to stage, what became of them, the curve in words. Limits only where all was counted: they know nothing of guesses. */
export function survivalLines(survival: Survival, look: Look): string[] {
  const { stages, steps, says, from, median, start, counted } = survival;
  const last = steps.at(-1);
  return [
    ...(stages.length === 0 ? [] : [`lived from stage to stage: ${stages.map(stageWords).join(', ')}`]),
    `of ${String(start.likely ?? start.low)} since ${dayText(from, look)}: ${says}${counted ? '' : ' (by guesses)'}`,
    ...(last === undefined
      ? []
      : [
          `${percent(last.survival)} % lived ${plural(last.day, 'day')}${!counted || last.low === null || last.high === null ? '' : ` (${percent(last.low)}–${percent(last.high)} %, 95 % limits)`}, sold and moved fish counted as alive${median === null ? '' : `; half were lost by day ${String(median)}`}`,
        ]),
  ];
}

function stageWords({ from, to, share }: StageSurvival): string {
  return `${from.at} to ${to.at} ${shareWords(share)}`;
}

function percent(share: number): string {
  return String(Math.round(share * 100));
}

export function survivalJson(survival: Survival): object {
  const { from, start, counted, stages, steps, fates, median, because } = survival;
  return {
    from: dayJson(from),
    start: countJson(start),
    counted,
    stages: stages.map(({ from: a, to: b, share }) => ({
      from: a.at,
      to: b.at,
      fromDay: dayJson(a.day),
      toDay: dayJson(b.day),
      fromCount: countJson(a.count),
      toCount: countJson(b.count),
      share,
    })),
    curve: steps,
    medianDays: median,
    fates,
    lines: linesJson(because.lines),
  };
}
