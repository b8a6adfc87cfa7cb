/** Broods of which nothing was heard for so long that they must have swum or be gone: nobody can say what became of them. */
import type { Day } from '../core/day.ts';
import { addDays } from '../core/day.ts';
import type { SeenBrood } from './bodies.ts';
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
