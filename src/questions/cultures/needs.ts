/** Young that will swim soon: what they will eat, and whether it will be there. */
import type { Because } from '../../core/because.ts';
import { addDays } from '../../core/day.ts';
import type { DayWindow } from '../../core/interval.ts';
import { linesOf, type LineRef } from '../../core/span.ts';
import { dayWords, listWords, windowWords } from '../../core/words.ts';
import { foodClock, HATCH_HOURS } from '../../science/foods.ts';
import type { SeenBrood } from '../../state/bodies.ts';
import type { Room } from '../../state/draft.ts';
import { clockOf, usualFor } from '../../state/stageclock.ts';
import { rowId } from '../id.ts';
import { expected } from '../stages.ts';
import { givesOn, type JarRow } from './jars.ts';

/** Young that will swim soon, and what they will eat. */
export interface NeedRow {
  readonly id: string;
  readonly brood: string;
  readonly tanks: readonly string[];
  readonly swims: DayWindow;
  /** First foods of such young, the usual one first. */
  readonly foods: readonly string[];
  /** The days on which to set a hatch, so that it is out on the first day on which they may swim; null where they eat other things. */
  readonly setHatch: DayWindow | null;
  /** What is there for them by then: a jar, a hatch; null: nothing. */
  readonly covered: string | null;
  readonly because: Because;
  readonly lines: readonly LineRef[];
}

/** Days before their first swim from which young are shown: the alarm is at four, a hatch takes two. */
const NEED_SHOWN_DAYS = 14;

export function needRow(room: Room, brood: SeenBrood, jars: readonly JarRow[]): NeedRow[] {
  if (brood.suspected || brood.ended !== null || brood.total.high <= 0) return [];
  const swims = expected(room, brood, 'swim');
  if (swims === null || swims.low === null || swims.low - room.on > NEED_SHOWN_DAYS) return [];
  if (swims.high !== null && swims.high < room.on) return [];
  const first = swims.low > room.on ? swims.low : room.on;
  const foods = usualFor(clockOf(room, brood)).firstFood;
  const eatsShrimp = foods.includes('brine shrimp');
  const set = {
    low: addDays(first, -Math.ceil(HATCH_HOURS.high / 24)),
    high: addDays(first, -Math.floor(HATCH_HOURS.low / 24)),
  };
  const jar = jars.find(
    (one) =>
      foods.some((food) => foodClock(food) === foodClock(one.of) && foodClock(food) !== null) && givesOn(one, first),
  );
  const hatch = room.cultures.hatches.findLast(({ day }) => eatsShrimp && day >= set.low && day <= first);
  const dry = foods.find((food) => food.includes('flake'));
  const covered =
    jar !== undefined
      ? `${jar.of} in ${jar.name}`
      : hatch !== undefined
        ? `${hatch.of} set ${dayWords(hatch.day, room.on)}`
        : dry === undefined
          ? null
          : `${dry} will do`;
  const lines = linesOf([
    ...brood.lines.slice(0, 1),
    ...brood.looks.slice(-1).map(({ place }) => place),
    ...(jar?.lines ?? []),
    ...(hatch ? [hatch.place] : []),
  ]);
  return [
    {
      id: rowId(brood.name, 'first food'),
      brood: brood.name,
      tanks: [...brood.parts.keys()],
      swims,
      foods,
      setHatch: eatsShrimp ? { low: set.low, likely: set.high, high: set.high } : null,
      covered,
      because: {
        rule: 'young starve within days of swimming free: their first food is ready on the first day on which they may swim',
        source: 'first foods and a hatch of 24 to 36 hours: common practice, no source',
        steps: [
          `${brood.name} swims ${windowWords(swims, room.on)}`,
          `such young first eat ${listWords(foods)}`,
          ...(eatsShrimp
            ? [`set brine shrimp ${windowWords({ low: set.low, likely: set.high, high: set.high }, room.on)}`]
            : []),
          covered ?? 'no live jar and no hatch for them in the journal',
        ],
        lines,
      },
      lines,
    },
  ];
}
