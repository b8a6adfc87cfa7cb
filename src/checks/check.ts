/**
 * A check looks for facts that can be read but are probably not meant. It only doubts: what cannot
 * count at all is found where lines are read and folded. To add one: a file beside this, a line in `table.ts`.
 */
import type { Day } from '../core/day.ts';
import type { Problem } from '../core/problem.ts';
import type { Event } from '../journal/event.ts';
import type { Room } from '../state/draft.ts';

export interface Facts {
  /** The room on the day asked about. */
  readonly room: Room;
  /** Every event of the journal, later ones than that day too. */
  readonly events: readonly Event[];
  readonly today: Day;
}

export type Check = (facts: Facts) => readonly Problem[];
