/** A row of today's list. Each theme of `questions/due/` yields items; `due.ts` joins, puts off, orders and counts them. */
import type { Because } from '../../core/because.ts';
import type { Day } from '../../core/day.ts';
import type { DayWindow } from '../../core/interval.ts';
import type { LineRef } from '../../core/span.ts';
import type { SeenBrood } from '../../state/bodies.ts';
import type { Room } from '../../state/draft.ts';

type DueKind =
  | 'chore'
  | 'task'
  | 'measure'
  | 'fault'
  | 'dispute'
  | 'stage'
  | 'young'
  | 'spawn'
  | 'treatment'
  | 'quarantine'
  | 'water'
  | 'reading'
  | 'promise'
  | 'culture'
  | 'auction'
  | 'award'
  | 'silence'
  | 'health';

/** Fish that the line of a row moves. */
export interface Sent {
  readonly name: string;
  /** Null for grown fish. */
  readonly brood: SeenBrood | null;
  readonly from: string | null;
  readonly to: string;
}

export interface DueItem {
  /** Stable across days and readable: `a1-dispute`, `long-clean-prefilter`. What `why` takes. */
  readonly id: string;
  /** Tank, loop, culture, or `room`. */
  readonly place: string;
  /** The thing to do, in the imperative and in a few words. */
  readonly what: string;
  readonly kind: DueKind;
  readonly due: DayWindow;
  /** 3 life at risk now, 2 gets worse by the day, 1 ordinary, 0 can wait: most pressing first. */
  readonly weight: 0 | 1 | 2 | 3;
  /** One line. */
  readonly why: string;
  /** The line to jot when it is done, without the date. */
  readonly close: string;
  /** One line, or absent; printed once an answer. */
  readonly caution?: string;
  /** Toxic ammonia that would follow a change or dose that can raise pH, or that it has to be tested first; printed once an answer. */
  readonly after?: string;
  /** What `put off` and `keep … until` name: `water change`, `lights off`, the words of a task. Null: cannot be put off. */
  readonly putOffKey: string | null;
  /** Other words for it. */
  readonly putOffAlso?: readonly string[];
  /** The day on which it was done or begun last: what was put off before that day is over. */
  readonly putOffFrom?: Day;
  /** A spill, a wound, a lost power supply: putting off counts for a day at most. */
  readonly pressing: boolean;
  /** Daily care that whoever looks in has to give: it stays on the list while the keeper is away, as what is pressing does. */
  readonly daily?: boolean;
  /** Minutes it takes, if the journal says. */
  readonly minutes: number | null;
  /** For the list alone, which holds its rows against each other. */
  readonly sends?: Sent;
  readonly because: Because;
  readonly lines: readonly LineRef[];
}

/** One theme: everything it finds for a room, due or ahead within `days`. */
export type DueSource = (room: Room, days: number) => readonly DueItem[];
