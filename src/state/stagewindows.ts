/**
 * Windows of laying, hatching and swimming, narrowed by every look. A look that names a stage bounds a
 * window hard; a clock fills a side that no look bounds and moves the likely day, but never a bound
 * between two looks. Looks that cannot both be right are told, and change nothing.
 */
import type { Day } from '../core/day.ts';
import { addDays, toDay } from '../core/day.ts';
import type { DayWindow, Interval } from '../core/interval.ts';
import { clamp } from '../core/interval.ts';
import type { Place } from '../core/span.ts';
import type { EventBase, Stage } from '../journal/event.ts';
import { rankOfStage } from './broodlife.ts';
import { agesAt, canBeAt, clockOf, swimDays } from './stageclock.ts';
import type { Clock } from './stageclock.ts';
import type { Draft } from './draft.ts';
import type { Brood } from './stock.ts';

/** Takes in a look at a stage: remembers it and narrows the windows of the brood. */
export function lookAt(draft: Draft, brood: Brood, stage: Stage, event: EventBase, count: Interval | null): void {
  const seen = event.when?.high ?? event.day;
  const clock = clockOf(draft, brood);
  if (!canBeAt(draft, brood, stage, seen)) draft.problems.push(cannotBe(brood, stage, event));
  const earlier = [...brood.looks];
  brood.looks.push({ day: event.day, stage, count, when: event.when, place: event.place });
  const rank = rankOfStage(stage);
  if (rank >= 1 && clock.hatch !== null) {
    brood.hatched = narrow(brood.hatched, happened(brood, earlier, 1, event, stage === 'hatched', clock));
  }
  if (stage === 'released' || stage === 'stripped') {
    brood.released = narrow(brood.released, happened(brood, earlier, 2, event, true, clock));
  } else if (rank === 2) {
    const exact = stage === 'born';
    brood.swam = narrow(
      brood.swam,
      exact ? brood.laid : happened(brood, earlier, 2, event, stage === 'free-swimming', clock),
    );
  }
  narrowLaid(draft, brood, stage, event, clock);
}

/**
 * The window in which a stage was reached: after the last look short of it, up to this one. No eggs hatch on the day on
 * which they are laid, nor do wrigglers swim on the day of their hatch (common practice, no source); young in a mouth may
 * be let go on the day on which they were last seen held.
 */
function happened(
  brood: Brood,
  earlier: Brood['looks'],
  rank: 1 | 2,
  event: EventBase,
  ofThatStage: boolean,
  clock: Clock,
): DayWindow {
  const swim = swimDays(clock);
  const ages = rank === 1 ? (clock.hatch ?? swim) : swim;
  const stated = ofThatStage ? event.when : null;
  const high = stated?.high ?? event.day;
  const apart = clock.hatch === null || clock.release !== null ? 0 : 1;
  const short = earlier.filter((look) => rankOfStage(look.stage) < rank && look.day <= high);
  const before = short.map((look) => look.day + apart * (rank - rankOfStage(look.stage) - 1));
  const usual = brood.laid.low === null ? null : brood.laid.low + Math.floor(ages.low);
  if (brood.laidKnown === 'seen' && brood.laid.low !== null) before.push(brood.laid.low + apart * rank);
  const looked = before.length > 0 ? Math.max(...before) : null;
  const low = Math.min(high, stated?.low ?? looked ?? usual ?? high);
  const wish = brood.laid.likely === null || ages.likely === null ? high : brood.laid.likely + ages.likely;
  return { low: toDay(low), likely: toDay(clamp(Math.round(wish), low, high)), high };
}

/** Two windows of the same thing: what both allow; the old one where they share no day. */
export function narrow(old: DayWindow | null, next: DayWindow): DayWindow {
  if (old === null) return next;
  const low = Math.max(old.low ?? -Infinity, next.low ?? -Infinity);
  const high = Math.min(old.high ?? Infinity, next.high ?? Infinity);
  if (low > high) return old;
  const wish = next.likely ?? old.likely;
  return {
    low: Number.isFinite(low) ? toDay(low) : null,
    likely: wish === null ? null : toDay(clamp(wish, low, high)),
    high: Number.isFinite(high) ? toDay(high) : null,
  };
}

/** What a stage says of the day of laying: no younger than the stage takes, no older than it lasts. */
function narrowLaid(draft: Draft, brood: Brood, stage: Stage, event: EventBase, clock: Clock): void {
  if (brood.laidKnown === 'seen' || stage === 'born') return;
  const seen = event.when?.high ?? event.day;
  const rank = rankOfStage(stage);
  const ages = agesAt(clock, stage, true);
  const reachedBy = rank === 0 ? null : rank === 1 ? brood.hatched : (brood.swam ?? brood.released);
  const takes = rank === 0 ? { low: 0, high: ages.high } : rank === 1 ? (clock.hatch ?? ages) : swimDays(clock);
  const from = (reachedBy?.low ?? seen) - Math.ceil(takes.high);
  const to = Math.min(seen, reachedBy?.high ?? seen) - Math.floor(takes.low);
  const { laid } = brood;
  const low = Math.max(laid.low ?? -Infinity, from);
  const high = Math.min(laid.high ?? Infinity, to);
  if (low > high) return;
  brood.laid = {
    low: toDay(low),
    likely: laid.likely === null ? null : toDay(clamp(laid.likely, low, high)),
    high: toDay(high),
  };
}

/** The days on which a brood will (or did) reach an age, from its laying window. */
export function dayAtAge(laid: DayWindow, ages: Interval): DayWindow {
  const at = (day: Day | null, age: number): Day | null =>
    day === null || !Number.isFinite(age) ? null : addDays(day, age);
  return {
    low: at(laid.low, Math.floor(ages.low)),
    likely: laid.likely === null || ages.likely === null ? null : at(laid.likely, Math.round(ages.likely)),
    high: at(laid.high, Math.ceil(ages.high)),
  };
}

function cannotBe(brood: Brood, stage: Stage, event: EventBase): Draft['problems'][number] {
  const before: Place | undefined = brood.looks.at(-1)?.place ?? brood.lines[0];
  return {
    kind: 'stages-contradict',
    weight: 'doubt',
    says: `${brood.name} cannot be at «${stage}» on that day by what was seen before: two spawns, or a misreading`,
    write: `a name of its own, if it is another spawn: ${stage} brood …`,
    at: event.place,
    also: before ? [before] : [],
  };
}
