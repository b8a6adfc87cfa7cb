/** Windows over whole journals: a look never widens one, and a length never moves a fact. */
import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { addDays, isoDay } from '../../src/core/day.ts';
import type { DayWindow } from '../../src/core/interval.ts';
import { datesOf } from '../../src/questions/laying.ts';
import type { BroodDates } from '../../src/questions/laying.ts';
import { aliveTotal } from '../../src/state/bodies.ts';
import type { Room } from '../../src/state/draft.ts';
import { roomFrom } from '../tools/calibration/frame.ts';
import {
  BEGIN,
  keeperOf,
  LAYING,
  lifeOf,
  opening,
  pick,
  randomFrom,
  sizeWords,
  stageLines,
} from '../tools/simulate.ts';

const seeds = fc.integer({ min: 1, max: 1_000_000 });

function journalOf(seed: number): { start: string[]; lines: string[]; last: string } {
  const random = randomFrom(seed);
  const life = lifeOf(random, pick(random, LAYING), BEGIN);
  const { lines, last } = stageLines(random, life, keeperOf(random));
  return { start: opening(life.guild), lines, last: isoDay(last) };
}

function datesIn(room: Room): BroodDates | null {
  const brood = [...room.stock.broods.values()].find((one) => !one.suspected);
  return brood && room.stock.broods.size === 1 ? datesOf(room, brood) : null;
}

function isInside(inner: DayWindow | null, outer: DayWindow | null): boolean {
  if (outer === null || inner === null) return outer === null;
  return (inner.low ?? -Infinity) >= (outer.low ?? -Infinity) && (inner.high ?? Infinity) <= (outer.high ?? Infinity);
}

describe('looks', () => {
  it('never widen a window of laying, hatching or swimming', () => {
    fc.assert(
      fc.property(seeds, (seed) => {
        const { start, lines, last } = journalOf(seed);
        let before: BroodDates | null = null;
        for (let n = 1; n <= lines.length; n += 1) {
          const now = datesIn(roomFrom([...start, ...lines.slice(0, n)].join('\n'), last));
          if (before !== null && now !== null) {
            expect(isInside(now.laid, before.laid)).toBe(true);
            expect(isInside(now.hatched, before.hatched)).toBe(true);
            expect(isInside(now.swam, before.swam)).toBe(true);
          }
          before = now;
        }
      }),
      { numRuns: 25, seed: 7 },
    );
  });
  it('leave the most likely days inside what is certain', () => {
    fc.assert(
      fc.property(seeds, (seed) => {
        const { start, lines, last } = journalOf(seed);
        const dates = datesIn(roomFrom([...start, ...lines].join('\n'), last));
        if (dates === null) return;
        expect(isInside(dates.mostLikely.laid, dates.laid)).toBe(true);
        if (dates.swam !== null) expect(isInside(dates.mostLikely.swam, dates.swam)).toBe(true);
        expect(dates.laid.likely).toBe(dates.mostLikely.laid.likely);
      }),
      { numRuns: 60, seed: 7 },
    );
  });
});

describe('all well', () => {
  it('moves the likely day alone, never what is certain', () => {
    fc.assert(
      fc.property(seeds, fc.array(fc.integer({ min: 0, max: 40 }), { maxLength: 6 }), (seed, days) => {
        const { start, lines, last } = journalOf(seed);
        const well = days.map((ago) => `${isoDay(addDays(BEGIN, ago))} A1: all well`);
        const without = datesIn(roomFrom([...start, ...lines].join('\n'), last));
        const told = datesIn(roomFrom([...start, ...lines, ...well].join('\n'), last));
        const hard = (window: DayWindow | null): unknown => window && { low: window.low, high: window.high };
        expect(told && [hard(told.laid), hard(told.hatched), hard(told.swam)]).toEqual(
          without && [hard(without.laid), hard(without.hatched), hard(without.swam)],
        );
      }),
      { numRuns: 60, seed: 7 },
    );
  });
  it('makes a later laying day more likely', () => {
    const lines = ['2026-03-20 A1: free-swimming, about 40'];
    const well = ['2026-03-07', '2026-03-09', '2026-03-11'].map((on) => `${on} A1: all well`);
    const likely = (more: string[]): number =>
      datesIn(roomFrom([...opening('cave spawner'), ...more, ...lines].join('\n'), '2026-03-21'))?.laid.likely ?? 0;
    expect(likely(well)).toBeGreaterThan(likely([]));
  });
});

describe('lengths', () => {
  it('reverse no fact: neither dates nor numbers change by them', () => {
    fc.assert(
      fc.property(seeds, fc.integer({ min: 1, max: 4 }), (seed, count) => {
        const { start, lines, last } = journalOf(seed);
        const random = randomFrom(seed + 1);
        const sizes = Array.from(
          { length: count },
          (_, i) => `2026-04-0${String(i + 1)} A1: Rowan-1 ${sizeWords(random, 18, 40)}`,
        );
        const without = roomFrom([...start, ...lines].join('\n'), '2026-04-10');
        const room = roomFrom([...start, ...lines, ...sizes].join('\n'), '2026-04-10');
        const [a, b] = [without, room].map((one) => one.stock.broods.get('Rowan-1'));
        if (!a || !b || last > '2026-04-01') return;
        expect(datesOf(room, b)).toEqual(datesOf(without, a));
        expect(aliveTotal(b)).toEqual(aliveTotal(a));
      }),
      { numRuns: 40, seed: 7 },
    );
  });
});
