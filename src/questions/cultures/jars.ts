/** Jars of live food: how old each is, whether it still gives, and when to start the next of its kind. */
import type { Because } from '../../core/because.ts';
import { addDays, type Day } from '../../core/day.ts';
import type { DeepReadonly } from '../../core/readonly.ts';
import { linesOf, type LineRef } from '../../core/span.ts';
import { dayWords, listWords, plural } from '../../core/words.ts';
import { foodClock, LEAST_JARS, type FoodClock } from '../../science/foods.ts';
import type { Jar } from '../../state/cultures.ts';
import type { Room } from '../../state/draft.ts';
import { rowId } from '../id.ts';

type JarState = 'not started' | 'young' | 'live' | 'old' | 'sour';

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

/** True where a jar gives a harvest on a day. */
export function givesOn(jar: JarRow, on: Day): boolean {
  if (jar.state === 'sour' || jar.state === 'not started' || jar.started === null) return false;
  const alive =
    jar.sourBy === null || jar.sourBy > on || (jar.lastHarvest !== null && on - jar.lastHarvest <= GIVES_DAYS);
  return (jar.harvestFrom ?? jar.started) <= on && alive;
}

export function jarRow(room: Room, jar: DeepReadonly<Jar>): JarRow {
  const clock = foodClock(jar.of);
  const started = jar.started?.day ?? null;
  const harvest = jar.harvests.findLast(({ day }) => started === null || day >= started);
  const lines = linesOf([
    jar.started?.place ?? jar.declared,
    ...(harvest ? [harvest.place] : []),
    ...(jar.sour ? [jar.sour.place] : []),
  ]);
  const sourBy = started === null || clock === null ? null : addDays(started, clock.sour);
  // A harvest past that day showed it alive for some days more.
  const died =
    sourBy === null || harvest === undefined ? sourBy : laterDay(sourBy, addDays(harvest.day, GIVES_DAYS + 1));
  const state = stateOf(room, jar, clock, sourBy);
  return {
    id: rowId(jar.name, 'jar'),
    name: jar.name,
    of: jar.of,
    state,
    started,
    ageDays: started === null ? null : room.on - started,
    harvestFrom: started === null || clock === null ? null : addDays(started, clock.first),
    lastHarvest: harvest?.day ?? null,
    sourBy,
    ended: jar.sour?.day ?? (state === 'old' ? died : null),
    lines,
    because: {
      rule: 'a jar is as old as its last start; it gives food from its first harvest until it is sour',
      source: clock === null ? 'the journal' : `usual for ${jar.of}: common practice, no source`,
      steps: [
        started === null
          ? 'never started'
          : `started ${dayWords(started, room.on)}, ${plural(room.on - started, 'day')} ago`,
        ...(clock === null ? [`no usual times known for ${jar.of}`] : [clockWords(clock)]),
        ...(state === 'live' && sourBy !== null && room.on >= sourBy && harvest !== undefined
          ? [`harvested ${dayWords(harvest.day, room.on)}, which shows it alive for ${plural(GIVES_DAYS, 'day')}`]
          : []),
        `so it is ${state}`,
      ],
      lines,
    },
  };
}

/** Days after a harvest for which a jar is alive, whatever its age (ours). */
const GIVES_DAYS = 10;

function stateOf(room: Room, jar: DeepReadonly<Jar>, clock: FoodClock | null, sourBy: Day | null): JarState {
  if (jar.sour !== null) return 'sour';
  if (jar.started === null) return 'not started';
  const { day: start } = jar.started;
  const last = jar.harvests.findLast(({ day }) => day >= start)?.day ?? null;
  const gives = last !== null && room.on - last <= GIVES_DAYS;
  if (sourBy !== null && room.on >= sourBy && !gives) return 'old';
  return clock !== null && room.on - jar.started.day < clock.first ? 'young' : 'live';
}

/** Foods whose jars are renewed at least so often are kept in several jars; slow ones do in one (ours). */
export const FAST_DAYS = 30;
/** Days past the restart of a slow food, or without a live jar, after which the keeper evidently does otherwise (ours). */
export const GIVEN_UP_DAYS = 60;

export function foodRow(room: Room, jars: readonly JarRow[]): FoodRow {
  const of = jars[0]?.of ?? '';
  const clock = foodClock(of);
  const live = jars.filter(({ state }) => state === 'live' || state === 'young');
  const newest = live.reduce<JarRow | null>(
    (last, jar) => (last === null || (jar.started ?? 0) > (last.started ?? 0) ? jar : last),
    null,
  );
  const due = clock === null || newest === null ? null : nextStart(newest, jars, clock);
  const slow = clock !== null && clock.restart > FAST_DAYS;
  const restart = due !== null && slow && room.on - due > GIVEN_UP_DAYS ? null : due;
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

/**
 * A jar started later than the youngest live one put the next off until its own day, or until it ended; and where one is
 * left of several the next is due once that gives, but not before the others ended.
 */
function nextStart(newest: JarRow, jars: readonly JarRow[], clock: FoodClock): Day | null {
  const { started, harvestFrom } = newest;
  if (started === null) return null;
  const later = jars.flatMap((jar) => {
    if (jar.ended === null || jar.started === null || jar.started <= started) return [];
    const own = addDays(jar.started, clock.restart);
    return [own < jar.ended ? own : jar.ended];
  });
  const usual = later.reduce(laterDay, addDays(started, clock.restart));
  const others = jars.filter((jar) => jar !== newest);
  const few = others.length > 0 && others.every(({ ended, state }) => ended !== null || state === 'not started');
  if (!few || clock.restart > FAST_DAYS || harvestFrom === null) return usual;
  const alone = others.flatMap(({ ended }) => ended ?? []).reduce(laterDay, harvestFrom);
  return alone < usual ? alone : usual;
}

function laterDay(a: Day, b: Day): Day {
  return a > b ? a : b;
}

function clockWords({ first, restart, sour }: FoodClock): string {
  return `first harvest after ${plural(first, 'day')}, the next jar after ${plural(restart, 'day')}, sour by ${plural(sour, 'day')}`;
}
