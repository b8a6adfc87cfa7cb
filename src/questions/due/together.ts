/**
 * Rows of one list that send young into one tank: each was asked about the fish that live there now, and not
 * about those that an earlier row sends. Where these would not live together, the later row says so.
 */
import type { SeenBrood } from '../../state/bodies.ts';
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
  if (first.brood === second.brood) return [];
  const eats = (one: Sent, other: SeenBrood): boolean => wouldEat(room, one.brood, one.from ?? one.to, other);
  const then = `not to ${first.to} if ${first.brood.name} goes there:`;
  if (eats(first, second.brood)) return [`${then} it would eat these`];
  return eats(second, first.brood) ? [`${then} these would eat it`] : [];
}
