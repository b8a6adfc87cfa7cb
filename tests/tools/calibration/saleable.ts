/** Saleable day: the day on which half of a brood has reached the size set for the species. */
import { addDays, isoDay, toDay } from '../../../src/core/day.ts';
import type { Day } from '../../../src/core/day.ts';
import type { DayWindow } from '../../../src/core/interval.ts';
import { saleableFrom } from '../../../src/questions/saleable.ts';
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
import type { Calibration, Range } from './frame.ts';

export const SALEABLE_DAY: Calibration = {
  name: 'saleable day (half of them)',
  unit: 'days',
  trial: (seed) => {
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
    const read = halfOf([...start, ...past, ...born, ...sizes], on, name);
    const alone = halfOf([...start, ...born], on, 'Rowan-1');
    return read && alone && { truth: Math.ceil(now.life.laid + now.at), window: read, default: alone };
  },
};

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

function ageAt(growing: Growing, life: Life, size: number): number {
  let age = 0;
  while (lengthAt(growing, life, age) < size && age < 2000) age += 0.25;
  return age;
}

function halfOf(lines: readonly string[], on: Day, name: string): Range | null {
  const room = roomFrom(lines.join('\n'), on);
  const brood = room.stock.broods.get(name);
  const half: DayWindow | null = brood === undefined ? null : (saleableFrom(room, brood)?.half ?? null);
  if (half === null || half.low === null) return null;
  return { low: half.low, high: half.high ?? Infinity };
}
