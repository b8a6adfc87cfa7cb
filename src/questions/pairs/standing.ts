/**
 * How an open dispute stands: its days, its worst sign that still counts, whether it gets worse, and what is rigged.
 * Which lines count as one look is ours.
 */
import type { Day } from '../../core/day.ts';
import { clamp } from '../../core/interval.ts';
import type { Sign } from '../../journal/event.ts';
import type { SeenGroup } from '../../state/bodies.ts';
import type { Room } from '../../state/draft.ts';
import { livingMembers } from '../../state/members.ts';
import { boutsOf, isCalmerBefore, rankOf } from '../../state/quarrel.ts';
import { openRigs } from '../../state/rigs.ts';
import type { SeenDispute } from './dispute.ts';
import { worstSign } from './dispute.ts';
import type { Past } from './past.ts';

/** Days without a word after which to ask how they stand (common practice, no source). */
export const SILENT_DAYS = 3;
/** Days without a word after which a wound is no longer the first thing of every day (ours). */
const FADES_DAYS = 14;
/** The day from which to act on a torn fin, and on chasing or hiding (ours). */
const ACT_ON_TORN = 3;
export const ACT_ON_MILD = 5;

export interface Standing {
  readonly group: SeenGroup;
  readonly dispute: SeenDispute;
  readonly on: Day;
  /** Days since the first sign of this bout, that day counted. */
  readonly boutDay: number;
  readonly day: number;
  readonly rank: number;
  readonly worst: Sign;
  readonly climbing: boolean;
  readonly danger: boolean;
  /** One gasps, and no line tells of a quarrel. */
  readonly airless: boolean;
  readonly lastWord: Day;
  readonly calmer: boolean;
  readonly lightsOff: Day | null;
  readonly divider: Day | null;
  readonly actDay: number;
  readonly past: Past;
}

/** Nobody wrote for so long that it healed or killed. */
export function hasFaded({ on, lastWord }: Standing): boolean {
  return on - lastWord > FADES_DAYS;
}

/** A dispute as its lines tell it by the room's day. */
export function standingOf(room: Room, group: SeenGroup, dispute: SeenDispute, past: Past): Standing {
  const bout = boutsOf(dispute.signs).at(-1) ?? dispute.signs;
  const lasting = dispute.signs.filter((sign) => isGrave(sign) && !isCalmed(dispute, sign));
  const worst = worstSign([...lasting, ...bout]);
  const rank = rankOf(worst.sign);
  const lastSign = bout.at(-1)?.day ?? dispute.from;
  const calm = dispute.calmer.at(-1) ?? null;
  const calmed = calm?.day ?? null;
  const looks = looksAt(dispute);
  const rigged = (kind: 'lights off' | 'divider'): Day | null =>
    openRigs(room).find((rig) => rig.kind === kind && livesIn(group, rig.where))?.day ?? null;
  return {
    group,
    dispute,
    on: room.on,
    boutDay: room.on - (bout[0]?.day ?? dispute.from) + 1,
    day: room.on - dispute.from + 1,
    rank,
    worst: worst.sign,
    climbing: isClimbing(looks),
    airless: dispute.signs.every(({ sign, doer }) => sign === 'gasping' && doer === null) && calmed === null,
    danger: lasting.length > 0 || bout.some(isGrave),
    lastWord: calmed !== null && calmed > lastSign ? calmed : lastSign,
    calmer: calm !== null && !bout.some((sign) => isCalmerBefore(calm, sign)),
    lightsOff: rigged('lights off'),
    divider: rigged('divider'),
    actDay: actDayOf(rank, past),
    past,
  };
}

type SeenSign = SeenDispute['signs'][number];

function isGrave({ sign }: SeenSign): boolean {
  return sign === 'gasping' || sign === 'wounded' || sign === 'scales missing';
}

/** A wound is not healed because nobody wrote for two days: it stands until a line says that they are calmer. */
function isCalmed(dispute: SeenDispute, sign: SeenSign): boolean {
  return dispute.calmer.some((calmer) => !isCalmerBefore(calmer, sign));
}

function livesIn(group: SeenGroup, tank: string): boolean {
  return livingMembers(group).some((fish) => fish.tank === tank) || group.home === tank;
}

/** The worst sign of each look: lines of one moment are one look; `calmer` is a look at which nothing was wrong. */
function looksAt(dispute: SeenDispute): readonly number[] {
  const looks: { at: string; rank: number }[] = [];
  const calmer = [...dispute.calmer];
  for (const sign of dispute.signs) {
    for (let calm = calmer[0]; calm !== undefined && isCalmerBefore(calm, sign); calm = calmer[0]) {
      looks.push({ at: 'calmer', rank: 0 });
      calmer.shift();
    }
    const at = `${String(sign.day)} ${String(sign.minute)}`;
    const last = looks.at(-1);
    if (last?.at === at) last.rank = Math.max(last.rank, rankOf(sign.sign));
    else looks.push({ at, rank: rankOf(sign.sign) });
  }
  return [...looks.map(({ rank }) => rank), ...calmer.map(() => 0)];
}

/** True where each of the last two looks was worse than the look before it. */
function isClimbing(looks: readonly number[]): boolean {
  const [first, second, third] = looks.slice(-3);
  return first !== undefined && second !== undefined && third !== undefined && first < second && second < third;
}

/**
 * The day of the bout on which waiting ends. A pair whose own mild disputes are known is given one day
 * more than its longest, within 4 to 8 days; a torn fin never waits longer than usual.
 */
function actDayOf(rank: number, past: Past): number {
  if (rank >= 3) return ACT_ON_TORN;
  return past.lengths === null ? ACT_ON_MILD : clamp(past.lengths.range.high + 1, 4, 8);
}
