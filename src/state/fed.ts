/** Which feeds are feeds of a place: its own, and those of its loop, of all the room. */
import { toDay } from '../core/day.ts';
import type { DeepReadonly } from '../core/readonly.ts';
import type { Room } from './draft.ts';
import { fishIn } from './places.ts';
import { loopOf, sharers } from './tanks.ts';
import { lastSince } from './when.ts';

export type Feed = DeepReadonly<Room['cultures']['feeds'][number]>;

/** Feeds of so many days ago are not looked for (ours): a chore of feeding is late long before. */
const OLD = 365;

/** True for a feed of that tank: by its own line, by one of its loop of that day, or of all the room. */
export function isFeedOf(room: Room, { where, day }: Feed, tank: string): boolean {
  return where === tank || where === 'room' || where === loopOf(room, tank, day);
}

/** The last feed of a place. A loop or the room is fed by a line of its own, or once the last of its tanks with fish was. */
export function lastFeed(room: Room, where: string): Feed | undefined {
  const old = room.on - OLD;
  const own = lastSince(room.cultures.feeds, old, (one) => one.where === where || isFeedOf(room, one, where));
  if (room.plumbing.tanks.has(where)) return own;
  const from = own?.day ?? toDay(old);
  const each = sharers(room, where)
    .filter((tank) => fishIn(room, tank).length > 0)
    .map((tank) => lastSince(room.cultures.feeds, from, (one) => isFeedOf(room, one, tank)));
  const all = each.filter((one) => one !== undefined);
  return all.length < each.length ? own : (all.toSorted((a, b) => a.day - b.day)[0] ?? own);
}
