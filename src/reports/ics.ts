/**
 * All-day entries for a calendar program, by RFC 5545. The same entry keeps its UID in every file, so that
 * reading a newer file moves what changed and doubles nothing; no clock is asked, the stamp is the day asked about.
 */
import { addDays, isoDay, LAST_DAY, type Day } from '../core/day.ts';

export interface CalendarEntry {
  /** Stable and unique among the entries of a room. */
  readonly id: string;
  readonly title: string;
  /** Paragraphs below it. */
  readonly says: readonly string[];
  readonly place: string | null;
  readonly first: Day;
  /** The last day that it takes. */
  readonly last: Day;
}

/** RFC 5545 3.1: no line longer than this, without its line end. */
const OCTETS_A_LINE = 75;

/** A whole calendar; `on` is the day asked about. */
export function calendarText(entries: readonly CalendarEntry[], on: Day): string {
  const lines = [
    'BEGIN:VCALENDAR',
    'VERSION:2.0',
    'PRODID:-//Tankside//Tankside 1//EN',
    'CALSCALE:GREGORIAN',
    // No METHOD: it would make this a scheduling message, which names an organizer (RFC 5546 3.2.1). A snapshot has none (RFC 5545 3.7.2).
    ...onceEach(entries).flatMap((entry) => entryLines(entry, on)),
    'END:VCALENDAR',
  ];
  return lines.map((line) => `${folded(line)}\r\n`).join('');
}

/** A calendar takes one entry of a UID: of two rows for the same thing, the more pressing, which stands first. */
function onceEach(entries: readonly CalendarEntry[]): readonly CalendarEntry[] {
  const seen = new Set<string>();
  return entries.filter(({ id }) => !seen.has(id) && seen.add(id));
}

/** True for the text of a calendar that was written here, which may be written over. */
export function isOurCalendar(text: string): boolean {
  return text.startsWith('BEGIN:VCALENDAR\r\nVERSION:2.0\r\nPRODID:-//Tankside//');
}

function entryLines({ id, title, says, place, first, last }: CalendarEntry, on: Day): string[] {
  return [
    'BEGIN:VEVENT',
    `UID:${escapedText(id)}@tankside.invalid`,
    `DTSTAMP:${basic(on)}T000000Z`,
    `DTSTART;VALUE=DATE:${basic(first)}`,
    // Behind the last day of all there is none to end on: without an end it is the first day alone (RFC 5545 3.6.1).
    ...(last < LAST_DAY ? [`DTEND;VALUE=DATE:${basic(addDays(last, 1))}`] : []),
    `SUMMARY:${escapedText(title)}`,
    ...(says.length === 0 ? [] : [`DESCRIPTION:${escapedText(says.join('\n'))}`]),
    ...(place === null ? [] : [`LOCATION:${escapedText(place)}`]),
    'TRANSP:TRANSPARENT',
    'END:VEVENT',
  ];
}

/** ISO 8601 basic form, as RFC 5545 writes dates. */
function basic(day: Day): string {
  return isoDay(day).replaceAll('-', '');
}

/** RFC 5545 3.3.11; controls that no text may hold are dropped. */
function escapedText(text: string): string {
  return text
    .replace(/\r\n?/g, '\n')
    .replace(/[\u0000-\u0008\u000b-\u001f\u007f]/g, '')
    .replace(/[\\;,]/g, (sign) => `\\${sign}`)
    .replace(/\n/g, '\\n');
}

/** RFC 5545 3.1: a line end and a blank within long lines, counted in octets and never inside a character. */
function folded(line: string): string {
  let out = '';
  let octets = 0;
  for (const character of line) {
    const size = new TextEncoder().encode(character).length;
    if (octets + size > OCTETS_A_LINE) {
      out += '\r\n ';
      octets = 1;
    }
    out += character;
    octets += size;
  }
  return out;
}
