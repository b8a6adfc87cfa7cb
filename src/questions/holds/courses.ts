/** Courses of treatment: which doses were given, when the next is due, and from when the fish are clear. */
import { addDays, type Day } from '../../core/day.ts';
import type { DeepReadonly } from '../../core/readonly.ts';
import type { Place } from '../../core/span.ts';
import type { Room } from '../../state/draft.ts';
import type { Treatment } from '../../state/health.ts';
import { awayUntil, isAbout, putOffUntil } from '../due/postponed.ts';
import { oncePerRoom } from './once.ts';

/** Days after the last dose before treated fish may be sold, where the line names none (ours: `wait` sets it). */
export const USUAL_WAIT_DAYS = 14;
/** Days without a dose after which the same product begins a new course. */
const COURSE_GAP_DAYS = 10;
/** Days after which a dose that nobody wrote is no longer asked for: the course was evidently stopped. */
const STOPPED_DAYS = 7;

export interface Course {
  readonly treatment: DeepReadonly<Treatment>;
  /** Doses written, the first among them, oldest first. */
  readonly given: readonly { readonly day: Day; readonly place: Place }[];
  readonly lastDose: Day;
  /** Doses still to come by the line; null where it does not say how many there are. */
  readonly toCome: number | null;
  /** The days on which the next dose is due; null where none is, or it was evidently stopped. */
  readonly next: { readonly low: Day; readonly high: Day | null } | null;
  readonly waitDays: number;
  /** The day from which these fish are clear of it, doses still to come included. */
  readonly clear: Day;
  readonly lines: readonly Place[];
}

/** What the row of its next dose is called, for what puts it off: a dose that was given since ends that. */
export function doseName({ treatment, lastDose }: Pick<Course, 'treatment' | 'lastDose'>): {
  readonly place: string;
  readonly putOffKey: string;
  readonly putOffFrom: Day;
  readonly pressing: false;
} {
  return { place: treatment.where, putOffKey: treatment.product, putOffFrom: lastDose, pressing: false };
}

/** Till when a dose waits, and why. */
export interface Waits {
  readonly until: Day;
  readonly for: 'put off' | 'away';
}

/** As in today's list: a dose that was put off, or waits for the keeper's return, is not late. */
export function waitsUntil(room: Room, course: Course): Waits | null {
  if (course.next === null) return null;
  const until = putOffUntil(room, doseName(course));
  if (until !== null) return { until, for: 'put off' };
  const back = awayUntil(room);
  return back === null ? null : { until: back, for: 'away' };
}

/** Every course of the journal, oldest first. */
export const courses: (room: Room) => readonly Course[] = oncePerRoom((room) =>
  room.health.treatments.map((treatment) => courseOf(room, treatment)),
);

/** Courses whose fish are not clear yet on a day. */
export function runningCourses(room: Room, on: Day): readonly Course[] {
  return courses(room).filter((course) => course.clear > on);
}

/** The course that keeps the fish of a tank from sale the longest, or null. */
export function treatmentClear(room: Room, tank: string, on: Day = room.on): Course | null {
  return runningCourses(room, on)
    .filter(({ treatment }) => treatment.tanks.includes(tank))
    .reduce<Course | null>((last, course) => (last === null || course.clear > last.clear ? course : last), null);
}

function courseOf(room: Room, treatment: DeepReadonly<Treatment>): Course {
  const given = allDoses(room, treatment);
  const lastDose = given.at(-1)?.day ?? treatment.day;
  const toCome = treatment.doses === null ? null : Math.max(0, treatment.doses - given.length);
  const waitDays = treatment.wait === null ? USUAL_WAIT_DAYS : Math.ceil(treatment.wait.high);
  const next = nextDose(room, treatment, lastDose, toCome);
  return {
    treatment,
    given,
    lastDose,
    toCome,
    next,
    waitDays,
    clear: addDays(lastPlanned(treatment, lastDose, next === null ? null : toCome, room.on), waitDays),
    lines: given.map(({ place }) => place),
  };
}

/** The day of the last dose: the last one written, or the earliest on which those still to come can be over. */
function lastPlanned(treatment: DeepReadonly<Treatment>, last: Day, toCome: number | null, on: Day): Day {
  if (toCome === null || toCome === 0) return last;
  const every = treatment.every?.high ?? 1;
  const asWritten = addDays(last, Math.ceil(every * toCome));
  const fromToday = addDays(on, Math.ceil(every * (toCome - 1)));
  return asWritten > fromToday ? asWritten : fromToday;
}

/** Doses of `treat` lines, and `dosed` lines of the same product in the same water that carry the course on. */
function allDoses(room: Room, treatment: DeepReadonly<Treatment>): { day: Day; place: Place }[] {
  const product = treatment.product.toLowerCase();
  const dosed = room.water.doses.filter(
    (dose) =>
      dose.product.toLowerCase() === product &&
      dose.day >= treatment.day &&
      dose.tanks.some((tank) => treatment.tanks.includes(tank)),
  );
  const all = [...treatment.given, ...dosed].sort((a, b) => a.day - b.day || a.place.line - b.place.line);
  const gap = Math.max(COURSE_GAP_DAYS, 2 * (treatment.every?.high ?? 0));
  const taken: { day: Day; place: Place }[] = [];
  for (const { day, place } of all) {
    if (day - (taken.at(-1)?.day ?? treatment.day) > gap) break;
    taken.push({ day, place });
  }
  return taken;
}

function nextDose(
  room: Room,
  treatment: DeepReadonly<Treatment>,
  last: Day,
  toCome: number | null,
): { low: Day; high: Day | null } | null {
  if (toCome === 0 || (toCome === null && treatment.every === null)) return null;
  const every = treatment.every;
  const low = addDays(last, every === null ? 1 : Math.floor(every.low));
  const high = every === null ? null : addDays(last, Math.ceil(every.high));
  const asked = Math.max(high ?? low, ...waited(room, treatment, last));
  return room.on - asked > STOPPED_DAYS ? null : { low, high };
}

/** The days until which a dose was put off, or its keeper away, since the last: no sign that the course was stopped. */
function waited(room: Room, treatment: DeepReadonly<Treatment>, last: Day): readonly Day[] {
  const dose = doseName({ treatment, lastDose: last });
  const said = [...room.chores.putOffs.filter((putOff) => isAbout(room, putOff, dose)), ...room.chores.away];
  return said.filter(({ day, until }) => day <= room.on && until > last).map(({ until }) => until);
}
