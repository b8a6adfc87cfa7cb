/**
 * Rows of one list that send fish into one tank: each was asked about those that live there now, and not about
 * those that an earlier row sends. Where they would not live together, the later row says so.
 */
import type { Room } from '../../state/draft.ts';
import { wouldEat } from '../danger.ts';
import type { DueItem, Sent } from './item.ts';

/** The same rows in the same order, with what speaks against doing two of them; whom they send is told no further. */
export function mindingEachOther<Row extends DueItem>(room: Room, rows: readonly Row[]): readonly Omit<Row, 'sends'>[] {
  const before: Sent[] = [];
  return rows.map(({ sends, ...row }) => {
    if (sends === undefined) return row;
    const clash = before.filter(({ to }) => to === sends.to).flatMap((one) => against(room, one, sends))[0];
    before.push(sends);
    return clash === undefined ? row : { ...row, why: `${row.why}; ${clash}` };
  });
}

function against(room: Room, first: Sent, second: Sent): string[] {
  const then = `not to ${first.to} if ${first.name} goes there:`;
  if (eats(room, first, second)) return [`${then} it would eat these`];
  return eats(room, second, first) ? [`${then} these would eat it`] : [];
}

/** Grown fish eat any young (common practice, no source); young eat those that are so much shorter. */
function eats(room: Room, one: Sent, { brood }: Sent): boolean {
  if (brood === null || one.brood === brood) return false;
  return one.brood === null || wouldEat(room, one.brood, one.from ?? one.to, brood);
}
