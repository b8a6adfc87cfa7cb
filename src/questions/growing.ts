/**
 * How long the fish of a brood or bought-in group are on a day: what is usual for such fish, moved by
 * the room's own earlier broods and by every length that was read. Lengths read after the best were
 * taken out weigh less, so that selling the largest is no shrinkage.
 */
import type { Because } from '../core/because.ts';
import { toDay } from '../core/day.ts';
import type { Day } from '../core/day.ts';
import type { DayWindow, Interval } from '../core/interval.ts';
import { clamp, exactly } from '../core/interval.ts';
import type { Measure } from '../core/quantity.ts';
import { linesOf } from '../core/span.ts';
import { ageWords, dayWords, plural, rangeWords } from '../core/words.ts';
import { bandAt, growthLine, usualRates } from '../science/growth.ts';
import type { GrowthLine, GrowthPrior } from '../science/growth.ts';
import { beginningOf, isBrood } from '../state/bodies.ts';
import type { SeenBody } from '../state/bodies.ts';
import type { Room } from '../state/draft.ts';
import { guildOf } from '../state/stageclock.ts';
import { guildDefaults } from '../science/guilds.ts';
import { adultSize, readingsOf, startOf } from './growing/start.ts';
import type { UsedReading } from './growing/start.ts';
import { sortedIn, type Sorted } from './growing/sorted.ts';
import { taughtPace } from './growing/taught.ts';
import type { Taught } from './growing/taught.ts';
import { onceFor, onceIn } from './holds/once.ts';

export { adultSize } from './growing/start.ts';
export type { UsedReading } from './growing/start.ts';

export interface Growth {
  /** When they were laid or born; for fish of unknown age, their first length. */
  readonly born: DayWindow;
  /** The day that ages of `line` and `readings` count from: the likely one of `born`. How far that may be off is in the line. */
  readonly anchor: Day;
  readonly line: GrowthLine;
  readonly readings: readonly UsedReading[];
  /** What it rests on, in a few words. */
  readonly basis: string;
  readonly because: Because;
}

/** How a brood or group grows, or null for fish of which neither age nor any length is known. */
export const growthOf = onceFor((room: Room, body: SeenBody) => workOut(room, body, (readings) => readings));

/** The same by what was read of those in one tank, where fish were parted by size. */
export const growthIn = onceIn((room: Room, body: SeenBody, tank: string): Growth | null => {
  const sorted = sortedIn(room, body, tank);
  return sorted === null ? growthOf(room, body) : workOut(room, body, (all) => ofSide(all, tank, sorted));
});

/** Lengths read before the sorting, and since then those of that tank, as what they say of the mean of all. */
function ofSide(readings: readonly UsedReading[], tank: string, { day, times }: Sorted): UsedReading[] {
  return readings.flatMap((reading) => {
    if (reading.day <= day) return [reading];
    if (reading.seen.tank !== tank) return [];
    return [
      {
        mean: reading.mean / times.likely,
        error: reading.error / times.likely,
        age: reading.age,
        day: reading.day,
        seen: reading.seen,
      },
    ];
  });
}

function workOut(
  room: Room,
  body: SeenBody,
  use: (readings: readonly UsedReading[]) => readonly UsedReading[],
): Growth | null {
  const start = startOf(room, body);
  if (start === null) return null;
  const { born, anchor, prior } = start;
  const readings = use(readingsOf(room, body, anchor));
  const taught = taughtPace(room, body, prior);
  const used = taught === null ? prior : { ...prior, laterAge: taught.laterAge };
  const line = growthLine(used, readings);
  const usual = `usual for ${guildOf(room, body.species) ?? 'substrate spawner'}s`;
  const basis = [
    readings.length > 0 ? plural(readings.length, 'reading') : 'no reading',
    taught === null ? usual : `${plural(taught.broods, 'brood')} of this room`,
  ].join(', ');
  // Most are asked only how long they are.
  let because: Because | null = null;
  return {
    born,
    anchor,
    line,
    readings,
    basis,
    get because() {
      return (because ??= becauseOf(room, body, line, readings, taught, used, usual));
    },
  };
}

/**
 * The mean length on a day, mm with 80 % limits; null before they swim and where nothing is known. With a tank, of those
 * that live there: the larger and the rest of a sorted brood are not of one length.
 */
export function sizeOn(
  room: Room,
  body: SeenBody,
  on: Day = room.on,
  tank: string | null = null,
): Measure<'mm'> | null {
  const growth = tank === null ? growthOf(room, body) : growthIn(room, body, tank);
  if (growth === null || (isBrood(body) && body.swam === null && body.released === null)) return null;
  // Nobody is shorter than when they first swim, or longer than grown.
  const least = guildDefaults(guildOf(room, body.species)).swimSize.low;
  const most = adultSize(room, body);
  const band = bandAt(growth.line, on - growth.anchor);
  const times = tank === null ? ALL : timesIn(room, body, tank);
  const at = (value: number): number => clamp(value, least, most);
  return {
    unit: 'mm',
    low: at(band.low * times.low),
    likely: at((band.likely ?? band.low) * times.likely),
    high: at(band.high * times.high),
  };
}

const ALL = { low: 1, likely: 1, high: 1 };

/** Mean length of those in a tank over that of all by which they grow; one number once a length was read there. */
export function timesIn(room: Room, body: SeenBody, tank: string): Sorted['times'] {
  const sorted = sortedIn(room, body, tank);
  if (sorted === null) return ALL;
  const { likely } = sorted.times;
  return sorted.read ? { low: likely, likely, high: likely } : sorted.times;
}

function becauseOf(
  room: Room,
  body: SeenBody,
  line: GrowthLine,
  readings: readonly UsedReading[],
  taught: Taught | null,
  prior: GrowthPrior,
  usual: string,
): Because {
  const weekly = (rate: Interval): Interval => ({
    low: rate.low * 7,
    likely: rate.likely === null ? null : rate.likely * 7,
    high: rate.high * 7,
  });
  return {
    rule: 'mean length rises from swimming free, ever more slowly towards grown size; what is usual and every length read count by their certainty',
    source:
      taught === null
        ? `${usual} (common practice, no source), and the journal`
        : 'the journal: earlier broods of this room, and the readings',
    steps: [
      `${taught === null ? usual : `${plural(taught.broods, 'earlier brood')} of this room`}: ${rangeWords(weekly(usualRates(prior)), 1)} mm a week`,
      ...readings.map((reading) => readingWords(room, reading)),
      `together: ${rangeWords(weekly(line.rate), 1)} mm a week`,
    ],
    lines: linesOf([...beginningOf(body), ...readings.map((reading) => reading.seen.place)]),
  };
}

function readingWords(room: Room, reading: UsedReading): string {
  const { sizes } = reading.seen;
  const said = sizes.values.map((value) => rangeWords(value)).join(', ');
  const age = ageWords(exactly(Math.max(0, reading.age)));
  return `${dayWords(reading.day, room.on)}, at ${age}: ${sizes.of} ${said} mm, so the mean is about ${reading.mean.toFixed(1)} mm, give or take ${reading.error.toFixed(1)}`;
}

/** The days on which fish are of an age that the line gives. */
export function dayAt({ anchor }: Growth, age: Interval): DayWindow {
  const at = (days: number | null): Day | null =>
    days === null || !Number.isFinite(days) ? null : toDay(anchor + Math.round(days));
  return { low: at(age.low), likely: at(age.likely), high: at(age.high) };
}
