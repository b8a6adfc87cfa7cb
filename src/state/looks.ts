/** When anything was last said of each tank. */
import type { Homes } from './home.ts';
import type { Day } from '../core/day.ts';
import type { Place } from '../core/span.ts';
import type { Event } from '../journal/event.ts';
import type { Draft } from './draft.ts';
import { placesOf } from './places.ts';
import { liveTanks, tanksOn } from './tanks.ts';

export interface Looks {
  /** Last word of each tank, `all well` of the room included. */
  last: Map<string, { day: Day; place: Place }>;
}

/**
 * Notes the last word of every tank that a line speaks of: its own, those of the fish it is about, the
 * one that fish went to. A loop's line looks at pipes, not at fish: only `all well` there ends a silence.
 */
export function noteWord(draft: Draft, event: Event): void {
  for (const tank of wordsOf(draft, event)) {
    if (draft.plumbing.tanks.has(tank)) draft.looks.last.set(tank, { day: event.day, place: event.place });
  }
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
  photo: () => undefined,
};
