/** How a brood begins: seen laid, found as eggs, suspected, or cast back from a later stage; and what it is called. */
import type { Day } from '../core/day.ts';
import { addDays, isoDay, toDay } from '../core/day.ts';
import type { DayWindow, Interval } from '../core/interval.ts';
import { onDay, UNKNOWN_COUNT } from '../core/interval.ts';
import { clauseKey } from '../core/span.ts';
import type { EventBase, Stage } from '../journal/event.ts';
import { castBack, clockFor } from './stageclock.ts';
import { nextBroodName } from './broodnames.ts';
import type { Draft } from './draft.ts';
import { quietDays } from './looks.ts';
import type { Brood, Group } from './stock.ts';
import { newBody } from './tally.ts';
import { isWithoutMale } from './unmated.ts';

/** How an entry tells of a beginning: laid that day, eggs found, only suspected, or a later stage. */
type Beginning = 'laid' | 'maybe' | Stage;

/** Adds a brood to the room and to its group. `name` is the one that the line writes, or null. */
export function beginBrood(
  draft: Draft,
  event: EventBase,
  group: Group,
  how: Beginning,
  name: string | null,
  mothers: readonly string[],
  tank: string | null,
): Brood {
  const laid = laidWindow(draft, event, group, how, mothers, tank);
  const called = name ?? (how === 'maybe' ? suspicion(draft, event, group) : nextBroodName(draft.stock, group.name));
  const brood: Brood = {
    group: group.name,
    mothers: [...mothers],
    oneOf: [],
    suspected: how === 'maybe',
    laid,
    unmated: how !== 'maybe' && isWithoutMale(draft, group, tank, laid),
    laidKnown: how === 'laid' ? 'seen' : how === 'eggs' || how === 'maybe' || how === 'born' ? 'bounded' : 'cast back',
    quiet: quietDays(draft, tank, laid.low, laid.high),
    hatched: null,
    swam: null,
    released: null,
    looks: [],
    natal: tank,
    left: new Map(),
    eggs: null,
    white: null,
    moved: false,
    ended: null,
    price: null,
    ...newBody(called, group.species),
  };
  const some: Interval = how === 'maybe' ? UNKNOWN_COUNT : { low: 1, likely: null, high: Infinity };
  if (tank !== null) brood.parts.set(tank, some);
  brood.total = some;
  draft.stock.broods.set(brood.name, brood);
  draft.stock.living.set(brood.name, brood);
  draft.stock.begunAt.set(clauseKey(event.place), brood);
  group.broods.push(brood.name);
  return brood;
}

/** What was only suspected takes no number: most of it comes to nothing. */
function suspicion(draft: Draft, event: EventBase, group: Group): string {
  const name = `${group.name} suspected ${isoDay(event.day)}`;
  return draft.stock.broods.has(name) ? `${name} at line ${String(event.place.line)}` : name;
}

/** What was suspected without a name: a line that sees it may give it one. */
export function isNameless(draft: Draft, brood: Brood): boolean {
  return brood.suspected && !draft.stock.takenNames.has(brood.name);
}

/** Something was seen of what was suspected: from now on it is a brood, with a number if no line wrote a name. */
export function confirmBrood(draft: Draft, brood: Brood, name: string | null = null): void {
  if (!brood.suspected) return;
  brood.suspected = false;
  const group = brood.group === null ? undefined : draft.stock.groups.get(brood.group);
  if (group) brood.unmated = isWithoutMale(draft, group, brood.natal, brood.laid);
  if (!group || draft.stock.takenNames.has(brood.name)) return;
  const before = brood.name;
  brood.name = name ?? nextBroodName(draft.stock, group.name);
  for (const broods of [draft.stock.broods, draft.stock.living]) {
    broods.delete(before);
    broods.set(brood.name, brood);
  }
  group.broods = group.broods.map((name) => (name === before ? brood.name : name));
}

/** When it can have been laid, by what the line says and by the last look that found no eggs. */
export function laidWindow(
  draft: Draft,
  event: EventBase,
  group: Group,
  how: Beginning,
  mothers: readonly string[],
  tank: string | null,
): DayWindow {
  const none = lastNone(group, mothers, event.day);
  if (how === 'laid') return event.when === null ? onDay(event.day) : within(event.when, event.day, none);
  if (how === 'maybe') {
    if (event.when !== null) return within(event.when, event.day, none);
    const low = toDay(Math.max(event.day - 1, none ?? -Infinity));
    return { low, likely: event.day, high: event.day };
  }
  const seen = event.when?.high ?? event.day;
  return castBack(clockFor(draft, group.species, tank, seen), how, seen, none);
}

/** The last `no eggs` of a group on or before a day; a look at one female says nothing of eggs that may be another's. */
function lastNone({ noEggs }: Group, mothers: readonly string[], day: Day): Day | null {
  if (noEggs === null || noEggs.day > day) return null;
  const { mother } = noEggs;
  const other = mother !== null && mothers.some((one) => one !== mother);
  return other ? null : noEggs.day;
}

/** A stated window, closed on both sides: an open start by the last look without eggs, else by a week. */
function within(when: DayWindow, day: Day, none: Day | null): DayWindow {
  const high = when.high ?? day;
  const stated = when.low ?? none ?? addDays(high, -7);
  const low = toDay(Math.min(high, Math.max(stated, none ?? -Infinity)));
  const likely = when.likely ?? toDay(Math.ceil((low + high) / 2));
  return { low, likely: toDay(Math.min(high, Math.max(low, likely))), high };
}
