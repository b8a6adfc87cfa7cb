/** The live foods: each jar's age and state, when to start the next, and which hatches are under way. */
import { addDays, isoDay, type Day } from '../core/day.ts';
import type { DayWindow } from '../core/interval.ts';
import type { Measure } from '../core/quantity.ts';
import type { DeepReadonly } from '../core/readonly.ts';
import { linesOf, type LineRef } from '../core/span.ts';
import { HATCH_HOURS } from '../science/foods.ts';
import type { Room } from '../state/draft.ts';
import { foodRow, givesOn, jarRow, type FoodRow, type JarRow } from './cultures/jars.ts';
import { needRow, type NeedRow } from './cultures/needs.ts';
import { rowId } from './id.ts';
import type { WhyRow } from './whyrow.ts';

export type { FoodRow, JarRow } from './cultures/jars.ts';
export type { NeedRow } from './cultures/needs.ts';

export interface HatchRow {
  readonly id: string;
  readonly where: string;
  readonly of: string;
  readonly grams: Measure<'g'> | null;
  readonly set: Day;
  /** The days in which they can be fed. */
  readonly ready: DayWindow;
  readonly lines: readonly LineRef[];
}

export interface CulturesAnswer {
  readonly foods: readonly FoodRow[];
  readonly needs: readonly NeedRow[];
  readonly hatches: readonly HatchRow[];
}

/** Days for which a hatch stays in the answer: ready, then eaten. */
const HATCH_SHOWN_DAYS = 3;

export function cultures(room: Room): CulturesAnswer {
  const jars = [...room.cultures.jars.values()].map((jar) => jarRow(room, jar));
  const names = [...new Set(jars.map(({ of }) => of.toLowerCase()))];
  return {
    foods: names.map((name) =>
      foodRow(
        room,
        jars.filter(({ of }) => of.toLowerCase() === name),
      ),
    ),
    needs: [...room.stock.living.values()].flatMap((brood) => needRow(room, brood, jars)),
    hatches: room.cultures.hatches.filter(({ day }) => room.on - day <= HATCH_SHOWN_DAYS).map(hatchRow),
  };
}

export function culturesWhy(room: Room): readonly WhyRow[] {
  const { foods, needs } = cultures(room);
  const hungry = needs.map(({ id, brood, because, lines }) => ({ id, title: `${brood} first food`, because, lines }));
  const kept = foods.flatMap((food) => [
    { id: food.id, title: `${food.of} jars`, because: food.because, lines: food.lines },
    ...food.jars.map((jar) => ({
      id: jar.id,
      title: `${jar.name} ${jar.of} jar`,
      because: jar.because,
      lines: jar.lines,
    })),
  ]);
  return [...kept, ...hungry];
}

/** Live foods that can be fed on a day: jars that give a harvest, and hatches that are out. */
export function liveFood(room: Room, on: Day = room.on): { jars: readonly JarRow[]; hatches: readonly HatchRow[] } {
  const jars = [...room.cultures.jars.values()].map((jar) => jarRow(room, jar));
  const hatches = room.cultures.hatches.filter(({ day }) => on - day <= HATCH_SHOWN_DAYS).map(hatchRow);
  const out = ({ low, high }: DayWindow): boolean => low !== null && high !== null && low <= on && high >= on;
  return { jars: jars.filter((jar) => givesOn(jar, on)), hatches: hatches.filter(({ ready }) => out(ready)) };
}

function hatchRow({ where, of, grams, day, place }: DeepReadonly<Room['cultures']['hatches'][number]>): HatchRow {
  const ready: DayWindow = {
    low: addDays(day, Math.floor(HATCH_HOURS.low / 24)),
    likely: addDays(day, Math.floor(HATCH_HOURS.low / 24)),
    high: addDays(day, Math.ceil(HATCH_HOURS.high / 24)),
  };
  return { id: rowId(where, 'hatch', isoDay(day)), where, of, grams, set: day, ready, lines: linesOf([place]) };
}
