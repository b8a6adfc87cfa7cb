/**
 * Rows of one list that send fish into one tank: each was asked about those that live there now, and not about
 * those that an earlier row sends. Where they would not live together, or be known from each other, the later row says so.
 */
import { bodiesIn } from '../../state/bodies.ts';
import type { Room } from '../../state/draft.ts';
import { wouldEat } from '../danger.ts';
import type { DueItem, Sent } from './item.ts';

/**
 * The rows in the same order, with what speaks against doing two of them; whom they send is told no further. Two that
 * take the same young out of the same tank ask for one thing: the more pressing stands first and speaks for both.
 */
export function mindingEachOther<Row extends DueItem>(room: Room, rows: readonly Row[]): readonly Omit<Row, 'sends'>[] {
  const before: Sent[] = [];
  return rows.flatMap(({ sends, ...row }) => {
    if (sends === undefined) return [row];
    if (before.some((one) => isSame(one, sends))) return [];
    const clash = before.filter(({ to }) => to === sends.to).flatMap((one) => against(room, one, sends))[0];
    before.push(sends);
    return [clash === undefined ? row : { ...row, why: `${row.why}; ${clash}` }];
  });
}

function isSame(one: Sent, other: Sent): boolean {
  return one.brood !== null && one.brood === other.brood && one.from === other.from;
}

function against(room: Room, first: Sent, second: Sent): string[] {
  const then = `not to ${first.to} if ${first.name} goes there:`;
  if (eats(room, first, second)) return [`${then} it would eat these`];
  if (eats(room, second, first)) return [`${then} these would eat it`];
  if (isAlike(first, second)) return [`${then} nobody could tell the two apart again`];
  return isEmpty(room, first.to) ? [`not if ${first.name} goes there first`] : [];
}

function isEmpty(room: Room, tank: string): boolean {
  return bodiesIn(room, tank).length === 0;
}

/** Young of one species and two families: mixed, each is one of the two for good (common practice, no source). */
function isAlike({ brood: one }: Sent, { brood: other }: Sent): boolean {
  return one !== null && other !== null && one !== other && one.species !== null && one.species === other.species;
}

/** Grown fish eat any young (common practice, no source); young eat those that are so much shorter. */
function eats(room: Room, one: Sent, { brood }: Sent): boolean {
  if (brood === null || one.brood === brood) return false;
  return one.brood === null || wouldEat(room, one.brood, one.from ?? one.to, brood);
}
