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
import type { DeepReadonly } from '../core/readonly.ts';
import { linesOf } from '../core/span.ts';
import { ageWords, dayWords, plural, rangeWords } from '../core/words.ts';
import { BROOD_CV, EYE_ERROR, bandAt, growthLine, meanFromExtreme, topOf, usualRates } from '../science/growth.ts';
import type { GrowthLine, GrowthPrior, MeanReading } from '../science/growth.ts';
import { aliveTotal, isBrood } from '../state/bodies.ts';
import type { SeenBody, SeenBrood } from '../state/bodies.ts';
import type { Room } from '../state/draft.ts';
import { clockOf, guildOf, swimDays, usualFor } from '../state/stageclock.ts';
import type { SizeSeen } from '../state/stock.ts';
import { guildDefaults } from '../science/guilds.ts';
import { datesOf } from './laying.ts';

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

export interface UsedReading extends MeanReading {
  readonly day: Day;
  readonly seen: DeepReadonly<SizeSeen>;
}

/** Share by which a mean worked out from the largest or smallest fish may be off (ours). */
const EXTREME_ERROR = 0.06;
/** The same where the best, or some of them, had been taken out before (ours). */
const SELECTED_ERROR = 0.15;
/** Grown fish are at least so many times as long as those that sell (ours). */
const GROWN = 2.5;
/** Fish taken for a brood of unknown number. */
const SOME = 30;
/** Only so many broods of a species teach, the latest: they say nearly all, and a room of thirty years has thousands (ours). */
const TEACHERS = 24;
/** A brood of the room teaches its species once it was read at this age, days (ours). */
const TAUGHT_AT = 40;

const growths = new WeakMap<Room, WeakMap<SeenBody, { readonly growth: Growth | null }>>();

/** How a brood or group grows, or null for fish of which neither age nor any length is known. Worked out once a room. */
export function growthOf(room: Room, body: SeenBody): Growth | null {
  const ofRoom = growths.get(room) ?? new WeakMap<SeenBody, { readonly growth: Growth | null }>();
  growths.set(room, ofRoom);
  const before = ofRoom.get(body);
  if (before) return before.growth;
  const growth = workOut(room, body);
  ofRoom.set(body, { growth });
  return growth;
}

function workOut(room: Room, body: SeenBody): Growth | null {
  const start = startOf(room, body);
  if (start === null) return null;
  const { born, anchor, prior } = start;
  const readings = readingsOf(room, body, anchor);
  const taught = taughtPace(room, body, prior);
  const used = taught === null ? prior : { ...prior, laterAge: taught.laterAge };
  const line = growthLine(used, readings);
  const usual = `usual for ${guildOf(room, body.species) ?? 'substrate spawner'}s`;
  const basis = [
    readings.length > 0 ? plural(readings.length, 'reading') : 'no reading',
    taught === null ? usual : `${plural(taught.broods, 'brood')} of this room`,
  ].join(', ');
  return { born, anchor, line, readings, basis, because: becauseOf(room, body, line, readings, taught, used, usual) };
}

/** The mean length on a day, mm with 80 % limits; null before they swim and where nothing is known. */
export function sizeOn(room: Room, body: SeenBody, on: Day = room.on): Measure<'mm'> | null {
  const growth = growthOf(room, body);
  if (growth === null || (isBrood(body) && body.swam === null && body.released === null)) return null;
  // Nobody is shorter than when they first swim, or longer than grown.
  const least = guildDefaults(guildOf(room, body.species)).swimSize.low;
  const most = adultSize(room, body);
  const band = bandAt(growth.line, on - growth.anchor);
  const at = (value: number): number => clamp(value, least, most);
  return { unit: 'mm', low: at(band.low), likely: at(band.likely ?? band.low), high: at(band.high) };
}

/** Length of grown fish of that species, mm: as declared, else of the largest breeder, or so many times the sale size. */
export function adultSize(room: Room, body: SeenBody): number {
  const declared = body.species === null ? null : (room.stock.species.get(body.species)?.traits.adult?.high ?? null);
  if (declared !== null) return declared;
  const breeders = [...room.stock.groups.values()].filter(({ species }) => species === body.species);
  const lengths = breeders.flatMap(({ members }) => members.map(({ size }) => size?.high ?? 0));
  const { saleSize } = guildDefaults(guildOf(room, body.species));
  return Math.max(GROWN * (saleSize.likely ?? saleSize.low), ...lengths);
}

interface Start {
  readonly born: DayWindow;
  readonly anchor: Day;
  readonly prior: GrowthPrior;
}

function startOf(room: Room, body: SeenBody): Start | null {
  const usual = guildDefaults(guildOf(room, body.species));
  const later = {
    laterAge: usual.saleAge,
    laterSize: usual.saleSize.likely ?? usual.saleSize.low,
    grown: adultSize(room, body),
  };
  if (isBrood(body)) {
    const { laid, mostLikely } = datesOf(room, body);
    const startAge = exactly(startAgeOf(room, body));
    return from(laid, mostLikely.laid, { startAge, startSize: usual.swimSize, ...later });
  }
  if (body.born !== null) {
    return from(body.born, body.born, { startAge: exactly(7), startSize: usual.swimSize, ...later });
  }
  const first = body.sizes.find((seen) => !seen.replaced);
  if (!first) return null;
  const mean = meanOf(first, aliveTotal(body), false);
  const born: DayWindow = { low: first.day, likely: first.day, high: first.day };
  const size = { low: mean.mean - mean.error, likely: mean.mean, high: mean.mean + mean.error };
  const rates = usualRates({ startAge: exactly(7), startSize: usual.swimSize, ...later });
  const days = (rate: number): number => 20 / rate;
  const laterAge = { low: days(rates.high), likely: days(rates.likely), high: days(rates.low) };
  const grown = Math.max(later.grown, mean.mean + 30);
  return from(born, born, {
    startAge: exactly(0),
    startSize: size,
    laterAge,
    laterSize: mean.mean + 20,
    grown,
  });
}

/** Days from laying to swimming free: as the clock has it, or as both were seen. */
function startAgeOf(room: Room, brood: SeenBrood): number {
  const { mostLikely, swims } = datesOf(room, brood);
  const swam = mostLikely.swam ?? mostLikely.released ?? swims;
  const laid = mostLikely.laid.likely;
  const usual = swimDays(clockOf(room, brood));
  if (laid === null || swam?.likely === null || swam?.likely === undefined) return usual.likely ?? usual.low;
  return Math.max(0, swam.likely - laid);
}

/** Ages count from the likely day; the most likely days say by how much that may be off. */
function from(born: DayWindow, likely: DayWindow, prior: GrowthPrior): Start | null {
  const anchor = likely.likely ?? likely.high ?? likely.low;
  if (anchor === null) return null;
  const off = { low: (likely.low ?? anchor) - anchor, likely: 0, high: (likely.high ?? anchor) - anchor };
  return { born, anchor, prior: off.low === off.high ? prior : { ...prior, bornOff: off } };
}

function readingsOf(room: Room, body: SeenBody, anchor: Day): UsedReading[] {
  return body.sizes
    .filter((seen) => !seen.replaced)
    .map((seen) => ({
      ...meanOf(seen, partCount(body, seen), isSelected(room, body, seen)),
      age: seen.day - anchor,
      day: seen.day,
      seen,
    }));
}

function partCount(body: SeenBody, seen: DeepReadonly<SizeSeen>): Interval {
  return (seen.tank === null ? undefined : body.parts.get(seen.tank)) ?? aliveTotal(body);
}

/** What a written length says of the mean, and how surely. */
function meanOf(seen: DeepReadonly<SizeSeen>, count: Interval, selected: boolean): { mean: number; error: number } {
  const values = seen.sizes.values.map((value) => value.likely ?? (value.low + value.high) / 2);
  const wide = seen.sizes.values.reduce((most, value) => Math.max(most, value.high - value.low), 0);
  const value = values.reduce((sum, one) => sum + one, 0) / Math.max(1, values.length);
  const number = Number.isFinite(count.high) ? (count.likely ?? (count.low + count.high) / 2) : (count.likely ?? SOME);
  const top = topOf(Math.max(1, Math.round(number)));
  const more = selected ? SELECTED_ERROR * value : 0;
  switch (seen.sizes.of) {
    case 'largest':
    case 'smallest': {
      const mean = meanFromExtreme(value, seen.sizes.of === 'largest' ? top : -top);
      return { mean, error: Math.hypot(EYE_ERROR, wide / 2, EXTREME_ERROR * mean, more) };
    }
    case 'average':
    case 'bulk':
      return { mean: value, error: Math.hypot(EYE_ERROR, more) };
    case 'sample':
      return {
        mean: value,
        error: Math.hypot((EYE_ERROR + BROOD_CV * value) / Math.sqrt(Math.max(1, values.length)), more),
      };
  }
}

/** True where, before a reading, fish had been picked out by size: sold ones are the best. */
function isSelected(room: Room, body: SeenBody, seen: DeepReadonly<SizeSeen>): boolean {
  const sold = body.gone.some(
    (gone) => (gone.how === 'sold' || gone.how === 'gave away' || gone.how === 'culled') && gone.day <= seen.day,
  );
  return sold || (pickedDays(room).get(body.name) ?? []).some((day) => day < seen.day);
}

interface Taught {
  readonly laterAge: Interval;
  readonly broods: number;
}

/** How far the broods of one room differ in the days that they take, as a share (ours). */
const BROODS_DIFFER = 0.12;

/**
 * When this room's broods of that species reach the later size: what is usual, moved by what the others
 * did, each by its certainty (normal means of means: e.g. Gelman et al., chapter 5, from memory). One
 * brood teaches a little, several nearly all.
 */
function taughtPace(room: Room, body: SeenBody, prior: GrowthPrior): Taught | null {
  if (body.species === null) return null;
  const others = pacesOf(room, body.species).filter(({ brood }) => brood !== body.name);
  if (others.length === 0) return null;
  const usual = growthLine({ ...prior, startAge: exactly(0), laterAge: lessDays(prior) }, []).pace;
  const between = BROODS_DIFFER ** 2;
  let precision = 1 / Math.max(usual.sd ** 2 - between, usual.sd ** 2 / 4);
  let sum = usual.mean * precision;
  for (const other of others) {
    const weight = 1 / (other.variance + between);
    precision += weight;
    sum += other.mean * weight;
  }
  const sd = Math.sqrt(1 / precision + between);
  const start = prior.startAge.likely ?? prior.startAge.low;
  const age = (z: number): number => start + Math.exp(sum / precision + z * sd);
  return { laterAge: { low: age(-1.2816), likely: age(0), high: age(1.2816) }, broods: others.length };
}

function lessDays(prior: GrowthPrior): Interval {
  const start = prior.startAge.likely ?? prior.startAge.low;
  const { low, likely, high } = prior.laterAge;
  return { low: low - start, likely: (likely ?? (low + high) / 2) - start, high: high - start };
}

/** Days on which the largest or smallest of a body were moved, by body: worked out once a room. */
const picked = new WeakMap<Room, ReadonlyMap<string, readonly Day[]>>();

function pickedDays(room: Room): ReadonlyMap<string, readonly Day[]> {
  const before = picked.get(room);
  if (before) return before;
  const days = new Map<string, Day[]>();
  for (const move of room.stock.moves) {
    if (move.which !== 'any') days.set(move.body, [...(days.get(move.body) ?? []), move.day]);
  }
  picked.set(room, days);
  return days;
}

type Paces = readonly { readonly brood: string; readonly mean: number; readonly variance: number }[];

/** Paces worked out so far: a room never changes, and every row of an answer asks for the same ones. */
const known = new WeakMap<Room, Map<string, Paces>>();

function pacesOf(room: Room, species: string): Paces {
  const bySpecies = known.get(room) ?? new Map<string, Paces>();
  known.set(room, bySpecies);
  const before = bySpecies.get(species);
  if (before) return before;
  const paces: Paces[number][] = [];
  for (const brood of [...room.stock.broods.values()].reverse()) {
    if (paces.length >= TEACHERS) break;
    if (brood.species !== species || brood.oneOf.length > 0) continue;
    const pace = ownPace(room, brood);
    if (pace !== null) paces.push({ brood: brood.name, ...pace });
  }
  bySpecies.set(species, paces);
  return paces;
}

/** What the readings of a brood alone say of its pace: the usual is taken out again, since it is not news. */
function ownPace(room: Room, brood: SeenBrood): { mean: number; variance: number } | null {
  if (brood.sizes.length === 0) return null;
  const start = startOf(room, brood);
  if (start === null) return null;
  const readings = readingsOf(room, brood, start.anchor).filter((reading) => !isSelected(room, brood, reading.seen));
  if (readings.every((reading) => reading.age < TAUGHT_AT)) return null;
  const before = growthLine(start.prior, []).pace;
  const after = growthLine(start.prior, readings).pace;
  const news = 1 / after.sd ** 2 - 1 / before.sd ** 2;
  if (news <= 0) return null;
  const mean = (after.mean / after.sd ** 2 - before.mean / before.sd ** 2) / news;
  return { mean, variance: 1 / news };
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
    lines: linesOf([...body.lines.slice(0, 1), ...readings.map((reading) => reading.seen.place)]),
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

/** The usual numbers for a brood's fish. */
export function usualOf(room: Room, brood: SeenBrood): ReturnType<typeof usualFor> {
  return usualFor(clockOf(room, brood));
}
