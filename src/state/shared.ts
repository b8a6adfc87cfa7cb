/** What tanks shared without any fish: a net used in both, a sponge brought over. It carries what water carries. */
import type { Homes } from './home.ts';
import type { Day } from '../core/day.ts';
import { sameClause, type Place } from '../core/span.ts';
import type { EventOf } from '../journal/event.ts';
import type { Draft } from './draft.ts';
import { insertInTime } from './when.ts';
import { tanksNamed } from './where.ts';

export interface Shared {
  thing: string;
  from: string[];
  /** The same tanks where all of them shared it. */
  to: string[];
  /** A net goes to and fro; a sponge that was brought over goes one way. */
  bothWays: boolean;
  /** The first day on which it can have been. */
  day: Day;
  minute: number | null;
  /** The last one. */
  until: Day;
  place: Place;
}

export const SHARED_HOMES: Homes<'shared'> = { shared: share };

function share(draft: Draft, event: EventOf<'shared'>): void {
  const own = tanksNamed(draft, event);
  const { thing, way, place, when, minute } = event;
  const among = event.tanks.length === 0;
  const known = among ? draft.shared.find((one) => sameClause(one.place, place)) : undefined;
  if (known !== undefined) {
    // Each tank of the heading gives an event of its own: the clause is one.
    known.from = [...known.from, ...own];
    known.to = known.from;
    return;
  }
  const until = when?.high ?? event.day;
  const others = among ? own : [...event.tanks];
  insertInTime(draft.shared, {
    thing,
    from: way === 'from' ? others : own,
    to: way === 'from' ? own : others,
    bothWays: way === 'both',
    day: when?.low ?? until,
    minute: when === null ? minute : null,
    until,
    place,
  });
}
