/** Promises that come to their last day, promises that nobody can keep, and wants that could be met. */
import { addDays, isoDay, type Day } from '../../core/day.ts';
import { onDay } from '../../core/interval.ts';
import { countWords, dayWords, listWords } from '../../core/words.ts';
import { tanksOf } from '../../state/bodies.ts';
import type { Room } from '../../state/draft.ts';
import { stockNamed } from '../../state/promised.ts';
import { promises, type ReservedRow } from '../promises.ts';
import type { OverRow } from '../promises/over.ts';
import type { Match, WantedRow } from '../promises/wanted.ts';
import { healthBlockers, type Blocker } from '../sale/blockers.ts';
import type { DueItem, DueSource } from './item.ts';
import { LOOK_AGAIN } from './postponed.ts';

/** Days after its last day for which a lapsed promise is still asked about (ours). */
const ASKED_DAYS = 7;
/** Days after which a promise without a last day is asked about (ours). */
const OPEN_DAYS = 28;
/** Days for which fish are offered to be reserved where the want names no day (ours). */
const OFFER_DAYS = 14;
/** Days for which a want without a day is brought up (ours). */
const WANT_DAYS = 60;

export const promiseDue: DueSource = (room) => {
  const { reserved, wanted, over } = promises(room, { forecast: false });
  return [
    ...over.map((row) => overItem(room, row)),
    ...reserved.flatMap((row) => reservedItem(room, row)),
    ...wanted.flatMap((row) => wantedItem(room, row)),
  ];
};

function reservedItem(room: Room, row: ReservedRow): DueItem[] {
  const asked = row.until ?? addDays(row.since, OPEN_DAYS);
  if (room.on - asked > ASKED_DAYS && row.until !== null) return [];
  const count = countWords(row.count);
  const place = row.tank ?? row.stock;
  const why =
    row.until === null
      ? `reserved on ${dayWords(row.since, room.on)}, no last day was written`
      : row.lapsed
        ? `reserved until ${dayWords(row.until, room.on)}: lapsed, those fish are free again`
        : `reserved until ${dayWords(row.until, room.on)}; after that they are free again`;
  const trouble = row.lapsed ? null : troubleOf(room, row);
  if (trouble !== null) return [waitingItem(room, row, trouble, asked, why)];
  return [
    {
      ...base(row),
      place,
      what: row.lapsed
        ? `${count} ${row.stock}: fetched after all?`
        : `hand over ${count} ${row.stock}, or let them go`,
      kind: 'promise',
      due: onDay(asked),
      weight: row.lapsed ? 0 : 1,
      why: row.as === null ? why : `${why}; ${row.as}`,
      close: `${place}: sold ${numberOf(row.count)} ${row.stock} to "…"`,
      putOffKey: 'promise',
    },
  ];
}

/** What keeps every fish of a promise where it is: a hold, sickness, a treatment or quarantine. */
function troubleOf(room: Room, row: ReservedRow): Blocker | null {
  const body = stockNamed(room, row.stock);
  const tanks = row.tank !== null ? [row.tank] : body === null ? [] : tanksOf(body);
  const found = tanks.map((tank) => healthBlockers(room, tank, { at: room.on, ahead: false })[0] ?? null);
  return found.every((one) => one !== null) ? (found[0] ?? null) : null;
}

function waitingItem(room: Room, row: ReservedRow, trouble: Blocker, asked: Day, why: string): DueItem {
  const place = row.tank ?? row.stock;
  const { until } = trouble;
  const later = until !== null && until > room.on ? until : addDays(room.on, LOOK_AGAIN);
  const clear = until === null ? '' : `, until ${dayWords(until, room.on)}`;
  return {
    ...base(row),
    lines: [...row.lines, ...trouble.lines],
    place,
    what: `hand over no ${row.stock} yet: tell who waits for ${countWords(row.count)}`,
    kind: 'promise',
    due: onDay(asked),
    weight: 1,
    why: `${trouble.why}${clear}; ${why}`,
    close: `${place}: put off promise until ${isoDay(later)}`,
    putOffKey: 'promise',
  };
}

function overItem(room: Room, row: OverRow): DueItem {
  return {
    ...base(row),
    place: row.stock,
    what: `count ${row.stock}, or let a promise go`,
    kind: 'promise',
    due: onDay(room.on),
    weight: 2,
    why: `${String(row.promised)} kept back and reserved, but surely only ${String(row.sure)} alive`,
    close: row.write,
    putOffKey: null,
  };
}

function wantedItem(room: Room, row: WantedRow): DueItem[] {
  const ready = row.matches.filter((match) => match.ready);
  const [first] = enoughOf(ready, row.count.low);
  const since = room.sale.wants.find(
    ({ place }) => place.line === row.lines[0]?.line && place.file === row.lines[0].file,
  )?.day;
  if (row.count.high <= 0 || first === undefined || (row.by === null && room.on - (since ?? room.on) > WANT_DAYS))
    return [];
  const told = enoughOf(ready, row.count.low).map(({ stock, tank, free }) => `${String(free)} ${stock} in ${tank}`);
  const enough = ready.reduce((sum, { free }) => sum + free, 0);
  return [
    {
      ...base(row),
      place: first.tank,
      what: `offer ${row.species}: ${countWords(row.count)} wanted`,
      kind: 'promise',
      due:
        row.by === null
          ? { low: room.on, likely: room.on, high: null }
          : { low: room.on, likely: row.by, high: row.by },
      weight: 0,
      why: `ready: ${listWords(told)}${enough < row.count.low ? ', not all of them' : ''}`,
      close: `${first.tank}: reserved ${String(Math.min(first.free, numberOf(row.count)))} ${first.stock} until ${isoDay(row.by ?? addDays(room.on, OFFER_DAYS))}`,
      putOffKey: `offer ${row.species}`,
    },
  ];
}

function base(
  row: Pick<DueItem, 'id' | 'because' | 'lines'>,
): Pick<DueItem, 'id' | 'because' | 'lines' | 'pressing' | 'minutes'> {
  return { id: row.id, because: row.because, lines: row.lines, pressing: false, minutes: null };
}

/** The largest lots that together are as many, no more of them than needed. */
function enoughOf(ready: readonly Match[], wanted: number): Match[] {
  const chosen: Match[] = [];
  for (const match of ready.toSorted((a, b) => b.free - a.free)) {
    if (chosen.reduce((sum, { free }) => sum + free, 0) >= wanted) break;
    chosen.push(match);
  }
  return chosen;
}

/** The number to write in a line: the likely one, at least the low one. */
function numberOf({ low, likely }: { readonly low: number; readonly likely: number | null }): number {
  return Math.round(likely ?? low);
}
