/** Breeder awards: word of a spawning before its last day, and claims before the young are too old. */
import { addDays } from '../../core/day.ts';
import { dayWords, listWords } from '../../core/words.ts';
import type { Room } from '../../state/draft.ts';
import { awardRows, type AwardRow } from '../awards.ts';
import { awardWords } from '../awards/rule.ts';
import { rowId } from '../id.ts';
import type { DueItem, DueSource } from './item.ts';

/** Days before the last day from which notice is asked for, and a claim (ours). */
const NOTICE_DAYS = 7;
const CLAIM_DAYS = 14;

const STANDS: readonly AwardRow['state'][] = ['can be claimed', 'perhaps', 'growing'];

/** Days after the oldest age of a rule for which a brood may still be young enough, its dates being windows (ours). */
const DOUBT_DAYS = 60;

/** A rule without notice and without an end presses nobody. */
export const awardDue: DueSource = (room) =>
  [...room.sale.awards.values()]
    .filter(({ notice, age }) => notice !== null || age.high > age.low)
    .flatMap((rule) => {
      const oldest = Math.max(rule.age.high, rule.notice?.high ?? 0) + DOUBT_DAYS;
      return awardRows(room, rule, ({ laid }) => laid.high === null || room.on - laid.high <= oldest);
    })
    .filter(({ state }) => STANDS.includes(state))
    .flatMap((row) => [...noticeItem(room, row), ...claimItem(room, row)]);

function noticeItem(room: Room, row: AwardRow): DueItem[] {
  if (row.notice === null || row.noticed) return [];
  return [
    {
      ...base(row),
      id: rowId(row.id, 'notice'),
      what: `give notice of ${row.brood}: ${row.rule}`,
      due: { low: addDays(row.notice, -NOTICE_DAYS), likely: row.notice, high: row.notice },
      why: `its rule asks for word by ${dayWords(row.notice, room.on)}`,
      close: `room: did "${awardWords('notice', row.brood, row.rule)}"`,
      putOffKey: awardWords('notice', row.brood, row.rule),
    },
  ];
}

function claimItem(room: Room, row: AwardRow): DueItem[] {
  const last = row.closes?.low ?? null;
  if (last === null || row.state === 'growing') return [];
  const missing = row.evidence.filter(({ says }) => says === null).map(({ name }) => name);
  return [
    {
      ...base(row),
      id: rowId(row.id, 'claim'),
      what: `claim ${row.brood}: ${row.rule}`,
      due: { low: addDays(last, -CLAIM_DAYS), likely: last, high: last },
      why: `too old after ${dayWords(last, room.on)}${missing.length === 0 ? '' : `; missing: ${listWords(missing)}`}`,
      close: row.close,
      putOffKey: awardWords('claim', row.brood, row.rule),
    },
  ];
}

function base(
  row: AwardRow,
): Pick<DueItem, 'place' | 'kind' | 'weight' | 'pressing' | 'minutes' | 'because' | 'lines'> {
  return {
    place: 'room',
    kind: 'award',
    weight: 0,
    pressing: false,
    minutes: null,
    because: row.because,
    lines: row.lines,
  };
}
