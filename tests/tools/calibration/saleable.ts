/** Saleable days: when the first, half and all of a brood have reached the size set for the species. */
import { addDays, isoDay, toDay } from '../../../src/core/day.ts';
import type { Day } from '../../../src/core/day.ts';
import type { DayWindow } from '../../../src/core/interval.ts';
import { saleableFrom } from '../../../src/questions/saleable.ts';
import type { Part } from '../../../src/science/growth.ts';
import { guildDefaults } from '../../../src/science/guilds.ts';
import type { Life, Random, Growing } from '../simulate.ts';
import {
  BEGIN,
  growingOf,
  keeperOf,
  LAYING,
  lengthAt,
  lifeOf,
  opening,
  pick,
  randomFrom,
  sizeWords,
  stageLines,
  triangularDraw,
  uniform,
} from '../simulate.ts';
import { roomFrom } from './frame.ts';
import type { Calibration, Range, Trial } from './frame.ts';

/** Lengths within a brood are normal; "first" and "all" are the 5th and the 95th of a hundred fish. */
const SPREADS = { first: 1.6449, half: 0, all: -1.6449 } as const;
const CV = 0.12;

export const SALEABLE_FIRST = saleableDay('first', 'saleable day, first of them');
export const SALEABLE_HALF = saleableDay('half', 'saleable day, half of them');
export const SALEABLE_ALL = saleableDay('all', 'saleable day, all of them');

function saleableDay(part: Part, name: string): Calibration {
  return { name, unit: 'days', trial: (seed) => trialOf(part, seed) };
}

function trialOf(part: Part, seed: number): Trial | null {
  const random = randomFrom(seed);
  const guild = pick(random, LAYING);
  const usual = guildDefaults(guild);
  const saleAt = Math.round(uniform(random, usual.saleSize.low, usual.saleSize.high));
  const adult = Math.round((usual.saleSize.likely ?? 25) * uniform(random, 2, 3.5));
  const roomAge = triangularDraw(random, usual.saleAge);
  const brood = (from: Day): { life: Life; growing: Growing; at: number } => {
    const life = lifeOf(random, guild, from);
    const growing = growingOf(random, guild, roomAge, adult);
    return { life, growing, at: ageAt(growing, life, saleAt) };
  };
  const earlier = Math.floor(random() * 4);
  const old = Array.from({ length: earlier }, (_, i) => brood(addDays(BEGIN, -1000 + 200 * i)));
  const now = brood(BEGIN);
  const on = addDays(toDay(now.life.swam), Math.round(uniform(random, 0.15, 0.95) * now.at));
  const start = opening(guild, saleAt, adult, -1100);
  const past = old.flatMap(({ life, growing, at }, i) => [
    ...bornLines(random, life),
    ...sizeLines(random, life, growing, `Rowan-${String(i + 1)}`, toDay(life.laid + at), 3),
    `${isoDay(toDay(life.laid + 195))} A1: sold all Rowan-${String(i + 1)}`,
  ]);
  const born = bornLines(random, now.life);
  const name = `Rowan-${String(earlier + 1)}`;
  const sizes = sizeLines(random, now.life, now.growing, name, on, Math.floor(random() * 6));
  const reached = ageAt(now.growing, now.life, saleAt / (1 + CV * SPREADS[part]));
  if (reached >= OLDEST) return null;
  const read = windowOf(part, [...start, ...past, ...born, ...sizes], on, name);
  const alone = windowOf(part, [...start, ...born], on, 'Rowan-1');
  return read && alone && { truth: Math.ceil(now.life.laid + reached), window: read, default: alone };
}

/** The first lines of a brood: seen laid in half of the rooms, else looked for now and then. */
function bornLines(random: Random, life: Life): string[] {
  const looked = stageLines(random, life, keeperOf(random)).lines.filter((line) => !line.includes('no eggs'));
  const swam = looked.at(-1)?.replace('free-swimming', 'free-swimming, about 60');
  const laid = random() < 0.5 ? [`${isoDay(toDay(life.laid))} A1: spawned`] : looked.slice(0, -1);
  return [...laid, ...(swam === undefined ? [] : [swam])];
}

/** So many lengths between the day that they are big enough to judge and a last day. */
function sizeLines(random: Random, life: Life, growing: Growing, name: string, until: Day, count: number): string[] {
  const first = life.swam + 15;
  if (until <= first) return [];
  return Array.from({ length: count }, () => uniform(random, first, until))
    .toSorted((a, b) => a - b)
    .map((at) => {
      const mean = lengthAt(growing, life, at - life.laid);
      return `${isoDay(toDay(at))} A1: ${name} ${sizeWords(random, mean, 45)}`;
    });
}

/** No brood is followed for longer, days. */
const OLDEST = 2000;

function ageAt(growing: Growing, life: Life, size: number): number {
  let age = 0;
  while (lengthAt(growing, life, age) < size && age < OLDEST) age += 0.25;
  return age;
}

function windowOf(part: Part, lines: readonly string[], on: Day, name: string): Range | null {
  const room = roomFrom(lines.join('\n'), on);
  const brood = room.stock.broods.get(name);
  const window: DayWindow | null = brood === undefined ? null : (saleableFrom(room, brood)?.[part] ?? null);
  if (window === null || window.low === null) return null;
  return { low: window.low, high: window.high ?? Infinity };
}
