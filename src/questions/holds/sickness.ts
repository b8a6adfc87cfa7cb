/** Sickness that still matters: not yet said whether it is catching, or catching and not held. */
import { addDays, type Day } from '../../core/day.ts';
import type { DeepReadonly } from '../../core/readonly.ts';
import type { Room } from '../../state/draft.ts';
import type { Sick } from '../../state/health.ts';
import { sharers } from '../../state/tanks.ts';
import { oncePerRoom } from './once.ts';
import { CLEAR_DAYS, openHolds } from './reach.ts';

export interface OpenSick {
  readonly sick: DeepReadonly<Sick>;
  /** The day from which its tanks may be sold from again; null until a line says whether it is catching. */
  readonly until: Day | null;
  /** Other tanks that shared its water that day. */
  readonly beside: readonly string[];
  /** An open hold covers its tanks. */
  readonly held: boolean;
}

/** Sickness open on the room's day, oldest first. What is said not to be catching is not among it. */
export const openSick: (room: Room) => readonly OpenSick[] = oncePerRoom((room) => {
  const held = new Set(openHolds(room).flatMap((hold) => hold.tanks.map(({ tank }) => tank)));
  return room.health.sick.flatMap((sick): OpenSick[] => {
    const until = sick.catching === null ? null : addDays(sick.day, CLEAR_DAYS);
    if (sick.over !== null || sick.catching === false || (until !== null && until <= room.on)) return [];
    const beside = sick.tanks.flatMap((tank) => sharers(room, tank, sick.day, sick.minute));
    return [
      {
        sick,
        until,
        beside: [...new Set(beside)].filter((tank) => !sick.tanks.includes(tank)),
        held: sick.tanks.every((tank) => held.has(tank)),
      },
    ];
  });
});

/** The open sickness of a tank itself, or null. */
export function sickIn(room: Room, tank: string): OpenSick | null {
  return openSick(room).find(({ sick }) => sick.tanks.includes(tank)) ?? null;
}

/** Open sickness in another tank on the same water, catching or not yet said not to be, while no hold says so; or null. */
export function sickBeside(room: Room, tank: string): OpenSick | null {
  return openSick(room).find(({ beside, held }) => !held && beside.includes(tank)) ?? null;
}

/** What was catching in a tank, let go of by its days alone: no line says that it is over. For as long again; else null. */
export function lapsedIn(room: Room, tank: string, at: Day): DeepReadonly<Sick> | null {
  const found = room.health.sick.findLast(({ tanks, catching }) => catching === true && tanks.includes(tank));
  if (found === undefined || found.over !== null) return null;
  return at >= addDays(found.day, CLEAR_DAYS) && at < addDays(found.day, 2 * CLEAR_DAYS) ? found : null;
}
