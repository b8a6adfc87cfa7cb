/** The calendar file as an independent library reads it (ical.js), and its bytes by RFC 5545. */
import ICAL from 'ical.js';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { calendarText, isOurCalendar, type CalendarEntry } from '../../src/reports/ics.ts';
import { day } from '../support/events.ts';
import { icsFaults } from '../support/formats.ts';

const BAG: CalendarEntry = {
  id: 'winter-bag',
  title: 'bag and label: 6 Rowan-1; 6 "Ash, one or two"',
  says: ['Winter is on 5 Dec\nbags of 6', 'a path C:\\fish, and ♀ × ♂'],
  place: 'room',
  first: day('2026-12-05'),
  last: day('2026-12-05'),
};

/** RFC 7265 JSON of a calendar. */
function jcal(text: string): unknown[] {
  const found: unknown = ICAL.parse(text);
  if (!Array.isArray(found)) throw new Error('no calendar');
  return found;
}

function read(entries: readonly CalendarEntry[]): InstanceType<typeof ICAL.Event>[] {
  const calendar = new ICAL.Component(jcal(calendarText(entries, day('2026-11-22'))));
  return calendar.getAllSubcomponents('vevent').map((one) => new ICAL.Event(one));
}

describe('a calendar', () => {
  test('gives back what was put in, as a whole day', () => {
    const [event] = read([BAG]);
    expect(event?.summary).toBe(BAG.title);
    expect(event?.description).toBe('Winter is on 5 Dec\nbags of 6\na path C:\\fish, and ♀ × ♂');
    expect(event?.location).toBe('room');
    expect(event?.uid).toBe('winter-bag@tankside.invalid');
    expect(event?.startDate.isDate).toBe(true);
    expect([event?.startDate.toString(), event?.endDate.toString()]).toEqual(['2026-12-05', '2026-12-06']);
  });

  test('several days end after the last of them', () => {
    const [event] = read([{ ...BAG, first: day('2026-12-30'), last: day('2027-01-02') }]);
    expect([event?.startDate.toString(), event?.endDate.toString()]).toEqual(['2026-12-30', '2027-01-03']);
  });

  // RFC 5545 3.6.1: a date to start on and none to end on is that one day.
  test('the last day that there is has none behind it to end on', () => {
    const text = calendarText([{ ...BAG, first: day('9999-12-31'), last: day('9999-12-31') }], day('9999-12-31'));
    expect(text).toContain('DTSTART;VALUE=DATE:99991231\r\n');
    expect(text).not.toContain('DTEND');
    expect(icsFaults(text)).toEqual([]);
  });

  // RFC 5546 3.2.1: a published message names its organizer; RFC 5545 3.7.2: a snapshot has no method.
  test('is a snapshot and no scheduling message', () => {
    expect(calendarText([BAG], day('2026-11-22'))).not.toMatch(/^(?:METHOD|ORGANIZER)/mu);
  });

  test('the same day gives the same bytes, stamped by the day asked about', () => {
    const text = calendarText([BAG], day('2026-11-22'));
    expect(calendarText([BAG], day('2026-11-22'))).toBe(text);
    expect(text).toContain('DTSTAMP:20261122T000000Z\r\n');
    expect(isOurCalendar(text)).toBe(true);
    expect(isOurCalendar(text.replace('Tankside', 'Another'))).toBe(false);
  });

  test('any text comes back, in lines of at most 75 octets that end in CRLF (RFC 5545 3.1)', () => {
    const words = fc.string({ unit: 'grapheme', maxLength: 200 });
    fc.assert(
      fc.property(words, words, (title, says) => {
        const entry = { ...BAG, title, says: [says] };
        const text = calendarText([entry], day('2026-11-22'));
        for (const line of text.split('\r\n')) expect(Buffer.byteLength(line)).toBeLessThanOrEqual(75);
        expect(text.replaceAll('\r\n', '')).not.toMatch(/[\r\n]/);
        const [event] = read([entry]);
        const told = (one: string): string =>
          one.replace(/\r\n?/g, '\n').replace(/[\u0000-\u0008\u000b-\u001f\u007f]/g, '');
        expect([event?.summary, event?.description]).toEqual([told(title), told(says)]);
      }),
    );
  });
});
