/** Holds with their reach and clearance, and what else keeps fish in their tanks: sickness, treatment, quarantine. */
import type { Because } from '../core/because.ts';
import { addDays, type Day } from '../core/day.ts';
import type { Interval } from '../core/interval.ts';
import { linesOf, type LineRef, type Place } from '../core/span.ts';
import { dayWords, listWords } from '../core/words.ts';
import type { Room } from '../state/draft.ts';
import { sickWords } from '../state/health.ts';
import { walkOrder } from '../state/tanks.ts';
import { runningCourses, type Waits } from './holds/courses.ts';
import { courseRow, quarantineRow, sickRow } from './holds/otherrows.ts';
import { inQuarantine } from './holds/quarantines.ts';
import { CLEAR_DAYS, LOOK_BACK_DAYS, openHolds, type HoldReach } from './holds/reach.ts';
import type { Step } from './holds/route.ts';
import { openSick } from './holds/sickness.ts';
import { rowId } from './id.ts';
import type { WhyRow } from './whyrow.ts';

interface RowBase {
  readonly id: string;
  /** Tank, loop or `room` of the line. */
  readonly place: string;
  readonly since: Day;
  readonly because: Because;
  readonly lines: readonly LineRef[];
}

export interface HoldRow extends RowBase {
  readonly text: string;
  readonly firstSign: Day;
  readonly lookBack: Day;
  readonly lastSign: Day;
  readonly lastDose: Day | null;
  /** The end of doses that are still to come, where it is later than every sign. */
  readonly dosesTo: Day | null;
  readonly clear: Day;
  readonly tanks: readonly { readonly tank: string; readonly since: Day; readonly route: readonly RouteStep[] }[];
  readonly clean: readonly { readonly tank: string; readonly says: string; readonly line: LineRef }[];
  readonly moved: readonly Gone[];
  readonly sold: readonly (Gone & { readonly gift: boolean })[];
  /** The line that ends it. */
  readonly close: string;
}

interface RouteStep {
  readonly from: string;
  readonly to: string;
  readonly says: string;
  readonly on: Day;
  readonly lines: readonly LineRef[];
}

/** Fish that left a reached tank: for another tank, or to somebody. */
export interface Gone {
  readonly fish: string;
  readonly count: Interval;
  readonly from: string | null;
  readonly to: string | null;
  readonly on: Day;
  readonly line: LineRef;
}

export interface SickRow extends RowBase {
  readonly text: string;
  readonly catching: boolean | null;
  readonly until: Day | null;
  readonly beside: readonly string[];
  readonly close: string;
}

export interface CourseRow extends RowBase {
  readonly product: string;
  readonly tanks: readonly string[];
  readonly given: number;
  readonly of: number | null;
  readonly next: { readonly low: Day; readonly high: Day | null } | null;
  /** The day until which the next dose was put off, or waits for the keeper's return. */
  readonly waits: Waits | null;
  readonly clear: Day;
}

export interface QuarantineRow extends RowBase {
  readonly until: Day;
  readonly usual: boolean;
  readonly close: string;
}

export interface HoldsAnswer {
  readonly holds: readonly HoldRow[];
  readonly sick: readonly SickRow[];
  readonly treatments: readonly CourseRow[];
  readonly quarantines: readonly QuarantineRow[];
}

export function holds(room: Room): HoldsAnswer {
  return {
    holds: openHolds(room).map((hold) => holdRow(room, hold)),
    sick: openSick(room)
      .filter(({ held }) => !held)
      .map((sick) => sickRow(room, sick)),
    treatments: runningCourses(room, room.on).map((course) => courseRow(room, course)),
    quarantines: walkOrder(room).flatMap((tank) => {
      const kept = inQuarantine(room, tank);
      return kept === null ? [] : [quarantineRow(room, kept)];
    }),
  };
}

export function holdsWhy(room: Room): readonly WhyRow[] {
  const answer = holds(room);
  const row = (title: string, { id, because, lines }: RowBase): WhyRow => ({ id, title, because, lines });
  return [
    ...answer.holds.map((hold) => row(`${hold.place} hold: ${hold.text}`, hold)),
    ...answer.sick.map((sick) => row(`${sick.place} ${sickWords(sick.text)}`, sick)),
    ...answer.treatments.map((course) => row(`${course.place} treatment: ${course.product}`, course)),
    ...answer.quarantines.map((kept) => row(`${kept.place} quarantine`, kept)),
  ];
}

export function holdRow(room: Room, reach: HoldReach): HoldRow {
  const { hold, firstSign, lookBack, lastSign, lastDose } = reach;
  const day = (on: Day): string => dayWords(on, room.on);
  const places = [hold.place, firstSign.place, lastSign.place, ...(lastDose ? [lastDose.place] : [])];
  const routes = reach.tanks.flatMap(({ route }) => route.flatMap((step) => step.lines));
  const lines = linesOf([...places, ...routes, ...reach.clean.map(({ place }) => place)]);
  return {
    id: rowId(hold.where, 'hold', hold.text),
    place: hold.where,
    text: hold.text,
    since: hold.day,
    firstSign: firstSign.day,
    lookBack,
    lastSign: lastSign.day,
    lastDose: lastDose?.day ?? null,
    dosesTo: reach.dosesTo,
    clear: reach.clear,
    tanks: reach.tanks.map(({ tank, since, route }) => ({ tank, since, route: route.map(routeStep) })),
    clean: reach.clean.map(({ tank, loop, place }) => ({
      tank,
      says: `off ${loop} since ${day(dayOfLine(room, tank, place))}, before it can have come`,
      line: { file: place.file, line: place.line },
    })),
    moved: reach.moved.map(({ body, count, from, to, day: on, place }) => ({
      fish: body,
      count,
      from,
      to,
      on,
      line: lineRef(place),
    })),
    sold: reach.sold.map(({ stock, count, tank, to, day: on, place, gift }) => ({
      fish: stock,
      count,
      from: tank,
      to,
      on,
      gift,
      line: lineRef(place),
    })),
    close: `${hold.where}: hold over`,
    because: holdBecause(reach, room.on, lines),
    lines,
  };
}

function holdBecause(reach: HoldReach, now: Day, lines: readonly LineRef[]): Because {
  const { firstSign, lookBack, lastSign, lastDose } = reach;
  const day = (on: Day): string => dayWords(on, now);
  return {
    rule: `a hold reaches every tank that its water, its fish or what was shared with it can have come to from ${String(LOOK_BACK_DAYS)} days before the first sign, and is clear ${String(CLEAR_DAYS)} days after the last sign and the last dose in any of them; a new sign starts the days again`,
    source: 'the look-back is ours; three to four weeks without a sign: common practice, no source',
    steps: [
      `first sign ${day(firstSign.day)}, so it is followed from ${day(lookBack)}`,
      ...reach.tanks.map(({ tank, origin, since, route }) =>
        origin ? `${tank}: named in the line` : `${tank}: from ${day(since)}, ${listWords(route.map(stepWords))}`,
      ),
      ...reach.clean.map(({ tank, loop }) => `${tank}: not reached, off ${loop} in time`),
      `last sign ${day(lastSign.day)}, last dose ${lastDose === null ? 'none' : day(lastDose.day)}${reach.dosesTo === null ? '' : `, doses still to come till ${day(reach.dosesTo)}`}`,
      `clear on ${day(reach.clear)}: ${day(addDays(reach.clear, -CLEAR_DAYS))} and ${String(CLEAR_DAYS)} days`,
    ],
    lines,
  };
}

function dayOfLine(room: Room, tank: string, place: Place): Day {
  const entry = room.plumbing.tanks
    .get(tank)
    ?.plumbed.find((one) => one.place.line === place.line && one.place.file === place.file);
  return entry?.day ?? room.on;
}

/** A step of a route in a few words: `shares the water of Long with A1`. */
export function stepWords(step: Step): string {
  switch (step.how) {
    case 'water':
      return `shares the water of ${step.by ?? 'a loop'} with ${step.from}`;
    case 'tray':
      return `shares the water of ${step.from}`;
    case 'shared':
      return `by the ${step.by ?? 'net'} shared with ${step.from}`;
    case 'brought':
      return `by the ${step.by ?? 'sponge'} from ${step.from}`;
    case 'went from it':
      return `its ${step.by ?? 'sponge'} went to ${step.from}`;
    case 'fish':
      return `${step.by ?? 'fish'} came from ${step.from}`;
    case 'fish came from it':
      return `${step.by ?? 'fish'} went from it to ${step.from}`;
  }
}

function routeStep(step: Step): RouteStep {
  return { from: step.from, to: step.to, says: stepWords(step), on: step.on, lines: linesOf(step.lines) };
}

function lineRef({ file, line }: Place): LineRef {
  return { file, line };
}
