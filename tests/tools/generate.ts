/**
 * Writes journals of any length for benchmarks and fuzzing: a room of 48 tanks on four loops, with pairs
 * that spawn, broods that are moved, counted and sold, chores, readings, quarrels. The same seed gives the same text.
 */
import { addDays, dayFromIso, isoDay, toDay, type Day } from '../../src/core/day.ts';

/** A small deterministic random source: 0 ≤ x < 1 (the mulberry32 generator, public domain). */
export function randomFrom(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = state;
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4_294_967_296;
  };
}

interface Pair {
  name: string;
  tank: string;
  growOut: string;
  brood: number;
  next: Day;
}

const LOOPS = ['North', 'South', 'East', 'West'];
const FIRST = dayFromIso('1996-01-01') ?? toDay(9496);

/** A journal of at least `lines` lines; `perDay` sets how many of them fall on a day. */
export function generateJournal(lines: number, seed = 1, perDay = Math.max(3, Math.round(lines / 10_950))): string {
  const random = randomFrom(seed);
  const pick = <T>(list: readonly T[]): T => list[Math.floor(random() * list.length)] ?? list[0] ?? fail();
  const out: string[] = [];
  const say = (day: Day, text: string): void => void out.push(`${isoDay(day)} ${text}`);

  say(FIRST, 'room: units metric; currency EUR; zone Europe/Vienna; nitrogen as N');
  for (const loop of LOOPS)
    say(FIRST, `loop ${loop}: sump 240 L; return 3000 L/h; prefilter 6 layers; spills at 80 mm`);
  const tanks = LOOPS.flatMap((loop) => Array.from({ length: 12 }, (_, i) => `${loop.charAt(0)}${i + 1}`));
  tanks.forEach((tank, i) => say(FIRST, `tank ${tank}: 80 x 40 x 40 cm; on ${LOOPS[Math.floor(i / 12)] ?? 'North'}`));
  const alone = Array.from({ length: 8 }, (_, i) => `G${i + 1}`);
  for (const tank of alone) say(FIRST, `tank ${tank}: 120 L; alone; sponge filter`);
  say(FIRST, 'species anomala: Nannacara anomala; cave spawner; sale at 28 mm or 14 weeks; price 6.00');
  const pairs = tanks.slice(0, 24).map((tank, i): Pair => {
    const name = `Pair${String.fromCharCode(65 + (i % 26))}${i}`;
    say(FIRST, `pair ${name}: anomala; male 75 mm; female 50 mm; in ${tank}`);
    return { name, tank, growOut: tanks[24 + (i % 24)] ?? 'N1', brood: 0, next: addDays(FIRST, 5 + i) };
  });
  for (const loop of LOOPS) say(FIRST, `${loop}: clean prefilter every 6 weeks or level above 65 mm`);
  for (const tank of alone) say(FIRST, `${tank}: water change 30 % every 7 days`);
  say(FIRST, 'culture M1: microworm');

  const later = new Map<Day, string[]>();
  const plan = (day: Day, text: string): void => void later.set(day, [...(later.get(day) ?? []), text]);

  for (let day = addDays(FIRST, 1); out.length < lines; day = addDays(day, 1)) {
    const start = out.length;
    for (const text of later.get(day) ?? []) say(day, text);
    later.delete(day);
    for (const pair of pairs) if (pair.next === day) spawn(pair, day, random, plan, say);
    LOOPS.forEach((loop, i) => {
      const phase = (day - FIRST + i * 9) % 42;
      if (phase === 0) say(day, `${loop}: cleaned 6 of 6 layers; level 18 mm`);
      else if (phase % 10 === 0) say(day, `${loop}: level ${18 + Math.round(phase * 1.1)} mm`);
    });
    if ((day - FIRST) % 7 === 0) say(day, `${alone.join(' ')}: water change 30 %`);
    while (out.length - start < perDay && out.length < lines) say(day, chatter(random, pick, tanks, alone));
  }
  return `${out.join('\n')}\n`;
}

function spawn(
  pair: Pair,
  day: Day,
  random: () => number,
  plan: (day: Day, text: string) => void,
  say: (day: Day, text: string) => void,
): void {
  pair.brood += 1;
  const name = `${pair.name}-${pair.brood}`;
  const eggs = 60 + Math.floor(random() * 60);
  say(day, `${pair.tank}: ${pair.name} spawned brood ${name}, about ${eggs} eggs`);
  plan(addDays(day, 3), `${pair.tank}: ${name} wrigglers`);
  plan(addDays(day, 9), `${pair.tank}: ${name} free-swimming, about ${Math.round(eggs * 0.7)}; fed microworm`);
  plan(addDays(day, 30), `${pair.tank}: moved all ${name} to ${pair.growOut}`);
  plan(addDays(day, 44), `${pair.growOut}: ${name} counted 30; size 13-16 mm`);
  plan(addDays(day, 90), `${pair.growOut}: ${name} size 25-29 mm`);
  plan(addDays(day, 110), `${pair.growOut}: sold 18 ${name} at 4.20 each to "a buyer"`);
  plan(addDays(day, 120), `${pair.growOut}: gave away all ${name}`);
  if (random() < 0.3) {
    plan(addDays(day, 33), `${pair.tank}: chasing, male on female`);
    plan(addDays(day, 34), `${pair.tank}: torn fin, lights off`);
    plan(addDays(day, 35), `${pair.tank}: made up, lights on`);
  }
  pair.next = addDays(day, 45 + Math.floor(random() * 20));
}

function chatter(
  random: () => number,
  pick: <T>(list: readonly T[]) => T,
  tanks: readonly string[],
  alone: readonly string[],
): string {
  const tank = pick(tanks);
  const number = Math.floor(random() * 1000);
  switch (Math.floor(random() * 12)) {
    case 0:
      return `${tank}: note fed twice, all out ${number}`;
    case 1:
      return `${pick(LOOPS)}: test pH ${(6.8 + random() * 0.6).toFixed(1)}, KH 4 dH, TAN 0, NO2 0, NO3 ${Math.floor(10 + random() * 20)}, ${(24 + random() * 2).toFixed(1)} C`;
    case 2:
      return `${pick(alone)}: topped up ${Math.floor(2 + random() * 8)} L`;
    case 3:
      return `${tank}: all well`;
    case 4:
      return `${tank}: fed brine shrimp`;
    case 5:
      return `${pick(alone)}: rinsed sponge # one of two`;
    case 6:
      return 'M1: harvested';
    case 7:
      return `${tank}: photo "${number}.jpg"`;
    case 8:
      return `${tank}: note level of light ${number} lx`;
    case 9:
      return `room: spent ${(1 + random() * 30).toFixed(2)} "food"`;
    case 10:
      return `${tank}: fed ${(0.2 + random()).toFixed(1)} g "flake"`;
    default:
      return `${tank} ${pick(tanks)}: all well`;
  }
}

function fail(): never {
  throw new Error('nothing to pick from');
}
