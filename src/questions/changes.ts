/** What a line changes: the room before it and after it, compared as the keeper would see them. */
import type { Day } from '../core/day.ts';
import type { LineRef } from '../core/span.ts';
import { lineOf } from '../core/span.ts';
import type { Room } from '../state/draft.ts';
import { openRigs } from '../state/rigs.ts';
import type { DueRow } from './due.ts';
import { due } from './due.ts';
import { holds } from './holds.ts';

/** A temporary measure that is no longer rigged. */
interface Undone {
  readonly where: string;
  readonly measure: string;
  readonly since: Day;
}

interface DisputeOver {
  readonly group: string;
  readonly tank: string | null;
  readonly from: Day;
  readonly ended: Day;
  readonly how: string;
  readonly lines: readonly LineRef[];
}

/** Tanks that a hold did not reach before. */
export interface HoldReaches {
  /** The hold's id in `holds`. */
  readonly id: string;
  readonly place: string;
  readonly text: string;
  /** `how` is empty for a tank that its line names. */
  readonly tanks: readonly { readonly tank: string; readonly how: string }[];
}

export interface Changes {
  /** Rows that were not in the list before. */
  readonly begun: readonly DueRow[];
  /** Rows whose day is another now: a chore done, a window narrowed. */
  readonly moved: readonly DueRow[];
  /** Rows that are in the list no more. */
  readonly over: readonly DueRow[];
  readonly undone: readonly Undone[];
  readonly disputes: readonly DisputeOver[];
  readonly reached: readonly HoldReaches[];
  /** Names of broods that were not there. */
  readonly broods: readonly string[];
}

/** Days ahead in which a change of the list is told. */
const AHEAD = 7;

/** The list in which changes are told. */
export function rowsAhead(room: Room): readonly DueRow[] {
  return due(room, { days: AHEAD, minutes: null }).rows;
}

/** Compares two rooms on the same day. `rows` are those of the lists ahead, where they are known. */
export function changes(
  before: Room,
  after: Room,
  rows: { readonly before: readonly DueRow[]; readonly after: readonly DueRow[] } = {
    before: rowsAhead(before),
    after: rowsAhead(after),
  },
): Changes {
  const [old, now] = [byId(rows.before), byId(rows.after)];
  const undone = measuresUndone(before, after);
  const disputes = disputesOver(before, after);
  return {
    begun: [...now.values()].filter(({ id }) => !old.has(id)),
    moved: [...now.values()].filter((row) => isMoved(old.get(row.id), row)),
    over: [...old.values()].filter(({ id, kind }) => !now.has(id) && !isToldOtherwise(kind, undone, disputes)),
    undone,
    disputes,
    reached: holdsReaching(before, after),
    broods: [...after.stock.broods.keys()].filter((name) => !before.stock.broods.has(name)),
  };
}

function byId(rows: readonly DueRow[]): ReadonlyMap<string, DueRow> {
  return new Map(rows.map((row) => [row.id, row]));
}

function isMoved(old: DueRow | undefined, { due: now, what }: DueRow): boolean {
  // The one row for all tanks without a word is another one every day.
  if (old === undefined || old.kind === 'silence') return false;
  const { due: was } = old;
  return was.low !== now.low || was.likely !== now.likely || was.high !== now.high || old.what !== what;
}

function isToldOtherwise(kind: DueRow['kind'], undone: readonly Undone[], disputes: readonly DisputeOver[]): boolean {
  return (kind === 'measure' && undone.length > 0) || (kind === 'dispute' && disputes.length > 0);
}

function holdsReaching(before: Room, after: Room): readonly HoldReaches[] {
  if (after.health.holds.length === 0) return [];
  const old = new Map(holds(before).holds.map(({ id, tanks }) => [id, new Set(tanks.map(({ tank }) => tank))]));
  return holds(after).holds.flatMap(({ id, place, text, tanks }) => {
    const fresh = tanks.filter(({ tank }) => !(old.get(id)?.has(tank) ?? false));
    const told = fresh.map(({ tank, route }) => ({ tank, how: route.at(-1)?.says ?? '' }));
    return told.every(({ tank }) => tank === place) ? [] : [{ id, place, text, tanks: told }];
  });
}

function measuresUndone(before: Room, after: Room): readonly Undone[] {
  const open = new Set(openRigs(after).map(rigKey));
  return openRigs(before)
    .filter((rig) => !open.has(rigKey(rig)))
    .map(({ where, kind, day }) => ({ where, measure: kind, since: day }));
}

function rigKey({ where, kind, day }: { readonly where: string; readonly kind: string; readonly day: Day }): string {
  return `${where} ${kind} ${day}`;
}

function disputesOver(before: Room, after: Room): readonly DisputeOver[] {
  return [...after.stock.groups.values()].flatMap(({ name, home, disputes }) => {
    // Only the last one of a group may be open.
    const open = before.stock.groups.get(name)?.disputes.at(-1);
    if (open === undefined || open.ended !== null) return [];
    const now = disputes.findLast(({ from }) => from === open.from);
    if (now === undefined || now.ended === null) return [];
    const lines = now.signs.map(({ place }) => lineOf(place));
    return [{ group: name, tank: home, from: now.from, ended: now.ended.day, how: now.ended.how, lines }];
  });
}
