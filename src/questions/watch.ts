/**
 * The water watch after a living filter was disturbed: ammonia and nitrite every day till three double
 * zeros, two weeks at least. What disturbs it is told here; mechanical sponges never do.
 */
import { addDays, toDay, type Day } from '../core/day.ts';
import type { Interval } from '../core/interval.ts';
import type { DeepReadonly } from '../core/readonly.ts';
import type { Place } from '../core/span.ts';
import type { Room } from '../state/draft.ts';
import { fishIn } from '../state/places.ts';
import { endsBy, leastOpen, openRigs, PUMP_LIMIT } from '../state/rigs.ts';
import { loopOf } from '../state/tanks.ts';
import type { Disturbance } from '../state/water.ts';
import { lastSince, since } from '../state/when.ts';
import { readingsOf } from './readings.ts';
import { bodiesOfWater, type WaterBody } from './waters.ts';

/** Least length of a watch, days (ours: a setting; a filter from new takes 2–6 weeks at 25 C: common practice, no source). */
export const WATCH_DAYS = 14;
/** Tests in a row with no ammonia and no nitrite that end it. */
export const ZEROS = 3;
/** What a kit shows as nothing, mg/L as N. */
const NOTHING = 0.05;

export interface Watch {
  readonly body: WaterBody;
  readonly why: Disturbance | 'fresh air filter';
  readonly since: Day;
  readonly place: Place;
  /** Last test of both since then, or null. */
  readonly tested: { readonly day: Day; readonly place: Place } | null;
  /** Double zeros in a row, up to today. */
  readonly zeros: number;
  /** When it may end at the earliest. */
  readonly earliest: Day;
  readonly tests: readonly { readonly day: Day; readonly clear: boolean; readonly place: Place }[];
}

/** Watches open on the room's day, one a body of water. */
export function watches(room: Room): Watch[] {
  return bodiesOfWater(room).flatMap((body) => {
    const causes = [...disturbances(room, body), ...standingPump(room, body), ...freshFilter(room, body)];
    const cause = causes.sort((a, b) => b.since - a.since)[0];
    if (cause === undefined) return [];
    const tests = testsSince(room, body, cause.since);
    const zeros = tests.length - 1 - tests.findLastIndex(({ clear }) => !clear);
    const earliest = addDays(cause.since, WATCH_DAYS);
    const over = zeros >= ZEROS && room.on >= earliest;
    return over ? [] : [{ body, ...cause, tested: tests.at(-1) ?? null, zeros, earliest, tests }];
  });
}

/** The day on which the next test is due: daily. */
export function nextTest(watch: Watch): Day {
  return watch.tested === null ? watch.since : addDays(watch.tested.day, 1);
}

type Cause = Pick<Watch, 'why' | 'since' | 'place'>;

/** What disturbed a filter longer ago, days, is asked about no more, ended or not: it has grown again (ours). */
const FORGOTTEN = 365;

type Disturbed = DeepReadonly<Room['water']['disturbed'][number]>;

/** What disturbed the living filter on the last day on which anything did. */
function disturbances(room: Room, body: WaterBody): Cause[] {
  const { disturbed } = room.water;
  const disturbs = (fact: Disturbed): boolean =>
    isHere(body, fact) && isOfTheLivingFilter(room, fact) && !isOfNobody(room, body, fact);
  const last = lastSince(disturbed, room.on - FORGOTTEN, disturbs);
  if (last === undefined) return [];
  return since(disturbed, last.day)
    .filter(disturbs)
    .map((fact) => ({ why: fact.what, since: fact.day, place: fact.place }));
}

/** A pump that stood for as long, or until the day, that its line said beforehand, and that no line puts on again. */
function standingPump(room: Room, body: WaterBody): Cause[] {
  return room.measures.unclosed.flatMap((rig): Cause[] => {
    const end = endsBy(rig);
    const here = rig.kind === 'pump off' && rig.closed === null && (rig.where === body.name || rig.where === 'room');
    if (!here || end === null || end.day > room.on || leastOpen(rig, end) <= PUMP_LIMIT) return [];
    return end.day < room.on - FORGOTTEN ? [] : [{ why: 'pump stood', since: end.day, place: rig.begun }];
  });
}

/** A cut of all the room sets nobody to test tanks without fish; where the journal keeps no fish at all, who knows. */
function isOfNobody(room: Room, { tanks }: WaterBody, { what, where }: Disturbed): boolean {
  if (what !== 'power lost' || where !== 'room' || room.stock.groups.size === 0) return false;
  return tanks.every((tank) => fishIn(room, tank).length === 0);
}

function isHere(body: WaterBody, { where, tanks }: Disturbed): boolean {
  if (where === body.name || where === 'room') return true;
  return body.kind === 'tank' && body.tanks.some((tank) => tanks.includes(tank));
}

/** A rinsed sponge counts only where it is all the filter that a tank has, and was not rinsed in tank water. */
function isOfTheLivingFilter(room: Room, fact: Disturbed): boolean {
  if (fact.what !== 'sponge rinsed') return true;
  if (room.plumbing.loops.has(fact.where) || loopOf(room, fact.where, fact.day, fact.minute) !== null) return false;
  if (/tank water|old water/i.test(fact.remark ?? '')) return false;
  const filter = room.plumbing.tanks.get(fact.where)?.filter ?? null;
  return filter === null || isOneSponge(filter);
}

/** `sponge filter` is one, `2 sponge filters`, `two sponges`, `sponge and canister` are more. */
export function isOneSponge(filter: string): boolean {
  const words = filter.toLowerCase();
  if (!words.includes('sponge')) return false;
  return !/\b([2-9]|two|three|four|twin|double|both)\b|sponges|sponge filters|\band\b|\+|,|&/.test(words);
}

/** A tank off its loop lives on whatever its air filter has grown: with fish in it, that is watched. */
function freshFilter(room: Room, body: WaterBody): Cause[] {
  if (body.kind !== 'tank') return [];
  const rigs = openRigs(room, body.name);
  const off = rigs.find(({ kind }) => kind === 'off the loop');
  const air = rigs.find(({ kind }) => kind === 'air filter');
  if (off === undefined || air === undefined || body.tanks.every((tank) => fishIn(room, tank).length === 0)) return [];
  return [{ why: 'fresh air filter', since: toDay(Math.max(off.day, air.day)), place: air.begun }];
}

function testsSince(room: Room, body: WaterBody, since: Day): Watch['tests'] {
  return readingsOf(room, body, since)
    .filter(({ reading }) => reading.tan !== null && reading.no2 !== null)
    .map(({ day, reading, place }) => ({ day, clear: isNothing(reading.tan) && isNothing(reading.no2), place }));
}

function isNothing(value: Interval | null): boolean {
  return value !== null && (value.likely ?? value.high) < NOTHING;
}
