/** Everything that stands between a stock and the sale table, each with the day until which it does. */
import { addDays, type Day } from '../../core/day.ts';
import type { Interval } from '../../core/interval.ts';
import { linesOf, type LineRef } from '../../core/span.ts';
import { dayWords, listWords, plural, windowWords } from '../../core/words.ts';
import { beginningOf, bodyNamed, isBrood, partIn, type SeenBody } from '../../state/bodies.ts';
import { reached } from '../../state/broodlife.ts';
import type { Room } from '../../state/draft.ts';
import { sickWords } from '../../state/health.ts';
import { withoutWord } from '../../state/withoutword.ts';
import { treatmentClear } from '../holds/courses.ts';
import { inQuarantine } from '../holds/quarantines.ts';
import { heldBy } from '../holds/reach.ts';
import { stepWords } from '../holds.ts';
import { sickIn } from '../holds/sickness.ts';
import { retiredWithFish } from '../retired.ts';
import type { Saleable } from '../saleable.ts';
import { isHeld } from '../stages.ts';
import { crossed } from './crossed.ts';

export interface Blocker {
  readonly kind:
    | 'retired'
    | 'stage'
    | 'size'
    | 'hold'
    | 'sick'
    | 'treatment'
    | 'quarantine'
    | 'line'
    | 'species'
    | 'count'
    | 'colony';
  readonly why: string;
  /** The first day on which it no longer stands; null where only the keeper can say. */
  readonly until: Day | null;
  readonly lines: readonly LineRef[];
}

export interface When {
  /** The day asked about; at or after the room's. */
  readonly at: Day;
  /** That day is still to come: what clears by itself till then is taken to have cleared. */
  readonly ahead: boolean;
}

/** Blockers of one stock in one tank, its count aside. */
export function blockersOf(
  room: Room,
  body: SeenBody,
  tank: string,
  ripe: Saleable | null,
  when: When,
): readonly Blocker[] {
  return [
    ...retired(room, tank),
    ...healthBlockers(room, tank, when),
    ...(unswum(room, body) ?? unripe(room, body, ripe, partIn(body, tank), when.at)),
    ...unknownLine(room, body),
    ...crossed(room, body),
  ];
}

/** Of these, what lies in the water of a tank: nothing leaves it, promised or not. */
export function healthBlockers(room: Room, tank: string, when: When): readonly Blocker[] {
  return [
    ...held(room, tank, when),
    ...sick(room, tank, when),
    ...treated(room, tank, when.at),
    ...quarantined(room, tank, when),
  ];
}

/** Nobody can catch them where they are on record. */
function retired(room: Room, tank: string): Blocker[] {
  const found = retiredWithFish(room, tank);
  if (found === null) return [];
  const why = `${tank} is retired: say where they went`;
  return [{ kind: 'retired', why, until: null, lines: found.lines }];
}

function held(room: Room, tank: string, { at, ahead }: When): Blocker[] {
  const found = heldBy(room, tank);
  if (found === null) return [];
  const { hold, reached: way } = found;
  const passed = hold.clear <= at;
  if (passed && ahead) return [];
  const route = way.origin ? '' : ` (${listWords(way.route.map(stepWords))})`;
  const over = passed
    ? `; no sign for ${plural(at - hold.lastSign.day, 'day')}: jot ${hold.hold.where}: hold over`
    : '';
  return [
    {
      kind: 'hold',
      why: `on hold: ${hold.hold.text}${route}${over}`,
      until: passed ? null : hold.clear,
      lines: linesOf([hold.hold.place, hold.lastSign.place, ...way.route.flatMap((step) => step.lines)]),
    },
  ];
}

function sick(room: Room, tank: string, { at }: When): Blocker[] {
  const open = sickIn(room, tank);
  if (open === null || open.held || (open.until !== null && open.until <= at)) return [];
  const asked = open.sick.catching === null;
  const why = `${sickWords(open.sick.text)}${asked ? '; say whether it is catching' : ', catching'}`;
  return [{ kind: 'sick', why, until: open.until, lines: linesOf([open.sick.place]) }];
}

function treated(room: Room, tank: string, at: Day): Blocker[] {
  const course = treatmentClear(room, tank, at);
  if (course === null) return [];
  const own = course.treatment.where === tank ? '' : `, dosed in ${course.treatment.where}`;
  const why = `treated: ${course.treatment.product}${own}, ${plural(course.waitDays, 'day')} from the last dose`;
  return [{ kind: 'treatment', why, until: course.clear, lines: linesOf(course.lines) }];
}

function quarantined(room: Room, tank: string, { at }: When): Blocker[] {
  const kept = inQuarantine(room, tank);
  if (kept === null || kept.until <= at) return [];
  const why = `in quarantine since ${dayWords(kept.since, room.on)}`;
  return [{ kind: 'quarantine', why, until: kept.until, lines: linesOf(kept.lines) }];
}

/** Eggs and wrigglers are no fish yet: however many there were, none is promised before they were seen to swim. */
function unswum(room: Room, body: SeenBody): Blocker[] | null {
  if (!isBrood(body) || reached(body, 'swam')) return null;
  const lost = withoutWord(room, body);
  const since = lost === null ? '' : `, no word since ${dayWords(lost.since, room.on)}`;
  const [seen, then] = isHeld(room, body) ? ['released', 'are'] : ['to swim', 'do'];
  const why = `not seen ${seen} yet${since}: count them when they ${then}`;
  return [{ kind: 'stage', why, until: null, lines: linesOf(body.lines.slice(-1)) }];
}

/** Too young where not one fish surely has its sale size or age. */
function unripe(room: Room, body: SeenBody, ripe: Saleable | null, count: Interval, at: Day): Blocker[] {
  if (body.species === null) {
    return [
      { kind: 'species', why: 'no species is named, so no sale size', until: null, lines: linesOf(beginningOf(body)) },
    ];
  }
  if (ripe === null) {
    const why = 'no age or length written';
    return [{ kind: 'size', why, until: null, lines: linesOf(beginningOf(body)) }];
  }
  if (count.low < 1 ? ripe.share.low > 0 : sizedOf(count, ripe, at) > 0) return [];
  const { first } = ripe;
  const why = `too young: ${ripe.rule}, the first ${windowWords(first, room.on)}`;
  return [{ kind: 'size', why, until: first.high, lines: ripe.because.lines }];
}

/** A share of 99.99 % is all of them, and not all but one: of a whole lot none is left off for less of a fish than this (ours). */
const IN_TWENTY = 0.05;

/** How many of a count surely have their sale size or age on a day: one at least, once the first surely has. */
export function sizedOf(count: Interval, ripe: Saleable | null, at: Day): number {
  if (ripe === null || count.low < 1) return 0;
  const first = ripe.first.high !== null && ripe.first.high <= at ? 1 : 0;
  const sized = count.low * ripe.share.low;
  return Math.max(first, count.low - sized <= IN_TWENTY ? count.low : Math.floor(sized + 1e-9));
}

/** Fish bought or given without a word of where they come from: sold on, nobody could say what they are. A colony breeds its own. */
function unknownLine(room: Room, body: SeenBody): Blocker[] {
  if (isOfKnownLine(room, body)) return [];
  const why = 'no line or source written';
  return [{ kind: 'line', why, until: null, lines: linesOf(beginningOf(body)) }];
}

/** A mix is known where all that went into it are. */
function isOfKnownLine(room: Room, body: SeenBody): boolean {
  if (!isBrood(body))
    return body.kind === 'colony' || body.line !== null || body.from !== null || body.parentsFrom.length > 0;
  if (body.oneOf.length === 0) return body.group !== null;
  return body.oneOf.every((name) => {
    const part = bodyNamed(room, name);
    return part !== null && isOfKnownLine(room, part);
  });
}

/** The latest of several days; null where one of them is open. */
export function latest(blockers: readonly Blocker[], at: Day): Day | null {
  return blockers.reduce<Day | null>(
    (last, { until }) => (last === null || until === null ? null : until > last ? until : last),
    addDays(at, 0),
  );
}
