/**
 * When a standing chore falls due: by what was done and how thoroughly, not by the tick of a date. A
 * part of it buys time in its measure and never starts the whole one's clock anew.
 */
import { addDays, addMonths, type Day } from '../core/day.ts';
import type { DayWindow } from '../core/interval.ts';
import { onDay, middle } from '../core/interval.ts';
import type { DeepReadonly } from '../core/readonly.ts';
import type { Place } from '../core/span.ts';
import { dayWords, plural } from '../core/words.ts';
import { foodClock } from '../science/foods.ts';
import type { Room } from '../state/draft.ts';
import type { StandingChore } from '../state/chores.ts';
import { doneSinceWhole, type Done } from '../state/done.ts';
import type { LoopLevel } from '../state/plumbing.ts';
import { lastsOf, mmWords, prefilterOf } from './prefilter.ts';

type Chore = DeepReadonly<StandingChore>;

export interface ChoreClock {
  readonly chore: Chore;
  /** When the whole of it is due, or null where only a level decides and it is not reached. */
  readonly due: DayWindow | null;
  readonly last: Done | null;
  readonly lastWhole: Done | null;
  /** Parts done since the last whole, and the day until which the best of them buys time. */
  readonly parts: readonly Done[];
  readonly easedUntil: Day | null;
  /** A jar that was started since its last harvest, and the first day on which it gives one. */
  readonly anew: { readonly started: { readonly day: Day; readonly place: Place }; readonly first: Day } | null;
  /** The level that is over its mark, whatever the date. */
  readonly over: DeepReadonly<LoopLevel> | null;
  readonly steps: readonly string[];
  readonly places: readonly Place[];
}

/** The clock of a standing chore on the room's day. */
export function clockOf(room: Room, chore: Chore): ChoreClock {
  const done = doneSinceWhole(room, chore);
  const lastWhole = done.findLast(({ part }) => part >= 1) ?? null;
  const parts = done.filter(({ part, day }) => part < 1 && (lastWhole === null || day >= lastWhole.day));
  const eased = parts.map((part) => ({ part, ...boughtBy(room, chore, part) })).sort((a, b) => b.until - a.until)[0];
  const over = levelOver(room, chore);
  const anew = jarAnew(room, chore, lastWhole);
  const whole = anew === null ? wholeDue(chore, lastWhole) : onDay(anew.first);
  return {
    chore,
    due: over === null ? laterOf(chore, whole, eased?.until ?? null) : onDay(earlier(over.day, whole)),
    last: done.at(-1) ?? null,
    lastWhole,
    parts,
    easedUntil: eased?.until ?? null,
    anew,
    over,
    steps: [
      lastWhole === null
        ? `not done since it was set on ${dayWords(chore.day, room.on)}`
        : `last done in full on ${dayWords(lastWhole.day, room.on)}`,
      ...(anew === null
        ? []
        : [`started anew on ${dayWords(anew.started.day, room.on)}: first harvest ${dayWords(anew.first, room.on)}`]),
      ...(whole === null || anew !== null
        ? []
        : [`${intervalWords(chore)}: ${sumWords(room, chore, lastWhole?.day ?? chore.day, whole)}`]),
      ...(eased === undefined ? [] : [`${eased.part.told} on ${dayWords(eased.part.day, room.on)}: ${eased.step}`]),
      ...(over === null || chore.levelAbove === null
        ? []
        : [`level ${mmWords(over.level)} on ${dayWords(over.day, room.on)} is above ${mmWords(chore.levelAbove)}`]),
    ],
    places: [
      chore.place,
      ...(lastWhole === null ? [] : [lastWhole.place]),
      ...(anew === null ? [] : [anew.started.place]),
      ...parts.map(({ place }) => place),
      ...(over === null ? [] : [over.place]),
    ],
  };
}

function earlier(day: Day, whole: DayWindow | null): Day {
  const due = whole?.likely ?? day;
  return due < day ? due : day;
}

/** `every 42 days`, `every month`, or the level alone. */
export function intervalWords(chore: Chore): string {
  if (chore.monthly !== null) return chore.monthly === 1 ? 'every month' : `every ${chore.monthly} months`;
  if (chore.every !== null) {
    const days = Math.round(middle(chore.every) ?? chore.every.high);
    return days % 7 === 0 && days >= 14 ? `every ${days / 7} weeks` : `every ${days === 1 ? 'day' : `${days} days`}`;
  }
  return 'by its level';
}

/** `11 Jan + 42 days = due 22 Feb`; what falls before the chore was set is due on the day that it was set. */
function sumWords(room: Room, chore: Chore, from: Day, whole: DayWindow): string {
  const due = whole.likely ?? room.on;
  const days = chore.monthly === null ? Math.round(middle(chore.every) ?? due - from) : due - from;
  const sum = addDays(from, days);
  const moved = sum < due ? `, before it was set: due ${dayWords(due, room.on)}` : '';
  return `${dayWords(from, room.on)} + ${plural(days, 'day')} = ${moved === '' ? 'due ' : ''}${dayWords(sum, room.on)}${moved}`;
}

/**
 * The day that a whole one falls due after the last whole one. A chore never done counts from the day
 * that it was set, and none is late before it was set.
 */
function wholeDue(chore: Chore, last: Done | null): DayWindow | null {
  const from = last?.day ?? chore.day;
  const notBefore = (day: Day): Day => (day < chore.day ? chore.day : day);
  if (chore.monthly !== null) return onDay(notBefore(addMonths(from, chore.monthly)));
  if (chore.every === null) return null;
  const { low, high } = chore.every;
  const likely = middle(chore.every) ?? high;
  return {
    low: notBefore(addDays(from, low)),
    likely: notBefore(addDays(from, Math.round(likely))),
    high: Number.isFinite(high) ? notBefore(addDays(from, high)) : null,
  };
}

/** A jar that was started since its last harvest is harvested when it is old enough, whatever the one before gave. */
function jarAnew(room: Room, chore: Chore, last: Done | null): ChoreClock['anew'] {
  const jar = chore.action.kind === 'harvest' ? room.cultures.jars.get(chore.where) : undefined;
  const started = jar?.started ?? null;
  if (jar === undefined || started === null || (last !== null && last.day > started.day)) return null;
  const first = addDays(started.day, foodClock(jar.of)?.first ?? 0);
  return { started, first: first < chore.day ? chore.day : first };
}

/** Till when a part of the chore buys time. */
function boughtBy(room: Room, chore: Chore, part: Done): { until: Day; step: string } {
  const base = chore.monthly === null ? (middle(chore.every) ?? 0) : addMonths(part.day, chore.monthly) - part.day;
  const loop = room.plumbing.loops.get(chore.where);
  const clean = loop?.cleans.find(({ seq }) => seq === part.seq);
  const { share, step } =
    loop !== undefined && clean !== undefined
      ? lastsOf(loop, clean)
      : { share: part.part, step: `${Math.round(part.part * 100)} % of what was asked` };
  const days = Math.round(base * share);
  const until = addDays(part.day, days);
  return {
    until,
    step: `${step}; ${base} days × ${share.toFixed(2)} = ${days}, so it buys till ${dayWords(until, room.on)}`,
  };
}

/** A partial clean leaves the full one where it was; a part of a water change puts the next one off. */
function laterOf(chore: Chore, whole: DayWindow | null, eased: Day | null): DayWindow | null {
  if (whole === null || eased === null || chore.action.kind === 'clean prefilter') return whole;
  const later = (day: Day | null): Day | null => (day !== null && day < eased ? eased : day);
  return { low: later(whole.low), likely: later(whole.likely), high: later(whole.high) };
}

/** The last level since the last clean, where it stands above the chore's mark. */
function levelOver(room: Room, chore: Chore): DeepReadonly<LoopLevel> | null {
  const loop = room.plumbing.loops.get(chore.where);
  const mark = middle(chore.levelAbove);
  if (loop === undefined || mark === null) return null;
  const { level } = prefilterOf(room, loop);
  return level !== null && middle(level.level) > mark ? level : null;
}
