/**
 * The day that it is, in zones from -12 to +14 and on the days that clocks dislike: our two ways against each
 * other and against the engine's own calendar (Intl, which brings the zones of the IANA list).
 */
import process from 'node:process';
import fc from 'fast-check';
import { afterEach, describe, expect, test } from 'vitest';
import { dayBounds, dayHere, dayIn } from '../../src/cli/clock.ts';
import { isoDay } from '../../src/core/day.ts';

/** The signs of Etc zones are the other way round: GMT+12 is 12 hours behind. */
const ZONES = [
  'UTC',
  'Etc/GMT+12',
  'Etc/GMT-14',
  'Pacific/Kiritimati',
  'Pacific/Apia',
  'America/St_Johns',
  'America/Santiago',
  'America/Sao_Paulo',
  'Africa/Cairo',
  'Europe/Dublin',
  'Europe/Vienna',
  'Asia/Kathmandu',
  'Asia/Beirut',
  'Australia/Lord_Howe',
  'Pacific/Chatham',
] as const;

/**
 * Clocks forward and back, at two o'clock and at midnight; the day that Apia left out; leap days; ends of years. The
 * dates of the changes are from memory; that they are changes is asserted below.
 */
const MOMENTS = [
  '2026-03-29T01:00:00Z',
  '2026-10-25T01:00:00Z',
  '2026-04-05T03:00:00Z',
  '2026-09-06T04:00:00Z',
  '2017-10-15T03:00:00Z',
  '2011-12-30T10:00:00Z',
  '2023-04-27T22:00:00Z',
  '2024-02-29T00:00:00Z',
  '2000-02-29T23:59:59Z',
  '2025-12-31T23:59:59Z',
  '2026-01-01T00:00:00Z',
].map((iso) => Date.parse(iso));

const MINUTE = 60_000;
const HOURS = [-26, -14, -12, -3, -1, 0, 1, 2, 5, 11, 13, 24];

const home = process.env['TZ'];

afterEach(() => {
  if (home === undefined) delete process.env['TZ'];
  else process.env['TZ'] = home;
});

const CALENDARS = new Map(
  ZONES.map((zone) => [
    zone,
    new Intl.DateTimeFormat('en-US-u-ca-gregory', {
      timeZone: zone,
      year: 'numeric',
      month: '2-digit',
      day: '2-digit',
    }),
  ]),
);

function byIntl(zone: (typeof ZONES)[number], moment: number): string {
  const parts = CALENDARS.get(zone)?.formatToParts(moment) ?? [];
  const of = (type: string): string => parts.find((part) => part.type === type)?.value ?? '';
  return `${of('year')}-${of('month')}-${of('day')}`;
}

async function inZone(zone: string, moment: number): Promise<string> {
  const day = await dayIn(zone, new Date(moment));
  return day === null ? '' : isoDay(day);
}

describe.each(ZONES)('in %s', (zone) => {
  test('a moment falls on the day of the calendar there, wherever the machine stands', async () => {
    for (const moment of MOMENTS) {
      for (const hours of HOURS) {
        for (const step of [-1, 0, 1]) {
          const at = moment + hours * 60 * MINUTE + step;
          const there = byIntl(zone, at);
          process.env['TZ'] = 'Pacific/Chatham';
          expect(await inZone(zone, at)).toBe(there);
          process.env['TZ'] = zone;
          expect(isoDay(dayHere(new Date(at)))).toBe(there);
        }
      }
    }
  });

  test('the same for any moment of a century', async () => {
    process.env['TZ'] = zone;
    const any = fc.integer({ min: Date.UTC(1970, 0, 2), max: Date.UTC(2069, 11, 30) });
    await fc.assert(
      fc.asyncProperty(any, async (at) => {
        const there = byIntl(zone, at);
        expect([await inZone(zone, at), isoDay(dayHere(new Date(at)))]).toEqual([there, there]);
      }),
      { numRuns: 60 },
    );
  });

  test('a day is that day from its first to its last millisecond, and no longer', async () => {
    for (const moment of MOMENTS) {
      for (const hours of HOURS) {
        const at = moment + hours * 60 * MINUTE;
        const day = await dayIn(zone, new Date(at));
        const bounds = day === null ? null : await dayBounds(zone, day);
        if (day === null || bounds === null) throw new Error('no such zone');
        const { from, until } = bounds;
        expect(from <= at && at < until, `${isoDay(day)} in ${zone}`).toBe(true);
        const days = [from, until - 1, from - 1, until].map((edge) => byIntl(zone, edge) === isoDay(day));
        expect(days, `${isoDay(day)} in ${zone}`).toEqual([true, true, false, false]);
      }
    }
  });
});

describe('the test itself', () => {
  test.each([
    ['Europe/Vienna', '2026-03-29', 23],
    ['Europe/Vienna', '2026-10-25', 25],
    ['Australia/Lord_Howe', '2026-04-05', 24.5],
    ['America/Santiago', '2026-09-06', 23],
    ['America/Sao_Paulo', '2017-10-15', 23],
    ['Africa/Cairo', '2023-04-28', 23],
  ] as const)('%s has a day of another length on %s', async (zone, iso, hours) => {
    const day = await dayIn(zone, new Date(`${iso}T12:00:00Z`));
    const bounds = day === null ? null : await dayBounds(zone, day);
    expect(bounds === null ? null : (bounds.until - bounds.from) / 60 / MINUTE).toBe(hours);
  });

  test('Apia had no 30 December 2011', () => {
    const days = [-2, 0, 2].map((hours) =>
      byIntl('Pacific/Apia', Date.parse('2011-12-30T10:00:00Z') + hours * 60 * MINUTE),
    );
    expect(days).toEqual(['2011-12-29', '2011-12-31', '2011-12-31']);
  });

  test('no zone of that name has no day', async () => {
    expect(await dayIn('Mars/Olympus', new Date(0))).toBeNull();
    expect(await dayBounds('Mars/Olympus', dayHere(new Date(0)))).toBeNull();
  });
});
