/** Everything that is wrong with a journal: what reading it found, what folding it found, what the checks doubt. */
import { CHECKS } from '../checks/table.ts';
import type { Day } from '../core/day.ts';
import type { ProblemKind } from '../core/problem-kinds.ts';
import type { Problem } from '../core/problem.ts';
import type { Event } from '../journal/event.ts';
import type { Room } from '../state/draft.ts';
import { begunBroods } from './brood-names.ts';
import { soldHeld } from './soldheld.ts';

export interface CheckAnswer {
  /** In the order in which they were found; the report sorts by line. */
  readonly problems: readonly Problem[];
  /** Pairs of sure facts that cannot both be. */
  readonly contradictions: number;
  /** Spawns whose brood has no name in its line yet: `tidy` writes them. */
  readonly unwritten: number;
  /** True where a line was left out, or two sure facts contradict. */
  readonly wrong: boolean;
}

/** Doubts that leave both lines counting, though one of them must be wrong. */
const CONTRADICTIONS: ReadonlySet<ProblemKind> = new Set<ProblemKind>(['counts-contradict']);

/** What reading gave, as far as a check needs it. */
export interface Read {
  readonly events: readonly Event[];
  readonly problems: readonly Problem[];
}

/** `room` is the room on the day asked about. A problem found by two layers is told once. */
export function checkJournal(read: Read, room: Room, today: Day): CheckAnswer {
  const begun = begunBroods(room);
  const doubts = CHECKS.flatMap((check) => check({ room, events: read.events, today }));
  const problems = once([...read.problems, ...room.problems, ...doubts, ...soldHeld(room)]);
  const contradictions = problems.filter(({ kind }) => CONTRADICTIONS.has(kind)).length;
  return {
    problems,
    contradictions,
    unwritten: read.events.filter((event) => begun(event) !== null).length,
    wrong: contradictions > 0 || problems.some(({ weight }) => weight === 'stops'),
  };
}

function once(problems: readonly Problem[]): readonly Problem[] {
  const told = new Map(problems.map((problem) => [JSON.stringify([problem.kind, problem.says, problem.at]), problem]));
  return [...told.values()];
}

/** The last day that a journal tells of, or null for one without entries. */
export function lastDay(events: readonly Event[]): Day | null {
  return events.at(-1)?.day ?? null;
}
