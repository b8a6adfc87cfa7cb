/** The picture of a brood's or group's growth: mean length as a band, what was read, and the size at which it sells. */
import { middle } from '../../core/interval.ts';
import { addDays, type Day } from '../../core/day.ts';
import { windowWords } from '../../core/words.ts';
import { aliveTotal, type SeenBody } from '../../state/bodies.ts';
import type { Room } from '../../state/draft.ts';
import { growthOf, sizeOn, type Growth } from '../growing.ts';
import { rowId } from '../id.ts';
import { saleableFrom, type Saleable } from '../saleable.ts';
import type { BandPoint, Chart, ChartPoint, Series } from './model.ts';

/** Points of the curve; days shown beyond the day asked about; the longest look ahead, days. */
const POINTS = 60;
const AHEAD = 28;
const FURTHEST = 400;

/** Null for fish of which neither age nor any length is known, and for young that do not swim yet. */
export function growthChart(room: Room, body: SeenBody, since: Day | null): Chart | null {
  const growth = growthOf(room, body);
  if (growth === null) return null;
  const sale = saleableFrom(room, body);
  const curve = curveOf(room, body, spanOf(room, body, growth, sale, since));
  if (curve.length === 0) return null;
  const size = sale?.size ?? null;
  return {
    id: rowId('chart growth', body.name),
    title: `growth of ${body.name}`,
    up: 'length, mm',
    fromZero: true,
    series: [
      { kind: 'band', name: 'mean length, 8 of 10 times', points: curve },
      { kind: 'line', name: 'likely mean', points: curve.map(({ day, likely }) => ({ day, value: likely })) },
      ...readings(growth, since),
    ],
    marks: size === null ? [] : [{ name: 'for sale at', value: size }],
    moments: [],
    on: room.on,
    basis: [`rests on ${growth.basis}`, ...(sale === null ? [] : [saleWords(room, sale)])],
    because: {
      ...(sale?.because ?? growth.because),
      rule:
        'the band is the mean length that what is usual and every length read make together; of a largest or ' +
        'smallest fish the mean is worked back first, so its dot stands off what was written.',
    },
    lines: growth.because.lines,
  };
}

function saleWords(room: Room, { rule, first, half, all }: Saleable): string {
  const by = [first, half, all].map((window) => windowWords(window, room.on));
  if (by.every((words) => words === by[0])) return `for sale at ${rule}: ${by[0] ?? ''}`;
  return `for sale at ${rule}: the first ${by[0] ?? ''}, half ${by[1] ?? ''}, all ${by[2] ?? ''}`;
}

function spanOf(
  room: Room,
  body: SeenBody,
  { born, readings: used }: Growth,
  sale: Saleable | null,
  since: Day | null,
): readonly [Day, Day] {
  const from = since ?? born.low ?? born.likely ?? born.high ?? room.on;
  const lastRead = used.at(-1)?.day ?? from;
  const gone = body.gone.at(-1)?.day ?? room.on;
  const here = aliveTotal(body).high > 0;
  const ahead = here ? Math.max(addDays(room.on, AHEAD), sale?.all.likely ?? 0) : Math.max(lastRead, gone);
  const to = Math.min(Math.max(ahead, lastRead), addDays(here ? room.on : lastRead, FURTHEST));
  return [from, addDays(from, Math.max(1, to - from))];
}

type CurvePoint = BandPoint & { readonly likely: number };

function curveOf(room: Room, body: SeenBody, [from, to]: readonly [Day, Day]): CurvePoint[] {
  const count = Math.min(POINTS, to - from);
  const days = Array.from({ length: count + 1 }, (_, i) => addDays(from, Math.round(((to - from) * i) / count)));
  const swam = 'laid' in body ? (body.swam ?? body.released) : null;
  const first = swam === null ? from : (swam.likely ?? swam.low ?? swam.high ?? from);
  return days.flatMap((day) => {
    const size = day < first ? null : sizeOn(room, body, day);
    if (size === null) return [];
    return [{ day, low: size.low, likely: middle(size), high: size.high }];
  });
}

function readings({ readings: used }: Growth, since: Day | null): Series[] {
  const shown = used.filter(({ day }) => since === null || day >= since);
  const means = shown.map(({ day, mean, error }): ChartPoint => {
    return { day, value: mean, low: Math.max(0, mean - error), high: mean + error };
  });
  const extreme = (of: 'largest' | 'smallest'): Series[] => {
    const points = shown.flatMap(({ day, seen }): ChartPoint[] =>
      seen.sizes.of !== of
        ? []
        : seen.sizes.values.map((size) => ({ day, value: middle(size), low: size.low, high: size.high })),
    );
    return points.length === 0 ? [] : [{ kind: 'readings', name: `${of} as read`, points }];
  };
  return [
    ...(means.length === 0 ? [] : [{ kind: 'readings', name: 'mean, from each reading', points: means } as const]),
    ...extreme('largest'),
    ...extreme('smallest'),
  ];
}
