/**
 * A dispute: the quarrel of a pair, from its first sign to the line that ends it. Silence never ends
 * one. Lines more than 48 hours apart make a new bout of the same dispute while it is open, since
 * nobody said that it was over; what to do goes by the bout, what is reported by the whole.
 */
import type { Day } from '../core/day.ts';
import type { DeepReadonly } from '../core/readonly.ts';
import type { Place } from '../core/span.ts';
import type { Sign } from '../journal/event.ts';
import type { Member } from '../journal/subject.ts';

export interface DisputeSign {
  day: Day;
  /** Minutes after midnight, where the line has a time. */
  minute: number | null;
  sign: Sign;
  /** Who did it and who suffered it, as far as the line says. */
  doer: Member | null;
  sufferer: Member | null;
  place: Place;
}

/** A line that says that they are calmer. */
export interface Calmer {
  day: Day;
  minute: number | null;
  place: Place;
}

type DisputeEnd = 'made up' | 'shimmying' | 'spawned' | 'separated' | 'died';

export interface Dispute {
  from: Day;
  /** In order of time; never empty. */
  signs: DisputeSign[];
  calmer: Calmer[];
  ended: { day: Day; how: DisputeEnd; place: Place } | null;
}

/** How bad a sign is: 1 chasing … 5 wounded or gasping (common practice, no source). */
export function rankOf(sign: Sign): 1 | 2 | 3 | 4 | 5 {
  switch (sign) {
    case 'chasing':
      return 1;
    case 'hiding':
    case 'pinned':
      return 2;
    case 'torn fin':
      return 3;
    case 'scales missing':
    case 'not eating':
      return 4;
    case 'wounded':
    case 'gasping':
      return 5;
  }
}

/** Lines up to this many hours apart belong to one bout (common practice, no source). */
export const BOUT_HOURS = 48;

interface Moment {
  readonly day: Day;
  readonly minute: number | null;
}

/** True where two lines are at most 48 hours apart; by whole days where one of them has no time. */
function withinBout(earlier: Moment, later: Moment): boolean {
  if (earlier.minute === null || later.minute === null) return later.day - earlier.day <= BOUT_HOURS / 24;
  const hours = (later.day - earlier.day) * 24 + (later.minute - earlier.minute) / 60;
  return hours <= BOUT_HOURS;
}

/** The signs of a dispute, parted where lines stand more than 48 hours apart. */
export function boutsOf<S extends Moment>(signs: readonly S[]): readonly (readonly S[])[] {
  const bouts: S[][] = [];
  for (const sign of signs) {
    const current = bouts.at(-1);
    const last = current?.at(-1);
    if (current && last && withinBout(last, sign)) current.push(sign);
    else bouts.push([sign]);
  }
  return bouts;
}

/** What ending a dispute needs of its group. */
interface Quarrelsome {
  readonly disputes: Dispute[];
}

/** The open dispute of a group, or null. At most the last one is open. */
export function openDispute<D extends { readonly ended: unknown }>(group: {
  readonly disputes: readonly D[];
}): D | null {
  const last = group.disputes.at(-1);
  return last && last.ended === null ? last : null;
}

/** Ends the open dispute of a group, if there is one; says whether there was. */
export function endDispute(group: Quarrelsome, end: { day: Day; how: DisputeEnd; place: Place }): boolean {
  const open = openDispute(group);
  if (!open) return false;
  open.ended = end;
  return true;
}

/**
 * Adds a sign: to the first dispute that was not over by its day, since a line filed late for an earlier day counts as
 * if it had been filed then; where all were over it opens a new one.
 */
export function addSign(group: Quarrelsome, sign: DisputeSign): Dispute {
  const over = group.disputes.findLastIndex(({ ended }) => ended !== null && ended.day <= sign.day);
  const earlier = group.disputes[over + 1];
  if (!earlier) {
    const fresh: Dispute = { from: sign.day, signs: [sign], calmer: [], ended: null };
    group.disputes.push(fresh);
    return fresh;
  }
  const before = earlier.signs.findIndex((one) => isLater(one, sign));
  if (before < 0) earlier.signs.push(sign);
  else earlier.signs.splice(before, 0, sign);
  if (sign.day < earlier.from) earlier.from = sign.day;
  return earlier;
}

/**
 * True where they were calmer before a sign: it says nothing of that one. Of one day by the times, where both have one,
 * else by the order in which they were written down.
 */
export function isCalmerBefore(calmer: DeepReadonly<Calmer>, sign: DeepReadonly<DisputeSign>): boolean {
  if (calmer.day !== sign.day) return calmer.day < sign.day;
  if (calmer.minute !== null && sign.minute !== null && calmer.minute !== sign.minute)
    return calmer.minute < sign.minute;
  const [from, to] = [calmer.place, sign.place];
  return from.file === to.file && (from.line < to.line || (from.line === to.line && from.from < to.from));
}

function isLater(a: Moment, b: Moment): boolean {
  if (a.day !== b.day) return a.day > b.day;
  return a.minute !== null && b.minute !== null && a.minute > b.minute;
}
