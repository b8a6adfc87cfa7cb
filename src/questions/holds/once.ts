/** Remembers what was worked out of a finished room, since several answers ask for the same. */
import type { Room } from '../../state/draft.ts';

/** The same function, run once a room. Rooms never change after the fold has given them out. */
export function oncePerRoom<T>(workOut: (room: Room) => T): (room: Room) => T {
  const known = new WeakMap<Room, { readonly value: T }>();
  return (room) => {
    const kept = known.get(room);
    if (kept) return kept.value;
    const value = workOut(room);
    known.set(room, { value });
    return value;
  };
}

/** The same for a question about one thing in it, in each of several places by name. */
export function onceIn<K extends object, T>(
  workOut: (room: Room, of: K, place: string) => T,
): (room: Room, of: K, place: string) => T {
  const ofEach = onceFor<K, Map<string, { readonly value: T }>>(() => new Map());
  return (room, of, place) => {
    const places = ofEach(room, of);
    const kept = places.get(place) ?? { value: workOut(room, of, place) };
    places.set(place, kept);
    return kept.value;
  };
}

/** The same for a question about one thing in it. */
export function onceFor<K extends object, T>(workOut: (room: Room, of: K) => T): (room: Room, of: K) => T {
  const ofRoom = oncePerRoom(() => new WeakMap<K, { readonly value: T }>());
  return (room, of) => {
    const known = ofRoom(room);
    const kept = known.get(of);
    if (kept) return kept.value;
    const value = workOut(room, of);
    known.set(of, { value });
    return value;
  };
}
