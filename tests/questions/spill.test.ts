/** The honest window of a spill out of journals: what it rests on, what a partial clean bought, which levels count. */
import { describe, expect, it } from 'vitest';
import { measure } from '../../src/core/quantity.ts';
import { due } from '../../src/questions/due.ts';
import { loops } from '../../src/questions/loops.ts';
import { loopsJson, loopsText } from '../../src/reports/loops.ts';
import { plainLook } from '../../src/reports/look.ts';
import { day, loop, roomOn, tank, type Line } from '../support/events.ts';
import { begin, cleaned, level, setUpOn } from '../support/waters.ts';

const SET_UP = setUpOn('2025-01-01');
const only = (on: string, lines: readonly Line[]) => {
  const [row] = loops(roomOn(on, [...SET_UP, ...lines]));
  if (row === undefined) throw new Error('no loop');
  return row;
};
/** A clean and its levels by the square law from 20 mm, so many days to the lip of 80. */
const cycle = (from: string, life: number, upTo = 0.8): Line[] => {
  const start = new Date(from).getTime();
  const at = (after: number): string => new Date(start + after * 86_400_000).toISOString().slice(0, 10);
  const days = [0, 0.25, 0.5, 0.7, 0.8].filter((share) => share <= upTo).map((share) => Math.round(share * life));
  return [cleaned(from, 6), ...days.map((after) => level(at(after), Math.round(20 + 60 * (after / life) ** 2)))];
};
const RUN = [
  ...cycle('2025-01-05', 60),
  ...cycle('2025-03-05', 62),
  ...cycle('2025-05-05', 58),
  ...cycle('2025-07-05', 61),
];

describe('the outlook of a loop', () => {
  it('before the room has taught anything is the usual, and says so', () => {
    const { outlook } = only('2025-01-20', [cleaned('2025-01-05', 6)]);
    expect(outlook?.basis).toBe('usual');
    expect(outlook?.own).toBeNull();
    // 30 and 49 days after the clean, a day either way for the grid that lives are weighed on
    expect(Math.abs((outlook?.spill.low ?? 0) - day('2025-02-04'))).toBeLessThanOrEqual(1);
    expect(Math.abs((outlook?.spill.likely ?? 0) - day('2025-02-23'))).toBeLessThanOrEqual(1);
  });

  it('learns the room’s own cleans from three on, and shows the usual beside them', () => {
    const row = only('2025-09-08', [...RUN, cleaned('2025-09-05', 6)]);
    expect(row.outlook?.basis).toBe('own cleans');
    expect(row.outlook?.cycles).toBe(4);
    // The simulated lives are 58 to 62 days: the middle of the window lies among them, the usual is 49.
    expect(row.outlook?.own?.likely).toBeGreaterThan(54);
    expect(row.outlook?.own?.likely).toBeLessThan(64);
    expect(row.because.steps.join(' ')).toMatch(/here \d+–\d+ days \(4 cleans\), usually 30–80/);
    const text = loopsText([row], plainLook(day('2025-09-08')));
    expect(text).toMatch(/clean to lip here \d+–\d+ days \(4 cleans\), usual 30–80/);
  });

  it('its window holds the lip, and is narrower than the usual', () => {
    const { outlook } = only('2025-08-25', RUN);
    const { low, high } = outlook?.spill ?? { low: null, high: null };
    // 5 July and 61 days: 4 September
    expect(low).toBeLessThanOrEqual(day('2025-09-04'));
    expect(high).toBeGreaterThanOrEqual(day('2025-09-04'));
    expect((high ?? 0) - (low ?? 0)).toBeLessThan(25);
    expect(outlook?.cleanBy.low).toBe((low ?? 0) - 7);
  });

  it('a tank valved off cuts the load: the lip comes later', () => {
    const off = begin('2025-08-01', tank('A1'), 'off the loop');
    const usual = only('2025-08-02', cycle('2025-07-05', 61, 0.25)).outlook;
    const eased = only('2025-08-02', [...cycle('2025-07-05', 61, 0.25), off]).outlook;
    expect(eased?.spill.likely).toBeGreaterThan(usual?.spill.likely ?? Infinity);
    expect(only('2025-08-02', [...cycle('2025-07-05', 61, 0.25), off]).because.steps.join(' ')).toContain(
      'not on it all the time: A1',
    );
  });

  it('feed logged on most days counts as the load in place of litres', () => {
    const fed = Array.from({ length: 24 }, (_, index): Line => {
      const on = `2025-07-${String(index + 5).padStart(2, '0')}`;
      return [on, loop('Long'), { kind: 'fed', food: 'flake', grams: measure('g', index < 18 ? 4 : 1) }];
    });
    expect(only('2025-07-28', [...cycle('2025-07-05', 61, 0.25), ...fed]).because.steps.join(' ')).toContain(
      'load by the grams fed a day',
    );
  });
});

describe('what a partial clean bought', () => {
  const before = cycle('2025-07-05', 61);
  const part = [...before, cleaned('2025-08-24', 2), level('2025-08-24', 44)];

  it('in days, and in freeboard over that after a full clean', () => {
    const { bought } = only('2025-08-25', part);
    // 58 mm down to 44 of the 60 mm that a full clean leaves: 14/60
    expect(bought?.share).toBeCloseTo((58 - 44) / 60, 1);
    expect(bought?.days.likely).toBeGreaterThan(5);
    expect(bought?.days.low).toBeLessThanOrEqual(bought?.days.likely ?? 0);
    expect(loopsText([only('2025-08-25', part)], plainLook(day('2025-08-25'))).replace(/\s+/g, ' ')).toMatch(
      /the last clean bought \d+–\d+ days; it won back 2\d % of a full clean's freeboard/,
    );
  });

  it('and a full clean buys nothing to tell apart', () => {
    expect(only('2025-08-25', before).bought).toBeNull();
  });
});

describe('levels that say nothing of clogging', () => {
  it('on the day of a top-up, or with the sump low by their own remark', () => {
    const topped: Line = ['2025-08-10', loop('Long'), { kind: 'topped up', litres: measure('L', 30) }];
    const row = only('2025-08-12', [...cycle('2025-07-05', 61, 0.5), topped, level('2025-08-10', 25)]);
    expect(row.level?.on).toBe(day('2025-08-05'));
    expect(row.notes).toEqual([]);
    expect(row.because.steps.join(' ')).toContain('left out: 25 mm on 10 Aug, read on the day of a top-up');
  });

  it('a fall without a clean makes no window (trap 17)', () => {
    const row = only('2025-08-12', [...cycle('2025-07-05', 61, 0.5), level('2025-08-10', 25)]);
    expect(row.outlook).toBeNull();
    expect(row.notes).toEqual(['flow fell: check pump or drain']);
  });
});

it('due warns by the honest window, where no chore comes first', () => {
  const room = roomOn('2025-08-30', [...SET_UP, ...RUN]);
  const row = due(room, { days: 7, minutes: null }).rows.find(({ id }) => id === 'long-spill');
  // One window in the row, the reckoning behind it in the answer to "why".
  expect(row?.why).toBe('level 59 mm on 23 Aug, spills at 80 mm about 6–8 Sep');
  expect(row?.because.steps.join('\n')).toMatch(/8 in 10 spill \d/);
});

it('is told in JSON', () => {
  expect(JSON.parse(JSON.stringify(loopsJson([only('2025-09-08', RUN)])))).toMatchObject({
    loops: [{ outlook: { basis: 'levels', usualDays: { low: 30, likely: 49, high: 80 }, cleans: 3 }, bought: null }],
  });
});
