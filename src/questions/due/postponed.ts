/** What a keeper put off, and what waits while the keeper is away. */
import type { Day } from '../../core/day.ts';
import { addDays } from '../../core/day.ts';
import { putOffName, sameWords } from '../../state/chores.ts';
import type { Room } from '../../state/draft.ts';
import type { DueItem } from './item.ts';

/** Days for which a row offers to be put off where nothing says how long its trouble lasts (ours). */
export const LOOK_AGAIN = 7;

/** The day until which this row was put off, or null. A pressing row can be put off for a day at most. */
export function putOffUntil(room: Room, item: Named & Pick<DueItem, 'putOffFrom' | 'pressing'>): Day | null {
  const key = item.putOffKey;
  if (key === null || room.chores.putOffs.length === 0) return null;
  const { putOffFrom: from } = item;
  return room.chores.putOffs
    .filter((putOff) => (from === undefined || putOff.day >= from) && isAbout(room, putOff, item))
    .map(({ day, until }) => (item.pressing && until > addDays(day, 1) ? addDays(day, 1) : until))
    .reduce<Day | null>((last, until) => (until > room.on && (last === null || until > last) ? until : last), null);
}

type PutOff = Room['chores']['putOffs'][number];

/** What a row is called and where it is. */
type Named = Pick<DueItem, 'place' | 'putOffKey' | 'putOffAlso'>;

/** True where such a line names that row, by its words and by its place. */
export function isAbout(room: Room, { where, what }: PutOff, item: Named): boolean {
  return isCalled(item, putOffName(what)) && isAt(room, where, item.place);
}

/** True where a row is called so, whatever its place. */
export function isCalled({ putOffKey: key, putOffAlso: also }: Named, said: string): boolean {
  return key !== null && [key, ...(also ?? [])].some((name) => sameWords(said, name));
}

/** Whether a line about `where` speaks of that place: the place itself, or fish that live there. */
export function isAt(room: Room, where: string, place: string): boolean {
  if (where === place) return true;
  const body = room.stock.groups.get(where) ?? room.stock.broods.get(where);
  return body !== undefined && (body.parts.has(place) || ('home' in body && body.home === place));
}

/** The day on which an absent keeper is back, or null where nobody is away. The latest line about it counts. */
export function awayUntil(room: Room): Day | null {
  const last = room.chores.away.at(-1);
  return last !== undefined && last.day <= room.on && last.until > room.on ? last.until : null;
}
