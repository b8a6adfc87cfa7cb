/** When anything was last said of each tank. */
import type { Homes } from './home.ts';
import type { Day } from '../core/day.ts';
import type { Place } from '../core/span.ts';
import type { Event } from '../journal/event.ts';
import type { Subject } from '../journal/subject.ts';
import type { Draft } from './draft.ts';
import { placesOf } from './places.ts';
import { tanksNamed } from './where.ts';
import { liveTanks, tanksOn } from './tanks.ts';

export interface Looks {
  /** Last word of each tank, `all well` of the room included. */
  last: Map<string, { day: Day; place: Place }>;
  /** Latest days on which somebody wrote of the fish of a tank without a word of eggs or young, oldest first. */
  quiet: Map<string, Day[]>;
  /** Oldest first, with the tanks that each is of. */
  photos: { file: string; tanks: string[]; subject: Subject; day: Day; place: Place }[];
}

/** So many quiet days are kept of each tank: more than any eggs last. */
const QUIET_KEPT = 30;
/** Lines of a keeper who stood before the pair. */
const BEFORE_THEM: ReadonlySet<Event['kind']> = new Set<Event['kind']>([
  'all well',
  'bonded',
  'dispute sign',
  'calmer',
  'shimmying',
  'made up',
  'resting',
  'about to spawn',
]);

/**
 * Notes the last word of every tank that a line speaks of: its own, those of the fish it is about, the
 * one that fish went to. A loop's line looks at pipes, not at fish: only `all well` there ends a silence.
 */
export function noteWord(draft: Draft, event: Event): void {
  for (const tank of wordsOf(draft, event)) {
    if (!draft.plumbing.tanks.has(tank)) continue;
    draft.looks.last.set(tank, { day: event.day, place: event.place });
    if (BEFORE_THEM.has(event.kind)) noteQuiet(draft, tank, event.day);
  }
}

function noteQuiet(draft: Draft, tank: string, day: Day): void {
  const days = draft.looks.quiet.get(tank);
  if (days === undefined) draft.looks.quiet.set(tank, [day]);
  else if (days.at(-1) !== day) {
    days.push(day);
    if (days.length > QUIET_KEPT) days.shift();
  }
}

/** Quiet days of a tank within a window: what was laid there before them was missed, or was not there yet. */
export function quietDays(draft: Draft, tank: string | null, low: Day | null, high: Day | null): Day[] {
  const days = tank === null ? undefined : draft.looks.quiet.get(tank);
  const [from, to] = [low ?? -Infinity, high ?? Infinity];
  // Most broods are seen on the day that they are laid.
  if (days === undefined || from >= to) return [];
  return days.filter((day) => day >= from && day < to);
}

function wordsOf(draft: Draft, event: Event): string[] {
  const { subject } = event;
  const looked = event.kind === 'all well';
  if (subject.kind === 'room') return looked ? liveTanks(draft, event.day).map((tank) => tank.name) : [];
  if (subject.kind === 'loop') return looked ? tanksOn(draft, subject.loop, event.day) : [];
  const named = placesOf(draft, subject);
  if (event.kind === 'moved') return [...named, event.to];
  if (event.kind === 'tank declared') return [event.tank];
  if (event.kind === 'group declared') return event.tank === null ? named : [...named, event.tank];
  return named;
}

export const LOOKS_HOMES: Homes<'all well' | 'note' | 'photo'> = {
  // What they do to the silence of a tank, every line does: see `noteWord`.
  'all well': () => undefined,
  note: () => undefined,
  photo: (draft, event) => {
    const { file, subject, day, place } = event;
    draft.looks.photos.push({ file, tanks: tanksNamed(draft, event), subject, day, place });
  },
};
