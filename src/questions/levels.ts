/** Which levels of a loop speak of clogging, and which do not: read with the pump off, or while the sump stood low or was just topped up. */
import { FIRST_DAY, toDay, type Day } from '../core/day.ts';
import { middle } from '../core/interval.ts';
import type { DeepReadonly } from '../core/readonly.ts';
import type { Room } from '../state/draft.ts';
import type { Loop, LoopLevel } from '../state/plumbing.ts';
import { isFull } from '../state/prefilter.ts';
import { isAfter, since } from '../state/when.ts';

type Level = DeepReadonly<LoopLevel>;

interface Readable {
  /** Oldest first. */
  readonly kept: readonly Level[];
  readonly dropped: readonly { readonly level: Level; readonly why: string }[];
}

const LOW = /\bevaporat|\bsump (?:is |was |stood |stands )?low|\blow sump/iu;
const TOPPED = /\btop(?:ped)?[ -]?up/iu;
const STOPPED = /\bpump (?:is |was |stood )?(?:off|out|stopped|still)/iu;

/** A fall under this many mm is within what an eye reads (ours). */
export const FALL = 4;

/** So many cleans before the last one teach how long a clean lasts (ours). */
export const LEARN_FROM = 6;

/**
 * Sorts a loop's levels, as far back as they are learned from. A level on the day of a top-up is dropped: before
 * it the sump stood low, after it nothing has settled. Where most levels stand on such days the keeper tops up all the time, and they compare.
 */
export function readableLevels(room: Room, loop: DeepReadonly<Loop>): Readable {
  const first = learnedSince(loop);
  const read = since(loop.levels, first).filter(({ superseded }) => !superseded);
  const topped = new Set(
    since(room.water.topUps, first)
      .filter(({ where }) => where === loop.name)
      .map(({ day }) => day),
  );
  const often = topped.size > 0 && read.filter(({ day }) => topped.has(day)).length * 2 > read.length;
  const kept: Level[] = [];
  const dropped: { level: Level; why: string }[] = [];
  for (const level of read) {
    const why =
      whyNot(level, !often && topped.has(level.day)) ?? (level.spilled ? notClogged(loop, read, level) : null);
    if (why === null) kept.push(level);
    else dropped.push({ level, why });
  }
  return { kept, dropped };
}

const FIRST = toDay(FIRST_DAY);

/** The day of the clean from which on levels are learned from: what lies before it is history. */
function learnedSince({ cleans }: DeepReadonly<Loop>): Day {
  const full = cleans.findLast(isFull)?.day ?? FIRST;
  return toDay(Math.min(full, cleans.at(-LEARN_FROM - 1)?.day ?? FIRST));
}

/** What is clogged stays so till it is cleaned: where a lower level was read first, something else made it overflow. */
function notClogged({ cleans }: DeepReadonly<Loop>, read: readonly Level[], spilled: Level): string | null {
  const next = read.find((level) => !level.spilled && isAfter(level, spilled));
  if (next === undefined || cleans.some((clean) => isAfter(clean, spilled) && isAfter(next, clean))) return null;
  return middle(spilled.level) - middle(next.level) < FALL
    ? null
    : 'overflowed, but read lower after it with nothing cleaned';
}

function whyNot({ pumpOff, remark }: Level, toppedUp: boolean): string | null {
  if (!pumpOff && !toppedUp && remark === null) return null;
  const told = remark ?? '';
  if (pumpOff || STOPPED.test(told)) return 'read with the pump off';
  if (toppedUp || TOPPED.test(told)) return 'read on the day of a top-up';
  return LOW.test(told) ? 'read with the sump low' : null;
}
