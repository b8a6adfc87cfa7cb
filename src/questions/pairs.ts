/** How every pair, trio and harem stands: bond, dispute and what to do about it, spawning and whether it is late. */
import type { Because } from '../core/because.ts';
import type { Day } from '../core/day.ts';
import { addDays } from '../core/day.ts';
import type { DayWindow } from '../core/interval.ts';
import { linesOf } from '../core/span.ts';
import type { LineRef } from '../core/span.ts';
import { listWords } from '../core/words.ts';
import type { GroupKind } from '../journal/subject.ts';
import { aliveTotal, bodiesIn, isBrood, tanksOf } from '../state/bodies.ts';
import type { SeenGroup } from '../state/bodies.ts';
import type { Room } from '../state/draft.ts';
import { partedWords } from '../state/members.ts';
import { openDispute } from '../state/quarrel.ts';
import { walkOrder } from '../state/tanks.ts';
import { isHolding } from '../state/withoutword.ts';
import { rowId } from './id.ts';
import type { WhyRow } from './whyrow.ts';
import { adviceOn } from './pairs/advice.ts';
import type { Advice } from './pairs/advice.ts';
import { disputeRow } from './pairs/dispute.ts';
import type { DisputeRow } from './pairs/dispute.ts';
import { numbersOf, roomsDisputes } from './pairs/numbers.ts';
import type { PairNumbers } from './pairs/numbers.ts';
import { leftOf, type Left } from './pairs/left.ts';
import { pastOf } from './pairs/past.ts';
import type { Past } from './pairs/past.ts';
import { latestBroods, isGuarded, isResting, spawningOf } from './pairs/spawning.ts';
import type { Spawning } from './pairs/spawning.ts';

/** `not said` where no line says that they are bonded: sharing a tank makes no bond. */
type BondState = 'bonded' | 'split up' | 'resting' | 'single' | 'apart' | 'gone' | 'not said';

export interface OpenDispute extends DisputeRow {
  readonly advice: Advice;
}

export interface PairRow {
  readonly id: string;
  readonly name: string;
  readonly kind: GroupKind;
  readonly species: string | null;
  readonly tank: string | null;
  readonly state: BondState;
  /** What is left of it, where some of its fish are gone for good; null while it is whole. */
  readonly left: Left | null;
  /** `in a dispute`, `holding`, `guarding Rowan-1`; null where there is nothing to tell. */
  readonly doing: string | null;
  readonly dispute: OpenDispute | null;
  /** All of them, oldest first, the open one included. */
  readonly disputes: readonly DisputeRow[];
  /** Disputes that began in the last 90 days. */
  readonly per90: number;
  readonly past: Past;
  /** What its disputes and broods come to in numbers; told for a pair that was asked for by name. */
  readonly numbers: PairNumbers | null;
  readonly spawning: Spawning;
  /** When the next spawn is usual; null where nobody can say. */
  readonly next: DayWindow | null;
  readonly lines: readonly LineRef[];
  readonly because: Because;
}

export interface PairsAnswer {
  readonly on: Day;
  readonly pairs: readonly PairRow[];
  /** The name asked for, where there was one. */
  readonly asked: string | null;
}

/** Days over which disputes are counted. */
const SPAN = 90;

/**
 * All pairs, trios and harems that still have fish, open disputes first, then in walking order; with a name, the group of
 * that name, with a fish of that name, or in a tank of that name, whatever its kind.
 */
export function pairs(room: Room, asked: string | null = null): PairsAnswer {
  const groups = [...room.stock.groups.values()];
  const wanted =
    asked === null
      ? groups.filter((group) => isBreeding(group) && aliveTotal(group).high > 0)
      : groupsCalled(room, asked);
  const order = walkOrder(room);
  const others = asked === null ? null : roomsDisputes(room);
  const rows = wanted.map((group) => pairRow(room, group, others));
  const key = (row: PairRow): number => (row.tank === null ? order.length : order.indexOf(row.tank));
  return { on: room.on, asked, pairs: rows.toSorted((a, b) => pressing(b) - pressing(a) || key(a) - key(b)) };
}

/** Open disputes before everything, the worst and then the longest first. */
function pressing({ dispute }: PairRow): number {
  return dispute === null ? 0 : dispute.advice.rank * 10_000 + dispute.days;
}

function isBreeding(group: SeenGroup): boolean {
  return group.kind === 'pair' || group.kind === 'trio' || group.kind === 'harem' || openDispute(group) !== null;
}

/** Groups that a name means: their own, one of their fish's, or their tank's. Names match without case. */
export function groupsCalled(room: Room, name: string): SeenGroup[] {
  const same = (other: string | null): boolean => other !== null && other.toLowerCase() === name.toLowerCase();
  const groups = [...room.stock.groups.values()];
  const own = groups.filter((group) => same(group.name) || group.members.some((fish) => same(fish.name)));
  if (own.length > 0) return own;
  const tank = [...room.plumbing.tanks.keys()].find(same);
  if (tank === undefined) return [];
  const here = bodiesIn(room, tank).flatMap((body) => (isBrood(body) ? [] : [body]));
  const breeding = here.filter(isBreeding);
  return breeding.length > 0 ? breeding : here;
}

/** `others`: every dispute of the room, where its numbers are asked for. */
export function pairRow(room: Room, group: SeenGroup, others: readonly DisputeRow[] | null = null): PairRow {
  const disputes = group.disputes.map((dispute) => disputeRow(room, group, dispute));
  const past = pastOf(disputes);
  const open = openDispute(group);
  const last = disputes.at(-1);
  const dispute = open && last ? { ...last, advice: adviceOn(room, group, open, past) } : null;
  const spawning = spawningOf(room, group);
  const state = bondOf(room, group);
  const lines = linesOf([group.declared, ...(group.bondSince ? [group.bondSince.place] : [])]);
  return {
    id: rowId(group.name, group.kind),
    name: group.name,
    kind: group.kind,
    species: group.species,
    tank: seatOf(group),
    state,
    left: leftOf(room, group),
    doing: doingOf(room, group),
    dispute,
    disputes,
    per90: disputes.filter((row) => room.on - row.from < SPAN).length,
    past,
    numbers: others === null ? null : numbersOf(room, group, disputes, others),
    spawning,
    next: nextOf(spawning, state),
    lines: uniqueLines([...lines, ...disputes.flatMap((row) => row.lines), ...spawning.because.lines]),
    because: {
      rule: 'a pair is bonded only where a line says so; disputes and spawns are what was written down',
      source: 'the journal',
      steps: [
        `bond: ${state}`,
        `disputes in the last ${String(SPAN)} days: ${String(disputes.filter((row) => room.on - row.from < SPAN).length)}`,
        ...(past.says === null ? [] : [past.says]),
        ...spawning.because.steps,
      ],
      lines,
    },
  };
}

/** Nobody spawns alone, parted or split up. */
const NO_NEXT: ReadonlySet<string> = new Set(['single', 'apart', 'split up'] satisfies BondState[]);

/** A female alone that waits for nothing carries young of before, as livebearers do. */
function nextOf({ from, interval, waits }: Spawning, state: BondState): DayWindow | null {
  if (from === null || interval === null || (waits !== null && NO_NEXT.has(state))) return null;
  const { low, likely, high } = interval.days;
  const { window } = from;
  return {
    low: window.low === null ? null : addDays(window.low, Math.floor(low)),
    likely: window.likely === null || likely === null ? null : addDays(window.likely, Math.round(likely)),
    high: window.high === null ? null : addDays(window.high, Math.ceil(high)),
  };
}

/** The tank where a group is at home, or where its fish are. */
export function seatOf(group: SeenGroup): string | null {
  const tanks = tanksOf(group);
  if (group.home !== null && (tanks.length === 0 || tanks.includes(group.home))) return group.home;
  return tanks[0] ?? group.home;
}

function bondOf(room: Room, group: SeenGroup): BondState {
  if (aliveTotal(group).high === 0) return 'gone';
  if (group.bond === 'split up') return 'split up';
  if (isResting(group, latestBroods(room, group))) return 'resting';
  return partedWords(group) ?? (group.bonded === null ? 'not said' : 'bonded');
}

/**
 * What a group is at, as far as anybody wrote: `in a dispute; guarding Rowan-1`; null for nothing. With a tank, what it
 * does there: young are guarded where they are, the rest is told at home.
 */
export function doingOf(room: Room, group: SeenGroup, at: string | null = null): string | null {
  const atHome = at === null || at === group.home;
  const guarded = latestBroods(room, group)
    .filter((brood) => isGuarded(room, group, brood) && (at === null || brood.parts.has(at)))
    .map((brood) => brood.name);
  const holding = atHome && isHolding(room, group, room.on);
  const doing = [
    ...(atHome && openDispute(group) ? ['in a dispute'] : []),
    ...(holding ? ['holding'] : []),
    ...(guarded.length > 0 && !holding ? [`guarding ${listWords(guarded)}`] : []),
  ];
  return doing.length > 0 ? doing.join('; ') : null;
}

function uniqueLines(lines: readonly LineRef[]): LineRef[] {
  return [...new Map(lines.map((line) => [`${line.file}:${String(line.line)}`, line])).values()];
}

/** Rows for `why`: every pair and every dispute that it had. */
export function pairsWhy(room: Room): readonly WhyRow[] {
  const others = roomsDisputes(room);
  return pairs(room).pairs.flatMap((pair) => [
    ...numbersWhy(room, pair, others),
    {
      id: pair.id,
      title: `${pair.name}${pair.tank === null ? '' : ` ${pair.tank}`}: pair, bond, spawns`,
      because: pair.because,
      lines: pair.lines,
    },
    ...pair.disputes.map((row) => ({
      id: row.id,
      title: `${pair.name}: dispute`,
      because: row.because,
      lines: row.lines,
    })),
    {
      id: rowId(pair.name, 'spawns'),
      title: `${pair.name}: last spawn, interval, late`,
      because: pair.spawning.because,
      lines: pair.spawning.because.lines,
    },
  ]);
}

/** The numbers of its disputes and of its broods. */
function numbersWhy(room: Room, pair: PairRow, others: readonly DisputeRow[]): WhyRow[] {
  const group = room.stock.groups.get(pair.name);
  if (!group) return [];
  const { disputes, broods } = numbersOf(room, group, pair.disputes, others);
  return [
    {
      id: rowId(pair.name, 'disputes'),
      title: `${pair.name}: disputes in numbers`,
      because: disputes.because,
      lines: disputes.because.lines,
    },
    {
      id: rowId(pair.name, 'record'),
      title: `${pair.name}: broods in numbers`,
      because: broods.because,
      lines: broods.because.lines,
    },
  ];
}
