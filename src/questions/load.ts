/**
 * What a loop's prefilter has had to catch, in load-days: a day with all its tanks on and the usual
 * feeding counts one. By the grams fed where they are logged nearly every other day, else by the litres of the tanks on it.
 */
import { middle } from '../core/interval.ts';
import { addDays, toDay, type Day } from '../core/day.ts';
import type { DeepReadonly } from '../core/readonly.ts';
import { listWords } from '../core/words.ts';
import type { Room } from '../state/draft.ts';
import type { Loop } from '../state/plumbing.ts';
import { holderOf, homeLoopOf, loopOf, tanksOn } from '../state/tanks.ts';
import { liveVolume } from '../state/volume.ts';
import { since } from '../state/when.ts';

export interface LoadClock {
  readonly basis: 'grams fed' | 'litres on the loop';
  /** Load-days between two days. */
  readonly between: (from: Day, to: Day) => number;
  /** The day on which so many load-days have gone by since `from`: the load of the room's day goes on, until a tank is back whose line says when. */
  readonly dayAt: (from: Day, load: number) => number;
  /** In words, where it was not one all the way since a day: which tanks were off. */
  readonly step: (since: Day) => string | null;
}

/** Grams count where at least this share of the days has an entry, and there are so many (ours). */
const LOGGED = 0.4;
const ENTRIES = 14;

interface Span {
  readonly from: Day;
  readonly load: number;
}

/** The load of a loop from a day on. */
export function loadClock(room: Room, loop: DeepReadonly<Loop>, from: Day): LoadClock {
  const grams = gramsADay(room, loop.name, from);
  const spans = grams ?? litreSpans(room, loop.name, from);
  const today = grams === null ? (spans.findLast((span) => span.from <= room.on)?.load ?? 1) : 1;
  const at = (day: number): number => {
    let sum = 0;
    for (let index = 0; index < spans.length; index += 1) {
      const span = spans[index];
      if (span === undefined || span.from >= day) break;
      const end = Math.min(day, spans[index + 1]?.from ?? Infinity);
      sum += (end - span.from) * Math.max(0.05, span.load);
    }
    return sum;
  };
  return {
    basis: grams === null ? 'litres on the loop' : 'grams fed',
    between: (first, last) => at(last) - at(first),
    dayAt(first, load) {
      const now = at(room.on) - at(first);
      if (load >= now) return dayAhead(room.on, load - now, today, spans);
      // In the past: the first day by whose end the load was reached, and the share of that day.
      for (let day = first; day < room.on; day = addDays(day, 1)) {
        const [before, after] = [at(day) - at(first), at(day + 1) - at(first)];
        if (after >= load) return day + (load - before) / (after - before);
      }
      return room.on;
    },
    step: (since) => stepOf(room, loop.name, grams !== null, since),
  };
}

/** The day on which so much more load has gone by, as the load goes on and changes. */
function dayAhead(on: Day, load: number, today: number, spans: readonly Span[]): number {
  let [day, rest, rate]: [number, number, number] = [on, load, Math.max(0.05, today)];
  for (const span of spans.filter(({ from }) => from > on)) {
    const until = (span.from - day) * rate;
    if (until >= rest) break;
    [day, rest, rate] = [span.from, rest - until, Math.max(0.05, span.load)];
  }
  return day + rest / rate;
}

function stepOf(room: Room, loop: string, byGrams: boolean, since: Day): string | null {
  if (byGrams) return 'load by the grams fed a day';
  const off = room.plumbing.order.filter(
    (tank) =>
      homeLoopOf(room, tank) === loop &&
      (loopOf(room, tank) !== loop || room.plumbing.tanks.get(tank)?.plumbed.some((one) => one.day > since)),
  );
  return off.length === 0 ? null : `load by the litres on the loop; not on it all the time: ${listWords(off)}`;
}

/** A span a day: grams fed in that water over their mean; a day without an entry counts as the mean. Null where too little is logged. */
function gramsADay(room: Room, loop: string, from: Day): Span[] | null {
  const days = room.on - from + 1;
  const fed = new Map<Day, number>();
  for (const feed of since(room.cultures.feeds, from)) {
    const grams = middle(feed.grams);
    if (grams === null || (feed.where !== loop && loopOf(room, feed.where, feed.day) !== loop)) continue;
    fed.set(feed.day, (fed.get(feed.day) ?? 0) + grams);
  }
  if (fed.size < ENTRIES || fed.size < LOGGED * days) return null;
  const mean = [...fed.values()].reduce((sum, one) => sum + one, 0) / fed.size;
  if (mean <= 0) return null;
  const spans = Array.from({ length: days }, (_, index): Span => {
    const day = addDays(from, index);
    return { from: day, load: (fed.get(day) ?? mean) / mean };
  });
  return [...spans, { from: addDays(room.on, 1), load: 1 }];
}

/** Spans between the days on which a tank went off or came back, or is to come back: litres on the loop over those of all its tanks. */
function litreSpans(room: Room, loop: string, from: Day): Span[] {
  const home = [...room.plumbing.tanks.values()].filter(({ plumbed }) => plumbed.some((one) => one.home === loop));
  const starts = new Set<Day>([from]);
  for (const { plumbed, retired } of home) {
    for (const { day, until } of plumbed) {
      if (day > from && day <= room.on) starts.add(day);
      if (until !== null && until.day > from) starts.add(until.day);
    }
    if (retired !== null && retired.day > from && retired.day <= room.on) starts.add(retired.day);
  }
  const litres = new Map<string, number>();
  const held = (tank: string): number => {
    const known = litres.get(tank) ?? middle(liveVolume(room, tank).litres) ?? 100;
    litres.set(tank, known);
    return known;
  };
  const on = (day: Day): number =>
    [...new Set(tanksOn(room, loop, day).map((tank) => holderOf(room, tank)))].reduce(
      (sum, tank) => sum + held(tank),
      0,
    );
  const days = [...starts].sort((a, b) => a - b);
  const loads = days.map(on);
  const most = Math.max(...loads);
  return days.map((day, index) => ({ from: toDay(day), load: most > 0 ? (loads[index] ?? most) / most : 1 }));
}
