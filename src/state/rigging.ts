/** What lines do to temporary measures: begin, say again, make lasting, undo. */
import { isoDay } from '../core/day.ts';
import type { Measure } from '../core/quantity.ts';
import { sameClause } from '../core/span.ts';
import type { Event, EventOf, MeasureKind } from '../journal/event.ts';
import { isAhead } from './chores.ts';
import type { Draft } from './draft.ts';
import type { Rig } from './measures.ts';
import { placesOf } from './places.ts';
import type { Moment } from './plumbing.ts';
import { disturb } from './water.ts';
import { after, homeLoopOf, isBy, plumbedAt } from './tanks.ts';
import { addRig, endsBy, leastOpen, PUMP_LIMIT, unclosedRigs } from './rigs.ts';
import { happened, insertInTime, since } from './when.ts';
import { whereOf } from './where.ts';

/** The words that begin and undo each kind of measure. */
export const MEASURE_WORDS: Readonly<Record<MeasureKind, { readonly begin: string; readonly undo: string }>> = {
  'off the loop': { begin: 'off the loop', undo: 'back on the loop' },
  'air filter': { begin: 'air filter in', undo: 'air filter out' },
  'lights off': { begin: 'lights off', undo: 'lights on' },
  'rocks out': { begin: 'rocks out', undo: 'rocks in' },
  divider: { begin: 'divider in', undo: 'divider out' },
  'pump off': { begin: 'pump off', undo: 'pump on' },
  'heater off': { begin: 'heater off', undo: 'heater on' },
  'heat raised': { begin: 'heat to 30 C', undo: 'heat normal' },
  'breeder net': { begin: 'breeder net in', undo: 'breeder net out' },
};

/** Rigs something up in each place of the line; what is rigged there already goes on. */
export function beginMeasure(draft: Draft, event: EventOf<'measure begun'>): void {
  const { begin } = MEASURE_WORDS[event.measure];
  if (event.until !== null && !isAhead(draft, event, event.until, begin)) return;
  for (const where of placesOf(draft, event.subject)) beginAt(draft, event, where);
}

function beginAt(draft: Draft, event: EventOf<'measure begun'>, where: string): void {
  const onLoop = event.measure === 'off the loop';
  const { day, minute } = happened(event);
  if (onLoop && homeLoopOf(draft, where, day) === null) {
    draft.problems.push({
      kind: 'not-on-a-loop',
      weight: 'stops',
      says: `${where} is on no loop that day`,
      write: `${isoDay(day)} tank ${where}: on ${draft.plumbing.loops.keys().next().value ?? 'Long'}`,
      at: event.place,
      also: [],
    });
    return;
  }
  const open = openRig(draft, event, where);
  if (open !== null && !event.over) {
    sayAgain(draft, open, event);
    return;
  }
  const rig: Rig = {
    kind: event.measure,
    where,
    day,
    minute,
    until: event.until,
    lasts: event.lasts,
    to: event.to,
    stays: false,
    begun: event.place,
    closed: event.over ? { day, minute, place: event.place } : null,
    again: [],
  };
  addRig(draft, rig);
  if (onLoop) valveOff(draft, rig);
  if (event.over) noteStandingPump(draft, rig, rig.lasts?.low ?? 0);
}

/**
 * Goes on. Where the line says how long, that counts from it and not from the line that began it; where it says no
 * end, a day that was said stands, but not a length of time: `pump off` is open until its undo.
 */
function sayAgain(draft: Draft, rig: Rig, event: EventOf<'measure begun'>): void {
  rig.again.push(event.place);
  rig.to = event.to ?? rig.to;
  if (event.until !== null || event.lasts !== null) rig.until = event.until;
  rig.lasts = event.lasts === null ? null : plus(event.lasts, minutesBetween(rig, happened(event)));
  if (rig.kind !== 'off the loop') return;
  const valved = draft.plumbing.tanks
    .get(rig.where)
    ?.plumbed.findLast((one) => one.on === null && one.day === rig.day && one.minute === rig.minute);
  if (valved !== undefined) valved.until = endsBy(rig);
}

function plus({ unit, low, likely, high }: Measure<'minutes'>, more: number): Measure<'minutes'> {
  return { unit, low: low + more, likely: likely === null ? null : likely + more, high: high + more };
}

/** Minutes from one moment to another, each without a time of day at its day's start. */
function minutesBetween(from: Moment, to: Moment): number {
  return (to.day - from.day) * 1440 + (to.minute ?? 0) - (from.minute ?? 0);
}

/** The tank keeps its home loop and shares no water with it, until it is put back or the time is up. */
function valveOff(draft: Draft, rig: Rig): void {
  const home = homeLoopOf(draft, rig.where, rig.day);
  const tank = draft.plumbing.tanks.get(rig.where);
  if (tank === undefined) return;
  insertInTime(tank.plumbed, {
    day: rig.day,
    minute: rig.minute,
    home,
    on: null,
    until: endsBy(rig),
    place: rig.begun,
  });
}

/** Undoes it in each place; where none was open, says so. */
export function undoMeasure(draft: Draft, event: EventOf<'measure undone'>): void {
  const undone = placesOf(draft, event.subject).flatMap((where) => {
    const open = unclosed(draft, event.measure, where);
    for (const rig of open) closeRig(draft, rig, event);
    const back = event.measure === 'off the loop' && putBack(draft, event, where);
    return open.length > 0 || back ? [where] : [];
  });
  if (undone.length > 0 || wasOverByItself(draft, event)) return;
  const words = MEASURE_WORDS[event.measure];
  doubtOfNothing(draft, event, `no «${words.begin}» is open there, so «${words.undo}» undoes nothing`, words.begin);
}

/** `pump off 1 h` told that it was over: `pump on` of that day or the next says so once more. */
function wasOverByItself(draft: Draft, event: EventOf<'measure undone'>): boolean {
  const places = placesOf(draft, event.subject);
  return since(draft.measures.rigs, event.day - 1).some(
    ({ kind, where, begun, closed }) =>
      kind === event.measure && places.includes(where) && closed !== null && sameClause(closed.place, begun),
  );
}

/** Puts a tank back on its loop; false where it was on it already. */
function putBack(draft: Draft, event: Event, where: string): boolean {
  const tank = draft.plumbing.tanks.get(where);
  const { day, minute } = happened(event);
  const now = tank === undefined ? null : plumbedAt(tank, day, minute);
  if (tank === undefined || now === null || now.home === null || now.entry.on === now.home) return false;
  const { home } = now;
  insertInTime(tank.plumbed, { day, minute, home, on: home, until: null, place: event.place });
  return true;
}

/** What was rigged for a while is there for good: nobody asks for its undo. */
export function measureStays(draft: Draft, event: EventOf<'measure stays'>): void {
  const open = placesOf(draft, event.subject).flatMap((where) => unclosed(draft, event.measure, where));
  for (const rig of open) {
    rig.stays = true;
    rig.again.push(event.place);
  }
  const { begin } = MEASURE_WORDS[event.measure];
  if (open.length === 0) doubtOfNothing(draft, event, `no «${begin}» is open there that could stay`, begin);
}

/** Closes everything temporary of a tank: never fish moved, holds or treatments; what `stays` stays. */
export function everythingUndone(draft: Draft, event: EventOf<'everything undone'>): void {
  const places = placesOf(draft, event.subject);
  const open = unclosedRigs(draft).filter(
    (rig) => !rig.stays && (places.includes(rig.where) || places.includes('room')),
  );
  for (const rig of open) closeRig(draft, rig, event);
  const tanks = places.includes('room') ? [...draft.plumbing.tanks.keys()] : places;
  const back = tanks.filter((tank) => !staysOff(draft, tank) && putBack(draft, event, tank));
  if (open.length === 0 && back.length === 0)
    doubtOfNothing(draft, event, 'nothing temporary is open there', 'lights off');
}

function staysOff(draft: Draft, tank: string): boolean {
  return unclosed(draft, 'off the loop', tank).some((rig) => rig.stays);
}

function closeRig(draft: Draft, rig: Rig, event: Event): void {
  const told = happened(event);
  const own = endsBy(rig);
  // What was over by itself before this line ended then.
  const end = own !== null && isBy(own, told.day, told.minute) ? own : told;
  rig.closed = { day: end.day, minute: end.minute, place: event.place };
  noteStandingPump(draft, rig, leastOpen(rig, told));
}

function noteStandingPump(draft: Draft, rig: Rig, minutes: number): void {
  if (rig.kind !== 'pump off' || minutes <= PUMP_LIMIT) return;
  const { day, minute, place } = rig.closed ?? { place: rig.begun, ...after(rig, minutes) };
  disturb(draft, 'pump stood', rig.where, { day, minute, place, when: null });
}

/** The open measure of that kind, not over by itself before this line. */
function openRig(draft: Draft, event: EventOf<'measure begun'>, where: string): Rig | null {
  const rig = unclosed(draft, event.measure, where).at(-1);
  if (rig === undefined) return null;
  const end = endsBy(rig);
  return end !== null && isBy(end, event.day, event.minute ?? 0) ? null : rig;
}

/** All that no line has closed; `room` means everywhere. */
function unclosed(draft: Draft, kind: MeasureKind, where: string): Rig[] {
  return unclosedRigs(draft).filter((rig) => rig.kind === kind && (rig.where === where || where === 'room'));
}

function doubtOfNothing(draft: Draft, event: Event, says: string, begin: string): void {
  draft.problems.push({
    kind: 'undo-without-begin',
    weight: 'doubt',
    says,
    write: `on the day when it began, ${whereOf(event.subject)}: ${begin}; else take this line out`,
    at: event.place,
    also: [],
  });
}
