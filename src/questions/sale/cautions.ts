/** What to mind of a lot before any of it goes, ready or not. */
import type { Day } from '../../core/day.ts';
import { dayWords } from '../../core/words.ts';
import { speciesOf } from '../../state/bodies.ts';
import type { Room } from '../../state/draft.ts';
import { inQuarantine } from '../holds/quarantines.ts';
import { heldBy } from '../holds/reach.ts';
import { lapsedIn, sickBeside } from '../holds/sickness.ts';
import type { DraftLot } from './taken.ts';

/** Everything to mind before any go, `stale` with it where the count is too old: one hides none of the others. */
export function cautionsOf(
  room: Room,
  { body, tank }: Pick<DraftLot, 'body' | 'tank'>,
  at: Day,
  stale: string | null,
): readonly string[] {
  return [
    speciesOf(room, body)?.traits.regulated === true
      ? 'a regulated species: selling and moving it is a matter of local law'
      : null,
    sickCaution(room, tank),
    lapsedCaution(room, tank, at),
    quarantineCaution(room, tank, at),
    stale,
  ].filter((caution) => caution !== null);
}

function sickCaution(room: Room, tank: string): string | null {
  const near = sickBeside(room, tank);
  if (near === null) return null;
  const { text, where, catching } = near.sick;
  return catching === null
    ? `${text} in ${where}, on the same water: ask whether it is catching before any go`
    : `${text} in ${where}, catching, on the same water: put it on hold before any go`;
}

/** What a hold would have kept them for is over by its days, and nobody wrote that it is over. */
function lapsedCaution(room: Room, tank: string, at: Day): string | null {
  const was = heldBy(room, tank) === null ? lapsedIn(room, tank, at) : null;
  if (was === null) return null;
  return `${was.text} on ${dayWords(was.day, room.on)}, catching, and no line says that it is over: look over every fish before any go`;
}

/** Its days are over, but nobody wrote that the fish were looked over. */
function quarantineCaution(room: Room, tank: string, at: Day): string | null {
  const kept = inQuarantine(room, tank);
  if (kept === null || kept.until > at) return null;
  return `quarantine to ${dayWords(kept.until, room.on)}, not ended by a line: look over every fish before any go`;
}
