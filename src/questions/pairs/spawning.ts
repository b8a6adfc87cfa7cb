/**
 * When a pair spawned, how long it usually takes, and whether it is late. Late beyond the pair's own
 * median and max(7 days, twice its median absolute deviation) where it has three intervals or more,
 * else beyond what is usual for such fish (common practice, no source). Only spawns that were seen
 * count: a brood eaten unseen lengthens an interval.
 */
import type { Because } from '../../core/because.ts';
import type { Day } from '../../core/day.ts';
import { onDay } from '../../core/interval.ts';
import type { DayWindow, Interval } from '../../core/interval.ts';
import { mad, median } from '../../core/stats.ts';
import { linesOf } from '../../core/span.ts';
import { dayWords, plural, rangeWords, windowWords } from '../../core/words.ts';
import { guildDefaults } from '../../science/guilds.ts';
import { speciesOf } from '../../state/bodies.ts';
import type { SeenBrood, SeenGroup } from '../../state/bodies.ts';
import type { Room } from '../../state/draft.ts';
import { livingMembers, partedWords } from '../../state/members.ts';
import { openDispute } from '../../state/quarrel.ts';
import { openRigs } from '../../state/rigs.ts';
import { temperatureAt } from '../../state/temperature.ts';
import { isHolding, withoutWord } from '../../state/withoutword.ts';
import { ageOf, datesOf, laidDay } from '../laying.ts';

export interface Spawning {
  readonly last: DayWindow | null;
  readonly lastBrood: string | null;
  /** What the days to the next are counted from: the last spawn, or what brought them together after it. */
  readonly from: { readonly window: DayWindow; readonly says: string | null } | null;
  /** Days between spawns: where it is usual to end up, and what that rests on. */
  readonly interval: { readonly days: Interval; readonly basis: string } | null;
  /** Days beyond the upper end of the interval; 0 in time; null where nobody can say. */
  readonly lateDays: number | null;
  /** Why it is not called late, though it may be: guarding, in a dispute … */
  readonly waits: string | null;
  readonly because: Because;
}

/** A pair's habits change with its age: only its latest intervals teach (ours). */
const LATEST = 12;
/** So many broods, suspicions among them, hold its latest intervals, and all that it still cares for (ours). */
const AT_WORK = 2 * LATEST;
/** Fewer intervals than this teach nothing. */
const ENOUGH = 3;
/** Least margin on a pair's own median, days. */
const LEAST_MARGIN = 7;
/** A brood that left its parents within so many days of laying was taken early (ours). */
const EARLY = 14;
/** Days that a pair is given after a move or a new mate (ours). */
export const SETTLE_DAYS = 21;
/** Below this nobody is expected to spawn, where the species says nothing, °C (ours). */
const COLD = 22;

export function spawningOf(room: Room, group: SeenGroup): Spawning {
  const broods = latestBroods(room, group);
  const last = broods.at(-1) ?? null;
  const interval = group.kind === 'colony' || group.kind === 'group' ? null : intervalOf(room, group, broods);
  const waits = interval === null ? null : waitsFor(room, group, broods);
  const ago = last === null ? null : ageOf(room, last);
  const together = last === null ? null : togetherSince(room, group, last);
  const days = together === null ? (ago?.low ?? null) : room.on - together.day;
  const over = days === null || interval === null ? null : Math.max(0, Math.floor(days - interval.days.high));
  // A female alone may still drop young, and is never late.
  const lateDays = waits === null && partedWords(group) === null ? over : null;
  return {
    last: last === null ? null : datesOf(room, last).laid,
    lastBrood: last?.name ?? null,
    from:
      last === null
        ? null
        : together === null
          ? { window: datesOf(room, last).laid, says: null }
          : { window: onDay(together.day), says: togetherWords(room, together) },
    interval,
    lateDays,
    waits,
    because: {
      rule: 'late is beyond the upper end of the usual days between spawns, counted from the last or from when male and female came together after it; not while guarding, in a dispute, parted, newly moved or cold. None seen is not none laid',
      source: interval?.basis ?? 'the journal',
      steps: [
        last === null || ago === null
          ? 'no spawn seen yet'
          : `last seen: ${last.name}, laid ${windowWords(datesOf(room, last).laid, room.on)}, ${rangeWords(ago)} days ago`,
        ...(interval === null ? [] : [`usually ${rangeWords(interval.days)} days between spawns: ${interval.basis}`]),
        ...(together === null ? [] : [`counted since ${togetherWords(room, together)}`]),
        ...(over === null ? [] : [`${plural(over, 'day')} beyond that`]),
        ...(waits === null ? [] : [`not called late: ${waits}`]),
      ],
      lines: linesOf([
        ...broods.flatMap((brood) => brood.lines.slice(0, 1)),
        ...(together === null ? [] : [together.place]),
      ]),
    },
  };
}

type Together = SeenGroup['together'][number];

function togetherWords(room: Room, { day, how }: Together): string {
  return `${how === 'back' ? 'they were together again' : 'the new mate came'} on ${dayWords(day, room.on)}`;
}

/** A mate that came, or was back, after the last spawn: they begin anew. A livebearer carries young of before. */
function togetherSince(room: Room, group: SeenGroup, last: SeenBrood): Together | null {
  const together = group.together.at(-1);
  if (together === undefined || speciesOf(room, group)?.traits.guild === 'livebearer') return null;
  return together.day > (laidDay(room, last) ?? together.day) ? together : null;
}

/** All broods that the group surely had, oldest first. */
export function broodsOf(room: Room, group: SeenGroup): SeenBrood[] {
  return inOrder(room, group.broods);
}

/** Those of them that were begun last: enough for what the group is at and how often it spawns. */
export function latestBroods(room: Room, group: SeenGroup): SeenBrood[] {
  return inOrder(room, group.broods.slice(-AT_WORK));
}

function inOrder(room: Room, names: readonly string[]): SeenBrood[] {
  return names
    .flatMap((name) => room.stock.broods.get(name) ?? [])
    .filter((brood) => !brood.suspected)
    .toSorted((a, b) => (laidDay(room, a) ?? 0) - (laidDay(room, b) ?? 0));
}

function intervalOf(room: Room, group: SeenGroup, broods: readonly SeenBrood[]): Spawning['interval'] {
  const guild = speciesOf(room, group)?.traits.guild ?? null;
  const usual = guildDefaults(guild);
  const last = broods.at(-1);
  const early = last !== undefined && leftEarly(room, last);
  const own = ownIntervals(room, group, broods.slice(-LATEST - 1));
  const alike = own.filter((one) => one.early === early);
  const taken = alike.length >= ENOUGH ? alike : own;
  const days = taken.map((one) => one.days);
  const mid = median(days);
  if (mid !== null && days.length >= ENOUGH) {
    const margin = Math.max(LEAST_MARGIN, 2 * (mad(days) ?? 0));
    const kind = alike.length >= ENOUGH && early ? ' after broods taken early' : '';
    return {
      days: { low: Math.max(0, mid - margin), likely: mid, high: mid + margin },
      basis: `the median of its own ${String(days.length)} intervals${kind}, and ${rangeWords({ low: margin, likely: null, high: margin })} days`,
    };
  }
  const { low, likely, high } = early ? usual.intervalPulled : usual.interval;
  const which = early ? ' after a brood taken early' : '';
  return {
    days: { low, likely, high },
    basis: `usual for ${guild ?? 'substrate spawner'}s${which} (common practice, no source)`,
  };
}

/** Days between successive spawns with no parting between them; in a trio or harem, between those of one female. */
export function ownIntervals(
  room: Room,
  group: SeenGroup,
  broods: readonly SeenBrood[],
): { days: number; early: boolean }[] {
  const found: { days: number; early: boolean }[] = [];
  // A livebearer carries young of before, and drops them with a male or without.
  const stores = speciesOf(room, group)?.traits.guild === 'livebearer';
  for (const [index, brood] of broods.entries()) {
    const next = broods.slice(index + 1).find((later) => sameMother(later, brood));
    const from = laidDay(room, brood);
    const to = next ? laidDay(room, next) : null;
    if (from === null || to === null || (!stores && wereParted(group, from, to))) continue;
    found.push({ days: to - from, early: leftEarly(room, brood) });
  }
  return found;
}

/** Days without a mate tell nothing of how often they spawn. */
function wereParted(group: SeenGroup, from: Day, to: Day): boolean {
  return group.together.some(({ day }) => day > from && day <= to);
}

function sameMother(a: SeenBrood, b: SeenBrood): boolean {
  if (a.mothers.length !== 1 || b.mothers.length !== 1) return a.mothers.length === b.mothers.length;
  return a.mothers[0] === b.mothers[0];
}

/** True where the parents lost or gave up a brood within two weeks of laying. */
function leftEarly(room: Room, brood: SeenBrood): boolean {
  const from = laidDay(room, brood);
  const { natal } = brood;
  if (from === null || natal === null || brood.parts.has(natal)) return false;
  const left = brood.left.get(natal) ?? brood.ended?.day ?? null;
  return left !== null && left - from <= EARLY;
}

/** Why such a pair is left in peace, or null. */
function waitsFor(room: Room, group: SeenGroup, broods: readonly SeenBrood[]): string | null {
  const tanks = new Set(livingMembers(group).map((fish) => fish.tank));
  if (openDispute(group)) return 'in a dispute';
  if (openRigs(room).some((rig) => rig.kind === 'divider' && tanks.has(rig.where))) return 'on a divider';
  if (isHolding(room, group, room.on)) return 'holding';
  const guarded = broods.find((brood) => isGuarded(room, group, brood));
  if (guarded) return `guarding ${guarded.name}`;
  if (group.bond === 'split up' || isResting(group, broods)) return group.bond;
  const apart = partedWords(group);
  if (apart !== null && !hasStored(room, group)) return apart;
  const { upset } = group;
  if (upset !== null && room.on - upset.day < SETTLE_DAYS) return `${upset.how} on ${dayWords(upset.day, room.on)}`;
  return coldWords(room, group);
}

/** True from `resting` until a spawn shows that the rest is over. */
export function isResting(group: SeenGroup, broods: readonly SeenBrood[]): boolean {
  const since = group.bond === 'resting' ? group.bondSince : null;
  return since !== null && !broods.some((brood) => (brood.laid.low ?? since.day) > since.day);
}

/** True while young of theirs that still need them share a tank with them. */
export function isGuarded(room: Room, group: SeenGroup, brood: SeenBrood): boolean {
  const guild = speciesOf(room, group)?.traits.guild ?? null;
  const usual = guildDefaults(guild);
  if (brood.ended !== null || guild === 'livebearer' || withoutWord(room, brood) !== null) return false;
  const together = [...brood.parts.keys()].some(
    (tank) => tank === group.home || livingMembers(group).some((fish) => fish.tank === tank),
  );
  const leaves = (usual.hatch?.high ?? 0) + (usual.swim?.high ?? 0) + (usual.release?.high ?? 0) + usual.firstMove.high;
  return together && ageOf(room, brood).low <= leaves;
}

/** Days for which a livebearer drops young without a male (common practice, no source: from memory, some months). */
const STORED = 90;

/** True for females of a livebearer that were with a male not long ago. */
function hasStored(room: Room, group: SeenGroup): boolean {
  if (speciesOf(room, group)?.traits.guild !== 'livebearer') return false;
  if (!livingMembers(group).some((fish) => fish.sex === 'female')) return false;
  const lost = group.members.flatMap((fish) => (fish.sex === 'male' && fish.gone !== null ? [fish.gone.day] : []));
  const parted = group.upset === null ? [] : [group.upset.day];
  return room.on - Math.max(...lost, ...parted) <= STORED;
}

function coldWords(room: Room, group: SeenGroup): string | null {
  if (group.home === null) return null;
  const water = temperatureAt(room, group.home)?.value;
  const least = speciesOf(room, group)?.traits.temperature?.low ?? COLD;
  return water !== undefined && water.high < least ? `cold: ${rangeWords(water)} C` : null;
}
