/**
 * What is wanted, matched with what is ready or surely will be by its day. Fish that would meet one want
 * are not offered to the next, and nobody is promised more than the low number.
 */
import type { Because } from '../../core/because.ts';
import { isoDay, type Day } from '../../core/day.ts';
import type { Interval } from '../../core/interval.ts';
import type { Measure } from '../../core/quantity.ts';
import type { DeepReadonly } from '../../core/readonly.ts';
import { linesOf, type LineRef } from '../../core/span.ts';
import { countWords, dayWords } from '../../core/words.ts';
import type { Room } from '../../state/draft.ts';
import type { Want } from '../../state/sale.ts';
import { stands } from '../../state/selling.ts';
import { rowId } from '../id.ts';
import { sale, type Lot } from '../sale.ts';
import { openWant } from '../sale/wants.ts';
import { again } from './again.ts';

export interface WantedRow {
  readonly id: string;
  readonly species: string;
  readonly count: Interval;
  readonly size: Measure<'mm'> | null;
  readonly by: Day | null;
  readonly to: string | null;
  readonly matches: readonly Match[];
  /** Stocks that would have met it, of which earlier wants take all: `Rowan-1 in C1`. */
  readonly spokenFor: readonly string[];
  /** How many of them nothing in the room will meet in time. */
  readonly short: number;
  readonly because: Because;
  readonly lines: readonly LineRef[];
}

/** A stock that would meet a want: now, or from a day on. */
export interface Match {
  readonly stock: string;
  readonly tank: string;
  /** Fish of it that can be promised and meet no earlier want. */
  readonly free: number;
  /** Of these, as many as this want takes. */
  readonly takes: number;
  readonly ready: boolean;
  readonly from: Day | null;
}

/** Soonest wanted first. `forecast`: also what will be ready by the day of a want, and not only what is. */
export function wantedRows(room: Room, forecast: boolean): readonly WantedRow[] {
  const wants = room.sale.wants
    .filter((want) => stands({ ...want, until: want.by }, room.on))
    .toSorted((a, b) => (a.by ?? Infinity) - (b.by ?? Infinity) || a.day - b.day);
  if (wants.length === 0) return [];
  const stock = stockOn(room);
  const taken = new Map<string, number>();
  return wants.map((want) => wantedRow(room, want, offersFor(room, want, stock, forecast), taken));
}

/** A lot as it will be on the day of a want. */
interface Offer {
  readonly lot: Lot;
  readonly free: number;
  readonly from: Day | null;
}

type StockOn = (day: Day) => readonly Lot[];

function stockOn(room: Room): StockOn {
  const known = new Map<Day, readonly Lot[]>();
  return (day) => {
    const lots = known.get(day) ?? sale(room, { ahead: day - room.on, auction: null, projected: false }).lots;
    known.set(day, lots);
    return lots;
  };
}

/** Ready ones first, the most first; of those that are not yet, the soonest. */
function offersFor(room: Room, want: DeepReadonly<Want>, stock: StockOn, forecast: boolean): readonly Offer[] {
  const mine = (lots: readonly Lot[]): readonly Lot[] => lots.filter(({ species }) => species === want.species);
  const now = mine(stock(room.on));
  const ready = now
    .filter((lot) => lot.ready && fitsSize(lot, want))
    .map((lot): Offer => ({ lot, free: lot.free, from: room.on }));
  if (!forecast) return ready;
  const given = new Map(ready.map(({ lot, free }) => [lot.id, free]));
  // Of a lot that is ready in part more will have their size by then.
  const later = now.flatMap((lot) => grown(lot, want, stock).filter(({ free }) => free > (given.get(lot.id) ?? 0)));
  return [...ready, ...later];
}

/** The same fish on the day of the want, or on the first on which they may go; what is reserved today is not free then. */
function grown(now: Lot, want: DeepReadonly<Want>, stock: StockOn): Offer[] {
  const day = want.by ?? now.from;
  if (day === null || (now.from !== null && now.from > day)) return [];
  const then = stock(day).find(({ id }) => id === now.id);
  if (then?.ready !== true || !fitsSize(then, want)) return [];
  const free = then.free - Math.max(0, now.reserved - then.reserved);
  return free <= 0 ? [] : [{ lot: then, free, from: now.ready || now.from === null ? day : now.from }];
}

function fitsSize({ size }: Lot, { size: wanted }: DeepReadonly<Want>): boolean {
  return wanted === null || (size !== null && (size.likely ?? size.low) >= wanted.low);
}

/** Fish of the offers, first to last, till so many are met; what is met is taken from those that come after. */
function meet(
  room: Room,
  asked: number,
  offers: readonly Offer[],
  taken: Map<string, number>,
): Pick<WantedRow, 'matches' | 'spokenFor'> {
  const matches: Match[] = [];
  const spokenFor: string[] = [];
  let open = asked;
  for (const { lot, free, from } of offers) {
    const { stock, tank } = lot;
    const left = free - (taken.get(lot.id) ?? 0);
    const takes = Math.min(left, open);
    if (left <= 0 && open > 0) spokenFor.push(`${stock} in ${tank}`);
    if (takes <= 0) continue;
    open -= takes;
    taken.set(lot.id, (taken.get(lot.id) ?? 0) + takes);
    matches.push({ stock, tank, free: left, takes, ready: from !== null && from <= room.on, from });
  }
  return { matches, spokenFor };
}

function wantedRow(
  room: Room,
  want: DeepReadonly<Want>,
  offers: readonly Offer[],
  taken: Map<string, number>,
): WantedRow {
  const count = openWant(room, want);
  const asked = Math.ceil(Number.isFinite(count.high) ? count.high : (count.likely ?? count.low));
  const { matches, spokenFor } = meet(room, asked, offers, taken);
  const open = asked - matches.reduce((sum, { takes }) => sum + takes, 0);
  const lines = linesOf([want.place, ...want.metBy]);
  const size = want.size === null ? '' : ` at ${String(want.size.low)} mm`;
  return {
    id: rowId(want.species, 'wanted', isoDay(want.day), again(room.sale.wants, want, 'species')),
    species: want.species,
    count,
    size: want.size,
    by: want.by,
    to: want.to,
    matches,
    spokenFor,
    short: open,
    because: {
      rule: 'a want is met by stock of its species that surely has its size and its sale size on or before its day; fish that meet an earlier want are not counted again',
      source: 'the journal',
      steps: [
        `${countWords(want.count)} ${want.species}${size} wanted since ${dayWords(want.day, room.on)}${want.by === null ? '' : `, by ${dayWords(want.by, room.on)}`}`,
        ...matches.map(
          ({ stock, tank, free, takes, from }) =>
            `${stock} in ${tank}: ${String(takes)} of ${String(free)}, from ${dayWords(from ?? room.on, room.on)}`,
        ),
        ...spokenFor.map((which) => `${which}: all that may go meet earlier wants`),
        ...(matches.length + spokenFor.length === 0 ? ['nothing in the room meets it in time'] : []),
        ...(matches.length > 0 && open > 0 ? [`${String(open)} short`] : []),
      ],
      lines,
    },
    lines,
  };
}
