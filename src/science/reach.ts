/**
 * How far something carried by water or fish can have come: earliest arrival over links that exist
 * only for a time. A link that ended before the trouble arrived carries nothing, and neither does one
 * used in the wrong order: that is what tells a tank valved off in time from its neighbours.
 */

/** A way from `a` to `b` that is open from `from` up to, not including, `until` (any unit of time). */
export interface Link<L> {
  readonly a: string;
  readonly b: string;
  readonly from: number;
  readonly until: number;
  /** Water runs both ways; a fish that was moved does not. */
  readonly bothWays: boolean;
  /** What the link is, for the route. */
  readonly label: L;
}

export interface Arrival<L> {
  readonly node: string;
  /** The earliest time at which it can have arrived. */
  readonly at: number;
  /** The step that brought it; null where it started. */
  readonly by: { readonly from: string; readonly link: Link<L> } | null;
}

/**
 * Every node that can have been reached from the starts, each with its earliest arrival and the step
 * that gave it. Method: earliest-arrival paths in a time-dependent graph, Dijkstra's rule with waiting
 * allowed at nodes (from memory). Ties keep the link that was listed first, so routes are stable.
 */
export function reach<L>(
  starts: readonly { readonly node: string; readonly at: number }[],
  links: readonly Link<L>[],
): ReadonlyMap<string, Arrival<L>> {
  const ways = waysFrom(links);
  const open = new Map<string, Arrival<L>>();
  const done = new Map<string, Arrival<L>>();
  for (const { node, at } of starts) {
    if (at < (open.get(node)?.at ?? Infinity)) open.set(node, { node, at, by: null });
  }
  for (let next = earliest(open); next !== null; next = earliest(open)) {
    open.delete(next.node);
    done.set(next.node, next);
    for (const { to, link } of ways.get(next.node) ?? []) {
      const at = Math.max(next.at, link.from);
      if (at >= link.until || done.has(to) || at >= (open.get(to)?.at ?? Infinity)) continue;
      open.set(to, { node: to, at, by: { from: next.node, link } });
    }
  }
  return done;
}

/** The steps from a start to a node, first step first; empty for a start or a node out of reach. */
export function routeTo<L>(arrivals: ReadonlyMap<string, Arrival<L>>, node: string): readonly Arrival<L>[] {
  const route: Arrival<L>[] = [];
  let at = arrivals.get(node);
  while (at !== undefined && at.by !== null) {
    route.unshift(at);
    at = arrivals.get(at.by.from);
  }
  return route;
}

function waysFrom<L>(links: readonly Link<L>[]): Map<string, { to: string; link: Link<L> }[]> {
  const ways = new Map<string, { to: string; link: Link<L> }[]>();
  const add = (from: string, to: string, link: Link<L>): void => {
    const known = ways.get(from);
    if (known) known.push({ to, link });
    else ways.set(from, [{ to, link }]);
  };
  for (const link of links) {
    add(link.a, link.b, link);
    if (link.bothWays) add(link.b, link.a, link);
  }
  return ways;
}

function earliest<L>(open: ReadonlyMap<string, Arrival<L>>): Arrival<L> | null {
  let first: Arrival<L> | null = null;
  for (const arrival of open.values()) if (first === null || arrival.at < first.at) first = arrival;
  return first;
}
