/** The picture of a brood's survival: the share alive after each loss; fish sold or given away leave, but do not die. */
import { addDays, type Day } from '../../core/day.ts';
import { dayWords } from '../../core/words.ts';
import type { SeenBrood } from '../../state/bodies.ts';
import type { Room } from '../../state/draft.ts';
import { rowId } from '../id.ts';
import { survivalOf } from '../survival.ts';
import type { Chart, ChartPoint } from './model.ts';

/** Null where nobody ever gave a number. */
export function survivalChart(room: Room, brood: SeenBrood): Chart | null {
  const found = survivalOf(room, brood);
  if (found === null) return null;
  const { from, start, steps, says, counted, because } = found;
  const dayOf = (days: number): Day => addDays(from, days);
  const losses = steps.map(({ day, survival, low, high }): ChartPoint => {
    return { day: dayOf(day), value: survival * 100, low: (low ?? survival) * 100, high: (high ?? survival) * 100 };
  });
  const first: ChartPoint = { day: from, value: 100 };
  const last = losses.at(-1) ?? first;
  const until: ChartPoint = { day: brood.total.high > 0 ? room.on : last.day, value: last.value };
  const number = Math.round(start.likely ?? start.low);
  return {
    id: rowId('chart survival', brood.name),
    title: `survival of ${brood.name}`,
    up: `alive, % of ${counted ? '' : 'about '}${number} on ${dayWords(from, room.on)}`,
    fromZero: true,
    series: [
      { kind: 'steps', name: 'alive', points: [first, ...losses, until] },
      { kind: 'readings', name: 'after a loss, with 95 % limits', points: losses },
    ],
    marks: [],
    moments: [],
    on: room.on,
    basis: [`${Math.round(last.value)} % of them lived to ${dayWords(until.day, room.on)}: ${says}`],
    because,
    lines: because.lines,
  };
}
