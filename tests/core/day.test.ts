import { Settings } from 'luxon';
import { DateTime } from 'luxon';
import { describe, expect, test } from 'vitest';
import { addDays, addMonths, civil, dayFromIso, dayOf, isoDay, weekday } from '../../src/core/day.ts';
import type { Day } from '../../src/core/day.ts';

Settings.defaultZone = 'utc';

function day(iso: string): Day {
  const read = dayFromIso(iso);
  if (read === null) throw new Error(`no such day: ${iso}`);
  return read;
}

describe('days', () => {
  test('counts the days between dates over leap days and year ends', () => {
    // Source: calendar arithmetic that Python 3.11, GNU date and luxon 3.7.2 agree on.
    expect(day('2024-03-01') - day('2024-02-28')).toBe(2);
    expect(day('2023-03-01') - day('2023-02-28')).toBe(1);
    expect(day('2025-01-01') - day('2024-01-01')).toBe(366);
    expect(day('2000-03-01') - day('1999-12-31')).toBe(61);
    expect(day('2026-01-01') - day('2025-11-25')).toBe(37);
  });

  test('knows the weekdays of ISO 8601', () => {
    // Source: ISO week dates, M. Kuhn's ISO 8601 page (1997-W01-1 is 1996-12-30), and 2020-W53-7, 2025-W48-2.
    expect(weekday(day('1996-12-30'))).toBe(1);
    expect(weekday(day('2021-01-03'))).toBe(7);
    expect(weekday(day('2025-11-25'))).toBe(2);
  });

  test('keeps to the last day of a shorter month', () => {
    // Source: month clamping as luxon 3.7.2 and the Temporal polyfill do it.
    expect(isoDay(addMonths(day('2024-01-31'), 1))).toBe('2024-02-29');
    expect(isoDay(addMonths(day('2023-01-31'), 1))).toBe('2023-02-28');
    expect(isoDay(addMonths(day('2024-02-29'), 12))).toBe('2025-02-28');
    expect(isoDay(addMonths(day('2024-03-31'), -1))).toBe('2024-02-29');
    expect(isoDay(addMonths(day('2024-12-31'), 2))).toBe('2025-02-28');
  });

  test('refuses dates that the calendar does not have', () => {
    expect(dayFromIso('2026-02-30')).toBeNull();
    expect(dayFromIso('2026-13-01')).toBeNull();
    expect(dayFromIso('2026-2-1')).toBeNull();
    expect(dayOf(2023, 2, 29)).toBeNull();
  });

  test('agrees with luxon on every tenth day of two centuries', () => {
    for (let at = day('1900-01-01'); at < day('2100-01-01'); at = addDays(at, 10)) {
      const luxon = DateTime.fromMillis(at * 86_400_000, { zone: 'utc' });
      const parts = civil(at);
      expect([parts.year, parts.month, parts.dayOfMonth, weekday(at)]).toEqual([
        luxon.year,
        luxon.month,
        luxon.day,
        luxon.weekday,
      ]);
    }
  });
});
