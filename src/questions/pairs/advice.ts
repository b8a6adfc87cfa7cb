/**
 * What to do about an open dispute. Most pass by themselves, and taking the loser out early costs the
 * bond: wait by day and worst sign, act once either is passed, part them at once where it is dangerous.
 * Ladder and days: common practice, no source.
 */
import type { Day } from '../../core/day.ts';
import type { Sign } from '../../journal/event.ts';
import type { SeenGroup } from '../../state/bodies.ts';
import type { Room } from '../../state/draft.ts';
import { howItStands, stepsOf, whatToDo } from './advicewords.ts';
import type { SeenDispute } from './dispute.ts';
import type { Past } from './past.ts';
import type { Standing } from './standing.ts';
import { hasFaded, SILENT_DAYS, standingOf } from './standing.ts';

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

const DISPUTE_CAUTION =
  'most disputes pass within 48 hours, and taking the loser out early harms the bond; have the divider ready, and part them at once when one gasps, has scales missing or a wound, or it is worse at two looks running';
/** Behind a divider that something got past: what is ready already need not be readied. */
const DIVIDED_CAUTION =
  'taking the loser out early harms the bond; take out the aggressor at once when one gasps, has scales missing or a wound, or it is worse at two looks running';
const PARTED_CAUTION =
  'quiet water and dim light for the one that was beaten; what ails it and what to give is for a veterinarian';
const DANGER_CAUTION =
  'part them now, the aggressor out first, the other left in quiet water and dim light; what ails it and what to give is for a veterinarian';

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
    caution: cautionOf(step, standing, faded),
    steps: stepsOf(step, standing),
  };
}

function cautionOf(step: Step, { danger, divider }: Standing, faded: boolean): string {
  if (step === 'parted' && danger) return PARTED_CAUTION;
  if (danger && !faded) return DANGER_CAUTION;
  return divider === null ? DISPUTE_CAUTION : DIVIDED_CAUTION;
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
