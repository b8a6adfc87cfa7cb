/**
 * Broods whose truth is known, and the journal lines that a keeper would write of them. Truth is drawn
 * from the ranges that are usual for a guild, with draws of its own; nothing here asks the tool.
 */
import { addDays, dayFromIso, isoDay, toDay } from '../../src/core/day.ts';
import type { Day } from '../../src/core/day.ts';
import type { Guild } from '../../src/core/guild.ts';
import type { Interval } from '../../src/core/interval.ts';
import { guildDefaults } from '../../src/science/guilds.ts';
import { randomFrom } from './generate.ts';

export type Random = () => number;

export { randomFrom };

export function uniform(random: Random, low: number, high: number): number {
  return low + (high - low) * random();
}

/** Triangular: sum of the two sides by chance (inverse distribution function). */
export function triangularDraw(random: Random, range: Interval): number {
  const { low, high } = range;
  const mode = range.likely ?? (low + high) / 2;
  const u = random();
  if (high <= low) return low;
  return u < (mode - low) / (high - low)
    ? low + Math.sqrt(u * (high - low) * (mode - low))
    : high - Math.sqrt((1 - u) * (high - low) * (high - mode));
}

/** Normal, by Box and Muller. */
export function normalDraw(random: Random, mean = 0, sd = 1): number {
  return mean + sd * Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
}

export function pick<T>(random: Random, list: readonly [T, ...T[]]): T {
  return list[Math.floor(random() * list.length)] ?? list[0];
}

export const BEGIN: Day = dayFromIso('2026-01-01') ?? toDay(20_454);

/** Guilds whose broods are looked for as eggs, wrigglers and swimmers. */
export const LAYING: readonly [Guild, ...Guild[]] = [
  'cave spawner',
  'substrate spawner',
  'open spawner',
  'rock spawner',
  'shell spawner',
];

export interface Life {
  readonly guild: Guild;
  /** °C, the truth; a keeper's thermometer shows it to about a third of a degree. */
  readonly celsius: number;
  /** Days of the calendar with fractions: the moment of each event. */
  readonly laid: number;
  readonly hatched: number;
  readonly swam: number;
}

/** A life of a brood: stage times drawn from the guild's range, at a temperature and a Q10 that nobody knows. */
export function lifeOf(random: Random, guild: Guild, from: Day): Life {
  const usual = guildDefaults(guild);
  const celsius = uniform(random, 24.5, 27.5);
  const q10 = Math.exp(triangularDraw(random, { low: Math.log(1.8), likely: Math.log(2.5), high: Math.log(5.8) }));
  const pace = q10 ** ((26 - celsius) / 10);
  const laid = from + uniform(random, 6, 22);
  const hatched = laid + triangularDraw(random, usual.hatch ?? { low: 0, likely: 0, high: 0 }) * pace;
  const swam = hatched + triangularDraw(random, usual.swim ?? { low: 0, likely: 0, high: 0 }) * pace;
  return { guild, celsius, laid, hatched, swam };
}

/** Opening lines of a room with one pair. */
export function opening(guild: Guild, saleAt = 28, adult = 75, since = -200): string[] {
  const at = isoDay(addDays(BEGIN, since));
  return [
    `${at} room: units metric; currency EUR; zone Europe/Vienna`,
    `${at} tank A1: 100 L; alone; sponge filter`,
    `${at} tank C1: 200 L; alone; sponge filter`,
    `${at} species anomala: Nannacara anomala; ${guild}; sale at ${String(saleAt)} mm; adult ${String(adult)} mm`,
    `${at} pair Rowan: anomala; male 75 mm; female 50 mm; in A1`,
  ];
}

/** How well a keeper looks: the chance of a look on any day, and of looking into the nest at all. */
export interface Keeper {
  readonly looks: number;
  readonly sees: number;
  readonly tellsNone: number;
  /** The chance of writing that all is well where nothing was seen. */
  readonly tellsWell: number;
}

export function keeperOf(random: Random): Keeper {
  return {
    looks: uniform(random, 0.25, 0.75),
    sees: uniform(random, 0.4, 0.9),
    tellsNone: uniform(random, 0.1, 0.5),
    tellsWell: uniform(random, 0, 1),
  };
}

/**
 * What a keeper writes of a brood from before its laying until it was first seen swimming: on random
 * days, at random hours, sometimes without looking into the nest. Swimmers nobody overlooks.
 */
export function stageLines(random: Random, life: Life, keeper: Keeper): { lines: string[]; last: Day } {
  const lines: string[] = [];
  let sawWrigglers = false;
  let day = toDay(life.laid - 10);
  for (; day < life.swam + 30; day = addDays(day, 1)) {
    if (random() > keeper.looks) continue;
    const now = day + uniform(random, 0.3, 0.9);
    const say = (text: string): void => void lines.push(`${isoDay(day)} A1: ${text}`);
    if (now >= life.swam) {
      say('free-swimming');
      break;
    }
    const well = (): void => void (random() < keeper.tellsWell && say('all well'));
    if (random() > keeper.sees) {
      well();
      continue;
    }
    if (now < life.laid) {
      if (random() < keeper.tellsNone) say('no eggs');
      else well();
    } else if (now < life.hatched) {
      say('eggs seen');
    } else if (!sawWrigglers || random() < 0.5) {
      say('wrigglers');
      sawWrigglers = true;
    }
  }
  return { lines, last: day };
}

/** How one brood grows: von Bertalanffy from its start towards its own grown length. */
export interface Growing {
  readonly startSize: number;
  readonly grown: number;
  /** Days from laying to the guild's middle sale size. */
  readonly saleAge: number;
}

/** Length of the average fish, mm, so many days after laying. */
export function lengthAt(growing: Growing, life: Life, age: number): number {
  const start = life.swam - life.laid;
  const size = guildDefaults(life.guild).saleSize.likely ?? 25;
  const k = -Math.log1p(-(size - growing.startSize) / (growing.grown - growing.startSize)) / (growing.saleAge - start);
  return growing.startSize - (growing.grown - growing.startSize) * Math.expm1(-k * Math.max(0, age - start));
}

/** Broods of one room share its water and food: their ages at sale size spread about the room's own. */
export function growingOf(random: Random, guild: Guild, roomAge: number, adult: number): Growing {
  return {
    startSize: triangularDraw(random, guildDefaults(guild).swimSize),
    grown: adult * uniform(random, 0.75, 1.05),
    saleAge: roomAge * Math.exp(normalDraw(random, 0, 0.1)),
  };
}

/** What a keeper writes of the lengths in a tank of `count` fish whose mean is `mean`: each way as often. */
export function sizeWords(random: Random, mean: number, count: number): string {
  const eye = (): number => normalDraw(random, 0, 1.5);
  const fish = (): number => mean * (1 + normalDraw(random, 0, 0.12));
  const mm = (value: number): string => String(Math.max(3, Math.round(value)));
  const all = Array.from({ length: count }, fish);
  switch (Math.floor(random() * 4)) {
    case 0:
      return `largest ${mm(Math.max(...all) + eye())} mm`;
    case 1:
      return `average ${mm(mean + eye())} mm`;
    case 2: {
      const middle = mean + eye();
      return `size ${mm(middle * 0.88)}-${mm(middle * 1.12)} mm`;
    }
    default:
      return `sizes ${all
        .slice(0, 4)
        .map((one) => mm(one + eye()))
        .join(' ')} mm`;
  }
}
