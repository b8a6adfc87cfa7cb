/**
 * What the glass that goes free is worth. Each fish that leaves gives back its part of its tank for the
 * weeks until it could next be sold; a week of a whole tank is worth what such a week earned this room.
 */
import type { Day } from '../../core/day.ts';
import { median } from '../../core/stats.ts';
import { dayWords, plural } from '../../core/words.ts';
import { bodiesIn, partIn } from '../../state/bodies.ts';
import type { Room } from '../../state/draft.ts';
import { money } from '../money.ts';

/** Weeks to the next auction where the journal knows neither the next nor two earlier ones (ours). */
const USUAL_WEEKS = 8;

export interface Weeks {
  readonly weeks: number;
  readonly from: string;
}

/** How long fish that stay at home will hold their tanks. */
export function weeksToNext(room: Room, on: Day): Weeks {
  const days = [...room.sale.auctions.values()].flatMap((one) => (one.on === null ? [] : [one.on]));
  const [next] = days.filter((day) => day > on).toSorted((a, b) => a - b);
  if (next !== undefined) return { weeks: (next - on) / 7, from: `the next auction is on ${dayWords(next, room.on)}` };
  const ordered = [...new Set(days)].toSorted((a, b) => a - b);
  const gap = median(ordered.slice(1).map((day, index) => day - (ordered[index] ?? day)));
  if (gap !== null) return { weeks: gap / 7, from: `auctions of this journal are ${plural(gap, 'day')} apart` };
  return { weeks: USUAL_WEEKS, from: 'ours: no other auction is written' };
}

export interface GlassValue {
  readonly amount: number;
  readonly from: string;
}

/** A week of one tank: what the keeper says, else the middle of what the species that were sold earned in this room. */
export function weekValue(room: Room, said: number | null): GlassValue {
  if (said !== null) return { amount: said, from: 'as told' };
  const earned = (money(room)?.species ?? [])
    .filter(({ sold, perTankWeek }) => sold.high > 0 && perTankWeek !== null)
    .map(({ perTankWeek }) => perTankWeek?.likely ?? perTankWeek?.low ?? 0);
  const amount = median(earned);
  if (amount === null) return { amount: 0, from: 'nothing was sold yet: say it with --tank-week' };
  return { amount, from: `the middle of what ${plural(earned.length, 'species', 'species')} earned in this room` };
}

/** The most fish that may be in a tank; null where nobody can say. */
export function mostIn(room: Room, tank: string): number | null {
  const most = bodiesIn(room, tank).reduce((sum, body) => sum + partIn(body, tank).high, 0);
  return Number.isFinite(most) && most > 0 ? most : null;
}
