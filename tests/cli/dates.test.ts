import { DateTime, Settings } from 'luxon';
import { describe, expect, test } from 'vitest';
import { readDate, readPastDate } from '../../src/cli/dates.ts';
import { addDays, isoDay } from '../../src/core/day.ts';
import { day } from '../support/events.ts';

Settings.defaultZone = 'utc';
Settings.defaultLocale = 'en-US';

/** A Sunday. */
const today = day('2026-02-15');
const read = (text: string): string => isoDay(readDate(text, today));

describe('a day asked about', () => {
  test('is a date, or steps from today', () => {
    expect(read('2025-12-31')).toBe('2025-12-31');
    expect(read('today')).toBe('2026-02-15');
    expect(read('Yesterday')).toBe('2026-02-14');
    expect(read('tomorrow')).toBe('2026-02-16');
    expect(read('+14')).toBe('2026-03-01');
    expect(read('-3')).toBe('2026-02-12');
  });

  test('is a weekday: the coming one, the one after today, the one before', () => {
    expect(read('sunday')).toBe('2026-02-15');
    expect(read('next sunday')).toBe('2026-02-22');
    expect(read('last sunday')).toBe('2026-02-08');
    expect(read('Sat')).toBe('2026-02-21');
    expect(read('next saturday')).toBe('2026-02-21');
    expect(read('last tues')).toBe('2026-02-10');
  });

  test('agrees with luxon about every weekday from every day of a fortnight', () => {
    for (let ahead = 0; ahead < 14; ahead += 1) {
      const from = addDays(today, ahead);
      const there = DateTime.fromISO(isoDay(from));
      for (let name = 1; name <= 7; name += 1) {
        const coming = there.plus({ days: (name - there.weekday + 7) % 7 });
        expect(isoDay(readDate(coming.toFormat('cccc'), from))).toBe(coming.toISODate());
      }
    }
  });

  test('is a day of the year nearest to today, or of the year that is named', () => {
    expect(read('14 Feb')).toBe('2026-02-14');
    expect(read('Feb 14')).toBe('2026-02-14');
    expect(read('20 december')).toBe('2025-12-20');
    expect(read('1 Jun')).toBe('2026-06-01');
    expect(read('29 feb 2024')).toBe('2024-02-29');
  });

  test.each(['2026-02-30', '31 Feb', '14', '+9999999', 'next 14 Feb', '29 Feb'])(
    'is refused where no such day exists: %s',
    (text) => {
      expect(() => readDate(text, today)).toThrow(`«${text}» is no date that exists`);
    },
  );

  test.each(['soon', 'next week', '', 'ma', 'yesterdy'])('is refused where it is no day at all: «%s»', (text) => {
    expect(() => readDate(text, today)).toThrow(new RegExp(`^«${text}» is no date$`));
  });
});

describe('a day that has been', () => {
  const past = (text: string, from = today): string => isoDay(readPastDate(text, from));

  test('is the last weekday of that name, today included', () => {
    expect(past('sunday')).toBe('2026-02-15');
    expect(past('mon')).toBe('2026-02-09');
    expect(past('last sunday')).toBe('2026-02-08');
  });

  test('is the last such day of the year, however near the coming one is', () => {
    expect(past('14 Feb')).toBe('2026-02-14');
    expect(past('17 Feb')).toBe('2025-02-17');
    expect(past('1 Mar', day('2026-11-29'))).toBe('2026-03-01');
    expect(past('14 Feb', day('2026-11-29'))).toBe('2026-02-14');
    expect(past('31 Dec', day('2026-01-02'))).toBe('2025-12-31');
  });

  test('is tomorrow where it is said so: another zone may be there already', () => {
    expect(past('16 Feb')).toBe('2026-02-16');
  });

  test('is what is said without doubt, to come or not', () => {
    expect(past('14 Feb 2027')).toBe('2027-02-14');
    expect(past('2026-12-01')).toBe('2026-12-01');
    expect(past('+2')).toBe('2026-02-17');
  });

  test('is refused by the name of its option', () => {
    const wrong = (): unknown => readPastDate('2026-02-30', today, '--since');
    expect(wrong).toThrow(
      expect.objectContaining({ status: 2, write: '--since 2026-02-14 (or today, -14, "last saturday", "14 Feb")' }),
    );
  });
});
