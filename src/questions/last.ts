/** Which tanks to go to last, with a net of their own: held, sick, in quarantine. */
import type { Room } from '../state/draft.ts';
import { inQuarantine } from './holds/quarantines.ts';
import { heldTanks } from './holds/reach.ts';
import { sickIn } from './holds/sickness.ts';

type LastReason = 'held' | 'sick' | 'quarantine';

/** Why a tank comes last, or null where it need not. A tank set up for quarantine always does. */
export function lastReason(room: Room, tank: string): LastReason | null {
  if (heldTanks(room).has(tank)) return 'held';
  if (sickIn(room, tank) !== null) return 'sick';
  const set = room.plumbing.tanks.get(tank)?.quarantine === true;
  return set || inQuarantine(room, tank) !== null ? 'quarantine' : null;
}
