/**
 * Sickness, holds, treatments and quarantine, as the lines say. Only `hold` holds; how far one reaches
 * and when it is clear follows from water and fish, and is worked out when it is asked for.
 */
import type { Homes } from './home.ts';
import { addDays, type Day } from '../core/day.ts';
import type { Measure } from '../core/quantity.ts';
import { sameClause, type Place } from '../core/span.ts';
import type { Dose, EventOf } from '../journal/event.ts';
import type { Draft } from './draft.ts';
import { sharers } from './tanks.ts';
import { tanksNamed, whereOf } from './where.ts';

export interface Health {
  sick: Sick[];
  holds: Hold[];
  /** Tanks that a hold had reached and that a `hold over` of their own let go. */
  released: { tanks: string[]; day: Day; minute: number | null; place: Place }[];
  treatments: Treatment[];
  quarantines: Quarantine[];
}

export interface Sick {
  where: string;
  tanks: string[];
  text: string;
  /** Null until a line says whether it is catching. */
  catching: boolean | null;
  day: Day;
  minute: number | null;
  place: Place;
  /** The later line that answered "catching?", or that ended it. */
  answered: Place | null;
  over: { day: Day; place: Place } | null;
}

export interface Hold {
  /** Tank, loop or `room` of the line. */
  where: string;
  /** The tanks that the line names; what they reach is not kept here. */
  tanks: string[];
  text: string;
  day: Day;
  minute: number | null;
  place: Place;
  /** The same hold written again: a new sign of the same trouble. */
  again: { day: Day; place: Place }[];
  over: { day: Day; place: Place } | null;
}

export interface Treatment {
  where: string;
  /** Every tank that shared the water that day. */
  tanks: string[];
  product: string;
  dose: Dose | null;
  every: Measure<'days'> | null;
  doses: number | null;
  wait: Measure<'days'> | null;
  day: Day;
  minute: number | null;
  place: Place;
  /** Doses that `treat` lines tell, the first among them; `dosed` lines of the product are added when asked. */
  given: { day: Day; dose: Dose | null; place: Place }[];
  remark: string | null;
}

export interface Quarantine {
  where: string;
  tanks: string[];
  day: Day;
  until: Day;
  ended: { day: Day; place: Place } | null;
  place: Place;
}

/** Days after a dose within which the same product in the same water is the next dose of that course. */
const SAME_COURSE_DAYS = 10;

/** What a sickness is called of which no line says more. */
const PLAINLY_SICK = 'sick';

/** `sick: white spot`; of a sickness of which no line says more only that. */
export function sickWords(text: string): string {
  return text === PLAINLY_SICK ? text : `sick: ${text}`;
}

/** What fish carry that are sick with it. */
export function troubleOf(text: string): string {
  return text === PLAINLY_SICK ? 'what made it sick' : text;
}

export const HEALTH_HOMES: Homes<
  'sick' | 'catching' | 'treated' | 'hold begun' | 'hold over' | 'quarantine begun' | 'quarantine over'
> = {
  sick: (draft, event) => {
    const { day, minute, place, text, catching } = event;
    draft.health.sick.push({
      where: whereOf(event.subject),
      tanks: tanksNamed(draft, event),
      text: text ?? PLAINLY_SICK,
      catching,
      day,
      minute,
      place,
      answered: null,
      over: null,
    });
  },
  catching: answerCatching,
  treated: treat,
  'hold begun': beginHold,
  'hold over': endHold,
  'quarantine begun': (draft, event) => {
    const days = Math.ceil(event.lasts.high);
    draft.health.quarantines.push({
      where: whereOf(event.subject),
      tanks: tanksNamed(draft, event),
      day: event.day,
      until: addDays(event.day, Number.isFinite(days) ? days : 0),
      ended: null,
      place: event.place,
    });
  },
  'quarantine over': (draft, event) => {
    const tanks = tanksNamed(draft, event);
    const open = draft.health.quarantines.filter((one) => one.ended === null && overlap(one.tanks, tanks));
    for (const one of open) one.ended = { day: event.day, place: event.place };
    const flagged = tanks.some((tank) => draft.plumbing.tanks.get(tank)?.quarantine === true);
    if (open.length > 0) return;
    if (!flagged) nothingToEnd(draft, event, 'quarantine', 'quarantine 28 days');
    // A quarantine tank counts from its last fish without a line; this ends what was counted.
    const { day, place } = event;
    draft.health.quarantines.push({
      where: whereOf(event.subject),
      tanks,
      day,
      until: day,
      ended: { day, place },
      place,
    });
  },
};

function answerCatching(draft: Draft, event: EventOf<'catching'>): void {
  const tanks = tanksNamed(draft, event);
  const open = draft.health.sick.filter((one) => one.over === null && overlap(one.tanks, tanks));
  const asked = open.filter((one) => one.catching === null);
  const meant = asked.length > 0 ? asked : open.slice(-1);
  for (const one of meant) {
    one.catching = event.catching;
    one.answered = event.place;
  }
  if (meant.length > 0) return;
  draft.problems.push({
    kind: 'nothing-sick',
    weight: 'stops',
    says: `no sickness is open in ${whereOf(event.subject)} that this could answer`,
    write: `${whereOf(event.subject)}: sick "white spot", ${event.catching ? 'catching' : 'not catching'}`,
    at: event.place,
    also: [],
  });
}

function treat(draft: Draft, event: EventOf<'treated'>): void {
  const where = whereOf(event.subject);
  const { day, minute, place } = event;
  const tanks = [...new Set(tanksNamed(draft, event).flatMap((tank) => sharers(draft, tank, day, minute)))];
  const course = draft.health.treatments.findLast(
    (one) => one.product.toLowerCase() === event.product.toLowerCase() && overlap(one.tanks, tanks) && goesOn(one, day),
  );
  if (course) {
    if (!course.given.some((dose) => sameClause(dose.place, place)))
      course.given.push({ day, dose: event.dose, place });
    course.every ??= event.every;
    course.doses ??= event.doses;
    course.wait ??= event.wait;
    course.tanks = [...new Set([...course.tanks, ...tanks])];
    return;
  }
  draft.health.treatments.push({
    where,
    tanks,
    product: event.product,
    dose: event.dose,
    every: event.every,
    doses: event.doses,
    wait: event.wait,
    day,
    minute,
    place,
    given: [{ day, dose: event.dose, place }],
    remark: event.remark,
  });
}

/** True while another dose would still belong to this course. */
function goesOn(course: Treatment, day: Day): boolean {
  const last = course.given.at(-1)?.day ?? course.day;
  if (course.doses !== null && course.given.length >= course.doses) return false;
  return day - last <= Math.max(SAME_COURSE_DAYS, 2 * (course.every?.high ?? 0));
}

function beginHold(draft: Draft, event: EventOf<'hold begun'>): void {
  const where = whereOf(event.subject);
  const tanks = tanksNamed(draft, event);
  const { day, minute, place, text } = event;
  const open = draft.health.holds.filter(
    (hold) => hold.over === null && hold.text.toLowerCase() === text.toLowerCase(),
  );
  const sameLine = open.find((hold) => sameClause(hold.place, place));
  if (sameLine) {
    sameLine.tanks = [...new Set([...sameLine.tanks, ...tanks])];
    return;
  }
  const known = open.find((hold) => tanks.every((tank) => hold.tanks.includes(tank)));
  if (known) known.again.push({ day, place });
  else draft.health.holds.push({ where, tanks, text, day, minute, place, again: [], over: null });
}

function endHold(draft: Draft, event: EventOf<'hold over'>): void {
  const tanks = tanksNamed(draft, event);
  const { day, minute, place } = event;
  const open = draft.health.holds.filter((hold) => hold.over === null);
  if (open.length === 0) {
    nothingToEnd(draft, event, 'hold', 'hold "velvet"');
    return;
  }
  const where = whereOf(event.subject);
  const ended = open.filter((hold) => hold.where === where || hold.tanks.every((tank) => tanks.includes(tank)));
  for (const hold of ended) hold.over = { day, place };
  if (ended.length === 0) draft.health.released.push({ tanks, day, minute, place });
  const freed = [...tanks, ...ended.flatMap((hold) => hold.tanks)];
  for (const one of draft.health.sick) {
    if (one.over === null && one.tanks.every((tank) => freed.includes(tank))) one.over = { day, place };
  }
}

function nothingToEnd(
  draft: Draft,
  event: EventOf<'hold over' | 'quarantine over'>,
  what: string,
  begin: string,
): void {
  draft.problems.push({
    kind: 'nothing-to-end',
    weight: 'doubt',
    says: `no ${what} is open in ${whereOf(event.subject)} on that day`,
    write: `the line that began it: ${whereOf(event.subject)}: ${begin}`,
    at: event.place,
    also: [],
  });
}

function overlap(a: readonly string[], b: readonly string[]): boolean {
  return a.some((one) => b.includes(one));
}
