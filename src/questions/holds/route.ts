/** The way by which a tank was reached, told in the keeper's places: step by step, each with its lines. */
import type { Day } from '../../core/day.ts';
import type { DeepReadonly } from '../../core/readonly.ts';
import type { Place } from '../../core/span.ts';
import { unreachable } from '../../core/unreachable.ts';
import { routeTo, type Arrival } from '../../science/reach.ts';
import type { Room } from '../../state/draft.ts';
import type { Hold } from '../../state/health.ts';
import { dayOfTime, endOf, startOf, type Way } from './links.ts';

/** One step of a route. */
export interface Step {
  readonly from: string;
  readonly to: string;
  readonly how: 'water' | 'tray' | 'shared' | 'brought' | 'went from it' | 'fish' | 'fish came from it';
  /** The loop, the fish, or the thing. */
  readonly by: string | null;
  readonly on: Day;
  readonly lines: readonly Place[];
}

/** What came into a tank from another: fish, or a thing that was brought over. */
export interface Source {
  readonly from: string;
  readonly to: string;
  readonly how: 'fish came from it' | 'went from it';
  readonly by: string;
  readonly day: Day;
  /** Minutes: the first and the last at which it can have come. */
  readonly at: number;
  readonly end: number;
  readonly place: Place;
}

function comings(room: Room): readonly Source[] {
  const fish = room.stock.moves.flatMap(({ from, to, body: by, day, minute, place }): Source[] => {
    if (from === null) return [];
    return [{ from, to, how: 'fish came from it', by, day, at: startOf(day, minute), end: endOf(day, minute), place }];
  });
  const things = room.shared
    .filter(({ bothWays }) => !bothWays)
    .flatMap(({ from: all, to: into, thing: by, day, minute, until, place }) => {
      const span = { day, at: startOf(day, minute), end: endOf(until, minute) };
      return all.flatMap((from) => into.map((to): Source => ({ from, to, how: 'went from it', by, ...span, place })));
    });
  return [...fish, ...things];
}

/**
 * Tanks from which something came into the hold's tanks between look-back and first sign, with what brought it: of
 * several comings from one tank the last, since what that tank got between them may have come along too.
 */
export function sourcesOf(
  room: Room,
  hold: DeepReadonly<Hold>,
  start: number,
  end: number,
): ReadonlyMap<string, Source> {
  const sources = new Map<string, Source>();
  const left = new Map<string, number>();
  const all = comings(room);
  const open = hold.tanks.map((tank) => ({ tank, before: end }));
  for (let next = open.pop(); next !== undefined; next = open.pop()) {
    for (const source of all) {
      if (source.to !== next.tank || source.end <= start || source.at >= next.before) continue;
      const before = Math.min(source.end, next.before);
      if (hold.tanks.includes(source.from) || before <= (left.get(source.from) ?? start)) continue;
      left.set(source.from, before);
      sources.set(source.from, source);
      open.push({ tank: source.from, before });
    }
  }
  return sources;
}

/** The steps by which a tank's start of the route is tied to the hold's own tanks: what came from there. */
export function sourceRoute(
  sources: ReadonlyMap<string, Source>,
  hold: DeepReadonly<Hold>,
  arrivals: ReadonlyMap<string, Arrival<Way>>,
  tank: string,
): Step[] {
  const steps: Step[] = [];
  let at = routeTo(arrivals, tank)[0]?.by?.from ?? tank;
  for (let source = sources.get(at); source !== undefined && !hold.tanks.includes(at); source = sources.get(at)) {
    const { from, to, how, by, day, place } = source;
    steps.unshift({ from: to, to: from, how, by, on: day, lines: [place] });
    at = to;
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
      by: nameOf(label),
      on: dayOfTime(arrival.at),
      lines: [...(before?.by?.link.label.places ?? []), ...label.places],
    });
    through = null;
  }
  return steps;
}

/** The loop, the fish or the thing of a way. */
function nameOf(way: Way): string | null {
  switch (way.how) {
    case 'water':
      return way.loop;
    case 'fish':
      return way.move.body;
    case 'shared':
    case 'brought':
      return way.thing;
    case 'tray':
      return null;
    default:
      return unreachable(way);
  }
}
