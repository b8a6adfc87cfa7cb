/** The picture of a prefilter: levels read, cleans, the lip, and the window in which it will spill, as `loops` gives it. */
import { addDays, type Day } from '../../core/day.ts';
import type { DayWindow } from '../../core/interval.ts';
import { middle } from '../../core/interval.ts';
import type { DeepReadonly } from '../../core/readonly.ts';
import { linesOf } from '../../core/span.ts';
import { windowWords } from '../../core/words.ts';
import type { Room } from '../../state/draft.ts';
import type { Loop } from '../../state/plumbing.ts';
import { trueLevels } from '../../state/prefilter.ts';
import { rowId } from '../id.ts';
import { loops, type LoopRow } from '../loops.ts';
import { isFull } from '../../state/prefilter.ts';
import type { Chart, ChartPoint, Series } from './model.ts';

/** Days shown back unless told otherwise, and ahead at most. */
const BACK = 180;
const AHEAD = 120;

export function levelChart(room: Room, loop: DeepReadonly<Loop>, since: Day | null): Chart | null {
  const row = loops(room).find(({ name }) => name === loop.name);
  const from = since ?? addDays(room.on, -BACK);
  const levels = trueLevels(loop).filter(({ day }) => day >= from);
  const points = levels.map(({ day, level }): ChartPoint => {
    return { day, value: middle(level), low: level.low, high: level.high };
  });
  const last = points.at(-1);
  if (row === undefined || last === undefined) return null;
  const cleans = loop.cleans.filter(({ day }) => day >= from);
  const lip = middle(loop.spillsAt);
  const spill = row.outlook?.spill ?? row.spill;
  const cleanedSince = cleans.some(({ day }) => day > last.day);
  return {
    id: rowId('chart level', loop.name),
    title: `prefilter of ${loop.name}`,
    up: 'level, mm above the chamber floor',
    fromZero: true,
    series: [
      { kind: 'readings', name: 'level read', points },
      ...(lip === null || spill === null || cleanedSince ? [] : expected(room, last, spill, lip)),
    ],
    marks: lip === null ? [] : [{ name: 'spills at', value: lip }],
    moments: [
      { name: 'all layers cleaned', days: cleans.filter(isFull).map(({ day }) => day) },
      { name: 'some layers cleaned', days: cleans.filter((clean) => !isFull(clean)).map(({ day }) => day) },
    ].filter(({ days }) => days.length > 0),
    on: room.on,
    basis: basisOf(room, row),
    because: row.because,
    lines: linesOf([loop.declared, ...levels.map(({ place }) => place), ...cleans.map(({ place }) => place)]),
  };
}

function basisOf(room: Room, { outlook, spill, early, whyNoSpill, nextClean, notes }: LoopRow): string[] {
  const odds = outlook === null ? [] : [`8 in 10 spill ${windowWords(outlook.spill, room.on)}`];
  const spills =
    spill === null
      ? (whyNoSpill ?? 'no forecast')
      : early
        ? `an early guess, as clogging quickens: it spills ${windowWords(spill, room.on)}`
        : `by its levels alone it spills ${windowWords(spill, room.on)}`;
  const clean = nextClean === null ? [] : [`full clean ${windowWords(nextClean, room.on)}`];
  return [[...odds, ...clean].join('; '), spills, ...notes].filter((text) => text !== '');
}

/** From the last level to the lip: the earliest day above, the latest below, cut off where it is far. */
function expected(room: Room, from: ChartPoint, { low, likely, high }: DayWindow, lip: number): Series[] {
  if (low === null || high === null || from.value >= lip || high <= from.day) return [];
  const end = addDays(room.on, AHEAD);
  const at = (day: Day, by: Day): number =>
    by <= from.day ? lip : Math.min(lip, from.value + ((lip - from.value) * (day - from.day)) / (by - from.day));
  const days = [...new Set([from.day, low, likely ?? low, high, end])]
    .filter((day) => day >= from.day && day <= high && day <= end)
    .toSorted((a, b) => a - b);
  const line = likely === null || likely <= from.day ? [] : days.filter((day) => day <= likely);
  return [
    {
      kind: 'band',
      name: 'expected, 8 times in 10',
      points: days.map((day) => ({ day, low: at(day, high), high: at(day, low) })),
    },
    ...(likely === null || line.length === 0
      ? []
      : [{ kind: 'line', name: 'likely', points: line.map((day) => ({ day, value: at(day, likely) })) } as const]),
  ];
}
