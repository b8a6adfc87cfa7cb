/**
 * Today's list: what every theme found, less what was put off or waits for the keeper's return, in the
 * order in which to do it. What is left away is counted, never dropped in silence.
 */
import type { Day } from '../core/day.ts';
import type { Room } from '../state/draft.ts';
import { walkOrder } from '../state/tanks.ts';
import type { DueItem, DueSource } from './due/item.ts';
import { fitMinutes } from './due/minutes.ts';
import type { DueState } from './due/order.ts';
import { dueState, sortDue } from './due/order.ts';
import { awayUntil, putOffUntil } from './due/postponed.ts';
import { mindingEachOther } from './due/together.ts';
import { DUE_SOURCES } from './due/sources.ts';
import { lastReason } from './last.ts';
import type { WhyRow } from './whyrow.ts';

export interface DueRow extends DueItem {
  readonly state: DueState;
}

/** A row that is not shown, and the day on which it comes back. */
export interface Postponed {
  readonly id: string;
  readonly place: string;
  readonly what: string;
  readonly until: Day;
}

export interface DueAnswer {
  readonly rows: readonly DueRow[];
  /** Put off by a line in the journal. */
  readonly putOff: readonly Postponed[];
  /** Waiting until the keeper, who is away, is back. */
  readonly waiting: readonly Postponed[];
  /** Only where the keeper said how many minutes there are: those that the rows take, and what did not fit. */
  readonly fitted: { readonly minutes: number; readonly of: number; readonly left: readonly DueRow[] } | null;
}

export interface DueOptions {
  /** How many days ahead to look. */
  readonly days: number;
  /** Minutes that there are; null for all the work. */
  readonly minutes: number | null;
}

/** What is due in a room on its day, and within so many days ahead. */
export function due(room: Room, options: DueOptions, sources: readonly DueSource[] = DUE_SOURCES): DueAnswer {
  const found = sources
    .flatMap((source) => source(room, options.days))
    .map((item): DueRow => ({ ...item, state: dueState(item, room.on) }))
    .filter((row) => row.due.low === null || row.due.low <= room.on + options.days);
  const back = awayUntil(room);
  const kept: DueRow[] = [];
  const putOff: Postponed[] = [];
  const waiting: Postponed[] = [];
  for (const row of found) {
    const until = putOffUntil(room, row);
    if (until !== null) putOff.push(postponed(row, until));
    else if (back !== null && mayWait(row)) waiting.push(postponed(row, back));
    else kept.push(row);
  }
  const walk = walkOrder(room);
  const sorted = sortDue(kept, { walk, last: new Set(walk.filter((tank) => lastReason(room, tank) !== null)) });
  const rows = mindingEachOther(room, sorted);
  if (options.minutes === null) return { rows, putOff, waiting, fitted: null };
  const {
    rows: chosen,
    left,
    minutes,
  } = fitMinutes(
    rows.filter(({ state }) => state !== 'ahead'),
    options.minutes,
  );
  return { rows: chosen, putOff, waiting, fitted: { minutes, of: options.minutes, left } };
}

/** Rows for `why`, put off or not, and far enough ahead to hold what other answers speak of. */
export function dueWhy(room: Room): readonly WhyRow[] {
  return DUE_SOURCES.flatMap((source) => source(room, 28)).map(({ id, place, what, because, lines }) => ({
    id,
    title: `${place}: ${what}`,
    because,
    lines,
  }));
}

/** Young starve and a prefilter spills, whoever is away. A dose waits: medicine is not for whoever looks in. */
function mayWait({ weight, pressing, daily }: DueRow): boolean {
  return weight < 3 && !pressing && daily !== true;
}

function postponed({ id, place, what }: DueRow, until: Day): Postponed {
  return { id, place, what, until };
}
