/** What written counts mean: a guess as an interval, a word as what is there that day. */
import type { Interval } from '../core/interval.ts';
import { NONE, clamp, isSure } from '../core/interval.ts';
import type { Heads, HowMany } from '../journal/event.ts';
import type { Body, Brood } from './stock.ts';

/**
 * What written heads mean: `about 40` is 30 to 50 fish, or half to double where nobody can count
 * (`uncounted`: eggs, and young that were not yet moved once). Whole fish inside those bounds.
 */
export function headsOf(heads: Heads, uncounted: boolean): Interval {
  const { likely } = heads.total;
  if (heads.as !== 'about' || likely === null) return wholeFish(heads.total);
  const low = Math.ceil(likely * (uncounted ? 0.5 : 0.75));
  const high = Math.floor(likely * (uncounted ? 2 : 1.25));
  if (low < high) return { low, likely, high };
  return { low: Math.max(1, likely - 1), likely, high: likely + 1 };
}

function wholeFish(count: Interval): Interval {
  const low = Math.ceil(count.low);
  const high = Math.max(low, Math.floor(count.high));
  return { low, likely: count.likely === null ? null : clamp(Math.round(count.likely), low, high), high };
}

/** True where the words are a count and not a guess. */
export function isCounted(heads: Heads): boolean {
  return heads.as === 'counted' && isSure(heads.total);
}

/** True for young of one spawning. */
export function isYoung(body: Body): body is Brood {
  return 'laid' in body;
}

/** True for a body whose young nobody could count yet. */
export function cannotCount(body: Body): boolean {
  return isYoung(body) && !body.moved;
}

/** True for a colony: a running stock, where births nobody sees raise the number. Nothing sure bounds it for long. */
export function isRunning(body: Body): boolean {
  return 'kind' in body && body.kind === 'colony';
}

/** How many a clause means, of the fish of a body in a tank (null: of all of them). */
export function howMany(body: Body, tank: string | null, count: HowMany): Interval {
  const there = tank === null ? body.total : (body.parts.get(tank) ?? NONE);
  if (count === 'all' || count === 'rest' || count === 'unsaid') return there;
  if (count === 'half') {
    return {
      low: Math.floor(there.low / 2),
      likely: there.likely === null ? null : Math.round(there.likely / 2),
      high: Math.ceil(there.high / 2),
    };
  }
  return headsOf(count, false);
}

/** The one tank that a body is in, or null. */
export function onlyTank(body: Body): string | null {
  const tanks = [...body.parts.keys()];
  return tanks.length === 1 ? (tanks[0] ?? null) : null;
}

/** A number, and not a word for what is there. */
export function isWritten(count: HowMany): count is Heads {
  return typeof count !== 'string';
}

/** Every fish that is there. */
export function isWhole(count: HowMany): boolean {
  return count === 'all' || count === 'rest' || count === 'unsaid';
}
