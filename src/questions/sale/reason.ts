/** What stands behind a lot of `sale`: the rule, the numbers and the lines. */
import type { Because } from '../../core/because.ts';
import type { Day } from '../../core/day.ts';
import type { LineRef } from '../../core/span.ts';
import { countWords, dayWords } from '../../core/words.ts';
import type { Room } from '../../state/draft.ts';
import type { Blocker } from './blockers.ts';
import type { DraftLot, Taken } from './taken.ts';

/** What a lot came to: what stands in its way, what was promised of it, the lines that it rests on. */
interface Came {
  readonly at: Day;
  readonly taken: Taken;
  readonly free: number;
  readonly blockers: readonly Blocker[];
  readonly lines: readonly LineRef[];
}

/** Why a lot is ready or not, and how many of it can be promised. */
export function reasonOf(room: Room, draft: DraftLot, { at, taken, free, blockers, lines }: Came): Because {
  const { body, tank, count, grown, ripe } = draft;
  return {
    rule: 'ready is what is surely alive, less what is kept back and reserved, once it has its size or age, its water is neither held, sick, treated nor in quarantine, and its line is known; only the low number is promised',
    source: ripe?.because.source ?? 'the journal',
    steps: [
      `${countWords(count)} in ${tank}, ${countWords(body.total)} in all: ${String(Math.floor(count.low))} surely`,
      ...(ripe?.because.steps ?? []),
      `${String(grown)} of them surely have ${ripe?.rule ?? 'a size nobody knows'} on ${dayWords(at, room.on)}`,
      `${String(taken.kept)} kept back and ${String(taken.reserved)} reserved from here: ${String(free)} can be promised`,
      ...(taken.short === null
        ? []
        : [
            `${String(taken.short.kept)} kept back and ${String(taken.short.reserved)} reserved in all, of ${String(taken.short.there)}`,
          ]),
      ...(blockers.length === 0
        ? [`nothing stands in the way on ${dayWords(at, room.on)}`]
        : blockers.map(({ why, until }) => `${why}${until === null ? '' : ` (until ${dayWords(until, room.on)})`}`)),
    ],
    lines,
  };
}
