/**
 * What the stage clocks call for: a look at the hatch, first food at the swim-up and after, the first move
 * away from the parents, and asking what became of young that nobody saw swim.
 */
import { addDays, toDay } from '../../core/day.ts';
import type { Day } from '../../core/day.ts';
import type { DayWindow } from '../../core/interval.ts';
import { onDay } from '../../core/interval.ts';
import type { LineRef } from '../../core/span.ts';
import { linesOf } from '../../core/span.ts';
import { countWords, dayWords, likelyWindowWords, rangeWords, windowWords } from '../../core/words.ts';
import { aliveTotal, tanksOf } from '../../state/bodies.ts';
import type { SeenBrood } from '../../state/bodies.ts';
import type { Room } from '../../state/draft.ts';
import { isFeedOf } from '../../state/fed.ts';
import { clockOf, usualFor } from '../../state/stageclock.ts';
import type { Clock } from '../../state/stageclock.ts';
import { lastSince, since } from '../../state/when.ts';
import { ASKED_FOR } from '../../state/withoutword.ts';
import { isThere } from '../broods.ts';
import { liveFood } from '../cultures.ts';
import { rowId } from '../id.ts';
import { ageOf, datesOf } from '../laying.ts';
import { expected, expectedWords, firstMove, isFreeSwimming, isHeld } from '../stages.ts';
import { unmatedWords } from '../unmated.ts';
import { moveLine } from './destination.ts';
import type { DueItem, DueSource, Sent } from './item.ts';

/** Brine shrimp take a day to a day and a half to hatch (common practice, no source). */
const HATCH_BEFORE = 2;

export const stagesDue: DueSource = (room, days) =>
  [...room.stock.living.values()]
    .filter((brood) => isThere(brood) && !brood.suspected && brood.oneOf.length === 0)
    .flatMap((brood) => [
      ...hatch(room, brood, days),
      ...swimUp(room, brood, days),
      ...feed(room, brood),
      ...move(room, brood, days),
    ]);

/** True from the first day of a window, so many days ahead, until it is long past. */
function isNear(room: Room, window: DayWindow, days: number): boolean {
  const from = window.low ?? room.on;
  const to = window.high ?? from;
  return from <= room.on + days && room.on <= to + ASKED_FOR;
}

function hatch(room: Room, brood: SeenBrood, days: number): DueItem[] {
  const window = expected(room, brood, 'hatch');
  if (window === null || isHeld(room, brood) || !isNear(room, window, days)) return [];
  // Once they may swim, looking for swimmers is the better question.
  const swim = expected(room, brood, 'swim');
  const from = swim?.low ?? null;
  if (from !== null && from <= room.on) return [];
  return [
    row(room, brood, {
      key: 'hatch',
      what: 'look for wrigglers',
      due: window,
      weight: 0,
      why: `${brood.name} hatches ${expectedWords(room, brood, 'hatch', window)} (${clockWords(clockOf(room, brood))})`,
      close: 'wrigglers',
      rule: 'eggs hatch so many days after laying, by way of breeding and temperature',
      steps: [laidWords(room, brood), `hatches ${expectedWords(room, brood, 'hatch', window)}`],
    }),
  ];
}

/** First food, until it is there; and the look, from the first day on which they may swim until somebody sees them. */
function swimUp(room: Room, brood: SeenBrood, days: number): DueItem[] {
  const window = expected(room, brood, 'swim');
  if (window === null || isHeld(room, brood)) return [];
  const clock = clockOf(room, brood);
  const foods = usualFor(clock).firstFood;
  const food = foodReady(room, brood, foods, window);
  const overdue = window.high !== null && room.on > window.high;
  const when = expectedWords(room, brood, 'swim', window);
  const swims = `${brood.name} ${overdue ? 'should have swum' : 'swims'} ${when} (${clockWords(clock)})`;
  const steps = [laidWords(room, brood), `swims ${when}`];
  const low = window.low === null ? null : addDays(window.low, -HATCH_BEFORE);
  const feed = { ...window, low };
  const look: Told = {
    key: 'swim',
    what: overdue ? 'no word of swimming young: look' : 'look for swimming young',
    due: window,
    weight: overdue ? 2 : 1,
    why: food === null ? swims : `${swims}; ${food.says}`,
    // Without a number: one of ours that is jotted as it stands would count as the keeper's guess.
    close: 'free-swimming',
    rule: 'eggs and wrigglers become free-swimming so many days after laying, by way of breeding and temperature',
    steps,
    lines: food?.lines ?? [],
  };
  const set: Told = {
    key: 'food',
    what: `first food ready for ${brood.name}`,
    due: feed,
    weight: window.low !== null && room.on >= window.low ? 2 : 1,
    why: `${swims}; ${foodWords(foods, low, room.on)}`,
    close: foods.includes('brine shrimp')
      ? 'room: hatch 2 g brine shrimp'
      : `${placeOf(brood)}: fed ${foods[0] ?? 'dust food'}`,
    rule: 'young starve within days of swimming free: their first food is set up before the first day on which they may swim',
    steps: [
      ...steps,
      `brine shrimp hatch in 24 to 36 hours: set up ${low === null ? 'before' : dayWords(low, room.on)}`,
      'no live jar, hatch or feed of a first food in the journal',
    ],
  };
  return [
    ...(food === null && !overdue && isNear(room, feed, days) ? [row(room, brood, set)] : []),
    ...(isNear(room, window, days) ? [row(room, brood, look)] : []),
  ];
}

function laidWords(room: Room, brood: SeenBrood): string {
  const { laid, mostLikely } = datesOf(room, brood);
  return `laid ${likelyWindowWords(laid, mostLikely.laid, room.on)}`;
}

function foodWords(foods: readonly string[], from: Day | null, now: Day): string {
  const when = from === null || from <= now ? 'now' : `on ${dayWords(from, now)}`;
  const others = foods.filter((one) => one !== 'brine shrimp').join(' or ');
  if (!foods.includes('brine shrimp')) return `have ${others} ready ${when}`;
  return `set brine shrimp to hatch ${when}${others === '' ? '' : `, or have ${others} ready`}`;
}

/** A jar of a first food that gives on the first day on which they may swim; shrimp set or such food fed in the last two days. */
function foodReady(
  room: Room,
  brood: SeenBrood,
  foods: readonly string[],
  window: DayWindow,
): { says: string; lines: readonly LineRef[] } | null {
  const first = toDay(Math.max(room.on, window.low ?? room.on));
  const jar = liveFood(room, first).jars.find((one) => foods.some((food) => alike(food, one.of)));
  if (jar) return { says: `${jar.of} in ${jar.name}`, lines: jar.lines };
  const fresh = lastSince(room.cultures.hatches, room.on - HATCH_BEFORE, () => true);
  if (fresh) return { says: `${fresh.of} set ${dayWords(fresh.day, room.on)}`, lines: linesOf([fresh.place]) };
  const place = placeOf(brood);
  const fed = lastSince(
    room.cultures.feeds,
    room.on - HATCH_BEFORE,
    (one) => isFeedOf(room, one, place) && foods.some((food) => alike(food, one.food)),
  );
  return fed ? { says: `fed ${fed.food} ${dayWords(fed.day, room.on)}`, lines: linesOf([fed.place]) } : null;
}

function alike(food: string, jar: string): boolean {
  const stem = (word: string): string => word.toLowerCase().replace(/s$/, '');
  return stem(jar).startsWith(stem(food)) || stem(food).startsWith(stem(jar));
}

/** Every day for two weeks after swimming free: the days on which a brood is starved. */
function feed(room: Room, brood: SeenBrood): DueItem[] {
  const free = brood.swam ?? brood.released;
  if (free === null || !isFreeSwimming(room, brood)) return [];
  const place = placeOf(brood);
  if (since(room.cultures.feeds, room.on).some((one) => isFeedOf(room, one, place))) return [];
  const foods = usualFor(clockOf(room, brood)).firstFood;
  const born = brood.laid.low === free.low && brood.laid.high === free.high ? 'birth' : 'laying';
  const age = `${rangeWords(ageOf(room, brood))} days from ${born}`;
  return [
    row(room, brood, {
      key: 'feed',
      what: `feed ${brood.name}, little and often`,
      due: onDay(room.on),
      weight: 1,
      why: `${age}, free-swimming since ${windowWords(free, room.on)}; ${foods.join(' or ')}`,
      close: `${place}: fed ${foods.at(-1) ?? 'dust food'}`,
      daily: true,
      rule: 'young that have just swum free eat several times a day for two weeks',
      steps: [
        `free-swimming since ${windowWords(free, room.on)}`,
        `no feed written in ${place} on ${dayWords(room.on, room.on)}`,
      ],
    }),
  ];
}

function move(room: Room, brood: SeenBrood, days: number): DueItem[] {
  const window = firstMove(room, brood);
  const guild = clockOf(room, brood).guild;
  if (window === null || !isNear(room, window, days) || !livesWithParents(room, brood)) return [];
  const line = moveLine(room, brood);
  return [
    row(room, brood, {
      key: 'move',
      what: `${brood.name} may leave the parents: a tank of its own`,
      due: window,
      weight: 1,
      why: `${countWords(aliveTotal(brood))} with the parents; ${guild ?? 'such fish'}s move ${rangeWords(usualFor(clockOf(room, brood)).firstMove)} days after swimming; ${line.where}`,
      close: line.close,
      ...line.sends,
      rule: 'the first move away from the parents, so many days after swimming free, by way of breeding',
      steps: [
        `free ${windowWords(brood.swam ?? brood.released ?? window, room.on)}`,
        `first move ${windowWords(window, room.on)}`,
      ],
    }),
  ];
}

function livesWithParents(room: Room, brood: SeenBrood): boolean {
  const group = brood.group === null ? undefined : room.stock.groups.get(brood.group);
  return group !== undefined && tanksOf(brood).some((tank) => (group.parts.get(tank)?.high ?? 0) > 0);
}

export function clockWords(clock: Clock): string {
  const usual = `usual for ${clock.guild ?? 'substrate spawner'}s`;
  return clock.temperature === null
    ? `${usual}, no temperature read`
    : `${usual} at ${rangeWords(clock.temperature.value, isWhole(clock.temperature.value) ? 0 : 1)} C`;
}

function isWhole({ low, high }: { readonly low: number; readonly high: number }): boolean {
  return Number.isInteger(low) && Number.isInteger(high);
}

interface Told {
  readonly key: string;
  readonly what: string;
  readonly due: DayWindow;
  readonly weight: DueItem['weight'];
  readonly why: string;
  /** What follows the tank and the brood's name, or a whole line with its own heading. */
  readonly close: string;
  readonly rule: string;
  readonly steps: readonly string[];
  readonly sends?: Sent;
  readonly daily?: boolean;
  readonly lines?: readonly LineRef[];
}

function placeOf(brood: SeenBrood): string {
  return tanksOf(brood)[0] ?? brood.natal ?? brood.name;
}

function row(room: Room, brood: SeenBrood, told: Told): DueItem {
  const place = placeOf(brood);
  const clock = clockOf(room, brood);
  const doubt = unmatedWords(brood);
  const lines = linesOf([...brood.lines.slice(0, 1), ...brood.lines.slice(-1), ...(told.lines ?? [])]);
  return {
    id: rowId(place, brood.name, told.key),
    place,
    what: told.what,
    kind: 'stage',
    due: told.due,
    weight: told.weight,
    why: doubt === null ? told.why : `${told.why}; ${doubt}`,
    close: told.close.includes(': ') ? told.close : `${place}: ${brood.name} ${told.close}`,
    putOffKey: told.key,
    pressing: false,
    minutes: null,
    ...(told.sends && { sends: told.sends }),
    ...(told.daily === true && { daily: true }),
    because: { rule: told.rule, source: `${clockWords(clock)} (common practice, no source)`, steps: told.steps, lines },
    lines,
  };
}
