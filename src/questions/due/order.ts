/**
 * The order of today's list: a life at risk before anything; then the tanks that are well in walking
 * order, heavier things first; then held, sick and quarantine tanks, so that nothing is carried from
 * them to the others; what is not due yet comes last.
 */
import type { Day } from '../../core/day.ts';
import type { DueItem } from './item.ts';

export type DueState = 'late' | 'today' | 'ahead';

/** Late: the whole window is over. Ahead: it has not begun. A side that is open never settles it. */
export function dueState({ due: { low, high } }: Pick<DueItem, 'due'>, on: Day): DueState {
  if (high !== null && high < on) return 'late';
  return low !== null && low > on ? 'ahead' : 'today';
}

export interface Order {
  /** Places in walking order. Places that are not in it (the room, cultures) come first. */
  readonly walk: readonly string[];
  /** Tanks to go to last. */
  readonly last: ReadonlySet<string>;
}

/** Sorts by the rules above; rows alike in all of them stand by due date, then by id. */
export function sortDue<T extends DueItem & { readonly state: DueState }>(rows: readonly T[], order: Order): T[] {
  const key = (row: T): readonly number[] => [
    row.state === 'ahead' ? 2 : row.weight === 3 ? 0 : 1,
    order.last.has(row.place) ? 1 : 0,
    -row.weight,
    order.walk.indexOf(row.place),
    row.due.high ?? row.due.likely ?? row.due.low ?? 0,
  ];
  return [...rows].sort((a, b) => compare(key(a), key(b)) || (a.id < b.id ? -1 : a.id > b.id ? 1 : 0));
}

function compare(a: readonly number[], b: readonly number[]): number {
  for (const [index, value] of a.entries()) {
    const other = b[index] ?? 0;
    if (value !== other) return value - other;
  }
  return 0;
}
