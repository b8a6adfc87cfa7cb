/** Advice on a dispute in words: what to do, how it stands, and by which rules. */
import { dayWords, plural, sinceWords } from '../../core/words.ts';
import type { Sign } from '../../journal/event.ts';
import type { Member } from '../../journal/subject.ts';
import type { SeenGroup } from '../../state/bodies.ts';
import { livingMembers } from '../../state/members.ts';
import type { Step } from './advice.ts';
import { sidesOf } from './dispute.ts';
import type { Standing } from './standing.ts';
import { ACT_ON_MILD, hasFaded, SILENT_DAYS } from './standing.ts';

/** A sign behind a divider that was in already: it lets something through. */
const TIGHT = 'set the divider anew, so that nothing gets past it';

/** In the imperative. */
export function whatToDo(step: Step, at: Standing): string {
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

/** Day, worst sign, who on whom, what is rigged. */
export function howItStands(at: Standing): string {
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

export function stepsOf(step: Step, at: Standing): string[] {
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
