/** Which levels of a loop speak of clogging, and which do not: read with the pump off, or while the sump stood low or was just topped up. */
import type { DeepReadonly } from '../core/readonly.ts';
import type { Room } from '../state/draft.ts';
import type { Loop, LoopLevel } from '../state/plumbing.ts';

type Level = DeepReadonly<LoopLevel>;

interface Readable {
  /** Oldest first. */
  readonly kept: readonly Level[];
  readonly dropped: readonly { readonly level: Level; readonly why: string }[];
}

const LOW = /\bevaporat|\bsump (?:is |was |stood |stands )?low|\blow sump/iu;
const TOPPED = /\btop(?:ped)?[ -]?up/iu;
const STOPPED = /\bpump (?:is |was |stood )?(?:off|out|stopped|still)/iu;

/**
 * Sorts a loop's levels. A level on the day of a top-up is dropped: before it the sump stood low, after
 * it nothing has settled. Where most levels stand on such days the keeper tops up all the time, and they compare.
 */
export function readableLevels(room: Room, loop: DeepReadonly<Loop>): Readable {
  const read = loop.levels.filter(({ superseded }) => !superseded);
  const topped = new Set(room.water.topUps.filter(({ where }) => where === loop.name).map(({ day }) => day));
  const often = topped.size > 0 && read.filter(({ day }) => topped.has(day)).length * 2 > read.length;
  const kept: Level[] = [];
  const dropped: { level: Level; why: string }[] = [];
  for (const level of read) {
    const why = whyNot(level, !often && topped.has(level.day));
    if (why === null) kept.push(level);
    else dropped.push({ level, why });
  }
  return { kept, dropped };
}

function whyNot({ pumpOff, remark }: Level, toppedUp: boolean): string | null {
  if (!pumpOff && !toppedUp && remark === null) return null;
  const told = remark ?? '';
  if (pumpOff || STOPPED.test(told)) return 'read with the pump off';
  if (toppedUp || TOPPED.test(told)) return 'read on the day of a top-up';
  return LOW.test(told) ? 'read with the sump low' : null;
}
