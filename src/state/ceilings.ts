/** Ceilings: the most that sure facts allow of a body, in a tank and of all of them, and the lines that say so. */
import { isSure } from '../core/interval.ts';
import { sameClause, type Place } from '../core/span.ts';
import type { Body } from './stock.ts';

/** The most that sure facts allow in a tank, or null where nothing sure bounds it. */
export function mostIn(body: Body, tank: string): number | null {
  const own = body.ceilings.get(tank)?.count ?? null;
  const all = leftFor(body, tank);
  return own === null ? all : all === null ? own : Math.min(own, all);
}

/** Of all that were surely counted, what those that were surely seen in other tanks leave for this one. */
function leftFor(body: Body, tank: string): number | null {
  if (body.ceiling === null) return null;
  let left = body.ceiling.count;
  for (const other of body.parts.keys()) if (other !== tank) left -= surelyIn(body, other);
  return Math.max(0, left);
}

/** How many a sure count of a tank still vouches for; none where anything unsure was told of that tank since. */
function surelyIn(body: Body, tank: string): number {
  const part = body.parts.get(tank);
  const ceiling = body.ceilings.get(tank);
  if (part === undefined || ceiling === undefined || !isSure(part) || part.low !== ceiling.count) return 0;
  const counted = body.counts.findLast((seen) => seen.tank === tank && !seen.replaced);
  return counted?.sure === true && sameClause(counted.place, ceiling.place) ? part.low : 0;
}

/** The lines behind `mostIn`; with no tank, that behind the most of all of them. */
export function whySoFew(body: Body, tank: string | null): readonly Place[] {
  const all = body.ceiling === null ? [] : [body.ceiling.place];
  const own = tank === null ? undefined : body.ceilings.get(tank);
  const left = tank === null ? null : leftFor(body, tank);
  if (tank === null || left === null || (own !== undefined && own.count <= left)) return own ? [own.place] : all;
  const seen = [...body.ceilings].filter(([other]) => other !== tank && surelyIn(body, other) > 0);
  return [...all, ...seen.map(([, { place }]) => place)];
}
