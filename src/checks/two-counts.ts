/**
 * Two sure counts of the same fish at the same moment that differ. The later filed stands, as a correction
 * should; but two copies of a journal merged into one hold such lines too, and then one would go unseen.
 */
import { isoDay } from '../core/day.ts';
import type { Problem } from '../core/problem.ts';
import type { DeepReadonly } from '../core/readonly.ts';
import type { Place } from '../core/span.ts';
import { listWords } from '../core/words.ts';
import type { Event } from '../journal/event.ts';
import type { SeenBody } from '../state/bodies.ts';
import type { Room } from '../state/draft.ts';
import type { CountSeen } from '../state/stock.ts';
import type { Check } from './check.ts';

type Count = DeepReadonly<CountSeen>;

export const twoCounts: Check = ({ room, events }) => {
  const history = historyOf(events);
  return [...room.stock.groups.values(), ...room.stock.broods.values()].flatMap((body) => {
    const doubted = new Map<Count, Count[]>();
    for (const [earlier, stands] of corrected(body)) {
      if (earlier.count.low === stands.count.low || isExplained(room, history, body, earlier, stands)) continue;
      doubted.set(stands, [...(doubted.get(stands) ?? []), earlier]);
    }
    return [...doubted].map(([stands, others]) => doubt(body, others, stands, history));
  });
};

/** Sure counts that are out of force, each with the sure one of another line that stands in its place. */
function corrected({ counts }: SeenBody): readonly (readonly [Count, Count])[] {
  const replaced = counts.filter((count) => count.replaced && count.sure);
  if (replaced.length === 0) return [];
  const moment = ({ day, minute, tank }: Count): string => JSON.stringify([day, minute, tank]);
  const standing = new Map(counts.filter((count) => !count.replaced).map((count) => [moment(count), count]));
  return replaced.flatMap((count) => {
    const stands = standing.get(moment(count));
    const elsewhere = stands?.place.line !== count.place.line || stands.place.file !== count.place.file;
    return stands?.sure === true && elsewhere ? [[count, stands] as const] : [];
  });
}

interface History {
  /** What a clause told. */
  eventAt(place: Place): Event | undefined;
  /** Whether the clause at a place came after one and before another. */
  isBetween(place: Place, from: Place, to: Place): boolean;
}

/** Looks clauses up by their places; that it makes a list of them only where one is asked for keeps most checks quick. */
function historyOf(events: readonly Event[]): History {
  let made: Map<string, Event> | null = null;
  const eventAt = (place: Place): Event | undefined => {
    made ??= new Map(events.map((event) => [keyOf(event.place), event]));
    return made.get(keyOf(place));
  };
  const orderOf = (place: Place): number => eventAt(place)?.seq ?? -1;
  return {
    eventAt,
    isBetween: (place, from, to) => orderOf(place) >= orderOf(from) && orderOf(place) <= orderOf(to),
  };
}

function keyOf({ file, line, from }: Place): string {
  return `${file}:${line}:${from}`;
}

/** True where fish that went or came between the two lines account for the difference. */
function isExplained(room: Room, history: History, body: SeenBody, earlier: Count, later: Count): boolean {
  const { day, tank } = later;
  const between = (one: { readonly day: number; readonly place: Place }): boolean =>
    one.day === day && history.isBetween(one.place, earlier.place, later.place);
  const moves = room.stock.moves.filter((move) => move.body === body.name && between(move));
  const fewer = earlier.count.low - later.count.low;
  if (fewer < 0) return -fewer <= most(moves.filter((move) => move.to === tank));
  const gone = body.gone.filter((one) => (one.tank === null || one.tank === tank) && between(one));
  return fewer <= most(gone) + most(moves.filter(({ from }) => from === null || from === tank));
}

function most(some: readonly { readonly count: { readonly high: number } }[]): number {
  return some.reduce((sum, { count }) => sum + count.high, 0);
}

function doubt(body: SeenBody, others: readonly Count[], stands: Count, history: History): Problem {
  const where = stands.tank === null ? '' : ` in ${stands.tank}`;
  const earlier = listWords([...new Set(others.map(({ count }) => String(count.low)))]);
  const [other = stands] = others;
  return {
    kind: 'two-counts',
    weight: 'doubt',
    says: `${String(stands.count.low)} ${body.name} counted${where}, and ${earlier} on the same day: these contradict each other, and this one counts, being filed later`,
    write: takesBack(body, other, history.eventAt(other.place)),
    at: stands.place,
    also: others.map(({ place }) => place),
  };
}

/** How to say which is right; `mistake` takes a clause in its own words. */
function takesBack(body: SeenBody, { day, tank }: Count, event: Event | undefined): string {
  const both = 'a time of day in each if both are right';
  if (event?.kind !== 'counted') return `the wrong one once more after «mistake», or ${both}`;
  const name = event.fish.kind === 'implied' ? '' : `${body.name} `;
  const line = `${isoDay(day)} ${tank ?? 'A1'}: mistake ${name}counted ${String(event.heads.total.low)}`;
  return `${line}   (or the other, whichever is wrong; ${both})`;
}
