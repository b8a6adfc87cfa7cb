/** Rows of today's list that say the same of several tanks, told once: one line to read, one line to jot. */
import type { DueRow } from '../questions/due.ts';

/** What is shown for one row, or for several alike. */
export interface Shown {
  readonly place: string;
  readonly what: string;
  readonly close: string;
  /** The first of them: state, dates, reason and caution are those of all. */
  readonly row: DueRow;
}

/** More places in one row would push the columns beside them off a narrow screen. */
const MOST = 4;

/** Neighbours with the same date, reason and line to jot but for the place become one. */
export function toldOnce(rows: readonly DueRow[]): readonly Shown[] {
  const shown: Shown[] = [];
  for (const row of rows) {
    const last = shown.at(-1);
    if (last !== undefined && last.place.split(' ').length < MOST && alike(last.row, row))
      shown[shown.length - 1] = joined(last, row);
    else shown.push({ place: row.place, what: row.what, close: row.close, row });
  }
  return shown;
}

function alike(a: DueRow, b: DueRow): boolean {
  const clause = clauseOf(a);
  return (
    clause !== null &&
    clause === clauseOf(b) &&
    a.kind === 'chore' &&
    b.kind === 'chore' &&
    a.state === b.state &&
    a.weight === b.weight &&
    a.why === b.why &&
    a.after === b.after &&
    a.due.low === b.due.low &&
    a.due.high === b.due.high
  );
}

/** The line to jot without its place; null where it does not begin with it. */
function clauseOf({ place, close }: DueRow): string | null {
  return close.startsWith(`${place}: `) ? close.slice(place.length + 2) : null;
}

function joined(before: Shown, row: DueRow): Shown {
  const clause = clauseOf(row) ?? row.close;
  const place = `${before.place} ${row.place}`;
  // Litres differ from tank to tank: then the clause alone says what all of them get.
  return { place, what: before.what === row.what ? row.what : clause, close: `${place}: ${clause}`, row: before.row };
}
