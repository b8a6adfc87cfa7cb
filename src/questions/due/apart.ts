/**
 * Why a measure stays as it is. A tank off its loop: a medicine, a sickness or a hold in it would go round with the
 * water, or one of the loop come to it. An air filter: nothing else moves the water. A divider: one behind it is sick.
 */
import { addDays, type Day } from '../../core/day.ts';
import type { DeepReadonly } from '../../core/readonly.ts';
import { dayWords } from '../../core/words.ts';
import type { Room } from '../../state/draft.ts';
import { sickWords, troubleOf } from '../../state/health.ts';
import type { Rig } from '../../state/measures.ts';
import { openRigs } from '../../state/rigs.ts';
import { homeLoopOf, sharers, tanksOn } from '../../state/tanks.ts';
import { runningCourses } from '../holds/courses.ts';
import { CLEAR_DAYS, openHolds } from '../holds/reach.ts';
import { sickIn } from '../holds/sickness.ts';

interface Apart {
  /** The first day on which it may go back, as far as is known. */
  readonly until: Day;
  readonly says: string;
}

/** What keeps a tank off its loop the longest; null for every other measure, and where nothing does. */
export function keptApart(room: Room, rig: DeepReadonly<Rig>): Apart | null {
  if (rig.kind !== 'off the loop') return null;
  const reasons = [...treated(room, rig), ...sick(room, rig), ...fromLoop(room, rig)];
  return reasons.reduce<Apart | null>((last, one) => (last !== null && last.until >= one.until ? last : one), null);
}

/** Why an air filter stays in: while the pump of its loop or the power is off, it may be all that moves the water. */
export function keptIn(room: Room, rig: DeepReadonly<Rig>): Apart | null {
  if (rig.kind !== 'air filter') return null;
  const loop = homeLoopOf(room, rig.where);
  const near = new Set(['room', rig.where, ...(loop === null ? [] : [loop])]);
  const pump = openRigs(room).find(({ kind, where }) => kind === 'pump off' && where !== rig.where && near.has(where));
  const power = room.measures.faults.find(
    ({ kind, where, fixed }) => kind === 'power' && fixed === null && near.has(where),
  );
  if (pump === undefined && power === undefined) return null;
  const off = pump === undefined ? 'the power is off' : `the pump of ${pump.where} is off`;
  return { until: addDays(room.on, 1), says: `leave it in while ${off}: nothing else moves the water` };
}

/** Why a divider stays in: a sick fish is weak, and the other would have it to itself (common practice, no source). */
export function keptParted(room: Room, rig: DeepReadonly<Rig>): Apart | null {
  if (rig.kind !== 'divider') return null;
  const sick = room.health.sick.findLast(
    ({ tanks, over, catching, day }) =>
      over === null && tanks.includes(rig.where) && (catching === null || addDays(day, CLEAR_DAYS) > room.on),
  );
  if (sick === undefined) return null;
  return { until: addDays(room.on, 1), says: `leave it in while one there is ${sickWords(sick.text)}` };
}

/** Dosed by itself: the others would be treated with it. What was dosed while it was on the loop has gone round already. */
function treated(room: Room, { where }: DeepReadonly<Rig>): Apart[] {
  const own = new Set(sharers(room, where));
  return runningCourses(room, room.on)
    .filter(({ treatment: { tanks } }) => tanks.includes(where) && tanks.every((tank) => own.has(tank)))
    .map(({ treatment, clear }) => {
      const says = `keep it off while ${treatment.product} is in it, or all on the loop are treated: clear ${dayWords(clear, room.on)}`;
      return { until: clear, says };
    });
}

function sick(room: Room, { where }: DeepReadonly<Rig>): Apart[] {
  const held = openHolds(room)
    .filter(({ hold }) => hold.tanks.includes(where) && room.plumbing.tanks.has(hold.where))
    .map(({ hold, clear }) => ({ until: clear, text: hold.text }));
  const open = sickIn(room, where);
  const asked = open === null ? [] : [{ until: open.until ?? addDays(room.on, 1), text: troubleOf(open.sick.text) }];
  return [...held, ...asked].map(({ until, text }) => {
    const says = `keep it off while it may carry ${text}: not before ${dayWords(until, room.on)}`;
    return { until, says };
  });
}

/** What goes round in the loop and is not in this tank: valved off in time it is clean, and stays so. */
function fromLoop(room: Room, { where }: DeepReadonly<Rig>): Apart[] {
  const loop = homeLoopOf(room, where);
  const others = new Set(loop === null ? [] : tanksOn(room, loop));
  if (loop === null || others.size === 0) return [];
  const dosed = runningCourses(room, room.on)
    .filter(({ treatment: { tanks } }) => !tanks.includes(where) && tanks.some((tank) => others.has(tank)))
    .map(({ treatment, clear }) => {
      const says = `keep it off while ${treatment.product} is in ${loop}, or it is treated as well: clear ${dayWords(clear, room.on)}`;
      return { until: clear, says };
    });
  const held = openHolds(room)
    .filter(({ tanks }) => tanks.some(({ tank }) => others.has(tank)) && tanks.every(({ tank }) => tank !== where))
    .map(({ hold, clear }) => ({ until: clear, text: hold.text }));
  const asked = [...others].flatMap((tank) => {
    const open = sickIn(room, tank);
    return open === null || sickIn(room, where)?.sick === open.sick
      ? []
      : [{ until: open.until ?? addDays(room.on, 1), text: troubleOf(open.sick.text) }];
  });
  const carried = [...held, ...asked].map(({ until, text }) => {
    const says = `keep it off while ${loop} may carry ${text}: not before ${dayWords(until, room.on)}`;
    return { until, says };
  });
  return [...dosed, ...carried];
}
