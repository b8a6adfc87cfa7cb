/**
 * A footing: the room of some days ago with all that was read until then, kept in the cache, so that of a
 * long journal only the latest lines are read. It is believed only where the text before them is the same to
 * the byte, and so is every file that is read in. Without it all answers are the same, only later.
 */
import type { Day } from '../../core/day.ts';
import type { Problem } from '../../core/problem.ts';
import { sumOf } from '../../files/cache/chest.ts';
import type { Chest } from '../../files/cache/chest.ts';
import { imageOf } from '../../files/cache/image/make.ts';
import { openImage } from '../../files/cache/image/open.ts';
import type { Image } from '../../files/cache/image/open.ts';
import { sameBefore } from '../../files/content.ts';
import type { Content } from '../../files/content.ts';
import type { Also, Files } from '../../files/port.ts';
import { quietly } from '../../files/trouble.ts';
import { isLong, keepReading, readOnward } from '../../language/onward.ts';
import type { BehindRoom, ReadBefore } from '../../language/onward.ts';
import type { Fetch, Reading } from '../../language/reading.ts';
import { buyersOf } from '../../questions/buyers.ts';
import { writtenBroodNames } from '../../state/broodnames.ts';
import type { Draft, Room } from '../../state/draft.ts';
import { beginRoom, foldOn } from '../../state/fold.ts';
import { LEAVES, VALUES } from './leaves.ts';
import { rowsKept } from './rows.ts';
import type { KeptRows } from './rows.ts';
import { afterwards, bringBackRoom, takeLater } from './worked.ts';
import type { Laid } from './worked.ts';

/** A journal with the files that belong to it. */
export interface Source {
  readonly files: Files;
  /** Absolute path of the main file, and its name in answers. */
  readonly path: string;
  readonly name: string;
}

/** A file that was read in, or was not. */
interface FileRead {
  readonly from: string;
  readonly asked: string;
  /** Hash of its name and text, or of the words that it could not be read for. */
  readonly hash: string;
}

interface Meta {
  /** Hash of the main file's bytes before `before.start`. */
  readonly hash: string;
  /** The last day of all that was read then. */
  readonly through: Day;
  readonly also: readonly FileRead[];
  readonly before: ReadBefore;
  readonly behind: BehindRoom;
}

export interface Footing {
  /** Where a main file that holds this goes on behind the footing; null where it does not stand on it. */
  start(content: Content): ReadBefore['start'] | null;
  /** Reads the main file as if it held this; null where only reading the whole of it will do. */
  read(content: Content): Reading | null;
  /** Rows of the daily list as they were left, for a text that stands on this footing. */
  readonly rows: KeptRows;
  /** Lines of files read in that are not UTF-8. */
  readonly problems: readonly Problem[];
  /** The room of a day with the events of a reading that it gave; may be asked again, for no day behind that. */
  room(events: Reading['events'], on: Day): Room;
  /** Once the answer is told, a later footing is laid where much stands behind this one. `room` is the answer's. */
  layLater(found: Found, room: Room): void;
}

/** What a main file holds with its reading, which says nothing of the files themselves, and the last day that counts as past. */
interface Found {
  readonly content: Content;
  readonly reading: Reading;
  readonly by: Day;
}

/** What is kept for this journal, where every file that it reads in is as it was. */
export function findFooting(chest: Chest, source: Source): Footing | null {
  const kept = chest.look('room', source.path);
  if (kept === null) return null;
  // The chest has proved the bytes: only their outline is looked at.
  const image = openImage(kept, LEAVES);
  const meta = image('meta');
  if (!isMeta(meta)) return null;
  const fetch = source.files.also(source.path);
  const problems: Problem[] = [];
  for (const { from, asked, hash } of meta.also) {
    const got = fetch(from, asked);
    if (hashOf(got) !== hash) return null;
    if (got.ok) problems.push(...got.problems);
  }
  const { before, behind } = meta;
  const stands = standingOn(meta);
  return {
    problems,
    rows: rowsKept(chest, source.path, sum(JSON.stringify([meta.hash, meta.also]))),
    start: (content) => (stands(content) ? before.start : null),
    read: (content) =>
      stands(content) ? readOnward(source.name, before, behind, content.behind(before.start.at)) : null,
    room(events, on) {
      const draft = draftOf(image, events);
      foldOn(draft, events, on);
      bringBackRoom(chest, laidBy(source, meta), draft);
      return draft;
    },
    layLater(found, room) {
      if (isLong(found.reading)) afterwards(() => layAgain(chest, source, { meta, image }, found, room));
    },
  };
}

/** Tells whether a content begins as the one did that a footing was laid on; it is hashed once. */
function standingOn({ hash, before: { start } }: Meta): (content: Content) => boolean {
  let proved: Content | null = null;
  return (content) => {
    if (proved !== null && sameBefore(content, proved, start.at)) return true;
    if (content.size < start.at || sum(content.before(start.at)) !== hash) return false;
    proved = content;
    return true;
  };
}

function draftOf(image: Image, events: Reading['events']): Draft {
  const draft = image('room');
  if (!isDraft(draft)) throw new TypeError('no room was kept');
  for (const name of writtenBroodNames(events)) draft.stock.takenNames.add(name);
  return draft;
}

/** Lays a footing on from another one: in a room of its own, since to keep a room opens all of it. */
function layAgain(
  chest: Chest,
  source: Source,
  old: { readonly meta: Meta; readonly image: Image },
  { content, reading, by }: Found,
  room: Room,
): void {
  const before = keepReading(reading, source.name, content.before(content.size), by, old.meta.before);
  if (before === null) return;
  const over = reading.events.slice(0, before.events - old.meta.before.events);
  const draft = draftOf(old.image, reading.events);
  foldOn(draft, over, before.day);
  const meta: Meta = {
    hash: sum(content.before(before.start.at)),
    through: reading.events.at(-1)?.day ?? old.meta.through,
    also: old.meta.also,
    before,
    behind: behindOf(draft, over, old.meta.behind.buyers),
  };
  chest.put('room', source.path, imageOf({ meta, room: draft }, VALUES));
  takeLater(laidBy(source, meta), room, linesOf(draft));
}

/** What was read in, in turn, while the whole journal was read. */
export interface Fetched {
  readonly from: string;
  readonly asked: string;
  readonly got: Also;
}

/** Folds a journal that was read whole, and keeps a footing on the way where that is worth it. */
export function foldKeeping(
  chest: Chest,
  source: Source,
  found: Found & { readonly fetched: readonly Fetched[] },
  on: Day,
): Room {
  const { content, reading, fetched, by } = found;
  const { events } = reading;
  const draft = beginRoom(writtenBroodNames(events), on);
  const before = keepReading(reading, source.name, content.before(content.size), by < on ? by : on);
  if (before === null) return foldOn(draft, events, on);
  const over = events.slice(0, before.events);
  foldOn(draft, over, before.day);
  const behind = behindOf(draft, over);
  const meta: Meta = {
    hash: sum(content.before(before.start.at)),
    through: events.at(-1)?.day ?? on,
    also: fetched.map(({ from, asked, got }) => ({ from, asked, hash: hashOf(got) })),
    before,
    behind,
  };
  // What is too much to be kept is not kept.
  quietly(() => {
    chest.put('room', source.path, imageOf({ meta, room: draft }, VALUES));
  });
  const lines = linesOf(draft);
  foldOn(draft, events.slice(before.events), on);
  takeLater(laidBy(source, meta), draft, lines);
  return draft;
}

function laidBy({ path }: Source, { hash, through, before }: Meta): Laid {
  return { path, hash, day: before.day, through };
}

/** How many lines tell of each brood. */
function linesOf({ stock }: Draft): ReadonlyMap<string, number> {
  return new Map([...stock.broods.values()].map(({ name, lines }) => [name, lines.length]));
}

function behindOf(draft: Draft, events: Reading['events'], buyers: readonly string[] = []): Meta['behind'] {
  const { broods, takenNames } = draft.stock;
  return {
    begun: new Set([...broods.keys()].filter((name) => !takenNames.has(name))),
    zone: draft.settings.zone,
    buyers: buyersOf(events, buyers),
  };
}

function sum(part: string | Uint8Array): string {
  return sumOf([part]).toString('hex');
}

function hashOf(got: ReturnType<Fetch>): string {
  return sum(JSON.stringify(got.ok ? [got.name, got.text] : [got.says]));
}

function isMeta(value: unknown): value is Meta {
  return hasAll(value, ['hash', 'through', 'also', 'before', 'behind']);
}

function isDraft(value: unknown): value is Draft {
  return hasAll(value, ['on', 'settings', 'plumbing', 'chores', 'stock', 'sale', 'resolved']);
}

function hasAll(value: unknown, keys: readonly string[]): boolean {
  return typeof value === 'object' && value !== null && keys.every((key) => key in value);
}
