/** What is told to reach a target: which change, which dose over how many days, what nothing reaches, and what was done since. */
import { describe, expect, it } from 'vitest';
import type { Reach, Target } from '../../src/questions/target.ts';
import { water } from '../../src/questions/water.ts';
import { journalOn } from '../support/journal.ts';

type Aim = Target['of'];
const reachAt = (place: string, of: Aim, value: number, tap: number | null, lines: readonly string[]): Reach => {
  const room = journalOn('2026-02-25', `2026-01-02 room: nitrogen as N\n${lines.join('\n')}\n`);
  const [row] = water(room, { place, target: { of, value, tap } }) ?? [];
  if (!row?.reach) throw new Error(`nothing is told of ${place}`);
  return row.reach;
};
const to = (of: Aim, value: number, tap: number | null, ...lines: readonly string[]): Reach =>
  reachAt('C1', of, value, tap, lines);
const no3 = '2026-02-24 C1: test NO3 40';

describe('a target below what was read', () => {
  it('is reached by one change of half the water or less', () => {
    const { says, change, steps, dose } = to('no3', 30, 5, no3);
    // (40 − 30) / (40 − 5) = 0.2857 of the 43 to 49 L that are water of 54
    expect(says).toBe('NO3 40 to 30: change 29 % once (12–14 L, as many kg)');
    expect(change).toMatchObject({ times: 1 });
    expect(change?.share).toBeCloseTo(0.2857, 4);
    expect(steps).toEqual(['one change: f = (40 − 30) / (40 − 5) = 0.286']);
    expect(dose).toEqual([]);
  });
  it('is reached by daily changes where one would be of more', () => {
    const { says, steps } = to('no3', 10, null, no3);
    // two changes of a half leave a quarter
    expect(says).toBe(
      'NO3 40 to 10: change 50 % 2 days running, not 75 % at once (21–25 L, as many kg), taking tap water of NO3 0',
    );
    expect(steps[1]).toBe('2 equal changes: 1 − ((10 − 0) / (40 − 0))^(1/2) = 0.500 each');
    expect(to('no3', 20, 0, no3).change).toMatchObject({ times: 1, share: 0.5 });
  });
  it('is reached for KH and GH by a change as well', () => {
    expect(to('kh', 3, null, '2026-02-24 C1: test KH 6 dH').says).toMatch(/^KH 6 to 3: change 50 % once/u);
    expect(to('gh', 3, null, '2026-02-24 C1: test GH 6 dH').says).toMatch(/^GH 6 to 3: change 50 % once/u);
  });
  it('carries the cautions of tap water and of ammonia', () => {
    expect(to('no3', 30, 5, no3).cautions).toEqual([
      'tap water: no chlorine or chloramine, same temperature; large changes in daily steps',
      'new water can raise pH and toxic ammonia with it. TAN unknown: test first',
    ]);
  });
  it('has no litres where nobody knows how much water there is', () => {
    const { says, change } = reachAt('Z1', 'no3', 30, 5, ['2026-02-01 tank Z1: alone', '2026-02-24 Z1: test NO3 40']);
    expect(says).toBe('NO3 40 to 30: change 29 % once');
    expect(change?.litres).toBeNull();
  });
});

describe('a target above what was read', () => {
  it('is reached for KH by sodium bicarbonate, in one day where that is two degrees or less', () => {
    const { says, dose, cautions, change, steps } = to('kh', 6, null, '2026-02-24 C1: test KH 4 dH');
    expect(says).toBe('KH 4 to 6: 2.5–3.0 g of sodium bicarbonate');
    // 2 dH × 0.3567 meq/L × 45.9 L × 84.007 g/mol / 1000
    expect(dose[0]?.grams.likely).toBeCloseTo((2 * 0.3567 * 45.9 * 84.007) / 1000, 2);
    expect(dose).toMatchObject([{ days: 1 }]);
    expect(change).toBeNull();
    expect(cautions).toEqual([
      'no more than 1 to 2 degrees a day, dissolved first; dose the live litres, not the nominal ones',
      'this dose can raise pH and toxic ammonia with it. TAN unknown: test first',
    ]);
    expect(steps[0]).toBe('2 dH × 43–49 L of live water');
  });
  it('is reached for GH by half of each of two salts, over as many days as it takes', () => {
    const { says, dose, cautions } = to('gh', 9, null, '2026-02-24 C1: test GH 4 dH');
    expect(says).toBe(
      'GH 4 to 9: 2.8–3.2 g of calcium chloride dihydrate and 4.7–5.4 g of magnesium sulphate heptahydrate, over 3 days: 0.9–1.1 g and 1.5–1.8 g a day',
    );
    // 2.5 dH each: × 0.3567 meq/L × 45.9 L × 147.01 or 246.47 g/mol / 2000
    expect(dose[0]?.grams.likely).toBeCloseTo((2.5 * 0.3567 * 45.9 * 147.01) / 2000, 2);
    expect(dose[1]?.grams.likely).toBeCloseTo((2.5 * 0.3567 * 45.9 * 246.47) / 2000, 2);
    expect(cautions).toHaveLength(1);
  });
  it('is reached for nothing else by a dose, but by new water that has more', () => {
    expect(to('no3', 50, null, no3)).toMatchObject({
      says: 'no change with water of NO3 0 brings NO3 from 40 to 50',
      change: null,
      dose: [],
    });
    const { says } = to('conductivity', 600, 900, '2026-02-24 C1: test conductivity 400 uS/cm');
    expect(says).toBe('conductivity 400 to 600: change 40 % once (17–20 L, as many kg)');
  });
  it('is reached by no dose where nobody knows how much water there is', () => {
    const lines = ['2026-02-01 tank Z1: alone', '2026-02-24 Z1: test KH 4 dH'];
    expect(reachAt('Z1', 'kh', 6, null, lines)).toMatchObject({
      says: 'the litres of Z1 are not known: set its size or live volume',
      dose: [],
    });
  });
});

describe('a target that nothing has to reach', () => {
  it('is one that is there already, or one of which nothing was read', () => {
    expect(to('no3', 40, null, no3)).toMatchObject({ says: 'NO3 is at 40 already', steps: ['NO3 is at 40 already'] });
    expect(to('no3', 20, null).says).toBe('no NO3 on record: test first');
  });
  it('is not one that only a whole change would reach', () => {
    expect(to('no3', 0, null, no3).says).toBe('no change with water of NO3 0 brings NO3 from 40 to 0');
    expect(to('no3', 5, 10, no3).change).toBeNull();
  });
});

describe('what was done since the reading', () => {
  const kh = '2026-02-20 C1: test KH 4 dH';
  const first = (reached: Reach): string | undefined => reached.cautions[0];
  it('is told first, the last two of it', () => {
    const change = '2026-02-22 C1: water change 30 %';
    expect(first(to('no3', 30, 5, '2026-02-20 C1: test NO3 40', change))).toBe(
      'NO3 was read on 20 Feb, before the change on 22 Feb: test it again first',
    );
    const dose = '2026-02-22 C1: dosed 5 g "sodium bicarbonate"';
    expect(
      first(to('kh', 6, null, kh, '2026-02-21 C1: water change 30 %', dose, '2026-02-23 C1: water change 30 %')),
    ).toBe('KH was read on 20 Feb, before the change on 23 Feb and dose on 22 Feb: test it again first');
    expect(to('kh', 6, null, kh, dose).cautions).toHaveLength(3);
    expect(to('kh', 6, null, kh, dose).says).toBe('KH 4 to 6: 2.5–3.0 g of sodium bicarbonate');
  });
  it.each(['calcium chloride', 'magnesium sulphate', 'Epsom salt', 'GH plus', 'crushed coral'])(
    'is a dose of %s for GH, though nobody can tell by how much',
    (product) => {
      const reached = to('gh', 6, null, '2026-02-20 C1: test GH 4 dH', `2026-02-22 C1: dosed 5 g "${product}"`);
      expect(first(reached)).toContain('before the dose on 22 Feb');
    },
  );
  it('is no dose that adds nothing to it', () => {
    const salts = '2026-02-22 C1: dosed 5 g "calcium chloride"';
    expect(first(to('kh', 6, null, kh, salts))).toContain('no more than');
    const soda = '2026-02-22 C1: dosed 5 g "sodium bicarbonate"';
    expect(first(to('gh', 6, null, '2026-02-20 C1: test GH 4 dH', soda))).toContain('no more than');
    expect(first(to('no3', 30, 5, '2026-02-20 C1: test NO3 40', soda))).toContain('tap water');
  });
});
