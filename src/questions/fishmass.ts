/** Grams of fish in a tank, out of their numbers and lengths. */
import type { Interval } from '../core/interval.ts';
import { NONE, plus, middle } from '../core/interval.ts';
import { weightOf } from '../science/weight.ts';
import { bodiesIn, isBrood, partIn, type SeenBody } from '../state/bodies.ts';
import type { Room } from '../state/draft.ts';
import { adultSize, sizeOn } from './growing.ts';

/** Grams of all fish that may be in a tank; open counts are taken at their low end's double, and never as none. */
export function fishMass(room: Room, tank: string): Interval {
  return bodiesIn(room, tank).reduce<Interval>((sum, body) => plus(sum, massOf(room, body, tank)), NONE);
}

function massOf(room: Room, body: SeenBody, tank: string): Interval {
  const { low, likely, high } = partIn(body, tank);
  const top = Number.isFinite(high) ? high : Math.max(2, low * 2);
  const size = lengthOf(room, body, tank);
  return {
    low: low * grams(size.low),
    likely: (likely ?? (low + top) / 2) * grams(size.likely ?? size.high),
    high: top * grams(size.high),
  };
}

/** Lengths in mm: by growth where it is known, else of grown fish. */
function lengthOf(room: Room, body: SeenBody, tank: string): Interval {
  const told = isBrood(body) ? [] : body.members.flatMap(({ size }) => (size === null ? [] : [size]));
  if (told.length > 0) return { low: least(told), likely: mean(told), high: most(told) };
  const known = sizeOn(room, body, room.on, tank);
  if (known !== null) return known;
  const grown = adultSize(room, body);
  return { low: isBrood(body) ? 5 : grown * 0.7, likely: isBrood(body) ? grown * 0.4 : grown * 0.85, high: grown };
}

const least = (sizes: readonly Interval[]): number => Math.min(...sizes.map(({ low }) => low));
const most = (sizes: readonly Interval[]): number => Math.max(...sizes.map(({ high }) => high));
const mean = (sizes: readonly Interval[]): number => sizes.reduce((sum, size) => sum + middle(size), 0) / sizes.length;

function grams(mm: number): number {
  return weightOf(mm / 10);
}
