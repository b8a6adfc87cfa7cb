/** Today's list and the days before an auction as entries of a calendar. What both hold has one id: it is never doubled. */
import type { Day } from '../core/day.ts';
import type { DueAnswer, DueRow } from '../questions/due.ts';
import type { TimetableRow } from '../questions/timetable/row.ts';
import type { CalendarEntry } from './ics.ts';

/** Takes out what other eyes must not read. */
type Hide = (text: string) => string;

/** Every row on the day on which it is to be done: what is late or open stands on the day asked about. */
export function dueCalendar({ rows }: DueAnswer, on: Day, hide: Hide): readonly CalendarEntry[] {
  return rows.map((row) => {
    const day = dayOf(row, on);
    return {
      id: row.id,
      title: hide(row.place === 'room' ? row.what : `${row.place}: ${row.what}`),
      says: [row.why, ...(row.caution === undefined ? [] : [`take care: ${row.caution}`]), `jot  ${row.close}`].map(
        hide,
      ),
      place: row.place,
      first: day,
      last: day,
    };
  });
}

function dayOf({ due, state }: DueRow, on: Day): Day {
  if (state !== 'ahead') return on;
  return due.low ?? due.likely ?? due.high ?? on;
}

/** What is not done yet before an auction; a last day for dosing that is past is nothing to do. */
export function timetableCalendar(rows: readonly TimetableRow[], on: Day, hide: Hide): readonly CalendarEntry[] {
  return rows
    .filter(({ done, step, day }) => !done && !(step === 'last dose' && day < on))
    .map(({ id, auction, day, what, why, caution, close }) => ({
      id,
      title: hide(what.includes(auction) ? what : `${auction}: ${what}`),
      says: [why, ...(caution === null ? [] : [`take care: ${caution}`]), `jot  ${close}`].map(hide),
      place: null,
      first: day,
      last: day,
    }));
}
