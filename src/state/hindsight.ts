/**
 * What is known today of how many there were then: numbers only fall, so a later count and what went in
 * between raise an earlier guess. Nothing here changes what an earlier day was told at the time.
 */
import type { Day } from '../core/day.ts';
import type { Interval } from '../core/interval.ts';
import type { Place } from '../core/span.ts';
import type { SeenBody } from './bodies.ts';

interface KnownNow {
  readonly day: Day;
  readonly place: Place;
  /** All of them together on that day, by what was said then and what later lines show. */
  readonly total: Interval;
}

type Moment = Pick<KnownNow, 'day' | 'place'>;

/** Every count of a body as it is known today, oldest first. A colony is never known better: young are born unseen. */
export function countsAsKnown(body: SeenBody): KnownNow[] {
  const rising = 'kind' in body && body.kind === 'colony';
  const known: KnownNow[] = [];
  let least = rising ? 0 : body.total.low;
  let next: Moment | null = null;
  for (const seen of body.counts.filter(({ replaced }) => !replaced).toReversed()) {
    const went = body.gone.filter((gone) => gone.day > seen.day && (next === null || isBefore(gone, next)));
    least += rising ? 0 : went.reduce((sum, gone) => sum + gone.count.low, 0);
    next = seen;
    const { total } = seen;
    const low = Math.max(total.low, least);
    const high = Math.max(total.high, low);
    const likely = total.likely === null ? null : Math.min(high, Math.max(low, total.likely));
    known.unshift({ day: seen.day, place: seen.place, total: { low, likely, high } });
    least = rising ? 0 : Math.max(least, total.low);
  }
  return known;
}

/** True where fish went before a count: on an earlier day, or in an earlier clause of that day in the same file. */
function isBefore(gone: Moment, count: Moment): boolean {
  if (gone.day !== count.day) return gone.day < count.day;
  const [a, b] = [gone.place, count.place];
  return a.file === b.file && (a.line === b.line ? a.from < b.from : a.line < b.line);
}
