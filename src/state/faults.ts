/** Faults, and the lines that end them. Nothing but a line ever does. */
import type { Measure } from '../core/quantity.ts';
import type { Event, EventOf } from '../journal/event.ts';
import type { Draft } from './draft.ts';
import type { Fault } from './measures.ts';
import { placesOf } from './places.ts';
import type { Moment } from './plumbing.ts';
import { disturb } from './water.ts';
import { happened, insertInTime, since } from './when.ts';
import { sameWords } from './chores.ts';

/** Power away longer than this starts a water watch (ours: a setting). */
const POWER_LIMIT_HOURS = 6;

/** What a leak and a stuck heater are called where their line says no more. */
export const LEAK = 'leak';
export const STUCK = 'heater stuck';

/** Opens a fault; one that is open there already and is the same goes on. */
export function beginFault(
  draft: Draft,
  event: Event,
  kind: Fault['kind'],
  text: string,
  lasts: Measure<'minutes'> | null = null,
): void {
  for (const where of placesOf(draft, event.subject)) {
    const open = openFaults(draft, where).find((fault) => isSame(fault, kind, text));
    if (open !== undefined && lasts === null) {
      // A heater that is stuck is one fault, however warm it gets.
      if (kind === 'heater stuck' && text !== STUCK) open.text = text;
      continue;
    }
    const { day, minute } = happened(event);
    const { place } = event;
    // `power off 2 h` tells of something that is over.
    const fixed = lasts === null ? null : { day, minute, text: null, place };
    const fault: Fault = { kind, where, text, day, minute, lasts, begun: place, fixed };
    insertInTime(draft.measures.faults, fault);
    if (kind === 'power' && lasts !== null) noteLostPower(draft, fault, lasts.low);
  }
}

/** The same words; a heater that is stuck; a leak of which no words say that it is another. */
function isSame(fault: Fault, kind: Fault['kind'], text: string): boolean {
  if (fault.kind !== kind) return false;
  return kind === 'heater stuck' || (kind === 'leak' && text === LEAK) || sameWords(fault.text, text);
}

/**
 * `fixed` closes the fault that its words name, else every open one of that place; where it closes
 * several at once that is a doubt, where there is none too.
 */
export function fixFaults(draft: Draft, event: EventOf<'fixed'>): void {
  const open = placesOf(draft, event.subject).flatMap((where) => openFaults(draft, where));
  const { text } = event;
  const named = text === null ? [] : open.filter((fault) => sameWords(fault.text, text));
  const ending = named.length > 0 ? named : open;
  const { day, minute } = happened(event);
  const { place } = event;
  for (const fault of ending) {
    fault.fixed = { day, minute, text, place };
    if (fault.kind === 'power') noteLostPower(draft, fault, minutesAway(fault, { day, minute }));
  }
  if (ending.length === 1) return;
  const none = ending.length === 0;
  draft.problems.push({
    kind: none ? 'nothing-to-fix' : 'several-fixed',
    weight: 'doubt',
    says: none
      ? 'no fault is open there'
      : `this ends ${ending.length} faults: ${ending.map((fault) => fault.text).join(', ')}`,
    write: none
      ? 'on the day when it began, fault …; else take this line out'
      : `fixed "${ending[0]?.text ?? ''}", to end that one alone`,
    at: place,
    also: ending.map((fault) => fault.begun),
  });
}

/** Power is back: closes the cuts of those places, or says that none was open. */
export function powerBack(draft: Draft, event: EventOf<'power on'>): void {
  const places = placesOf(draft, event.subject);
  const out = draft.measures.faults.filter(
    (fault) =>
      fault.kind === 'power' && fault.fixed === null && (places.includes(fault.where) || places.includes('room')),
  );
  const { day, minute } = happened(event);
  const { place } = event;
  for (const fault of out) {
    fault.fixed = { day, minute, text: null, place };
    noteLostPower(draft, fault, minutesAway(fault, { day, minute }));
  }
  // `power off 2 h` told that it was over: `power on` of that day or the next says so once more.
  const told = since(draft.measures.faults, event.day - 1).some(
    (fault) => fault.kind === 'power' && fault.lasts !== null && places.includes(fault.where),
  );
  if (out.length > 0 || told) return;
  const wider = draft.measures.faults.find(
    (fault) => fault.kind === 'power' && fault.fixed === null && fault.where === 'room',
  );
  draft.problems.push({
    kind: 'undo-without-begin',
    weight: 'doubt',
    says:
      wider === undefined
        ? 'no «power off» is open there, so «power on» ends nothing'
        : 'it is the power of the whole room that is off, so «power on» here ends nothing',
    write:
      wider === undefined
        ? 'on the day when it went, power off; else take this line out'
        : 'room: power on, once all of it is back',
    at: place,
    also: wider === undefined ? [] : [wider.begun],
  });
}

/** Least minutes that the power was away; untimed lines of one day say nothing about it. */
function minutesAway(fault: Fault, back: Moment): number {
  const start = fault.minute ?? (fault.day === back.day ? (back.minute ?? 0) : 1439);
  return (back.day - fault.day) * 1440 + (back.minute ?? 0) - start;
}

function noteLostPower(draft: Draft, fault: Fault, minutes: number): void {
  if (minutes <= POWER_LIMIT_HOURS * 60) return;
  const { day, minute, place } = fault.fixed ?? { day: fault.day, minute: fault.minute, place: fault.begun };
  disturb(draft, 'power lost', fault.where, { day, minute, place, when: null });
}

function openFaults(draft: Draft, where: string): Fault[] {
  return draft.measures.faults.filter((fault) => fault.where === where && fault.fixed === null);
}
