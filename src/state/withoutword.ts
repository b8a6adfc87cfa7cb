/** What nobody spoke of for so long that it must be over, one way or the other: broods that never swam, mouths that never let go. */
import type { Day } from '../core/day.ts';
import { addDays } from '../core/day.ts';
import { onDay } from '../core/interval.ts';
import type { SeenBrood, SeenGroup } from './bodies.ts';
import { reached } from './broodlife.ts';
import type { Room } from './draft.ts';
import { clockOf, swimDays } from './stageclock.ts';
import { dayAtAge } from './stagewindows.ts';

/** Days after the last on which something was to be seen for which today's list asks (ours). */
export const ASKED_FOR = 21;

/** The day by which such a brood should have swum, and the last on which it was spoken of; null for any other. */
export function withoutWord(room: Room, brood: SeenBrood): { readonly by: Day; readonly since: Day } | null {
  if (brood.ended !== null || brood.oneOf.length > 0 || reached(brood, 'swam')) return null;
  const { high } = dayAtAge(brood.laid, swimDays(clockOf(room, brood)));
  if (high === null || room.on <= addDays(high, ASKED_FOR)) return null;
  return { by: high, since: brood.looks.at(-1)?.day ?? brood.laid.high ?? high };
}

/** True while a mouth can be full by the last line that says so. */
export function isHolding(room: Room, { holding, species, home }: SeenGroup, day: Day): boolean {
  if (holding === null) return false;
  const clock = clockOf(room, { species, natal: home, laid: onDay(holding.day) });
  return day <= addDays(holding.day, Math.ceil(swimDays(clock).high) + ASKED_FOR);
}
