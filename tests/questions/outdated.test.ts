/** What a reading still tells after what was done to its water since: a dose that raises pH, one of hardness, a change. */
import { describe, expect, test } from 'vitest';
import { readingsDue } from '../../src/questions/due/readings.ts';
import type { Target } from '../../src/questions/target.ts';
import { water } from '../../src/questions/water.ts';
import { plainLook } from '../../src/reports/look.ts';
import { waterText } from '../../src/reports/water.ts';
import { day } from '../support/events.ts';
import { journalOn } from '../support/journal.ts';

const ON = '2026-03-12';
const room = (...lines: readonly string[]) => journalOn(ON, `${lines.join('\n')}\n`);

function told(place: string, ...lines: readonly string[]): string {
  const rows = water(room(...lines), { place, target: null }) ?? [];
  return waterText(rows, plainLook(day(ON))).replace(/\s+/gu, ' ');
}

describe('toxic ammonia after a dose', () => {
  // Emerson et al. 1975 at 25 C: 0.55 % of the total at pH 7, 10.2 % at pH 8.3
  const tested = '2026-03-10 C1: test pH 7, TAN 0.25, 25 C';
  const dosed = '2026-03-11 C1: dosed 3 g "sodium bicarbonate"';
  const verdict = (...lines: readonly string[]): string | undefined =>
    water(room(...lines), { place: 'C1', target: null })?.[0]?.ammonia?.verdict;

  test('that raises pH is told by the pH from before it, and what it may be now', () => {
    expect(verdict(tested)).toBe('under the mark of 0.02');
    expect(verdict(tested, dosed)).toBe(
      'by the pH from before the dose on 11 Mar; it may be up to 0.026 now, over the mark of 0.02: test pH again',
    );
    expect(verdict(tested, '2026-03-11 C1: treat "pH up" 1 mL/L, every 24 h, 2 doses')).toContain('before the dose');
    expect(told('C1', tested, dosed)).toContain('C1: toxic ammonia 0.001 mg/L as N, by the pH from before');
  });

  test('is told as read where the dose raises no pH, came first, or went into other water', () => {
    expect(verdict(tested, '2026-03-11 C1: dosed 3 g salt')).toBe('under the mark of 0.02');
    expect(verdict('2026-03-10 C1: dosed 3 g "sodium bicarbonate"; test pH 7, TAN 0.25, 25 C')).toBe(
      'under the mark of 0.02',
    );
    expect(verdict('2026-03-11 C1: test pH 7, TAN 0.25, 25 C; dosed 3 g "sodium bicarbonate"')).toContain('before');
    expect(verdict(tested, '2026-03-11 C2: dosed 3 g "sodium bicarbonate"')).toBe('under the mark of 0.02');
    expect(verdict(tested, dosed, '2026-03-12 C1: test pH 7.2')).toBe('under the mark of 0.02');
  });

  test('that harms by the old pH already is still said to', () => {
    const harmed = '2026-03-10 C1: test pH 8, TAN 2, 25 C';
    expect(verdict(harmed, dosed)).toMatch(
      /^harms the fish, by the pH from before the dose on 11 Mar; it may be up to/u,
    );
  });

  test('asks for another test of pH where it may be over the mark now', () => {
    const asked = (...lines: readonly string[]): string[] =>
      readingsDue(room(...lines)).map(({ place, what, after }) => `${place} ${what}; ${after ?? ''}`);
    expect(asked(tested)).toEqual([]);
    expect(asked(tested, dosed)).toEqual([
      'C1 test pH again, the dose can have raised it; toxic ammonia after it: 0.001–0.026 mg/L as N at pH 7–8.3, by TAN 0.25 mg/L as N on 10 Mar; may be over the mark of 0.02',
    ]);
    expect(asked(tested, dosed, '2026-03-12 C1: test pH 7.2')).toEqual([]);
    expect(asked('2026-03-10 C1: test pH 7, TAN 0.1, 25 C', dosed)).toEqual([]);
    expect(asked('2026-03-10 C1: test pH 7, TAN 0, 25 C', dosed)).toEqual([]);
  });
});

test('a change of one tank of a loop is told as that tank’s, with its share of the loop', () => {
  // 136 L of A1, half of it 68 L, out of 583 L
  expect(told('Long', '2026-03-10 A1: water change 50 %')).toContain('10 Mar changed 50 % of A1 (12 % of Long)');
  expect(told('Long', '2026-03-10 A1: water change 68 L')).toContain('changed 68 L in A1 (12 % of Long)');
  expect(told('Long', '2026-03-10 Long: water change 50 %')).toContain('changed 50 %');
  expect(told('Long', '2026-03-10 room: water change 50 %')).not.toContain('of Long)');
  expect(told('Long', '2026-03-10 Long: water change 100 L')).toContain('changed 100 L (17 %)');
  expect(told('C1', '2026-03-10 C1: water change 50 %')).not.toContain('of C1');
  const all = water(room('2026-03-10 A1: test NO3 5; water change 50 %'), { place: null, target: null }) ?? [];
  expect(waterText(all, plainLook(day(ON))).replace(/\s+/gu, ' ')).toContain('50 % of A1');
});

describe('what reaches a target', () => {
  const cautions = (target: Target, ...lines: readonly string[]): string | undefined =>
    water(room(...lines), { place: 'C1', target })?.[0]?.reach?.cautions[0];
  const kh = { of: 'kh', value: 6, tap: null } as const;

  test('says where the reading is from before a dose or a change', () => {
    const read = '2026-03-08 C1: test KH 3, NO3 40';
    expect(cautions(kh, read)).toMatch(/^no more than 1 to 2 degrees a day/u);
    expect(cautions(kh, read, '2026-03-09 C1: dosed 3 g "baking soda"')).toBe(
      'KH was read on 8 Mar, before the dose on 9 Mar: test it again first',
    );
    expect(cautions(kh, read, '2026-03-09 C1: dosed 3 g "epsom salt"')).toMatch(/^no more/u);
    const no3 = { of: 'no3', value: 20, tap: 5 } as const;
    expect(cautions(no3, read, '2026-03-09 C1: dosed 3 g "baking soda"')).toMatch(/^tap water/u);
    expect(cautions(no3, read, '2026-03-10 C1: water change 30 %')).toBe(
      'NO3 was read on 8 Mar, before the change on 10 Mar: test it again first',
    );
  });
});
