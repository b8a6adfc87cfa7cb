/** What lines that have just been written down dosed into water that more tanks share than they name: told at once. */
import { listWords, plural } from '../core/words.ts';
import type { Event } from '../journal/event.ts';
import type { Room } from '../state/draft.ts';
import { sharers } from '../state/tanks.ts';
import { happened } from '../state/when.ts';
import { tanksNamed } from '../state/where.ts';
import { changesWaterAlone } from './doses.ts';

/** One text for each tank that was dosed while others share its water; a dose of the whole loop or room is meant for all. */
export function sharedLines(room: Room, events: readonly Event[]): readonly string[] {
  const dosed = events.flatMap((event) => {
    if (event.kind !== 'treated' && (event.kind !== 'dosed' || changesWaterAlone(event.product))) return [];
    const { product, subject } = event;
    if (subject.kind === 'loop' || subject.kind === 'room') return [];
    return tanksNamed(room, event).map((tank) => ({ tank, product: product.toLowerCase(), ...happened(event) }));
  });
  const told = dosed.flatMap(({ tank, product, day, minute }) => {
    const meant = new Set(dosed.filter((one) => one.product === product).map((one) => one.tank));
    const others = sharers(room, tank, day, minute).filter((one) => !meant.has(one));
    if (others.length === 0) return [];
    const named = others.length <= MOST_NAMED ? ` (${listWords(others)})` : '';
    return [
      `${tank} shares water and filter with ${plural(others.length, 'tank')}${named}: valve off, or all are treated`,
    ];
  });
  return [...new Set(told)];
}

/** More tanks than this are counted, not named. */
const MOST_NAMED = 4;
