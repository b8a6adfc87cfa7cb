/**
 * How long the fish of a brood or bought-in group are on a day: what is usual for such fish, moved by
 * the room's own earlier broods and by every length that was read. Lengths read after the best were
 * taken out weigh less, so that selling the largest is no shrinkage.
 */
import type { Because } from '../core/because.ts';
import { addDays } from '../core/day.ts';
import type { Day } from '../core/day.ts';
import type { DayWindow, Interval } from '../core/interval.ts';
import { clamp, exactly } from '../core/interval.ts';
import type { Measure } from '../core/quantity.ts';
import type { DeepReadonly } from '../core/readonly.ts';
import { linesOf } from '../core/span.ts';
import { median } from '../core/stats.ts';
import { ageWords, dayWords, plural, rangeWords } from '../core/words.ts';
import { BROOD_CV, EYE_ERROR, bandAt, growthLine, meanFromExtreme, topOf, usualRates } from '../science/growth.ts';
import type { GrowthLine, GrowthPrior, MeanReading } from '../science/growth.ts';
import { aliveTotal, isBrood } from '../state/bodies.ts';
import type { SeenBody, SeenBrood } from '../state/bodies.ts';
import { since } from '../state/broodlife.ts';
import type { Room } from '../state/draft.ts';
import { clockOf, guildOf, swimDays, usualFor } from '../state/stageclock.ts';
import type { SizeSeen } from '../state/stock.ts';
import { guildDefaults } from '../science/guilds.ts';

export interface Growth {
  /** Ages of this line count from here: laying, birth, or the first length of fish of unknown age. */
  readonly born: DayWindow;
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
/** A brood of the room teaches its species once it was read at this age, days (ours). */
const TAUGHT_AT = 40;

/** How a brood or group grows, or null for fish of which neither age nor any length is known. */
export function growthOf(room: Room, body: SeenBody): Growth | null {
  const start = startOf(room, body);
  if (start === null) return null;
  const { born, prior } = start;
  const readings = readingsOf(room, body, born);
  const taught = taughtRate(room, body);
  const used = taught === null ? prior : withRate(prior, taught.rate);
  const line = growthLine(used, readings);
  const usual = `usual for ${guildOf(room, body.species) ?? 'substrate spawner'}s`;
  const basis = [
    readings.length > 0 ? plural(readings.length, 'reading') : 'no reading',
    taught === null ? usual : `${plural(taught.broods, 'brood')} of this room`,
  ].join(', ');
  return { born, line, readings, basis, because: becauseOf(room, body, line, readings, taught, used, usual) };
}

/** The mean length on a day, mm with 80 % limits; null before they swim and where nothing is known. */
export function sizeOn(room: Room, body: SeenBody, on: Day = room.on): Measure<'mm'> | null {
  const growth = growthOf(room, body);
  if (growth === null || (isBrood(body) && body.swam === null && body.released === null)) return null;
  const age = since(growth.born, on);
  const finite = Number.isFinite(age.high) ? age.high : age.low;
  // Nobody is shorter than when they first swim, or longer than grown.
  const least = guildDefaults(guildOf(room, body.species)).swimSize.low;
  const most = adultSize(room, body);
  const at = (days: number, side: 'low' | 'likely' | 'high'): number =>
    clamp(bandAt(growth.line, days)[side] ?? 0, least, most);
  const likely = at(age.likely ?? (age.low + finite) / 2, 'likely');
  return { unit: 'mm', low: at(age.low, 'low'), likely, high: at(finite, 'high') };
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

function startOf(room: Room, body: SeenBody): { born: DayWindow; prior: GrowthPrior } | null {
  const usual = guildDefaults(guildOf(room, body.species));
  const later = { laterAge: usual.saleAge, laterSize: usual.saleSize.likely ?? usual.saleSize.low };
  if (isBrood(body)) {
    const prior = { startAge: swimDays(clockOf(room, body)), startSize: usual.swimSize, ...later };
    return body.laid.low === null && body.laid.high === null ? null : { born: body.laid, prior };
  }
  if (body.born !== null) {
    return { born: body.born, prior: { startAge: exactly(7), startSize: usual.swimSize, ...later } };
  }
  const first = body.sizes.find((seen) => !seen.replaced);
  if (!first) return null;
  const mean = meanOf(first, aliveTotal(body), false);
  const born: DayWindow = { low: first.day, likely: first.day, high: first.day };
  const size = { low: mean.mean - mean.error, likely: mean.mean, high: mean.mean + mean.error };
  const rates = usualRates({ startAge: exactly(7), startSize: usual.swimSize, ...later });
  const days = (rate: number): number => 20 / rate;
  const laterAge = { low: days(rates.high), likely: days(rates.likely), high: days(rates.low) };
  return { born, prior: { startAge: exactly(0), startSize: size, laterAge, laterSize: mean.mean + 20 } };
}

function readingsOf(room: Room, body: SeenBody, born: DayWindow): UsedReading[] {
  return body.sizes
    .filter((seen) => !seen.replaced)
    .map((seen) => ({
      ...meanOf(seen, partCount(body, seen), isSelected(room, body, seen)),
      age: since(born, seen.day),
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

/** The usual rate of growth of this species in this room: the median over other broods that were read late enough. */
function taughtRate(room: Room, body: SeenBody): { rate: Interval; broods: number } | null {
  if (body.species === null) return null;
  const rates = ratesOf(room, body.species)
    .filter(({ brood }) => brood !== body.name)
    .map(({ rate }) => rate);
  const middle = median(rates);
  if (middle === null || rates.length < 2) return null;
  const spread = Math.max(0.15 * middle, (Math.max(...rates) - Math.min(...rates)) / 2);
  return { rate: { low: middle - spread, likely: middle, high: middle + spread }, broods: rates.length };
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

type Rates = readonly { readonly brood: string; readonly rate: number }[];

/** Rates worked out so far: a room never changes, and every row of an answer asks for the same ones. */
const known = new WeakMap<Room, Map<string, Rates>>();

function ratesOf(room: Room, species: string): Rates {
  const bySpecies = known.get(room) ?? new Map<string, Rates>();
  known.set(room, bySpecies);
  const before = bySpecies.get(species);
  if (before) return before;
  const rates = [...room.stock.broods.values()]
    .filter((brood) => brood.species === species && brood.oneOf.length === 0)
    .flatMap((brood) => {
      const rate = ownRate(room, brood);
      return rate === null ? [] : [{ brood: brood.name, rate }];
    });
  bySpecies.set(species, rates);
  return rates;
}

function ownRate(room: Room, brood: SeenBrood): number | null {
  const start = startOf(room, brood);
  if (start === null) return null;
  const readings = readingsOf(room, brood, start.born).filter((reading) => !isSelected(room, brood, reading.seen));
  if (readings.every((reading) => reading.age.low < TAUGHT_AT)) return null;
  return growthLine(start.prior, readings).rate.likely;
}

/** The prior with another rate: the same later size, at another age. */
function withRate(prior: GrowthPrior, rate: Interval): GrowthPrior {
  const start = prior.startAge.likely ?? prior.startAge.low;
  const rise = prior.laterSize - (prior.startSize.likely ?? prior.startSize.low);
  const age = (mmADay: number): number => start + rise / Math.max(1e-3, mmADay);
  const likely = age(rate.likely ?? (rate.low + rate.high) / 2);
  return { ...prior, laterAge: { low: age(rate.high), likely, high: age(Math.max(rate.low, rate.high / 4)) } };
}

function becauseOf(
  room: Room,
  body: SeenBody,
  line: GrowthLine,
  readings: readonly UsedReading[],
  taught: { rate: Interval; broods: number } | null,
  prior: GrowthPrior,
  usual: string,
): Because {
  const weekly = (rate: Interval): Interval => ({
    low: rate.low * 7,
    likely: rate.likely === null ? null : rate.likely * 7,
    high: rate.high * 7,
  });
  return {
    rule: 'mean length rises in a straight line from swimming free to sale; what is usual and every length read count by their certainty',
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
  const age = ageWords(reading.age);
  return `${dayWords(reading.day, room.on)}, at ${age}: ${sizes.of} ${said} mm, so the mean is about ${reading.mean.toFixed(1)} mm, give or take ${reading.error.toFixed(1)}`;
}

/** The day on which fish born in a window are of an age, days. */
export function dayAt(born: DayWindow, age: Interval): DayWindow {
  const at = (day: Day | null, days: number | null): Day | null =>
    day === null || days === null || !Number.isFinite(days) ? null : addDays(day, Math.round(days));
  return {
    low: at(born.low ?? born.high, age.low),
    likely: at(born.likely, age.likely),
    high: at(born.high, age.high),
  };
}

/** The usual numbers for a brood's fish. */
export function usualOf(room: Room, brood: SeenBrood): ReturnType<typeof usualFor> {
  return usualFor(clockOf(room, brood));
}
