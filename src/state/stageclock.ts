/** Stage clocks for a brood: how old it can be at a stage, at the temperature of its tank. A clock is usual, not a fact. */
import type { Day } from '../core/day.ts';
import { addDays, toDay } from '../core/day.ts';
import type { Guild } from '../core/guild.ts';
import type { DayWindow, Interval } from '../core/interval.ts';
import { clamp, middle } from '../core/interval.ts';
import type { Measure } from '../core/quantity.ts';
import type { DeepReadonly } from '../core/readonly.ts';
import type { Stage } from '../journal/event.ts';
import { guildDefaults } from '../science/guilds.ts';
import { stageDays } from '../science/stages.ts';
import { reached } from './broodlife.ts';
import type { Room } from './draft.ts';
import type { Brood } from './stock.ts';
import { temperatureAt } from './temperature.ts';

/** Young that swim are noticed within so many days (ours); those that come out of a shell within twice that. */
const NOTICED_WITHIN = 7;
/** Still called just swimming so many days after the usual time (ours). */
const STILL_CALLED_SO = 21;
/** Stripped from the mouth at 14 to 18 days (common practice, no source); from 10 at the earliest (ours). */
const STRIPPED = { low: 10, likely: 16 };

/** The days from laying to each point of a life, for fish of that guild in that tank. */
export interface Clock {
  readonly guild: Guild | null;
  readonly hatch: Measure<'days'> | null;
  readonly swim: Measure<'days'> | null;
  readonly release: Measure<'days'> | null;
  /** What the clock was run at; null where nobody measured: then 25–27 °C is taken. */
  readonly temperature: {
    readonly value: Measure<'C'>;
    readonly line: { readonly file: string; readonly line: number } | null;
  } | null;
}

/** The guild that a species was declared with. */
export function guildOf(room: Room, species: string | null): Guild | null {
  return species === null ? null : (room.stock.species.get(species)?.traits.guild ?? null);
}

/** The clock for a species in a tank around a day. */
export function clockFor(room: Room, species: string | null, tank: string | null, day: Day): Clock {
  const guild = guildOf(room, species);
  const warmth = tank === null ? null : temperatureAt(room, tank, day);
  const value = warmth?.value ?? null;
  return {
    guild,
    hatch: stageDays(guild, 'hatch', value),
    swim: stageDays(guild, 'swim', value),
    release: stageDays(guild, 'release', value),
    temperature: warmth && {
      value: warmth.value,
      line: warmth.place && { file: warmth.place.file, line: warmth.place.line },
    },
  };
}

/** The clock of a brood: at the warmth of its first tank while it was young, so far as that was known by `room.on`. */
export function clockOf(room: Room, brood: DeepReadonly<Pick<Brood, 'species' | 'natal' | 'laid'>>): Clock {
  const early = brood.laid.likely ?? brood.laid.high ?? room.on;
  return clockFor(room, brood.species, brood.natal, toDay(Math.min(room.on, early + 10)));
}

/** Days from laying (birth) at which the young swim, however they come to it: by hatching, release or birth. */
export function swimDays(clock: Clock): Measure<'days'> {
  const none: Measure<'days'> = { unit: 'days', low: 0, likely: 0, high: 0 };
  return clock.swim ?? clock.release ?? none;
}

/** Ages from laying at which a look can find a stage, whole days outward. */
export function agesAt(clock: Clock, stage: Stage, seenBefore: boolean): Interval {
  const hatch = clock.hatch ?? { low: 0, likely: 0, high: 0 };
  const swim = swimDays(clock);
  const late = seenBefore ? Math.ceil(swim.high) + STILL_CALLED_SO : Infinity;
  switch (stage) {
    case 'eggs':
      return { low: 0, likely: null, high: Math.ceil(hatch.high) };
    case 'holding':
      return { low: 0, likely: null, high: Math.ceil(swim.high) };
    case 'hatched':
    case 'wrigglers':
      return { low: Math.floor(hatch.low), likely: null, high: Math.ceil(swim.high) };
    case 'free-swimming':
    case 'fry seen':
    case 'released':
      return { low: Math.floor(swim.low), likely: null, high: late };
    case 'stripped':
      return { low: Math.min(STRIPPED.low, Math.floor(swim.low)), likely: null, high: late };
    case 'born':
      return { low: 0, likely: null, high: 3 };
  }
}

/** True where a brood can be at a stage on the day of a look. */
export function canBeAt(room: Room, brood: DeepReadonly<Brood>, stage: Stage, seen: Day): boolean {
  const seenBefore = reached(brood, 'swam');
  const ages = agesAt(clockOf(room, brood), stage, seenBefore);
  const oldest = brood.laid.low === null ? Infinity : seen - brood.laid.low;
  const youngest = brood.laid.high === null ? 0 : seen - brood.laid.high;
  return oldest >= ages.low && youngest <= ages.high;
}

/**
 * When a brood first seen at a stage on a day was laid (born): cast back with the clock, and no earlier
 * than `noEggs`, the last look that found none.
 */
export function castBack(clock: Clock, stage: Stage, seen: Day, noEggs: Day | null): DayWindow {
  const hatch = clock.hatch ?? { low: 0, likely: 0, high: 0 };
  const swim = swimDays(clock);
  const back = (low: number, likely: number, high: number): DayWindow => {
    const latest = addDays(seen, -Math.floor(low));
    const earliest = Math.min(latest, Math.max(seen - Math.ceil(high), noEggs ?? -Infinity));
    return { low: toDay(earliest), likely: toDay(clamp(seen - Math.round(likely), earliest, latest)), high: latest };
  };
  switch (stage) {
    case 'eggs':
      return back(0, middle(hatch) / 2, hatch.high);
    case 'holding':
      return back(0, Math.min(3, swim.high / 2), swim.high);
    case 'hatched':
      return back(hatch.low, middle(hatch), swim.high);
    case 'wrigglers':
      return back(hatch.low, (middle(hatch) + middle(swim)) / 2, swim.high);
    case 'free-swimming':
    case 'released':
      return back(swim.low, middle(swim) + 1, swim.high + NOTICED_WITHIN);
    case 'fry seen':
      return back(swim.low, middle(swim) + NOTICED_WITHIN, swim.high + 2 * NOTICED_WITHIN);
    case 'stripped':
      return back(Math.min(STRIPPED.low, swim.low), STRIPPED.likely, swim.high);
    case 'born':
      return back(0, 0, 0);
  }
}

/** The usual numbers of a brood's guild. */
export function usualFor(clock: Clock): ReturnType<typeof guildDefaults> {
  return guildDefaults(clock.guild);
}
