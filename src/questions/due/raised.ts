/** A test of pH after a dose that can have raised it, where the total ammonia that was read would then be over the mark. */
import { onDay } from '../../core/interval.ts';
import { linesOf } from '../../core/span.ts';
import { dayWords } from '../../core/words.ts';
import { AMMONIA_MARKS } from '../../science/ammonia.ts';
import type { Room } from '../../state/draft.ts';
import { rowId } from '../id.ts';
import { raisedAfter } from '../outdated.ts';
import { afterRaising } from '../raised.ts';
import type { Ammonia } from '../readings.ts';
import type { WaterBody } from '../waters.ts';
import { CAUTION } from './cautions.ts';
import type { DueItem } from './item.ts';
import { TO_READ } from './toread.ts';

/** One row, for the last such dose; none where what it can have come to is under the mark, or nobody tested ammonia lately. */
export function raisedRow(room: Room, body: WaterBody, { ph }: Ammonia): DueItem[] {
  const dose = ph === null ? undefined : raisedAfter(room, body, ph).at(-1);
  if (ph === null || dose === undefined) return [];
  const after = afterRaising(room, body.name, 'dose');
  if (after.toxic === null || after.toxic.high < AMMONIA_MARKS.watch) return [];
  const lines = linesOf([dose.place, ph.place, ...after.places]);
  const told = `${dose.product} on ${dayWords(dose.day, room.on)}, pH last read on ${dayWords(ph.day, room.on)}`;
  return [
    {
      id: rowId(body.name, 'pH after the dose'),
      place: body.name,
      what: 'test pH again, the dose can have raised it',
      kind: 'reading',
      due: onDay(dose.day),
      weight: 2,
      why: told,
      after: after.says,
      close: `${body.name}: test ${TO_READ.toxic}`,
      caution: CAUTION.ammonia,
      putOffKey: 'pH',
      pressing: false,
      minutes: null,
      because: {
        rule: 'toxic ammonia by a pH from before a dose that raises pH tells what was: one read after it does',
        source: 'Emerson et al. 1975; marks from UF/IFAS FA-16, "Ammonia in Aquatic Systems"',
        steps: [told, ...after.steps],
        lines,
      },
      lines,
    },
  ];
}
