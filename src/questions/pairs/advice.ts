/**
 * What to do about an open dispute. Most pass by themselves, and taking the loser out early costs the
 * bond: wait by day and worst sign, act once either is passed, part them at once where it is dangerous.
 * Ladder and days: common practice, no source; which lines count as one look is ours.
 */
import type { Day } from '../../core/day.ts';
import { clamp } from '../../core/interval.ts';
import { dayWords, plural, sinceWords } from '../../core/words.ts';
import type { Sign } from '../../journal/event.ts';
import type { Member } from '../../journal/subject.ts';
import type { SeenGroup } from '../../state/bodies.ts';
import type { Room } from '../../state/draft.ts';
import { livingMembers } from '../../state/members.ts';
import { boutsOf, isCalmerBefore, rankOf } from '../../state/quarrel.ts';
import { openRigs } from '../../state/rigs.ts';
import type { SeenDispute } from './dispute.ts';
import { sidesOf, worstSign } from './dispute.ts';
import type { Past } from './past.ts';

export type Step = 'wait' | 'act' | 'separate' | 'parted' | 'ask';

export interface Advice {
  readonly step: Step;
  /** What to do, in the imperative. */
  readonly what: string;
  /** How it stands: day, worst sign, who on whom, what is rigged. */
  readonly how: string;
  /** The worst sign so far that still counts, 1 to 5. */
  readonly rank: number;
  readonly lastWord: Day;
  /** Nobody wrote for so long that it healed or killed: it is asked for, and no longer before everything. */
  readonly faded: boolean;
  /** A wound, gasping or missing scales, and no line since that they are calmer. */
  readonly grave: boolean;
  readonly caution: string;
  /** Rules and numbers, one step a string. */
  readonly steps: readonly string[];
}

/** Days without a word after which to ask how they stand (common practice, no source). */
export const SILENT_DAYS = 3;
/** Days without a word after which a wound is no longer the first thing of every day (ours). */
const FADES_DAYS = 14;
/** The day from which to act on a torn fin, and on chasing or hiding (ours). */
const ACT_ON_TORN = 3;
const ACT_ON_MILD = 5;

const DISPUTE_CAUTION =
  'most disputes pass within 48 hours, and taking the loser out early harms the bond; have the divider ready, and part them at once when one gasps, has scales missing or a wound, or it is worse at two looks running';
const PARTED_CAUTION =
  'quiet water and dim light for the one that was beaten; what ails it and what to give is for a veterinarian';
const DANGER_CAUTION =
  'part them now, the aggressor out first, the other left in quiet water and dim light; what ails it and what to give is for a veterinarian';

interface Standing {
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

/** Advice on an open dispute as it stands on the room's day. */
export function adviceOn(room: Room, group: SeenGroup, dispute: SeenDispute, past: Past): Advice {
  const standing = standingOf(room, group, dispute, past);
  const step = stepOf(standing);
  const faded = (step === 'ask' || step === 'parted') && hasFaded(standing);
  return {
    step,
    what: whatToDo(step, standing),
    how: howItStands(standing),
    rank: standing.rank,
    lastWord: standing.lastWord,
    faded,
    grave: standing.danger && !standing.calmer,
    caution: cautionOf(step, standing.danger, faded),
    steps: stepsOf(step, standing),
  };
}

function hasFaded({ on, lastWord }: Standing): boolean {
  return on - lastWord > FADES_DAYS;
}

function cautionOf(step: Step, danger: boolean, faded: boolean): string {
  if (step === 'parted' && danger) return PARTED_CAUTION;
  return danger && !faded ? DANGER_CAUTION : DISPUTE_CAUTION;
}

function standingOf(room: Room, group: SeenGroup, dispute: SeenDispute, past: Past): Standing {
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

/** On a divider that nothing got past since: one that hides, or chases along the pane, is parted all the same. */
function isParted({ divider, dispute }: Standing): boolean {
  return divider !== null && !dispute.signs.some(({ day, sign }) => day > divider && !THROUGH_A_PANE.has(sign));
}

const THROUGH_A_PANE: ReadonlySet<Sign> = new Set<Sign>(['hiding', 'chasing']);

function stepOf(at: Standing): Step {
  const silent = at.on - at.lastWord;
  if (isParted(at)) return 'parted';
  if (silent >= SILENT_DAYS) return 'ask';
  if ((at.danger && !at.calmer) || at.climbing) return 'separate';
  if (at.rank >= 4) return 'act';
  if (at.calmer) return 'wait';
  return at.boutDay >= at.actDay ? 'act' : 'wait';
}

/** A sign behind a divider that was in already: it lets something through. */
const TIGHT = 'set the divider anew, so that nothing gets past it';

function whatToDo(step: Step, at: Standing): string {
  const { doer, sufferer } = partiesIn(at);
  switch (step) {
    case 'wait': {
      if (at.divider !== null) return `${TIGHT}; look twice daily`;
      const dark = at.lightsOff === null ? 'lights off, ' : '';
      return `${dark}keep ${both(at.group)} in while ${loser(sufferer)} has a refuge and eats; look twice daily`;
    }
    case 'act':
      if (at.divider !== null) return `${TIGHT}; if they go on, take out ${doer}, not ${other(at.group, sufferer)}`;
      return `more cover now, then a see-through divider; if they go on, take out ${doer}, not ${other(at.group, sufferer)}`;
    case 'separate':
      if (at.divider !== null)
        return `separate now: ${TIGHT}, or take out ${doer} and leave ${other(at.group, sufferer)} in place`;
      return `separate now: divider in, or take out ${doer} and leave ${other(at.group, sufferer)} in place`;
    case 'parted':
      return at.danger && !at.calmer
        ? `look ${hasFaded(at) ? '' : 'daily '}how ${loser(sufferer)} does; the divider stays in until both show themselves and eat`
        : 'leave the divider in until both show themselves and eat, then take it out while you watch';
    case 'ask':
      return at.rank >= 4
        ? `${hasFaded(at) ? 'look' : 'look now'}: ${SIGN_WORDS[at.worst]} on ${dayWords(at.lastWord, at.on)} and no word since; say how they stand`
        : 'say how they stand: made up, calmer, or still at it';
  }
}

/** The doer and the sufferer as far as the latest lines say. */
function partiesIn(at: Standing): { doer: string; sufferer: Member | null } {
  const doer = at.dispute.signs.findLast((sign) => sign.doer !== null)?.doer ?? null;
  const sufferer = at.dispute.signs.findLast((sign) => sign.sufferer !== null)?.sufferer ?? null;
  const words = doer === null ? 'the aggressor' : (doer.name ?? `the ${doer.sex ?? 'aggressor'}`);
  return { doer: words, sufferer };
}

function loser(sufferer: Member | null): string {
  if (sufferer?.sex === 'female') return 'she';
  return sufferer?.sex === 'male' ? 'he' : 'the loser';
}

/** Who is to stay: the sufferer by name or sex; where it may be any of several, all of them. */
function other(group: SeenGroup, sufferer: Member | null): string {
  if (sufferer === null) return 'the loser';
  if (sufferer.name !== null) return sufferer.name;
  const same = livingMembers(group).filter((fish) => fish.sex === sufferer.sex);
  return sufferer.sex === null ? 'the loser' : same.length > 1 ? `the ${sufferer.sex}s` : `the ${sufferer.sex}`;
}

function both(group: SeenGroup): string {
  const living = livingMembers(group);
  const together = living.filter((fish) => living.some((one) => one !== fish && one.tank === fish.tank));
  return together.length === 2 ? 'both' : 'them all';
}

/** How a sign reads after "a dispute with". */
const SIGN_WORDS: { readonly [S in Sign]: string } = {
  chasing: 'chasing',
  hiding: 'one hiding',
  pinned: 'one pinned',
  'torn fin': 'a torn fin',
  'not eating': 'one not eating',
  'scales missing': 'scales missing',
  wounded: 'a wound',
  gasping: 'one gasping',
};

function howItStands(at: Standing): string {
  const again = at.boutDay !== at.day;
  const day = again
    ? `day ${String(at.boutDay)} of a new bout (open ${sinceWords(at.dispute.from, at.on)}) of a dispute`
    : `day ${String(at.day)} of a dispute`;
  const by = sidesOf(at.group, at.dispute.signs);
  const silent = at.on - at.lastWord;
  return [
    [`${day} with ${SIGN_WORDS[at.worst]}`, by, at.climbing ? 'worse at two looks running' : null],
    [at.airless && silent < SILENT_DAYS ? 'nobody seen chasing: it may be the water, test it and give more air' : null],
    [at.calmer ? `calmer ${sinceWords(at.lastWord, at.on)}` : null],
    [silent >= SILENT_DAYS ? `no word ${sinceWords(at.lastWord, at.on)}` : null],
    [at.lightsOff === null ? null : `lights off ${sinceWords(at.lightsOff, at.on)}`],
    [at.divider === null ? null : `divider in ${sinceWords(at.divider, at.on)}`],
    [at.past.says],
  ]
    .map((part) => part.filter((words) => words !== null).join(', '))
    .filter((words) => words !== '')
    .join('; ');
}

function stepsOf(step: Step, at: Standing): string[] {
  const own = at.past.lengths !== null && at.rank <= 2;
  return [
    `worst sign ${at.worst}: ${String(at.rank)} of 5 (1 chasing, 2 hiding or pinned, 3 torn fin, 4 scales missing or not eating, 5 wounded or gasping)`,
    `day ${String(at.boutDay)} of this bout; last word ${dayWords(at.lastWord, at.on)}`,
    at.rank >= 4
      ? 'act at once at 4 and 5'
      : `act from day ${String(at.actDay)} at ${String(at.rank)}${own ? ` (this pair's own longest and a day; usual: day ${String(ACT_ON_MILD)})` : ' (usual)'}`,
    ...(at.climbing ? ['worse at two looks running: part them now'] : []),
    `so: ${step}`,
    'first more cover, then a see-through divider, then the aggressor out and the loser left on its ground; do not take the loser out early',
    ...(step === 'ask'
      ? [`nobody wrote for ${plural(at.on - at.lastWord, 'day')}: silence does not end a dispute`]
      : []),
    ...(at.past.says === null ? [] : [at.past.says]),
  ];
}
