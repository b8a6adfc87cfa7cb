/** The live foods: each jar's age and state, when to start the next, and which hatches are under way. */
import type { Because } from '../core/because.ts';
import { addDays, isoDay, type Day } from '../core/day.ts';
import type { DayWindow } from '../core/interval.ts';
import type { Measure } from '../core/quantity.ts';
import type { DeepReadonly } from '../core/readonly.ts';
import { linesOf, type LineRef } from '../core/span.ts';
import { dayWords, listWords, plural, windowWords } from '../core/words.ts';
import { foodClock, HATCH_HOURS, LEAST_JARS, type FoodClock } from '../science/foods.ts';
import type { Jar } from '../state/cultures.ts';
import type { SeenBrood } from '../state/bodies.ts';
import type { Room } from '../state/draft.ts';
import { clockOf, usualFor } from '../state/stageclock.ts';
import { rowId } from './id.ts';
import { expected } from './stages.ts';
import type { WhyRow } from './whyrow.ts';

export type JarState = 'not started' | 'young' | 'live' | 'old' | 'sour';

export interface JarRow {
  readonly id: string;
  readonly name: string;
  readonly of: string;
  readonly state: JarState;
  readonly started: Day | null;
  readonly ageDays: number | null;
  readonly harvestFrom: Day | null;
  readonly lastHarvest: Day | null;
  /** The day by which it is likely sour. */
  readonly sourBy: Day | null;
  /** The day on which it was found sour, or should be by now. */
  readonly ended: Day | null;
  readonly lines: readonly LineRef[];
  readonly because: Because;
}

/** All jars of one food. */
export interface FoodRow {
  readonly id: string;
  readonly of: string;
  readonly jars: readonly JarRow[];
  readonly live: number;
  /** The day on which the youngest live jar is old enough to start another from; null without a clock or a live jar. */
  readonly restart: Day | null;
  readonly because: Because;
  readonly lines: readonly LineRef[];
}

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

function givesOn(jar: JarRow, on: Day): boolean {
  if (jar.state === 'sour' || jar.state === 'not started' || jar.started === null) return false;
  return (jar.harvestFrom ?? jar.started) <= on && (jar.sourBy === null || jar.sourBy > on);
}

function jarRow(room: Room, jar: DeepReadonly<Jar>): JarRow {
  const clock = foodClock(jar.of);
  const started = jar.started?.day ?? null;
  const harvests = jar.harvests.filter(({ day }) => started === null || day >= started);
  const lines = linesOf([
    jar.started?.place ?? jar.declared,
    ...harvests.slice(-1).map(({ place }) => place),
    ...(jar.sour ? [jar.sour.place] : []),
  ]);
  const sourBy = started === null || clock === null ? null : addDays(started, clock.sour);
  const state = stateOf(room, jar, clock, sourBy);
  return {
    id: rowId(jar.name, 'jar'),
    name: jar.name,
    of: jar.of,
    state,
    started,
    ageDays: started === null ? null : room.on - started,
    harvestFrom: started === null || clock === null ? null : addDays(started, clock.first),
    lastHarvest: harvests.at(-1)?.day ?? null,
    sourBy,
    ended: jar.sour?.day ?? (state === 'old' ? sourBy : null),
    lines,
    because: {
      rule: 'a jar is as old as its last start; it gives food from its first harvest until it is sour',
      source: clock === null ? 'the journal' : `usual for ${jar.of}: common practice, no source`,
      steps: [
        started === null
          ? 'never started'
          : `started ${dayWords(started, room.on)}, ${plural(room.on - started, 'day')} ago`,
        ...(clock === null ? [`no usual times known for ${jar.of}`] : [clockWords(clock)]),
        `so it is ${state}`,
      ],
      lines,
    },
  };
}

/** Days before their first swim from which young are shown: the alarm is at four, a hatch takes two. */
const NEED_SHOWN_DAYS = 14;

function needRow(room: Room, brood: SeenBrood, jars: readonly JarRow[]): NeedRow[] {
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
  const covered =
    jar !== undefined
      ? `${jar.of} in ${jar.name}`
      : hatch !== undefined
        ? `${hatch.of} set ${dayWords(hatch.day, room.on)}`
        : null;
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

function stateOf(room: Room, jar: DeepReadonly<Jar>, clock: FoodClock | null, sourBy: Day | null): JarState {
  if (jar.sour !== null) return 'sour';
  if (jar.started === null) return 'not started';
  if (sourBy !== null && room.on >= sourBy) return 'old';
  return clock !== null && room.on - jar.started.day < clock.first ? 'young' : 'live';
}

function foodRow(room: Room, jars: readonly JarRow[]): FoodRow {
  const of = jars[0]?.of ?? '';
  const clock = foodClock(of);
  const live = jars.filter(({ state }) => state === 'live' || state === 'young');
  const newest = live.reduce<JarRow | null>(
    (last, jar) => (last === null || (jar.started ?? 0) > (last.started ?? 0) ? jar : last),
    null,
  );
  const restart =
    clock === null || newest?.started === undefined || newest.started === null
      ? null
      : addDays(newest.started, clock.restart);
  const lines = linesOf(jars.flatMap((jar) => jar.lines));
  return {
    id: rowId(of, 'jars'),
    of,
    jars,
    live: live.length,
    restart,
    because: {
      rule: `start a jar when the youngest live one has its days, and keep at least ${String(LEAST_JARS)} alive`,
      source: `usual for ${of}: common practice, no source`,
      steps: [
        live.length === 0
          ? 'no live jar'
          : `live: ${listWords(live.map(({ name, ageDays }) => `${name}, ${plural(ageDays ?? 0, 'day')} old`))}`,
        ...(clock === null ? [`no usual times known for ${of}`] : [clockWords(clock)]),
        ...(restart === null ? [] : [`the next is due ${dayWords(restart, room.on)}`]),
      ],
      lines,
    },
    lines,
  };
}

function clockWords({ first, restart, sour }: FoodClock): string {
  return `first harvest after ${plural(first, 'day')}, the next jar after ${plural(restart, 'day')}, sour by ${plural(sour, 'day')}`;
}

function hatchRow({ where, of, grams, day, place }: DeepReadonly<Room['cultures']['hatches'][number]>): HatchRow {
  const ready: DayWindow = {
    low: addDays(day, Math.floor(HATCH_HOURS.low / 24)),
    likely: addDays(day, Math.floor(HATCH_HOURS.low / 24)),
    high: addDays(day, Math.ceil(HATCH_HOURS.high / 24)),
  };
  return { id: rowId(where, 'hatch', isoDay(day)), where, of, grams, set: day, ready, lines: linesOf([place]) };
}
