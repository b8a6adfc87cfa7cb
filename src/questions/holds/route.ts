/** The way by which a tank was reached, told in the keeper's places: step by step, each with its lines. */
import type { Day } from '../../core/day.ts';
import type { DeepReadonly } from '../../core/readonly.ts';
import type { Place } from '../../core/span.ts';
import { routeTo, type Arrival } from '../../science/reach.ts';
import type { Room } from '../../state/draft.ts';
import type { Hold } from '../../state/health.ts';
import type { Move } from '../../state/stock.ts';
import { dayOfTime, endOf, startOf, type Way } from './links.ts';

/** One step of a route. */
export interface Step {
  readonly from: string;
  readonly to: string;
  readonly how: 'water' | 'tray' | 'fish' | 'fish came from it';
  /** The loop, or the fish. */
  readonly by: string | null;
  readonly on: Day;
  readonly lines: readonly Place[];
}

/** Tanks whose fish came into the hold's tanks between look-back and first sign, with the move that brought them. */
export function sourcesOf(
  room: Room,
  hold: DeepReadonly<Hold>,
  start: number,
  end: number,
): Map<string, DeepReadonly<Move>> {
  const sources = new Map<string, DeepReadonly<Move>>();
  const open = hold.tanks.map((tank) => ({ tank, before: end }));
  for (let next = open.pop(); next !== undefined; next = open.pop()) {
    for (const move of room.stock.moves) {
      const at = startOf(move.day, move.minute);
      if (move.to !== next.tank || move.from === null || endOf(move.day, move.minute) <= start || at >= next.before)
        continue;
      if (hold.tanks.includes(move.from) || sources.has(move.from)) continue;
      sources.set(move.from, move);
      open.push({ tank: move.from, before: endOf(move.day, move.minute) });
    }
  }
  return sources;
}

/** The steps by which a tank's start of the route is tied to the hold's own tanks: fish that came from there. */
export function sourceRoute(
  sources: ReadonlyMap<string, DeepReadonly<Move>>,
  hold: DeepReadonly<Hold>,
  arrivals: ReadonlyMap<string, Arrival<Way>>,
  tank: string,
): Step[] {
  const steps: Step[] = [];
  let at = routeTo(arrivals, tank)[0]?.by?.from ?? tank;
  for (let move = sources.get(at); move !== undefined && !hold.tanks.includes(at); move = sources.get(at)) {
    steps.unshift({
      from: move.to,
      to: at,
      how: 'fish came from it',
      by: move.body,
      on: move.day,
      lines: [move.place],
    });
    at = move.to;
  }
  return steps;
}

/** The route in the keeper's places: in and out of a loop's water is one step. */
export function routeSteps(arrivals: ReadonlyMap<string, Arrival<Way>>, tank: string): Step[] {
  const steps: Step[] = [];
  let through: Arrival<Way> | null = null;
  for (const arrival of routeTo(arrivals, tank)) {
    if (arrival.by === null) continue;
    const { from, link } = arrival.by;
    const { label } = link;
    if (label.how === 'water' && through === null) {
      through = arrival;
      continue;
    }
    const before: Arrival<Way> | null = label.how === 'water' ? through : null;
    steps.push({
      from: before?.by?.from ?? from,
      to: arrival.node,
      how: label.how,
      by: label.how === 'water' ? label.loop : label.how === 'fish' ? label.move.body : null,
      on: dayOfTime(arrival.at),
      lines: [...(before?.by?.link.label.places ?? []), ...label.places],
    });
    through = null;
  }
  return steps;
}
