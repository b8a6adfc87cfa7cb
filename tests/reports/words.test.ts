import { describe, expect, test } from 'vitest';
import { dayFromIso } from '../../src/core/day.ts';
import type { Day } from '../../src/core/day.ts';
import { between, exactly, UNKNOWN_COUNT } from '../../src/core/interval.ts';
import {
  ageWords,
  countWords,
  dayWords,
  listWords,
  ordinal,
  plural,
  rangeWords,
  sinceWords,
  windowWords,
} from '../../src/core/words.ts';
import { plainLook } from '../../src/reports/look.ts';
import { dayText, heading, windowText } from '../../src/reports/words.ts';

function day(iso: string): Day {
  const read = dayFromIso(iso);
  if (read === null) throw new Error(`no such day: ${iso}`);
  return read;
}

const now = day('2026-02-15');
const window = (low: string | null, high: string | null) => ({
  low: low === null ? null : day(low),
  likely: null,
  high: high === null ? null : day(high),
});

describe('days', () => {
  test('name the year only where it is another one', () => {
    expect(dayWords(day('2026-02-14'), now)).toBe('14 Feb');
    expect(dayWords(day('2025-12-31'), now)).toBe('31 Dec 2025');
  });

  test('make windows that say each month and year once', () => {
    expect(windowWords(window('2026-06-12', '2026-06-26'), now)).toBe('12–26 Jun');
    expect(windowWords(window('2026-01-28', '2026-02-03'), now)).toBe('28 Jan – 3 Feb');
    expect(windowWords(window('2025-12-28', '2026-01-03'), now)).toBe('28 Dec 2025 – 3 Jan');
    expect(windowWords(window('2025-06-12', '2025-06-26'), now)).toBe('12–26 Jun 2025');
    expect(windowWords(window('2026-06-12', '2026-06-12'), now)).toBe('12 Jun');
  });

  test('leave a side open where it is not known', () => {
    expect(windowWords(window('2026-06-12', null), now)).toBe('from 12 Jun');
    expect(windowWords(window(null, '2026-06-26'), now)).toBe('by 26 Jun');
    expect(windowWords(window(null, null), now)).toBe('not known');
  });

  test('are the fourteenth as long as only one fourteenth can be meant', () => {
    expect(sinceWords(day('2026-02-14'), now)).toBe('since the 14th');
    expect(sinceWords(day('2026-01-19'), now)).toBe('since the 19th');
    expect(sinceWords(day('2026-01-15'), now)).toBe('since 15 Jan');
    expect(sinceWords(now, now)).toBe('since today');
    expect([1, 2, 3, 4, 11, 12, 13, 21, 22, 23, 31].map(ordinal).join(' ')).toBe(
      '1st 2nd 3rd 4th 11th 12th 13th 21st 22nd 23rd 31st',
    );
  });
});

describe('ages', () => {
  test('are in days up to six weeks, then in weeks, then in months', () => {
    expect(ageWords(exactly(1))).toBe('1 day');
    expect(ageWords(between(5, 8))).toBe('5–8 days');
    expect(ageWords(exactly(42))).toBe('42 days');
    expect(ageWords(exactly(43))).toBe('6 weeks');
    expect(ageWords(between(40, 60))).toBe('5–8 weeks');
    expect(ageWords(exactly(200))).toBe('6 months');
    expect(ageWords(between(20, Infinity, null))).toBe('at least 20 days');
  });
});

describe('counts', () => {
  test('show the range and never more certainty than there is', () => {
    expect(countWords(exactly(18))).toBe('18');
    expect(countWords(between(33.75, 56.25, 45))).toBe('about 45 (34–56)');
    expect(countWords(between(34, 56, null))).toBe('34–56');
    expect(countWords(between(1, Infinity, null))).toBe('at least 1');
    expect(countWords(UNKNOWN_COUNT)).toBe('unknown');
  });

  test('are rounded outward as bare ranges', () => {
    expect(rangeWords(between(33.75, 56.25))).toBe('33–57');
    expect(rangeWords(between(0.201, 0.349), 2)).toBe('0.20–0.35');
    expect(rangeWords(exactly(0.3), 1)).toBe('0.3');
    expect(rangeWords(between(22, Infinity, null))).toBe('22 or more');
  });
});

test('lists and plurals read as said', () => {
  expect(listWords([])).toBe('');
  expect(listWords(['A1'])).toBe('A1');
  expect(listWords(['A1', 'A2'])).toBe('A1 and A2');
  expect(listWords(['A1', 'A2', 'C1'])).toBe('A1, A2 and C1');
  expect([plural(1, 'line'), plural(0, 'line'), plural(2, 'box', 'boxes')]).toEqual(['1 line', '0 lines', '2 boxes']);
});

describe('the look', () => {
  const look = plainLook(now);
  const machine = { ...look, machine: true };

  test('gives a machine ISO 8601 dates and intervals', () => {
    expect(dayText(now, machine)).toBe('2026-02-15');
    expect(windowText(window('2026-06-12', '2026-06-26'), machine)).toBe('2026-06-12/2026-06-26');
    expect(windowText(window(null, '2026-06-26'), machine)).toBe('../2026-06-26');
    expect(windowText(window('2026-06-12', '2026-06-12'), machine)).toBe('2026-06-12');
    expect(windowText(window('2026-06-12', '2026-06-26'), look)).toBe('12–26 Jun');
  });

  test('heads an answer with its day, and says when that is a projection', () => {
    expect(heading(look)).toBe('Sun 15 Feb 2026');
    expect(heading({ ...look, projected: true })).toBe('Sun 15 Feb 2026 (a projection)');
    expect(heading(machine)).toBe('2026-02-15');
  });
});
