/**
 * The order of today's list: a life at risk before anything; then the tanks that are well, heavier
 * things first and then in walking order; then held, sick and quarantine tanks, so that nothing is
 * carried from them to the others; then, by its day, what is not due yet.
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

/** What a row may say besides: which of the steps of one day comes first. */
export interface Sequenced {
  readonly sequence?: number;
}

/** Sorts by the rules above; rows alike in all of them stand by their sequence, then by id. */
export function sortDue<T extends DueItem & Sequenced & { readonly state: DueState }>(
  rows: readonly T[],
  order: Order,
): T[] {
  const key = (row: T): readonly number[] => {
    const late = order.last.has(row.place) ? 1 : 0;
    const walk = order.walk.indexOf(row.place);
    if (row.state === 'ahead') return [2, row.due.low ?? 0, late, walk, -row.weight, row.sequence ?? 0];
    return [row.weight === 3 ? 0 : 1, late, -row.weight, walk, row.due.high ?? Infinity, row.sequence ?? 0];
  };
  return [...rows].sort((a, b) => compare(key(a), key(b)) || (a.id < b.id ? -1 : a.id > b.id ? 1 : 0));
}

function compare(a: readonly number[], b: readonly number[]): number {
  for (const [index, value] of a.entries()) {
    const other = b[index] ?? 0;
    if (value !== other) return value - other;
  }
  return 0;
}
