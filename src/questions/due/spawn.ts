/**
 * Spawning to look for: eggs that were suspected, young that are due to be released or born, and pairs
 * that have just become late. A late pair is news for a week; after that it stands with the pairs only.
 */
import type { Day } from '../../core/day.ts';
import { addDays, toDay } from '../../core/day.ts';
import { onDay } from '../../core/interval.ts';
import type { DayWindow } from '../../core/interval.ts';
import { measure } from '../../core/quantity.ts';
import type { Measure } from '../../core/quantity.ts';
import { linesOf } from '../../core/span.ts';
import type { Place } from '../../core/span.ts';
import { dayWords, plural, rangeWords, sinceWords, windowWords } from '../../core/words.ts';
import { stageDays } from '../../science/stages.ts';
import { speciesOf, tanksOf } from '../../state/bodies.ts';
import type { SeenBrood, SeenGroup } from '../../state/bodies.ts';
import { reached } from '../../state/broodlife.ts';
import type { Room } from '../../state/draft.ts';
import { temperatureAt } from '../../state/temperature.ts';
import { ASKED_FOR } from '../../state/withoutword.ts';
import { rowId } from '../id.ts';
import { datesOf } from '../laying.ts';
import { seatOf } from '../pairs.ts';
import { latestBroods, spawningOf } from '../pairs/spawning.ts';
import { isHeld } from '../stages.ts';
import { subjectFor } from './dispute.ts';
import type { DueItem, DueSource } from './item.ts';

const WRIGGLERS = 'look for wrigglers';
/** What a line says of what was looked for. */
const SEEN = { livebearer: 'born 12', mouthbrooder: 'holding', wrigglers: 'wrigglers', eggs: 'eggs seen' } as const;
/** Days after "about to spawn" during which eggs are looked for (ours). */
const ABOUT_LASTS = 3;
/** Days of carrying after which young can be stripped (common practice, no source: days 14 to 18). */
const STRIP = measure('days', 14, 16, 18);
/** Days during which a late pair is news (ours). */
const NEWS = 7;

export const spawnsDue: DueSource = (room, days) =>
  [...room.stock.groups.values()]
    .filter((group) => group.total.high > 0)
    .flatMap((group) => [
      ...suspicions(room, group),
      ...release(room, group, days),
      ...birth(room, group, days),
      ...late(room, group),
    ]);

type Found = Pick<DueItem, 'what' | 'due' | 'weight' | 'why' | 'close'> & {
  readonly key: string;
  /** The tank, where it is not that of the group. */
  readonly seat?: string | null;
  readonly rule: string;
  readonly source: string;
  readonly steps: readonly string[];
  readonly places: readonly Place[];
};

function row(room: Room, group: SeenGroup, found: Found): DueItem {
  const place = found.seat ?? seatOf(group) ?? group.name;
  const lines = linesOf(found.places);
  const { what, due, weight, why, rule, source, steps } = found;
  return {
    id: rowId(place, found.key),
    place,
    what,
    kind: 'spawn',
    due,
    weight,
    why,
    close: `${found.seat ?? subjectFor(room, group)}: ${found.close}`,
    putOffKey: 'spawn',
    pressing: false,
    minutes: null,
    because: { rule, source, steps, lines },
    lines,
  };
}

type Suspicion = SeenGroup['suspected'][number];

/** Eggs to look for after `about to spawn` or `maybe spawned`: of each female by her last sign, where every one is named. */
function suspicions(room: Room, group: SeenGroup): DueItem[] {
  const open = group.suspected.filter((one) => room.on <= lookedUntil(room, group, one));
  const named = open.every(({ mother }) => mother !== null);
  const last = named ? [...new Map(open.map((one) => [one.mother, one])).values()] : open.slice(-1);
  return last.map((one) => suspicion(room, group, one, last.length > 1 ? one.mother : null));
}

/** The last day on which what was suspected can be found. */
function lookedUntil(room: Room, group: SeenGroup, { kind, day }: Suspicion): Day {
  const guild = speciesOf(room, group)?.traits.guild ?? null;
  const swims =
    stageDays(guild, 'swim', warmth(room, seatOf(group))) ?? stageDays(guild, 'release', warmth(room, seatOf(group)));
  const lasts = kind === 'maybe' && guild !== 'livebearer' ? Math.ceil(swims?.high ?? ABOUT_LASTS) : ABOUT_LASTS;
  return addDays(day, lasts);
}

/** `apart`: the female that tells the row from that of another. */
function suspicion(room: Room, group: SeenGroup, last: Suspicion, apart: string | null): DueItem {
  const guild = speciesOf(room, group)?.traits.guild ?? null;
  const until = lookedUntil(room, group, last);
  const seen = last.kind === 'maybe' ? 'a spawn was suspected' : 'about to spawn';
  const who = last.mother === null ? '' : `${last.mother} `;
  const what = lookFor(room, group, last);
  return row(room, group, {
    // The same on every day, however many others are looked for.
    key: last.mother === null ? 'look for eggs' : `look for eggs of ${last.mother}`,
    what: apart === null || guild === 'mouthbrooder' ? what : `${what} of ${apart}`,
    due: { low: last.day, likely: last.day, high: until },
    weight: 1,
    why: `${group.name}: ${seen} ${sinceDay(last.day, room.on)}, nothing seen since`,
    close:
      who +
      SEEN[what === WRIGGLERS ? 'wrigglers' : guild === 'livebearer' || guild === 'mouthbrooder' ? guild : 'eggs'],
    rule: 'a spawn that was suspected is looked for until its young would swim; `no eggs` or what is seen settles it',
    source: `usual for ${guild ?? 'substrate spawner'}s (common practice, no source)`,
    steps: [`${seen}: ${dayWords(last.day, room.on)}`, `looked for until ${dayWords(until, room.on)}`],
    places: [last.place],
  });
}

function sinceDay(day: Day, on: Day): string {
  return day === on ? 'today' : `on ${dayWords(day, on)}`;
}

function lookFor(room: Room, group: SeenGroup, last: Suspicion): string {
  const guild = speciesOf(room, group)?.traits.guild ?? null;
  if (guild === 'livebearer') return 'look for young';
  if (guild === 'mouthbrooder') return `look whether ${last.mother ?? 'she'} is holding`;
  const hatch = stageDays(guild, 'hatch', warmth(room, seatOf(group)));
  return hatch !== null && room.on - last.day > hatch.high ? WRIGGLERS : 'look for eggs';
}

function warmth(room: Room, seat: string | null): Measure<'C'> | null {
  return seat === null ? null : (temperatureAt(room, seat)?.value ?? null);
}

/** Each holding female: when she lets them go by herself, and from when they can be stripped. */
function release(room: Room, group: SeenGroup, days: number): DueItem[] {
  const held = [...room.stock.living.values()].filter((brood) => brood.group === group.name && isInMouth(room, brood));
  if (held.length > 0) {
    return held.flatMap((brood) => releaseOf(room, group, days, mouthOf(room, group, brood, held)));
  }
  if (group.holding === null) return [];
  const { day, mother, place } = group.holding;
  const laid = onDay(day);
  const close = mother === null ? 'released' : `${mother} released`;
  const mouth = { laid, since: day, last: day, who: mother, seat: null, place, close, key: null };
  return releaseOf(room, group, days, mouth);
}

function isInMouth(room: Room, brood: SeenBrood): boolean {
  return brood.ended === null && !brood.suspected && !reached(brood, 'swam') && isHeld(room, brood);
}

interface Mouth {
  readonly laid: DayWindow;
  /** The first and the last day on which she was seen holding. */
  readonly since: Day;
  readonly last: Day;
  readonly who: string | null;
  /** Where she is, if not where her group lives. */
  readonly seat: string | null;
  readonly place: Place | undefined;
  readonly close: string;
  /** What tells her row from that of another, however many hold. */
  readonly key: string | null;
}

function mouthOf(room: Room, group: SeenGroup, brood: SeenBrood, held: readonly SeenBrood[]): Mouth {
  const { laid } = datesOf(room, brood);
  const tanks = tanksOf(brood);
  const seat = tanks.length === 1 && tanks[0] !== seatOf(group) ? (tanks[0] ?? null) : null;
  const who = brood.mothers.length === 1 ? (brood.mothers[0] ?? null) : null;
  const beside = held.filter((other) => tanksOf(other).some((tank) => tanks.includes(tank)));
  const isOnlyHers = beside.every((other) => other === brood || (who !== null && !mayHold(other, who)));
  const days = brood.looks.map(({ day }) => day);
  const since = days.length > 0 ? toDay(Math.min(...days)) : (laid.high ?? room.on);
  return {
    laid,
    since,
    last: toDay(Math.max(since, ...days)),
    who,
    seat,
    place: brood.lines[0],
    close: isOnlyHers ? (who === null ? 'released' : `${who} released`) : `${brood.name} released`,
    key: brood.name,
  };
}

function mayHold(brood: SeenBrood, mother: string): boolean {
  return brood.mothers.length === 0 || brood.mothers.includes(mother);
}

function releaseOf(room: Room, group: SeenGroup, days: number, mouth: Mouth): DueItem[] {
  const { laid, since, last, seat, close } = mouth;
  const guild = speciesOf(room, group)?.traits.guild ?? 'mouthbrooder';
  const takes = stageDays(guild, 'release', warmth(room, seat ?? seatOf(group)));
  if (takes === null) return [];
  const leaves = notBefore(later(laid, takes), last);
  const strip = later(onDay(laid.likely ?? last), STRIP);
  if ((strip.low ?? last) > room.on + days || room.on > (leaves.high ?? room.on) + ASKED_FOR) return [];
  const who = mouth.who ?? 'she';
  return [
    row(room, group, {
      key: mouth.key === null ? 'release' : `release ${mouth.key}`,
      seat,
      what: `ready a tank: ${who} lets the young go, or strip her`,
      due: { low: strip.low, likely: leaves.likely, high: leaves.high },
      weight: 1,
      why: `${group.name}: holding ${sinceWords(since, room.on)}; release ${windowWords(leaves, room.on)}, or strip ${windowWords(strip, room.on)}`,
      close,
      rule: 'release is counted from laying by the clock of the guild at that temperature; stripping from day 14 to 18',
      source: `usual for ${guild}s (common practice, no source)`,
      steps: [
        `laid ${windowWords(laid, room.on)}`,
        `release after ${rangeWords(takes)} days: ${windowWords(leaves, room.on)}`,
        `strip after ${rangeWords(STRIP)} days from the likely laying: ${windowWords(strip, room.on)}`,
      ],
      places: mouth.place === undefined ? [] : [mouth.place],
    }),
  ];
}

/** A livebearer's next young, from the last that were born. */
function birth(room: Room, group: SeenGroup, days: number): DueItem[] {
  const guild = speciesOf(room, group)?.traits.guild ?? null;
  if (guild !== 'livebearer') return [];
  const { last, interval, waits, because } = spawningOf(room, group);
  if (last === null || interval === null || waits !== null) return [];
  const due = later(last, measure('days', interval.days.low, interval.days.likely, interval.days.high));
  if ((due.low ?? room.on) > room.on + days || (due.high !== null && room.on - due.high > NEWS)) return [];
  return [
    row(room, group, {
      key: 'young due',
      what: 'young due: plants or a breeder net in',
      due,
      weight: 1,
      why: `${group.name}: last young ${windowWords(last, room.on)}, ${rangeWords(interval.days)} days between them (${interval.basis})`,
      // Without a number, and without a sign for one: young whose number nobody knows are read as well.
      close: 'born',
      rule: 'the next young follow the last by the usual days between them',
      source: interval.basis,
      steps: because.steps,
      places: latestBroods(room, group)
        .slice(-1)
        .flatMap((brood) => brood.lines.slice(0, 1)),
    }),
  ];
}

function late(room: Room, group: SeenGroup): DueItem[] {
  const guild = speciesOf(room, group)?.traits.guild ?? null;
  if (guild === 'livebearer') return [];
  const { from, interval, lateDays, because } = spawningOf(room, group);
  if (from === null || interval === null || lateDays === null || lateDays < 1 || lateDays > NEWS) return [];
  const looked = group.noEggs !== null && room.on - group.noEggs.day < lateDays;
  if (looked) return [];
  const place = from.says === null ? latestBroods(room, group).at(-1)?.lines[0] : group.together.at(-1)?.place;
  return [
    row(room, group, {
      key: 'late to spawn',
      what: 'late to spawn: look for eggs, and at food and water',
      due: onDay(room.on),
      weight: 0,
      why: `${group.name}: none seen since ${from.says ?? windowWords(from.window, room.on)}; ${rangeWords(interval.days)} days are usual, ${plural(lateDays, 'day')} over`,
      close: 'no eggs',
      rule: because.rule,
      source: because.source,
      steps: because.steps,
      places: place ? [place] : [],
    }),
  ];
}

/** She was still holding on that day, so that nothing happened before it. */
function notBefore(window: DayWindow, day: Day): DayWindow {
  const later = (other: Day | null): Day | null => (other === null || other < day ? day : other);
  return { low: later(window.low), likely: later(window.likely), high: window.high };
}

/** A window moved on by a length of time. */
function later(from: DayWindow, by: Measure<'days'>): DayWindow {
  const add = (day: Day | null, days: number | null): Day | null =>
    day === null || days === null || !Number.isFinite(days) ? null : addDays(day, Math.round(days));
  return {
    low: add(from.low, Math.floor(by.low)),
    likely: add(from.likely, by.likely),
    high: add(from.high, Math.ceil(by.high)),
  };
}
