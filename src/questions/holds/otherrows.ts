/** Rows of what keeps fish in their tanks beside a hold: sickness, treatment, quarantine. */
import { addDays } from '../../core/day.ts';
import { linesOf } from '../../core/span.ts';
import { dayWords, listWords, plural } from '../../core/words.ts';
import type { Room } from '../../state/draft.ts';
import type { CourseRow, QuarantineRow, SickRow } from '../holds.ts';
import { rowId } from '../id.ts';
import { USUAL_WAIT_DAYS, waitsUntil, type Course } from './courses.ts';
import { USUAL_QUARANTINE_DAYS, type Kept } from './quarantines.ts';
import { CLEAR_DAYS } from './reach.ts';
import type { OpenSick } from './sickness.ts';

export function sickRow(room: Room, { sick, until, beside }: OpenSick): SickRow {
  const lines = linesOf([sick.place, ...(sick.answered ? [sick.answered] : [])]);
  return {
    id: rowId(sick.where, 'sick', sick.text),
    place: sick.where,
    text: sick.text,
    catching: sick.catching,
    since: sick.day,
    until,
    beside,
    close: sick.catching === null ? `${sick.where}: catching` : `${sick.where}: hold "${sick.text}"`,
    because: {
      rule: 'until a line says that a sickness is not catching, its tank is not for sale, and tanks on the same water carry a caution; only a hold holds them',
      source: `the journal; where it is catching and no hold is written, ${String(CLEAR_DAYS)} days (common practice, no source)`,
      steps: [
        `${sick.text}, seen ${dayWords(sick.day, room.on)}: ${sick.catching === null ? 'nobody said yet whether it is catching' : 'catching'}`,
        beside.length === 0
          ? 'no other tank shared its water that day'
          : `on the same water that day: ${listWords(beside)}`,
      ],
      lines,
    },
    lines,
  };
}

export function courseRow(room: Room, course: Course): CourseRow {
  const { treatment, given, lastDose, toCome, clear, waitDays } = course;
  const lines = linesOf(course.lines);
  return {
    id: rowId(treatment.where, 'treatment', treatment.product),
    place: treatment.where,
    product: treatment.product,
    tanks: treatment.tanks,
    since: treatment.day,
    given: given.length,
    of: treatment.doses,
    next: course.next,
    waits: waitsUntil(room, course),
    clear,
    because: {
      rule: 'treated fish may be sold when the wait after the last dose is over; every tank on the treated water counts as treated',
      source:
        treatment.wait === null
          ? `${String(USUAL_WAIT_DAYS)} days is ours: write wait … days to change it`
          : 'the journal',
      steps: [
        `${plural(given.length, 'dose')} written${treatment.doses === null ? '' : ` of ${String(treatment.doses)}`}, the last on ${dayWords(lastDose, room.on)}`,
        ...(toCome === null || toCome === 0 || course.next === null
          ? []
          : [`${String(toCome)} still to come, the last not before ${dayWords(addDays(clear, -waitDays), room.on)}`]),
        `clear on ${dayWords(clear, room.on)}: ${plural(waitDays, 'day')} after the last dose`,
        ...(treatment.tanks.length > 1 ? [`treated with it: ${listWords(treatment.tanks)}`] : []),
      ],
      lines,
    },
    lines,
  };
}

export function quarantineRow(room: Room, { tank, since, until, usual, anew, lines: places }: Kept): QuarantineRow {
  const lines = linesOf(places);
  return {
    id: rowId(tank, 'quarantine'),
    place: tank,
    since,
    until,
    usual,
    close: `${tank}: quarantine over`,
    because: {
      rule: usual
        ? `fish in a quarantine tank stay ${String(USUAL_QUARANTINE_DAYS)} days from the last ones that came in, unless a line says otherwise`
        : 'a quarantine lasts the days that its line gives, from the last fish that came in',
      source: usual ? 'three to four weeks: common practice, no source' : 'the journal',
      steps: [
        ...(anew ? [`fish came in on ${dayWords(since, room.on)}, after the line that gives the days`] : []),
        `from ${dayWords(since, room.on)} to ${dayWords(until, room.on)}, ${plural(until - since, 'day')}`,
      ],
      lines,
    },
    lines,
  };
}
