/** Eggs that no male on record can have fertilised. */
import type { DayWindow } from '../core/interval.ts';
import { bodiesIn, isBrood } from './bodies.ts';
import type { Draft } from './draft.ts';
import { livingMembers } from './members.ts';
import { guildOf } from './stageclock.ts';
import type { Brood, Fish, Group } from './stock.ts';
import { sexesLeft } from './sexes.ts';

/** Young of such an age may be grown males (common practice, no source). */
const GROWN_DAYS = 90;

/**
 * True where the group is known to be of females alone while the eggs were laid, and no other fish of its kind that may
 * be a male shared the tank. A livebearer carries young of a male that is long gone.
 */
export function isWithoutMale(draft: Draft, group: Group, tank: string | null, laid: DayWindow): boolean {
  if (tank === null || guildOf(draft, group.species) === 'livebearer') return false;
  if (!isOfFemales(group, tank, laid)) return false;
  return bodiesIn(draft, tank).every((other) => {
    if (other.name === group.name || other.species !== group.species) return true;
    return isBrood(other) ? isYoung(other, laid) : (sexesLeft(other)?.males ?? 1) === 0;
  });
}

function isOfFemales(group: Group, tank: string, laid: DayWindow): boolean {
  if (group.members.length === 0) return (sexesLeft(group)?.females ?? 0) > 0 && sexesLeft(group)?.males === 0;
  const living = livingMembers(group);
  if (!living.some(({ sex }) => sex === 'female') || group.total.high > living.length) return false;
  return !group.members.some((fish) => fish.sex !== 'female' && mayHaveBeenThere(group, fish, tank, laid));
}

function mayHaveBeenThere(group: Group, fish: Fish, tank: string, { low }: DayWindow): boolean {
  if (low === null) return true;
  if (fish.gone !== null) return fish.gone.day >= low;
  return fish.tank === null || fish.tank === tank || (group.upset !== null && group.upset.day >= low);
}

function isYoung(brood: Pick<Brood, 'laid'>, { low }: DayWindow): boolean {
  return low !== null && brood.laid.low !== null && low - brood.laid.low < GROWN_DAYS;
}
