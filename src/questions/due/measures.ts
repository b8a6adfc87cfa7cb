/** Every temporary measure that no line has undone, with the patience of its kind and what it costs to leave it. */
import { addDays, type Day } from '../../core/day.ts';
import { exactly, onDay } from '../../core/interval.ts';
import type { DeepReadonly } from '../../core/readonly.ts';
import { ageWords, dayWords, plural } from '../../core/words.ts';
import type { MeasureKind } from '../../journal/event.ts';
import { linesOf } from '../../core/span.ts';
import type { Room } from '../../state/draft.ts';
import type { SeenGroup } from '../../state/bodies.ts';
import type { Fault, Rig } from '../../state/measures.ts';
import { fishIn } from '../../state/places.ts';
import { openDispute } from '../../state/quarrel.ts';
import { MEASURE_WORDS } from '../../state/rigging.ts';
import { lastDay, openRigs } from '../../state/rigs.ts';
import { homeLoopOf, sharers } from '../../state/tanks.ts';
import { rowId } from '../id.ts';
import { CAUTION } from './cautions.ts';
import { keptApart, keptIn, keptParted } from './apart.ts';
import { disputeAsked } from './dispute.ts';
import type { DueItem } from './item.ts';

type OpenRig = DeepReadonly<Rig>;

/** Days that a measure may stand before it is asked for, where its line does not say until when (ours: a setting). */
export const PATIENCE: Readonly<Record<MeasureKind, number>> = {
  'pump off': 0,
  'rocks out': 1,
  'heater off': 1,
  'lights off': 2,
  'air filter': 2,
  'off the loop': 2,
  divider: 7,
  'heat raised': 10,
  'breeder net': 21,
};

/** What a keeper does to undo it. */
const UNDOING: Readonly<Record<MeasureKind, string>> = {
  'pump off': 'pump on again',
  'rocks out': 'put the rocks back',
  'heater off': 'heater on again',
  'lights off': 'lights on again',
  'air filter': 'take the air filter out',
  'off the loop': 'put back on the loop',
  divider: 'take the divider out',
  'heat raised': 'heat back to normal',
  'breeder net': 'let the young out of the net',
};

/** What is told of a divider between two that quarrelled. */
const UNTIL_CALM = 'not before both show themselves and eat, and then while you watch';

/** Measures that keep a quarrelling pair apart or calm: never asked back while the dispute is open. */
const CALMING: ReadonlySet<MeasureKind> = new Set<MeasureKind>(['lights off', 'divider']);

export function measuresDue(room: Room): readonly DueItem[] {
  const open = openRigs(room);
  return open
    .filter((rig) => rig.kind !== 'air filter' || offLoopWith(open, rig) === null)
    .filter((rig) => rig.kind !== 'divider' || !disputeSpeaks(room, rig))
    .map((rig) => lifeline(room, open, rig) ?? rigRow(room, rig));
}

/** While a dispute has a row of its own that one tells what becomes of the divider: two rows would contradict. */
function disputeSpeaks(room: Room, rig: OpenRig): boolean {
  const group = disputeIn(room, rig);
  return group !== null && disputeAsked(room, group) !== null;
}

/** The measure that took a tank off its loop, where that tank lives on this air filter meanwhile. */
function offLoopWith(open: readonly OpenRig[], air: OpenRig): OpenRig | null {
  return open.find(({ kind, where }) => kind === 'off the loop' && where === air.where) ?? null;
}

/** Off the loop on an air filter is one rig with one undoing, in its order: water first, then the filter out. */
function lifeline(room: Room, open: readonly OpenRig[], off: OpenRig): DueItem | null {
  const air = open.find(({ kind, where }) => kind === 'air filter' && where === off.where);
  if (off.kind !== 'off the loop' || air === undefined) return null;
  const [one, two] = [rigRow(room, off), rigRow(room, air)];
  const since = off.day === air.day ? '' : `, that since ${dayWords(air.day, room.on)}`;
  const own = room.measures.faults.find((fault) => fault.where === off.where && fault.fixed === null);
  const broken = waitsFor(room, off) ?? own;
  const apart = keptApart(room, off);
  return {
    ...one,
    ...(two.caution === undefined ? {} : { caution: two.caution }),
    what: `${one.what}, then ${UNDOING['air filter']}`,
    why: [
      `off the loop on an air filter since ${dayWords(off.day, room.on)}${since}`,
      ...(broken === undefined ? [] : [`once mended: ${broken.text}`]),
      ...(apart === null ? [] : [apart.says]),
      ...consequences(room, off),
      ...consequences(room, air),
    ].join('; '),
    putOffAlso: [...otherWords('off the loop'), 'loop', 'the loop', 'air filter', ...otherWords('air filter')],
    close: `${off.where}: ${MEASURE_WORDS['off the loop'].undo}, ${MEASURE_WORDS['air filter'].undo}`,
    because: {
      ...one.because,
      steps: [...one.because.steps, ...two.because.steps],
      lines: linesOf([...one.lines, ...two.lines]),
    },
    lines: linesOf([...one.lines, ...two.lines]),
  };
}

/** Faults that undoing a measure would feed: water pumped into a leak, a heater that is stuck plugged in again. */
const FEEDS: Readonly<Partial<Record<MeasureKind, readonly Fault['kind'][]>>> = {
  'off the loop': ['leak', 'overflow'],
  'pump off': ['leak', 'overflow'],
  'heater off': ['heater stuck', 'leak'],
};

/** Days around a measure in which a fault of the same place, or of the loop that a tank was taken off, is what it was rigged for (ours). */
const FOR_IT = 2;

/** The open fault that a measure waits for: of its place, of its loop or the tanks on that, of the room. */
function waitsFor(room: Room, { kind, where, day }: OpenRig): DeepReadonly<Fault> | null {
  const kinds = FEEDS[kind];
  if (kinds === undefined) return null;
  const loop = homeLoopOf(room, where);
  const near = new Set(['room', where, loop, ...sharers(room, where)]);
  const isItsOwn = (place: string): boolean => place === where || (kind === 'off the loop' && place === loop);
  const open = room.measures.faults.filter(({ fixed }) => fixed === null);
  return (
    open.find((one) => kinds.includes(one.kind) && near.has(one.where)) ??
    open.find((one) => one.kind === 'fault' && isItsOwn(one.where) && Math.abs(one.day - day) <= FOR_IT) ??
    null
  );
}

function waitWords(room: Room, rig: OpenRig): string[] {
  const fault = waitsFor(room, rig);
  if (fault === null) return [];
  return [`not before it is mended: ${fault.where === rig.where ? '' : `${fault.where} `}${fault.text}`];
}

function rigRow(room: Room, rig: OpenRig): DueItem {
  const dispute = disputeIn(room, rig);
  const kept = keptIn(room, rig);
  const apart = keptApart(room, rig) ?? kept ?? keptParted(room, rig);
  const { begin, undo } = MEASURE_WORDS[rig.kind];
  const open = ageWords(exactly(room.on - rig.day));
  const since = `${rig.kind} since ${dayWords(rig.day, room.on)}${rig.day === room.on ? '' : ` (${open})`}`;
  const waits = waitWords(room, rig);
  const more = [
    ...waits,
    ...consequences(room, rig),
    ...(dispute === null ? [] : [rig.kind === 'divider' ? UNTIL_CALM : 'leave it so while the dispute is open']),
    ...(apart === null ? [] : [apart.says]),
  ];
  const caution = cautionOf(room, rig);
  const lines = linesOf([rig.begun, ...rig.again, ...missedChanges(room, rig).map(({ place }) => place)]);
  return {
    id: rowId(rig.where, rig.kind),
    place: rig.where,
    what: `${waits.length > 0 ? 'once mended, ' : kept === null ? '' : 'once water runs again, '}${UNDOING[rig.kind]}`,
    kind: 'measure',
    due: onDay(notBefore(rig, dispute === null ? null : addDays(room.on, 1), apart?.until ?? null)),
    weight: weightOf(room, rig),
    why: [since, ...more].join('; '),
    close: `${rig.where}: ${undo}`,
    ...(caution === undefined ? {} : { caution }),
    putOffKey: rig.kind,
    putOffAlso: otherWords(rig.kind),
    putOffFrom: rig.day,
    pressing: rig.kind === 'pump off' || rig.kind === 'heater off',
    minutes: null,
    because: {
      rule: `«${begin}» stays open until «${undo}» or «everything undone»; silence never closes it`,
      source: rig.until === null && rig.lasts === null ? 'patience of each kind: ours' : 'the journal',
      steps: [since, patienceWords(room, rig), ...more],
      lines,
    },
    lines,
  };
}

/** What a keeper may call its undoing when putting it off: as the journal says it, as the list does. */
function otherWords(kind: MeasureKind): readonly string[] {
  const { begin, undo } = MEASURE_WORDS[kind];
  return [begin, undo, UNDOING[kind]];
}

/** When it is asked for: as its line says or after the patience of its kind, and on none of these days before. */
function notBefore(rig: OpenRig, ...days: readonly (Day | null)[]): Day {
  return days.reduce<Day>((last, day) => (day === null ? last : laterDay(last, day)), dueDay(rig));
}

function dueDay(rig: OpenRig): Day {
  return lastDay(rig) ?? addDays(rig.day, PATIENCE[rig.kind]);
}

function patienceWords(room: Room, rig: OpenRig): string {
  if (rig.until !== null) return `its line says until ${dayWords(rig.until, room.on)}`;
  if (rig.lasts !== null && rig.again.length > 0) return `its lines say until ${dayWords(dueDay(rig), room.on)}`;
  if (rig.lasts !== null) return `its line says for ${lengthWords(Math.round(rig.lasts.high))}`;
  const days = PATIENCE[rig.kind];
  return `usual patience: ${days === 0 ? 'an hour' : plural(days, 'day')}`;
}

function lengthWords(minutes: number): string {
  if (minutes % 1440 === 0) return plural(minutes / 1440, 'day');
  return minutes % 60 === 0 ? `${minutes / 60} h` : plural(minutes, 'minute');
}

function laterDay(a: Day, b: Day): Day {
  return a > b ? a : b;
}

function weightOf(room: Room, rig: OpenRig): 1 | 2 | 3 {
  const over = room.on - notBefore(rig, keptApart(room, rig)?.until ?? null);
  if (rig.kind === 'pump off') return over > 0 ? 3 : 2;
  if (rig.kind === 'heater off') return over > 0 ? 2 : 1;
  const worsens = rig.kind === 'off the loop' || rig.kind === 'heat raised';
  return over > 7 && worsens && fishIn(room, rig.where).length > 0 ? 2 : 1;
}

/** The group in a tank whose open dispute a measure is for; null for measures that are for none. */
function disputeIn(room: Room, rig: OpenRig): SeenGroup | null {
  if (!CALMING.has(rig.kind)) return null;
  for (const group of room.stock.groups.values()) {
    if (!group.parts.has(rig.where) && group.home !== rig.where) continue;
    if (openDispute(group) !== null) return group;
  }
  return null;
}

/** What standing open costs: named, so that a keeper can weigh it. */
function consequences(room: Room, rig: OpenRig): string[] {
  switch (rig.kind) {
    case 'off the loop': {
      const missed = missedChanges(room, rig).length;
      const loop = homeLoopOf(room, rig.where) ?? 'the loop';
      const so =
        missed === 0
          ? `gets no change, heat or dose of ${loop}`
          : `missed ${plural(missed, 'water change')} of ${loop}`;
      return [so, ...(isStill(room, rig.where) ? ['no air filter on record there: nothing moves its water'] : [])];
    }
    case 'air filter':
      return isFresh(room, rig) ? ['not mature yet, do not count on it'] : [];
    case 'pump off':
      return ['the filter starves of oxygen after some hours'];
    case 'rocks out':
      return ['nowhere to hide'];
    default:
      return [];
  }
}

/** A tank with fish that lived by the loop alone, and has no air of its own now. */
function isStill(room: Room, tank: string): boolean {
  const own = room.plumbing.tanks.get(tank)?.filter ?? null;
  const air = openRigs(room, tank).some(({ kind }) => kind === 'air filter');
  const stays = room.measures.unclosed.some(
    ({ kind, where, stays: kept }) => kept && kind === 'air filter' && where === tank,
  );
  return own === null && !air && !stays && fishIn(room, tank).length > 0;
}

/** Changes of the home loop's water since the tank went off it. */
function missedChanges(room: Room, rig: OpenRig): Room['water']['changes'] {
  if (rig.kind !== 'off the loop') return [];
  const loop = homeLoopOf(room, rig.where);
  return room.water.changes.filter(
    (change) => change.day >= rig.day && change.where === loop && !change.tanks.includes(rig.where),
  );
}

/** A filter from new is mature after 2 to 6 weeks (common practice, no source). */
function isFresh(room: Room, { day }: OpenRig): boolean {
  return room.on - day < 42;
}

function cautionOf(room: Room, rig: OpenRig): string | undefined {
  const { kind } = rig;
  if (kind === 'air filter') return isFresh(room, rig) ? CAUTION.freshFilter : undefined;
  if (kind === 'heat raised') return CAUTION.warm;
  return kind === 'pump off' || kind === 'heater off' ? CAUTION.pump : undefined;
}
