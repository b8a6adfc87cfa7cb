/**
 * A line about several tanks that only the plumbing of its day can list (`Long tanks:`, `all tanks
 * except Q1:`) becomes one event for each of them, in walking order.
 */
import type { Event } from '../journal/event.ts';
import type { Subject } from '../journal/subject.ts';
import type { Draft } from './draft.ts';
import { tanksOn, sharers } from './tanks.ts';

/** The events that one event stands for; itself where its subject is a single thing. */
export function expand(draft: Draft, event: Event): readonly Event[] {
  const { subject } = event;
  if (subject.kind !== 'tanks') return [event];
  const all =
    subject.of === 'all'
      ? sharers(draft, 'room', event.day)
      : tanksOn(draft, subject.of.loop, event.day, event.minute ?? undefined);
  const tanks = all.filter((tank) => !subject.except.includes(tank));
  if (tanks.length === 0) {
    draft.problems.push({
      kind: 'no-tanks',
      weight: 'stops',
      says: subject.of === 'all' ? 'no tank was set up that day' : `no tank was on ${subject.of.loop} that day`,
      write: 'the names of the tanks: A1 A2: …',
      at: event.place,
      also: [],
    });
  }
  return tanks.map((tank) => ({ ...event, subject: { kind: 'tank', tank } satisfies Subject }));
}
