/**
 * The order of the room's history: by day; on a day what is declared first, then by time, then as filed.
 * A line without a time takes that of the nearest timed line above it in its file and of its date.
 */
import type { Day } from '../core/day.ts';
import type { Event } from '../journal/event.ts';
import type { Fact } from './build/build.ts';
import { declarationOrder } from './heading.ts';

/** A fact with all that decides its place. */
export interface Dated {
  readonly fact: Fact;
  readonly day: Day;
  readonly minute: number | null;
  readonly file: string;
  readonly line: number;
  /** Count of lines filed before it. */
  readonly filed: number;
}

/** Gives lines their time of day: their own, or that of the nearest timed line above of the same file and date. */
export class Clock {
  private readonly last = new Map<string, Map<Day, number>>();

  at(file: string, day: Day, minute: number | null): number | null {
    const days = this.last.get(file);
    if (minute === null) return days?.get(day) ?? null;
    if (days === undefined) this.last.set(file, new Map([[day, minute]]));
    else days.set(day, minute);
    return minute;
  }
}

/** Sorts facts into history. The sort is stable, so clauses of a line stay from left to right. */
export function inOrder(facts: readonly Dated[]): Dated[] {
  return [...facts].sort(
    (a, b) =>
      a.day - b.day || declaredFirst(a.fact, b.fact) || (a.minute ?? -1) - (b.minute ?? -1) || a.filed - b.filed,
  );
}

function declaredFirst(a: Fact, b: Fact): number {
  const rank = rankOf(a) - rankOf(b);
  if (rank !== 0) return rank;
  return a.declares !== null && b.declares !== null ? declarationOrder(a.declares, b.declares) : 0;
}

/** Conventions, then declarations, then what amends them from an ordinary line, then what happened. */
function rankOf(fact: Fact): 0 | 1 | 2 | 3 {
  if (fact.declares !== null) return 1;
  switch (fact.body.kind) {
    case 'units set':
    case 'currency set':
    case 'zone set':
    case 'nitrogen set':
    case 'scoop set':
    case 'walk set':
    case 'award rule set':
      return 0;
    case 'tank declared':
      return 2;
    default:
      return 3;
  }
}

/** The finished event. */
export function toEvent({ fact, day, minute, file, line }: Dated, seq: number): Event {
  const place = { file, line, from: fact.at.from, to: fact.at.to };
  return { seq, day, minute, subject: fact.subject, place, remark: fact.remark, when: fact.when, ...fact.body };
}
