/** What toxic ammonia means, in words: as it was read, unless that is long ago or pH was raised by a dose since. */
import type { Interval } from '../core/interval.ts';
import { dayWords } from '../core/words.ts';
import { AMMONIA_MARKS } from '../science/ammonia.ts';
import type { Room } from '../state/draft.ts';
import { raisedAfter } from './outdated.ts';
import { afterRaising } from './raised.ts';
import type { Ammonia } from './readings.ts';
import type { WaterBody } from './waters.ts';

/** Days for which a reading of ammonia is told as how it stands (ours: a setting). */
const AMMONIA_LASTS = 30;

/** A reading that is too old, or of before a dose that can raise pH, says what was, not what is. */
export function verdictOn(room: Room, body: WaterBody, { tan, ph, toxic }: Ammonia): string {
  if (room.on - tan.day > AMMONIA_LASTS)
    return `by a test of ${dayWords(tan.day, room.on)}, too old to go by: test again`;
  // Without a pH every one is taken that such water can have, with a dose or without.
  const dose = ph === null ? undefined : raisedAfter(room, body, ph).at(-1);
  const verdict = verdictOf(toxic);
  if (dose === undefined) return verdict;
  const after = afterRaising(room, body.name, 'dose').toxic?.high ?? null;
  const bad = verdict === UNDER ? '' : `${verdict}, `;
  return `${bad}by the pH from before the dose on ${dayWords(dose.day, room.on)}${upToWords(after)}: test pH again`;
}

function upToWords(most: number | null): string {
  if (most === null) return '';
  const over = most < AMMONIA_MARKS.watch ? '' : `, over the mark of ${String(AMMONIA_MARKS.watch)}`;
  return `; it may be up to ${outward(most)} now${over}`;
}

/** What may be is never told as less than it may be. */
function outward(most: number): string {
  return String(Math.ceil(Number((most * 1000).toFixed(6))) / 1000);
}

const UNDER = `under the mark of ${String(AMMONIA_MARKS.watch)}`;

/** In words, never as a promise: what a figure under the marks means is that no harm is known at it. */
function verdictOf(toxic: Interval): string {
  const { low, high } = toxic;
  if (high < AMMONIA_MARKS.watch) return UNDER;
  if (low >= AMMONIA_MARKS.kills) return 'deadly';
  if (low >= AMMONIA_MARKS.harms) return 'harms the fish';
  return low >= AMMONIA_MARKS.watch ? 'may harm the fish' : 'may be over the mark of 0.02';
}
