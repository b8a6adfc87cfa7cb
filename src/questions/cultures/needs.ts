/** Young that will swim soon: what they will eat, and whether it will be there. */
import type { Because } from '../../core/because.ts';
import { addDays, type Day } from '../../core/day.ts';
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

/** What is there for young by their first day: a jar that bears, a hatch set in time, or food that keeps. */
function coverOf(
  room: Room,
  foods: readonly string[],
  jars: readonly JarRow[],
  { from, first }: { readonly from: Day; readonly first: Day },
): { readonly covered: string | null; readonly places: readonly LineRef[] } {
  const eaten = foods.map(foodClock).filter((clock) => clock !== null);
  const jar = jars.find((one) => eaten.some((clock) => clock === foodClock(one.of)) && givesOn(one, first));
  const hatch = room.cultures.hatches.findLast(
    ({ day }) => foods.includes('brine shrimp') && day >= from && day <= first,
  );
  const places = [...(jar?.lines ?? []), ...(hatch ? [hatch.place] : [])];
  if (jar !== undefined) return { covered: `${jar.of} in ${jar.name}`, places };
  if (hatch !== undefined) return { covered: `${hatch.of} set ${dayWords(hatch.day, room.on)}`, places };
  const dry = foods.find((food) => food.includes('flake'));
  return { covered: dry === undefined ? null : `${dry} will do`, places };
}

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
  const { covered, places } = coverOf(room, foods, jars, { from: set.low, first });
  const lines = linesOf([...brood.lines.slice(0, 1), ...brood.looks.slice(-1).map(({ place }) => place), ...places]);
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
