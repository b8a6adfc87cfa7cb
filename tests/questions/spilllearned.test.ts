/** What a spill is foretold from: flushes of the pipes, the cleans that teach, and what a partial clean is worth. */
import { describe, expect, it } from 'vitest';
import { addDays, isoDay } from '../../src/core/day.ts';
import { loops } from '../../src/questions/loops.ts';
import { spillOutlook, type Outlook } from '../../src/questions/spill.ts';
import { day } from '../support/events.ts';
import { journalOn, journalRoom } from '../support/journal.ts';

const outlookOf = (on: string, ...lines: readonly string[]): Outlook | null => {
  const room = journalOn(on, `${lines.join('\n')}\n`);
  const long = room.plumbing.loops.get('Long');
  if (long === undefined) throw new Error('no loop');
  return spillOutlook(room, long);
};
const outlook = (on: string, ...lines: readonly string[]): Outlook => {
  const found = outlookOf(on, ...lines);
  if (found === null) throw new Error('nothing is foretold');
  return found;
};
/** The likely day. */
const likely = (on: string, ...lines: readonly string[]): string => {
  const { spill } = outlook(on, ...lines);
  return spill.likely === null ? 'open' : isoDay(spill.likely);
};
type Read = readonly [after: number, mm: number];
/** A clean, and levels so many days after it. */
const clean = (from: string, layers: number, ...read: readonly Read[]): string[] => [
  `${from} Long: cleaned ${String(layers)} of 6 layers`,
  ...read.map(([after, mm]) => `${isoDay(addDays(day(from), after))} Long: level ${String(mm)} mm`),
];
/** By the square law from 20 mm to the lip of 80 in so many days. */
const lasting = (life: number): readonly Read[] =>
  [0, 0.25, 0.5, 0.7, 0.8].map((share) => [Math.round(share * life), Math.round(20 + 60 * share ** 2)]);
const THREE = [
  ...clean('2026-01-05', 6, ...lasting(60)),
  ...clean('2026-03-05', 6, ...lasting(62)),
  ...clean('2026-05-05', 6, ...lasting(58)),
];
const TWO = THREE.slice(6);

describe('a flush of the pipes', () => {
  // What a flush brings is a load at once (common practice, no source): the jump on 13 February is no faster clogging.
  const early = ['2026-02-01 Long: cleaned 6 of 6 layers; level 20 mm', '2026-02-11 Long: level 22 mm'];
  const jump = [...early, '2026-02-13 Long: level 32 mm', '2026-02-20 Long: level 34 mm'];
  const plain = likely('2026-02-20', ...jump);
  const flushed = likely('2026-02-20', ...jump, '2026-02-12 Long: did "flush the return pipe"');
  it('explains a jump of the level: the lip is further off', () => {
    expect(day(flushed) - day(plain)).toBeGreaterThan(10);
  });
  it('is told by what was done, or by the remark of a level, once for its day', () => {
    const [first = '', second = '', third = '', last = ''] = jump;
    expect(likely('2026-02-20', first, second, `${third} "Flushed the pipe"`, last)).toBe(flushed);
    expect(likely('2026-02-20', ...jump, '2026-02-13 Long: did "flush the return pipe"')).toBe(flushed);
    const both = [first, second, `${third} "flushed"`, last, '2026-02-13 Long: did "flush the return pipe"'];
    expect(likely('2026-02-20', ...both)).toBe(flushed);
  });
  it.each([
    ['of other water', '2026-02-12 C1: did "flush the air line"'],
    ['before the clean', '2026-01-31 Long: did "flush the return pipe"'],
    ['on the day of the clean', '2026-02-01 Long: did "flush the return pipe"'],
    ['behind the last level', '2026-02-22 Long: did "flush the return pipe"'],
    ['and other work', '2026-02-12 Long: did "wipe the glass"'],
  ])('%s explains nothing', (_, line) => {
    expect(likely('2026-02-24', ...jump, line)).toBe(plain);
  });
  it('on the day of the last level is in it', () => {
    const end = '2026-02-20 Long: did "flush the return pipe"';
    expect(likely('2026-02-20', ...jump.slice(0, 2), '2026-02-20 Long: level 34 mm', end)).not.toBe(
      likely('2026-02-20', ...jump.slice(0, 2), '2026-02-20 Long: level 34 mm'),
    );
  });
  it('is found behind other work that was done since', () => {
    const work = ['2026-02-12 Long: did "flush the return pipe"', '2026-02-14 Long: did "wipe the lid"'];
    expect(likely('2026-02-20', ...jump, ...work)).toBe(flushed);
  });
  it('told with a level before the clean explains nothing', () => {
    const before = '2026-01-31 Long: level 60 mm "flushed the pipe"';
    expect(likely('2026-02-20', before, ...jump)).toBe(plain);
  });
});

describe('cleans that teach', () => {
  const now = '2026-07-05 Long: cleaned 6 of 6 layers';
  const taught = (...lines: readonly string[]): readonly [number, string] => {
    const { cycles, basis } = outlook('2026-07-06', ...lines, now);
    return [cycles, basis];
  };
  it('are three full ones: then the room’s own life counts and not the usual', () => {
    expect(taught(...THREE)).toEqual([3, 'own cleans']);
    expect(outlook('2026-07-06', ...THREE, now).own?.likely).toBeGreaterThan(57);
    expect(taught(...TWO)).toEqual([2, 'usual']);
    expect(outlook('2026-07-06', ...TWO, now).own).toBeNull();
    // Two cleans change nothing yet.
    expect(likely('2026-07-06', ...TWO, now)).toBe(likely('2026-07-06', now));
    expect(outlook('2026-07-06', ...TWO, now).steps[0]).toContain('this room has taught 2 of the 3 cleans');
  });
  it('go before the usual, and two levels of its own before either', () => {
    const own = (...read: readonly Read[]): string =>
      outlook('2026-07-20', ...THREE, ...clean('2026-07-05', 6, ...read)).basis;
    expect([own(), own([0, 20]), own([0, 20], [10, 24])]).toEqual(['own cleans', 'own cleans', 'levels']);
  });
  it('are over: the one that runs teaches nothing yet', () => {
    const running = outlook('2026-06-25', ...THREE);
    expect([running.cycles, running.basis]).toEqual([2, 'levels']);
  });
  it.each([
    [
      'read at its start and end',
      6,
      [
        [0, 20],
        [40, 50],
      ],
      3,
    ],
    [
      'cut short when a quarter of the way was gone',
      6,
      [
        [0, 20],
        [30, 35],
      ],
      3,
    ],
    [
      'cut short before that',
      6,
      [
        [0, 20],
        [10, 22],
        [20, 34],
      ],
      2,
    ],
    ['read once', 6, [[50, 70]], 2],
    ['never read', 6, [], 2],
    ['of some layers alone', 2, lasting(60), 2],
  ] as const)('one %s', (_, layers, read, cycles) => {
    expect(taught(...clean('2026-01-05', layers, ...read), ...TWO)[0]).toBe(cycles);
  });
  it('are the last six', () => {
    const months = ['2025-01-05', '2025-03-05', '2025-05-05', '2025-07-05', '2025-09-05', '2025-11-05'];
    const setUp = '2025-01-01 loop Long: sump 240 L; return 3200 L/h; prefilter 6 layers; spills at 80 mm\n';
    const lines = [...months.flatMap((from) => clean(from, 6, ...lasting(58))), ...THREE, now];
    const room = journalRoom('2026-07-06', `${setUp}${lines.join('\n')}\n`);
    expect(loops(room)[0]?.outlook?.cycles).toBe(6);
  });
});

describe('a partial clean', () => {
  const part = '2026-07-05 Long: cleaned 2 of 6 layers';
  it('of two layers of six lasts two thirds of a full one', () => {
    const full = outlook('2026-07-06', ...THREE, '2026-07-05 Long: cleaned 6 of 6 layers').spill.likely ?? 0;
    const some = outlook('2026-07-06', ...THREE, part).spill.likely ?? 0;
    const from = day('2026-07-05');
    expect(Math.abs((some - from) / (full - from) - 2 / 3)).toBeLessThan(0.03);
  });
  it('is known less well than a full one: its window is wider for its length', () => {
    const wide = (line: string): number => {
      const { low, likely: middle, high } = outlook('2026-07-06', ...THREE, line).spill;
      return ((high ?? Infinity) - (low ?? 0)) / ((middle ?? 0) - day('2026-07-05'));
    };
    expect(wide(part)).toBeGreaterThan(wide('2026-07-05 Long: cleaned 6 of 6 layers') * 1.2);
  });
  it('bought the days between the lip without it and with it, which the reckoning tells', () => {
    // The clean of 5 May would have come to the lip after 58 days, on 2 July; this one comes to it about 15 August.
    const found = outlook('2026-07-06', ...THREE, part);
    const gained = (found.spill.likely ?? 0) - day('2026-07-02');
    expect(Math.abs((found.bought?.days.likely ?? 0) - gained)).toBeLessThanOrEqual(2);
    expect(found.bought?.share).toBeNull();
    expect(found.steps.at(-1)).toBe(`2 of 6 layers on 5 Jul ${found.bought?.words ?? ''}`);
    expect(found.bought?.words).toMatch(/^bought \d+–\d+ days$/);
  });
  it('bought no days where the lip was as far off before', () => {
    const soon = outlook('2026-05-07', ...THREE.slice(0, -4), '2026-05-06 Long: cleaned 2 of 6 layers');
    expect(soon.bought?.days.low).toBe(0);
    expect(soon.bought?.days.likely).toBe(0);
  });
  it('won back a share of the freeboard after a full clean, where levels tell', () => {
    // 58 mm before, 40 behind it, 20 when all layers were clean: 18 of 60 mm.
    const won = (...lines: readonly string[]): number | null => outlook('2026-07-08', ...lines).bought?.share ?? null;
    expect(won(...THREE, `${part}; level 40 mm`)).toBeCloseTo(0.3, 9);
    expect(won(...THREE, part, '2026-07-06 Long: level 40 mm')).toBeCloseTo(0.3, 9);
    expect(won(...THREE, part, '2026-07-07 Long: level 40 mm')).toBeNull();
    expect(won(...THREE, `${part}; level 62 mm`)).toBe(0);
    expect(won(...THREE, `${part}; level 15 mm`)).toBeCloseTo(43 / 60, 9);
    // Measured from the level after the last full clean, though some layers were cleaned since; that may be read the day after.
    const some = clean('2026-06-20', 2, [0, 45], [10, 58]);
    expect(won(...clean('2026-05-05', 6, [1, 20], [40, 58]), ...some, `${part}; level 40 mm`)).toBeCloseTo(0.3, 9);
    expect(won(...clean('2026-05-05', 6, [0, 20]), ...clean('2026-06-20', 2), `${part}; level 40 mm`)).toBeNull();
    // Nobody read the level before it, or that of clean sponges.
    expect(won(...clean('2026-05-05', 6, [0, 20]), `${part}; level 40 mm`)).toBeCloseTo(0, 9);
    expect(won(...clean('2026-05-05', 6), `${part}; level 40 mm`)).toBeNull();
    expect(won(...clean('2026-05-05', 6, [40, 58]), `${part}; level 40 mm`)).toBeNull();
  });
  it('that is the first on record bought nothing that could be told', () => {
    const first = outlook('2026-07-06', part);
    expect([first.bought, first.steps.some((step) => step.includes('bought'))]).toEqual([null, false]);
  });
});

describe('nothing is foretold', () => {
  it('without a clean, or without the height of the lip', () => {
    expect(outlookOf('2026-02-20', '2026-02-11 Long: level 22 mm')).toBeNull();
    // At the lip on the very day of the clean: that clean did not help, and nothing tells how long the next will.
    expect(outlookOf('2026-02-03', '2026-02-01 Long: cleaned 6 of 6 layers; level 80 mm')).toBeNull();
    const noLip = '2026-01-01 loop Short: sump 100 L; prefilter 6 layers\n2026-02-01 Short: cleaned 6 of 6 layers\n';
    const room = journalOn('2026-02-20', noLip);
    expect(loops(room).map(({ name, outlook: found }) => [name, found === null])).toEqual([
      ['Long', true],
      ['Short', true],
    ]);
  });
});

it('a clean is asked for a week before the early and the likely day', () => {
  const { spill, cleanBy } = outlook('2026-07-06', ...THREE, '2026-07-05 Long: cleaned 6 of 6 layers');
  const week = (end: number | null): number => (end ?? NaN) - 7;
  expect(cleanBy).toEqual({ low: week(spill.low), likely: week(spill.likely), high: week(spill.likely) });
});
