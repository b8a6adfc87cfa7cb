/** What `why` needs of a row of any answer. */
import type { Because } from '../core/because.ts';
import type { LineRef } from '../core/span.ts';
import type { Room } from '../state/draft.ts';

export interface WhyRow {
  /** The row's id in its answer. */
  readonly id: string;
  /** What the row says, in a few words. */
  readonly title: string;
  readonly because: Because;
  readonly lines: readonly LineRef[];
}

/** Every row of one question on the room's day. */
export type WhySource = (room: Room) => readonly WhyRow[];
