/** The next dose of a course, and the day on which treated fish are clear. Never a mass of anything. */
import { addDays } from '../../core/day.ts';
import { onDay, times } from '../../core/interval.ts';
import { linesOf } from '../../core/span.ts';
import { dayWords, listWords, plural, rangeWords } from '../../core/words.ts';
import type { Room } from '../../state/draft.ts';
import { isToldLater } from '../../state/when.ts';
import { courseRow } from '../holds/otherrows.ts';
import { doseName, runningCourses, type Course } from '../holds/courses.ts';
import { rowId } from '../id.ts';
import { afterRaising, raisesPh } from '../raised.ts';
import type { DueItem, DueSource } from './item.ts';

export const treatmentDue: DueSource = (room) =>
  runningCourses(room, addDays(room.on, -1)).flatMap((course) => [
    ...(course.next === null ? [] : [doseItem(room, course, course.next)]),
    ...(isSeenClear(room, course) ? [] : [clearItem(room, course)]),
  ]);

/** Looked at on the day itself: the line that the row offers has been jotted, or more was. */
function isSeenClear(room: Room, { treatment, clear }: Course): boolean {
  return treatment.tanks.every((tank) => (room.looks.last.get(tank)?.day ?? clear - 1) >= clear);
}

function doseItem(room: Room, course: Course, next: NonNullable<Course['next']>): DueItem {
  const { treatment, given } = course;
  const { because, lines } = courseRow(room, course);
  const changes = changesSince(room, course);
  const told = changes.length === 0 ? 'none' : listWords(changes.map(({ words }) => words));
  const number = given.length + 1;
  const raised = raisesPh(treatment.product) ? afterRaising(room, treatment.where, 'dose') : null;
  return {
    id: rowId(treatment.where, 'dose', treatment.product),
    what: `dose ${String(number)} of ${treatment.product}, by your label`,
    kind: 'treatment',
    due: { low: next.low, likely: next.low, high: next.high },
    weight: 2,
    why: `dose ${String(given.length)}${treatment.doses === null ? '' : ` of ${String(treatment.doses)}`} was on ${dayWords(course.lastDose, room.on)}; water changed since: ${told}`,
    close: `${treatment.where}: treat "${treatment.product}"`,
    caution: cautionFor(room, course),
    ...(raised === null ? {} : { after: raised.says }),
    ...doseName(course),
    minutes: null,
    because,
    lines: linesOf([...lines, ...changes.map(({ place }) => place)]),
  };
}

function clearItem(room: Room, course: Course): DueItem {
  const { treatment, clear, waitDays, lastDose } = course;
  const { id, because, lines } = courseRow(room, course);
  return {
    id,
    place: treatment.where,
    what: `clear of ${treatment.product}`,
    kind: 'treatment',
    due: onDay(clear),
    weight: 0,
    why: `${plural(waitDays, 'day')} after the last dose${course.next === null ? ` on ${dayWords(lastDose, room.on)}` : ''}; not for sale before, never for eating`,
    close: `${treatment.where}: all well`,
    putOffKey: null,
    pressing: false,
    minutes: null,
    because,
    lines,
  };
}

/** Formalin: its vapour is harmful in a closed room, and it takes oxygen from the water (aquaculture extension literature, from memory). */
const FUMES = /formalin|formaldehyde/iu;

function cautionFor(room: Room, { treatment }: Course): string {
  const others = treatment.tanks.length - 1;
  const shared = room.plumbing.loops.has(treatment.where)
    ? `all on the loop are treated with it (${listWords(treatment.tanks)}), its filter too; `
    : others > 0
      ? `shares water and filter with ${plural(others, 'tank')}: valve off, or all are treated; `
      : '';
  const fumes = FUMES.test(treatment.product) ? 'open a window, gloves, more air: it takes oxygen; ' : '';
  return `${shared}${fumes}by the label or your veterinarian, for the water that was changed; treated fish are not for eating`;
}

/**
 * Water changes in the treated water since the last dose: what a repeated dose must allow for. A change that is told
 * before the dose of its day was made for it, and is allowed for.
 */
function changesSince(room: Room, course: Course): { words: string; place: { file: string; line: number } }[] {
  // Of a dose no time is kept: within a day it goes by the lines.
  const last = { day: course.lastDose, minute: null, place: course.given.at(-1)?.place ?? course.treatment.place };
  return room.water.changes
    .filter(
      ({ day, place, tanks }) =>
        !isToldLater(last, { day, minute: null, place }) && tanks.some((tank) => course.treatment.tanks.includes(tank)),
    )
    .map(({ amount, day, place, where }) => {
      const much = amount.unit === 'share' ? `${rangeWords(times(amount, 100))} %` : `${rangeWords(amount)} L`;
      return {
        words: `${much}${where === course.treatment.where ? '' : ` in ${where}`} on ${dayWords(day, room.on)}`,
        place,
      };
    });
}
