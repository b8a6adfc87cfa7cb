/** A pair in numbers: its disputes and its broods, each with what stands behind it. */
import type { Because } from '../../core/because.ts';
import { linesOf } from '../../core/span.ts';
import { dayWords, plural } from '../../core/words.ts';
import type { SeenGroup } from '../../state/bodies.ts';
import type { Room } from '../../state/draft.ts';
import { disputeRow } from './dispute.ts';
import type { DisputeRow } from './dispute.ts';
import {
  durationWords,
  durationsOf,
  gapWords,
  gapsBetween,
  lastedOf,
  lightsOffOf,
  recurrenceOf,
  recurrenceWords,
} from './quarrels.ts';
import type { Durations, LightsOff, Recurrence } from './quarrels.ts';
import { recordOf } from './record.ts';
import type { BroodRecord } from './record.ts';
import { broodsOf } from './spawning.ts';

export interface PairNumbers {
  readonly disputes: {
    readonly durations: Durations;
    readonly recurrence: Recurrence | null;
    readonly gaps: { readonly days: readonly number[]; readonly closing: boolean };
    /** Over all pairs of the room. */
    readonly lightsOff: LightsOff;
    readonly says: readonly string[];
    readonly because: Because;
  };
  readonly broods: BroodRecord & { readonly because: Because };
}

/** Every dispute of every group: what lights off did is told by the room, since one pair seldom has enough. */
export function roomsDisputes(room: Room): readonly DisputeRow[] {
  return [...room.stock.groups.values()].flatMap((group) =>
    group.disputes.map((dispute) => disputeRow(room, group, dispute)),
  );
}

export function numbersOf(
  room: Room,
  group: SeenGroup,
  rows: readonly DisputeRow[],
  others: readonly DisputeRow[],
): PairNumbers {
  const durations = durationsOf(rows);
  const recurrence = recurrenceOf(rows, group.day, room.on);
  const gaps = gapsBetween(rows);
  const lightsOff = lightsOffOf(others);
  const lasts = durationWords(durations);
  const peace = gapWords(gaps);
  const says = [
    ...(lasts === null ? [] : [`disputes: ${lasts}`]),
    ...(recurrence === null ? [] : [recurrenceWords(recurrence)]),
    ...(peace === null ? [] : [peace]),
    ...(rows.length === 0 ? [] : [lightsOff.says]),
  ];
  const broods = broodsOf(room, group);
  const record = recordOf(room, group, broods);
  return {
    disputes: {
      durations,
      recurrence,
      gaps,
      lightsOff,
      says,
      because: disputesBecause(room, rows, says, durations, recurrence),
    },
    broods: { ...record, because: recordBecause(record) },
  };
}

function disputesBecause(
  room: Room,
  rows: readonly DisputeRow[],
  says: readonly string[],
  { curve }: Durations,
  recurrence: Recurrence | null,
): Because {
  return {
    rule: 'a dispute that is open, was ended by parting the fish, or fell silent lasted at least so long and is counted so; the share still on after a day = share before × (1 − ended ÷ still on)',
    source: 'the journal; Kaplan & Meier 1958; limits of the rate exact Poisson (Garwood 1936), four times of five',
    steps: [
      ...(rows.length === 0 ? ['no dispute on record'] : []),
      ...rows.map((row) => {
        const { days, over } = lastedOf(row);
        return `${dayWords(row.from, room.on)}: ${over ? plural(days, 'day') : `at least ${plural(days, 'day')}`}`;
      }),
      ...curve.map(
        ({ day, atRisk, died, survival }) =>
          `day ${String(day)}: × (1 − ${String(died)}/${String(atRisk)}) = ${String(Math.round(survival * 100))} % still on after it`,
      ),
      ...(recurrence === null
        ? []
        : [
            `${String(recurrence.seen)} ÷ ${plural(recurrence.days, 'day')} × 90 = ${(recurrence.per90.likely ?? 0).toFixed(2)}`,
          ]),
      ...says,
    ],
    lines: linesOf(rows.flatMap(({ lines }) => lines)),
  };
}

function recordBecause(record: BroodRecord): Because {
  const { raised } = record;
  return {
    rule: 'only spawns that were seen count; a brood that left its parents within 14 days of laying was taken early; it came to nothing where it ended before any was moved, sold or given away. A tank shared by several stocks counts for each in equal parts',
    source: 'the journal; survival by Kaplan & Meier 1958, each brood from the age at which a number was first said',
    steps: [
      ...(record.says.length === 0 ? ['no spawn seen on record'] : record.says),
      ...(raised === null
        ? []
        : [
            `${(raised.young.likely ?? raised.young.low).toFixed(0)} young ÷ ${raised.tankWeeks.toFixed(1)} tank-weeks = ${(raised.perWeek.likely ?? 0).toFixed(2)}`,
          ]),
    ],
    lines: linesOf(record.places),
  };
}
