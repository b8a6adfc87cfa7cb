/** Laying day: looks on random days, a temperature read in half of the rooms, the day itself never seen. */
import { isoDay } from '../../../src/core/day.ts';
import { datesOf } from '../../../src/questions/laying.ts';
import { BEGIN, keeperOf, LAYING, lifeOf, normalDraw, opening, pick, randomFrom, stageLines } from '../simulate.ts';
import { roomFrom } from './frame.ts';
import type { Calibration } from './frame.ts';

export const LAYING_DAY: Calibration = {
  name: 'laying day',
  unit: 'days',
  trial: (seed) => {
    const random = randomFrom(seed);
    const life = lifeOf(random, pick(random, LAYING), BEGIN);
    const { lines, last } = stageLines(random, life, keeperOf(random));
    const measured = random() < 0.5;
    const read = `${isoDay(BEGIN)} A1: test ${(life.celsius + normalDraw(random, 0, 0.3)).toFixed(1)} C`;
    const start = [...opening(life.guild), ...(measured ? [read] : [])];
    const brood = broodIn([...start, ...lines], isoDay(last));
    const first = lines.find((line) => !line.includes('no eggs'));
    if (brood === null || first === undefined) return null;
    // The default alone: the first sighting, cast back by what is usual, with no other look and no temperature.
    const alone = broodIn([...opening(life.guild), first], isoDay(last));
    if (alone === null) return null;
    return { truth: Math.floor(life.laid), window: brood.likely, default: alone.hard };
  },
};

function broodIn(lines: readonly string[], on: string): { likely: Window; hard: Window } | null {
  const room = roomFrom(lines.join('\n'), on);
  const brood = [...room.stock.broods.values()].find((one) => !one.suspected);
  if (!brood || room.stock.broods.size !== 1) return null;
  const { laid, mostLikely } = datesOf(room, brood);
  const hard = closed(laid);
  const likely = closed(mostLikely.laid);
  return hard && likely && { hard, likely };
}

interface Window {
  readonly low: number;
  readonly high: number;
}

function closed({ low, high }: { readonly low: number | null; readonly high: number | null }): Window | null {
  return low === null || high === null ? null : { low, high };
}
