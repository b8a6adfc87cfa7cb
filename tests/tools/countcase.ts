/**
 * A brood whose true number is known, written down as a keeper would: eggs and fry are guessed, young are
 * guessed or counted when they are moved, some of the dead are found, some are sold, most losses go
 * unseen. Broods differ, guesses err by factors, and neither by the very numbers that the tool assumes.
 */
import { addDays, dayFromIso, isoDay, toDay } from '../../src/core/day.ts';
import { randomFrom } from './generate.ts';

export interface CountCase {
  readonly journal: string;
  /** The day asked about, ISO 8601. */
  readonly on: string;
  readonly brood: string;
  /** How many were really alive. */
  readonly truth: number;
}

const ROOM = [
  'room: units metric; currency EUR; zone Europe/Dublin',
  'tank A1: 100 x 40 x 40 cm; alone; sponge filter',
  'tank C1: 120 L; alone; sponge filter',
  'species taeniatus: Pelvicachromis taeniatus; cave spawner; sale at 35 mm or 16 weeks; price 6.00',
  'pair Sorrel: taeniatus; male; female; in A1',
];
const START = dayFromIso('2026-01-01') ?? toDay(0);

/** One case; the same seed gives the same. The brood asked about is the last of one to four. */
export function countCase(seed: number): CountCase {
  const random = randomFrom(seed);
  const lines = ROOM.map((text) => `${isoDay(START)} ${text}`);
  const broods = 1 + Math.floor(random() * 4);
  let asked = { on: START, truth: 0 };
  for (let number = 1; number <= broods; number++) {
    const name = `Sorrel-${String(number)}`;
    const laid = START + 10 + (number - 1) * 140;
    asked = raise(random, lines, name, laid, number === broods ? 15 + Math.floor(random() * 110) : 120);
  }
  return {
    journal: `${lines.join('\n')}\n`,
    on: isoDay(addDays(asked.on, 0)),
    brood: `Sorrel-${String(broods)}`,
    truth: asked.truth,
  };
}

/** Writes the life of one brood up to an age; says how many are then alive. */
function raise(
  random: () => number,
  lines: string[],
  name: string,
  laid: number,
  until: number,
): { on: ReturnType<typeof toDay>; truth: number } {
  const say = (age: number, text: string): void => void lines.push(`${isoDay(toDay(laid + age))} ${text}`);
  // A sum of three uniforms, not a normal: broods and guesses differ by other laws than the tool assumes.
  const wobble = (): number => (random() + random() + random() - 1.5) * 2;
  const guess = (truth: number, spread: number): number => Math.max(2, Math.round(truth * Math.exp(spread * wobble())));
  const kind = Math.exp(0.7 * wobble());
  let alive = 40 + Math.floor(random() * 110);
  say(0, `A1: spawned brood ${name}, about ${String(guess(alive, 0.5))} eggs`);
  const eggLoss = 0.08 * Math.exp(0.7 * wobble());
  const larvaLoss = 0.03 * Math.exp(0.7 * wobble());
  const move = 34 + Math.floor(random() * 12);
  let tank = 'A1';
  for (let age = 1; age <= until; age++) {
    const loss = age <= 3 ? eggLoss : age <= 9 ? larvaLoss : age <= 37 ? 0.008 * kind : 0.001 * kind;
    let dead = 0;
    for (let fish = 0; fish < alive; fish++) if (random() < loss) dead++;
    alive -= dead;
    if (alive < 4) break;
    if (age === 10) say(age, `A1: ${name} free-swimming, about ${String(guess(alive, 0.5))}`);
    if (dead > 0 && age > 37 && random() < 0.3) say(age, `${tank}: ${name} died ${String(dead)}`);
    if (age === move) {
      const counted = random() < 0.25;
      if (!counted) say(age, `A1: ${name} counted about ${String(guess(alive, 0.2))}`);
      else say(age, `A1: ${name} counted ${String(alive)}`);
      say(age, `A1: moved all ${name} to C1`);
      tank = 'C1';
    } else if (age > move && age % 21 === 0) {
      const sure = random() < 0.25;
      say(age, `${tank}: ${name} counted ${sure ? String(alive) : `about ${String(guess(alive, 0.2))}`}`);
    } else if (age > 90 && age % 10 === 0 && alive > 20) {
      const sold = 4 + Math.floor(random() * 6);
      alive -= sold;
      say(age, `${tank}: sold ${String(sold)} ${name} at 6.00 each`);
    }
  }
  return { on: toDay(laid + until), truth: alive < 4 ? 0 : alive };
}
