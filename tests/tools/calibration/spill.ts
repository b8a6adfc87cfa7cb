/**
 * A room whose prefilter clogs by a law that the forecast does not know: the flow's resistance grows as
 * the pores fill (a power of what is left of them), at a rate that differs between rooms, cleans and
 * days. The keeper reads the level now and then, to the nearest mm and with an eye's error.
 */
import { addDays, dayFromIso, isoDay, toDay, type Day } from '../../../src/core/day.ts';
import { spillOutlook } from '../../../src/questions/spill.ts';
import { randomFrom } from '../generate.ts';
import { roomFrom, type Calibration } from './frame.ts';

export interface SpillCase {
  readonly journal: string;
  /** The day of the last reading, on which the forecast is asked for. */
  readonly on: string;
  readonly loop: string;
  /** The first day on which the level reaches the lip. */
  readonly truth: Day;
  /** The day of the clean that runs. */
  readonly cleaned: Day;
  /** Cleans before it that the journal tells of. */
  readonly cycles: number;
}

const FIRST = dayFromIso('2025-01-06') ?? toDay(20094);
const LIP = 80;

export function spillCase(seed: number): SpillCase {
  const random = randomFrom(seed * 7919 + 13);
  const normal = (): number => Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
  const lines: string[] = [];
  const say = (day: Day, text: string): void => void lines.push(`${isoDay(day)} ${text}`);
  say(FIRST, `loop Weir: sump 240 L; prefilter 6 layers; spills at ${LIP} mm`);
  for (const tank of ['A1', 'A2', 'A3', 'A4']) say(FIRST, `tank ${tank}: 120 L; on Weir`);

  const law = 1.2 + 2.3 * random();
  const clear = 12 + 12 * random();
  // Rooms lie about as far apart as a usual window says, single cleans of one room far less.
  const room = 49 * Math.exp(0.36 * normal());
  const cycles = Math.floor(random() * 6);
  let day = FIRST;
  for (let cycle = 0; ; cycle += 1) {
    const life = room * Math.exp(0.1 * normal());
    const asked = cycle === cycles;
    const stop = asked ? 0.35 + 0.55 * random() : 0.7 + 0.2 * random();
    const cleaned = day;
    say(cleaned, `Weir: cleaned 6 of 6 layers`);
    const start = clear + 1.5 * normal();
    const fill = 1 - (start / LIP) ** (1 / law);
    const off = random() < 0.2 ? { from: addDays(cleaned, 8 + Math.floor(10 * random())), for: 12 } : null;
    const valve = (now: Day): boolean => off !== null && now >= off.from && now < addDays(off.from, off.for);
    let load = 0;
    let next = cleaned;
    let readOn: Day | null = null;
    for (let step = 0; ; step += 1) {
      const level = start / (1 - Math.min(0.999, fill * (load / life))) ** law;
      if (asked && readOn !== null && level >= LIP) {
        return { journal: `${lines.join('\n')}\n`, on: isoDay(readOn), loop: 'Weir', truth: day, cleaned, cycles };
      }
      const told = asked && load / life >= stop;
      if (off !== null && day === off.from && readOn === null) say(day, 'A4: off the loop');
      if (off !== null && day === addDays(off.from, off.for) && readOn === null) say(day, 'A4: back on the loop');
      if (readOn === null && (day === next || told)) {
        const eye = level * (1 + 0.015 * normal()) + 1.2 * normal();
        say(day, `Weir: level ${Math.min(LIP - 1, Math.max(1, Math.round(eye)))} mm`);
        next = addDays(day, 5 + Math.floor(9 * random()));
      }
      if (told) readOn ??= day;
      if (!asked && load / life >= stop) break;
      // After the reading the room goes on as the journal has it then.
      const shut = valve(readOn ?? day);
      load += (shut ? 0.75 : 1) * Math.max(0.2, 1 + 0.35 * normal());
      day = addDays(day, 1);
    }
    day = addDays(day, 1);
  }
}

/** The window of the spill, in days after the clean; the default's is what is usual for prefilters, whatever was read. */
export const SPILL_DAY: Calibration = {
  name: 'spill date',
  unit: 'days',
  trial(seed) {
    const { journal, on, loop, truth, cleaned } = spillCase(seed);
    const room = roomFrom(journal, on);
    const seen = room.plumbing.loops.get(loop);
    const outlook = seen === undefined ? null : spillOutlook(room, seen);
    if (outlook === null) return null;
    const { spill, usual } = outlook;
    return {
      truth: truth - cleaned,
      window: { low: (spill.low ?? cleaned) - cleaned, high: (spill.high ?? cleaned) - cleaned },
      default: { low: usual.low, high: usual.high },
    };
  },
};
