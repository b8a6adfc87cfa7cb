/**
 * Older young that must leave before the next spawn of their tank swims, and older young that already
 * endanger younger ones. Fish that leave their sisters and brothers alone, and runs of a colony, are left out.
 */
import { addDays, toDay } from '../../core/day.ts';
import type { Day } from '../../core/day.ts';
import type { DayWindow, Interval } from '../../core/interval.ts';
import { onDay } from '../../core/interval.ts';
import type { LineRef } from '../../core/span.ts';
import { linesOf } from '../../core/span.ts';
import { countWords, dayWords, windowWords } from '../../core/words.ts';
import { bodiesIn, isBrood, partIn } from '../../state/bodies.ts';
import type { SeenBrood } from '../../state/bodies.ts';
import { reached } from '../../state/broodlife.ts';
import type { Room } from '../../state/draft.ts';
import { clockOf, swimDays, usualFor } from '../../state/stageclock.ts';
import { dayAtAge } from '../../state/stagewindows.ts';
import { dangersIn, isSiblingSafe } from '../danger.ts';
import type { Danger } from '../danger.ts';
import { sizeOn } from '../growing.ts';
import { datesOf } from '../laying.ts';
import { rowId } from '../id.ts';
import { expected, isHeld } from '../stages.ts';
import { moveLine } from './destination.ts';
import type { DueItem, DueSource } from './item.ts';

/** They leave so many days before the first day on which the next may swim (ours). */
const BEFORE = 2;
/** A few left-overs of about 1 cm scarcely matter (common practice, no source). */
const FEW = 3;
const SMALL = 10;
/** Days for which a spawn that is only expected counts (ours). */
const EXPECTED_LASTS = 5;

export const youngDue: DueSource = (room, days) =>
  [...room.plumbing.tanks.keys()].flatMap((tank) => {
    // What need only be watched stands with the broods: on the list every day it would be noise.
    const harm = dangersIn(room, tank)
      .filter(({ weight }) => weight === 'danger')
      .map((danger) => endangered(room, danger));
    const spawn = nextSwim(room, tank);
    if (spawn === null) return harm;
    const told = new Set(harm.map(({ older }) => older));
    const rows = olderThan(room, tank, spawn)
      .filter((older) => !told.has(older.name))
      .map((older) => leave(room, tank, older, spawn))
      .filter(({ due }) => (due.low ?? room.on) <= room.on + days);
    return [...harm, ...rows];
  });

interface NextSwim {
  readonly says: string;
  /** When the next young of that tank may swim. */
  readonly window: DayWindow;
  /** The brood, where it is laid. */
  readonly brood: SeenBrood | null;
  readonly group: string | null;
  /** The day on which anything was known of them. */
  readonly known: Day;
  readonly lines: readonly LineRef[];
}

/** The next young that will swim in a tank: laid already, suspected, or announced by the parents. */
function nextSwim(room: Room, tank: string): NextSwim | null {
  const eggs = [...room.stock.living.values()]
    .filter((brood) => brood.ended === null && brood.parts.has(tank) && !reached(brood, 'swam'))
    .map((brood) => ({ brood, window: swimsOn(room, brood) }))
    .filter(({ window }) => window.high === null || window.high + 14 >= room.on)
    .toSorted((a, b) => (a.window.low ?? 0) - (b.window.low ?? 0));
  const [first] = eggs;
  if (first) {
    const { brood, window } = first;
    return {
      says: brood.suspected
        ? `if ${brood.group ?? 'they'} spawned, the young swim ${windowWords(window, room.on)}`
        : `${brood.name} ${isHeld(room, brood) ? 'is released' : 'swims'} ${windowWords(window, room.on)}`,
      window,
      brood,
      group: brood.group,
      known: brood.looks[0]?.day ?? brood.laid.high ?? room.on,
      lines: linesOf(brood.lines.slice(0, 1)),
    };
  }
  for (const group of room.stock.groups.values()) {
    if ((group.parts.get(tank)?.high ?? 0) <= 0 || group.kind === 'colony') continue;
    const sign = group.suspected.findLast((one) => one.kind === 'about to spawn');
    if (!sign || room.on - sign.day > EXPECTED_LASTS) continue;
    const clock = clockOf(room, { species: group.species, natal: tank, laid: onDay(sign.day) });
    const window = dayAtAge(onDay(toDay(Math.max(sign.day, room.on))), swimDays(clock));
    return {
      says: `${group.name} is about to spawn: the next would swim from ${dayWords(window.low ?? room.on, room.on)}`,
      window,
      brood: null,
      group: group.name,
      known: sign.day,
      lines: linesOf([sign.place]),
    };
  }
  return null;
}

/** Not before they were last seen as eggs, as wrigglers or in the mouth. */
function swimsOn(room: Room, brood: SeenBrood): DayWindow {
  return expected(room, brood, 'swim') ?? dayAtAge(brood.laid, swimDays(clockOf(room, brood)));
}

/** Swimming young in that tank that would be too old for the next. */
function olderThan(room: Room, tank: string, spawn: NextSwim): SeenBrood[] {
  return bodiesIn(room, tank)
    .filter((body) => isBrood(body))
    .filter((older) => older !== spawn.brood && reached(older, 'swam') && !isSiblingSafe(room, older))
    .filter((older) => {
      const { gap } = usualFor(clockOf(room, older));
      const apart = (spawn.brood === null ? room.on : laidOn(room, spawn.brood)) - laidOn(room, older);
      const size = sizeOn(room, older, room.on, tank)?.likely ?? 0;
      const leftOvers = partIn(older, tank).high <= FEW && size <= SMALL;
      return gap !== null && apart > gap && !leftOvers;
    });
}

/** The day on which a brood was most likely laid. */
function laidOn(room: Room, brood: SeenBrood): Day {
  return datesOf(room, brood).laid.likely ?? room.on;
}

function leave(room: Room, tank: string, older: SeenBrood, spawn: NextSwim): DueItem {
  const { window } = spawn;
  const chased = older.group === null ? undefined : room.stock.chasedFry.get(older.group);
  const isChased = chased !== undefined && (older.laid.high ?? chased.day) <= chased.day;
  const earliest = window.low ?? room.on;
  // Nobody is late for a day that had passed before anything was known of the next.
  const last = toDay(
    isChased ? Math.min(room.on, Math.max(chased.day, spawn.known)) : Math.max(earliest - BEFORE, spawn.known),
  );
  const from = isChased ? chased.day : spawn.brood === null ? room.on : laidOn(room, spawn.brood);
  const line = moveLine(room, older, tank);
  const rocks =
    spawn.brood !== null && !isHeld(room, spawn.brood) ? '; leave the cave and its rocks where they are' : '';
  const chase = isChased ? `; the parents chase them since ${dayWords(chased.day, room.on)}` : '';
  const lines = linesOf([...spawn.lines, ...older.lines.slice(-1), ...(isChased ? [chased.place] : [])]);
  return {
    id: rowId(tank, older.name, 'leave'),
    place: tank,
    what: `${older.name} out by ${dayWords(last, room.on)}`,
    kind: 'young',
    due: { low: from < last ? from : last, likely: last, high: last },
    weight: 2,
    why: `${spawn.says}; ${olderWords(partIn(older, tank))} would eat them${chase}; ${line.where}${rocks}`,
    close: line.close,
    ...line.sends,
    putOffKey: older.name,
    pressing: false,
    minutes: null,
    because: {
      rule: `older young leave ${String(BEFORE)} days before the first day on which the next may swim; sooner where the parents chase them`,
      source: 'common practice, no source; the two days are ours',
      steps: [
        `${older.name}: laid ${windowWords(datesOf(room, older).laid, room.on)}, ${countWords(partIn(older, tank))} in ${tank}`,
        spawn.says,
        `first of those days ${dayWords(earliest, room.on)}, less ${String(BEFORE)}: ${dayWords(addDays(earliest, -BEFORE), room.on)}`,
        ...(isChased ? [`the parents chase the young since ${dayWords(chased.day, room.on)}: they want to spawn`] : []),
      ],
      lines,
    },
    lines,
  };
}

/** `about 40 (20–80) older ones`; of a number that nobody knows nothing is said. */
function olderWords(count: Interval): string {
  if (count.low === 1 && count.high === 1) return '1 older one';
  return count.low <= 1 && !Number.isFinite(count.high) ? 'the older ones' : `${countWords(count)} older ones`;
}

function endangered(room: Room, danger: Danger): DueItem & { readonly older: string } {
  const { tank, older, younger } = danger;
  const line = moveLine(room, older, tank);
  return {
    older: older.name,
    id: danger.id,
    place: tank,
    what: `take ${older.name} away from ${younger.name}`,
    kind: 'young',
    due: onDay(room.on),
    weight: 2,
    why: `${danger.text}; ${line.where}`,
    close: line.close,
    ...line.sends,
    putOffKey: older.name,
    pressing: false,
    minutes: null,
    because: danger.because,
    lines: danger.lines,
  };
}
