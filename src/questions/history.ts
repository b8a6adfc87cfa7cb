/**
 * What happened: the lines of the journal that match, oldest first. Words are looked for in the line and
 * in what it was found to be about, so that `history Rowan` finds `A1: chasing`. The lines of a dispute
 * stand together as one row.
 */
import type { Because } from '../core/because.ts';
import type { Day } from '../core/day.ts';
import { isoDay } from '../core/day.ts';
import { lineOf } from '../core/span.ts';
import type { LineRef, Place } from '../core/span.ts';
import type { Event } from '../journal/event.ts';
import type { SeenBrood, SeenGroup } from '../state/bodies.ts';
import type { Room } from '../state/draft.ts';
import { tanksOn } from '../state/tanks.ts';
import { themeOf, wordsOf } from './history/themes.ts';
import { rowId } from './id.ts';
import { groupsCalled } from './pairs.ts';
import { disputeRow } from './pairs/dispute.ts';
import type { DisputeRow } from './pairs/dispute.ts';
import type { WhyRow } from './whyrow.ts';

/** A line of the journal, as reading it gives it. */
export interface Written {
  readonly place: Place;
  readonly day: Day | null;
  readonly minute: number | null;
  readonly text: string;
  readonly events: readonly Event[];
}

export interface HistoryOptions {
  readonly words: readonly string[];
  readonly pair: string | null;
  readonly tank: string | null;
  readonly brood: string | null;
  /** A theme (`dispute`, `water`), or the words of one kind of fact (`made up`). */
  readonly kind: string | null;
  readonly since: Day | null;
  readonly until: Day | null;
}

export interface HistoryLine {
  readonly id: string;
  readonly day: Day;
  readonly minute: number | null;
  /** The line as written. */
  readonly text: string;
  /** Nothing of it was read. */
  readonly leftOut: boolean;
  readonly line: LineRef;
}

export type HistoryRow =
  | (HistoryLine & { readonly row: 'line'; readonly because: Because })
  | {
      readonly row: 'dispute';
      readonly id: string;
      readonly day: Day;
      readonly pair: string;
      readonly dispute: DisputeRow;
      readonly lines: readonly HistoryLine[];
      readonly because: Because;
    };

export interface HistoryAnswer {
  readonly asked: HistoryOptions;
  readonly rows: readonly HistoryRow[];
  /** Lines in all rows. */
  readonly count: number;
}

/** Lines up to the room's day that match everything asked for. */
export function history(room: Room, entries: readonly Written[], asked: HistoryOptions): HistoryAnswer {
  const about = aboutOf(room);
  const wanted = wantedBy(room, asked);
  const dated = entries
    .flatMap((entry) => (entry.day === null || entry.day > room.on ? [] : [{ ...entry, day: entry.day }]))
    .toSorted((a, b) => a.day - b.day || (a.events[0]?.seq ?? 0) - (b.events[0]?.seq ?? 0));
  const found = dated.filter((entry) => isMeant(entry, asked, wanted, about));
  const disputes = folds(asked) ? disputesOf(room) : new Map<string, { pair: string; dispute: DisputeRow }>();
  const byKey = new Map(dated.map((entry) => [keyOf(entry.place), entry]));
  const rows = new Map<string, HistoryRow>();
  for (const entry of found) {
    const owner = disputes.get(keyOf(entry.place));
    const row = owner ? disputeOf(owner.pair, owner.dispute, byKey) : lineRow(entry, room);
    if (!rows.has(row.id)) rows.set(row.id, row);
  }
  const sorted = [...rows.values()].toSorted((a, b) => a.day - b.day);
  return {
    asked,
    rows: sorted,
    count: sorted.reduce((sum, row) => sum + (row.row === 'line' ? 1 : row.lines.length), 0),
  };
}

/** The lines of a dispute stand together unless another kind of fact is looked for. */
function folds({ kind }: HistoryOptions): boolean {
  return kind === null || kind === 'dispute' || kind === 'bond';
}

interface Dated extends Written {
  readonly day: Day;
}

type Wanted = Pick<HistoryOptions, 'since' | 'until'> & {
  readonly lines: ReadonlySet<string> | null;
  readonly tank: string | null;
  readonly room: Room;
};

/** The lines that the names asked for belong to; a name that is none is the command's to refuse. */
function wantedBy(room: Room, asked: HistoryOptions): Wanted {
  const sets: ReadonlySet<string>[] = [];
  if (asked.pair !== null) {
    sets.push(
      new Set(
        groupsCalled(room, asked.pair)
          .flatMap((group) => groupLines(room, group))
          .map(keyOf),
      ),
    );
  }
  if (asked.brood !== null) {
    sets.push(
      new Set(
        broodsCalled(room, asked.brood)
          .flatMap((brood) => [...brood.lines])
          .map(keyOf),
      ),
    );
  }
  const [first, ...others] = sets;
  const lines = first ? new Set([...first].filter((key) => others.every((set) => set.has(key)))) : null;
  return { since: asked.since, until: asked.until, lines, tank: tankCalled(room, asked.tank), room };
}

/** All lines of a group: its own, and the first of each of its broods. */
function groupLines(room: Room, group: SeenGroup): Place[] {
  const broods = group.broods.flatMap((name) => room.stock.broods.get(name)?.lines[0] ?? []);
  return [group.declared, ...group.lines, ...broods];
}

export function broodsCalled(room: Room, name: string): SeenBrood[] {
  const same = (other: string): boolean => other.toLowerCase() === name.toLowerCase();
  return [...room.stock.broods.values()].filter((brood) => same(brood.name) || brood.oneOf.some(same));
}

export function tankCalled(room: Room, name: string | null): string | null {
  if (name === null) return null;
  return [...room.plumbing.tanks.keys()].find((tank) => tank.toLowerCase() === name.toLowerCase()) ?? null;
}

/** What each event is about, by its number: the names of its fish, and of the group behind a brood. */
function aboutOf(room: Room): (event: Event) => readonly string[] {
  return (event) => {
    const found = room.resolved.get(event.seq);
    if (!found) return [];
    if (found.kind === 'group') return [found.group];
    const group = room.stock.broods.get(found.brood)?.group ?? null;
    return group === null ? [found.brood] : [found.brood, group];
  };
}

function isMeant(
  entry: Dated,
  { words, kind, tank }: HistoryOptions,
  wanted: Wanted,
  about: (event: Event) => readonly string[],
): boolean {
  if (wanted.since !== null && entry.day < wanted.since) return false;
  if (wanted.until !== null && entry.day > wanted.until) return false;
  if (wanted.lines !== null && !wanted.lines.has(keyOf(entry.place))) return false;
  if (tank !== null && !entry.events.some((event) => concerns(event, wanted.tank ?? tank, wanted.room))) return false;
  if (kind !== null && !entry.events.some((event) => isOfKind(event, kind))) return false;
  const text = foldText(entry.text);
  const known = (): string => foldText(entry.events.flatMap((event) => [...about(event), ...wordsOf(event)]).join(' '));
  return words.every((word) => text.includes(foldText(word)) || known().includes(foldText(word)));
}

/** True where a fact happened in a tank, or took fish there. */
function concerns(event: Event, tank: string, room: Room): boolean {
  const { subject } = event;
  if (subject.kind === 'tank' && subject.tank === tank) return true;
  if (event.kind === 'moved' && event.to === tank) return true;
  if (event.kind === 'group declared' && event.tank === tank) return true;
  if (event.kind === 'tank declared' && event.tank === tank) return true;
  if (subject.kind === 'tanks') {
    const on = subject.of === 'all' || tanksOn(room, subject.of.loop, event.day, event.minute).includes(tank);
    return on && !subject.except.includes(tank);
  }
  if (subject.kind === 'group') return room.stock.groups.get(subject.group)?.home === tank;
  return false;
}

/** True for a theme, or for the words of one kind of fact. */
export function isOfKind(event: Event, kind: string): boolean {
  const word = kind.toLowerCase();
  return themeOf(event) === word || event.kind === word || wordsOf(event).includes(word);
}

function disputesOf(room: Room): Map<string, { pair: string; dispute: DisputeRow }> {
  const found = new Map<string, { pair: string; dispute: DisputeRow }>();
  for (const group of room.stock.groups.values()) {
    for (const one of group.disputes) {
      const dispute = disputeRow(room, group, one);
      for (const line of dispute.lines) found.set(keyOf(line), { pair: group.name, dispute });
    }
  }
  return found;
}

function disputeOf(pair: string, dispute: DisputeRow, byKey: ReadonlyMap<string, Dated>): HistoryRow {
  const entries = dispute.lines.flatMap((line) => byKey.get(keyOf(line)) ?? []);
  const lines = entries.map(asLine).toSorted((a, b) => a.day - b.day);
  return { row: 'dispute', id: dispute.id, day: dispute.from, pair, dispute, lines, because: dispute.because };
}

function lineRow(entry: Dated, room: Room): HistoryRow {
  const about = aboutOf(room);
  const steps = entry.events.map((event) => [event.kind, ...about(event)].join(', '));
  const line = asLine(entry);
  const read = steps.length > 0 ? steps : ['nothing of it was read'];
  const because = {
    rule: 'the line as it stands, and how it was read',
    source: 'the journal',
    steps: read,
    lines: [line.line],
  };
  return { row: 'line', ...line, because };
}

/** What stands behind one line, by its id, for `why`; null where no line up to the room's day has it. */
export function historyWhy(room: Room, entries: readonly Written[], id: string): WhyRow | null {
  for (const { day, ...entry } of entries) {
    if (day === null || day > room.on || asLine({ ...entry, day }).id !== id) continue;
    return { id, title: entry.text, because: lineRow({ ...entry, day }, room).because, lines: [lineOf(entry.place)] };
  }
  return null;
}

function asLine({ place, day, minute, text, events }: Dated): HistoryLine {
  const id = rowId(isoDay(day), place.file, String(place.line));
  return { id, day, minute, text, leftOut: events.length === 0, line: lineOf(place) };
}

function keyOf(place: LineRef): string {
  return `${String(place.line)} ${place.file}`;
}

/** Text without case and without the difference between typed and set quotes and dashes. */
function foldText(text: string): string {
  return text.normalize('NFC').toLowerCase().replace(/[“”„]/gu, '"').replace(/[‘’]/gu, "'").replace(/[–—]/gu, '-');
}
