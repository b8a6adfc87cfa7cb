/** A loop's prefilter: levels read in its chamber, and layers cleaned. */
import { middle } from '../core/interval.ts';
import { isoDay } from '../core/day.ts';
import type { Measure } from '../core/quantity.ts';
import type { EventOf } from '../journal/event.ts';
import type { Draft } from './draft.ts';
import type { Loop, LoopClean, LoopLevel } from './plumbing.ts';
import { endsBy, unclosedRigs } from './rigs.ts';
import { isBy } from './tanks.ts';
import { happened, insertInTime, isAfter, since } from './when.ts';
import { whereOf } from './where.ts';

/** How far above the lip a level may be read while water goes over it, as a share of the lip's height (ours). */
const OVER_THE_LIP = 1.15;

/** Notes a level, as height above the chamber's floor; one above the spill is doubted, one far above it does not count. */
export function noteLevel(draft: Draft, event: EventOf<'level'>): void {
  const loop = draft.plumbing.loops.get(whereOf(event.subject));
  if (loop === undefined) return;
  const level = heightOf(draft, loop, event);
  if (level === null || !isPossible(draft, loop, event, level)) return;
  const { day, minute } = happened(event);
  const at = { day, seq: event.seq };
  for (const earlier of loop.levels.slice(loop.levels.findLastIndex((one) => one.day < day) + 1)) {
    if (earlier.day !== day || earlier.minute !== minute || earlier.spilled) continue;
    const cleanedSince = loop.cleans.findLast((clean) => isAfter(at, clean));
    if (cleanedSince === undefined || !isAfter(cleanedSince, earlier)) earlier.superseded = true;
  }
  insertInTime(loop.levels, {
    day,
    minute,
    seq: event.seq,
    level,
    spilled: false,
    pumpOff: flowStopped(draft, loop.name, event),
    remark: event.remark,
    place: event.place,
    superseded: false,
  });
}

/** What the remark of an overflow names where it was the prefilter that spilled. */
const CLOGGED = /clog|pre-?filter|sponge|layer|muck|dirt/iu;

/**
 * Water over the lip is a level as good as read, and stands for those of the day before it. With the pump or the
 * power off it is no spill of the prefilter: then the pipes have run down; nor is it where its remark tells of another cause.
 */
export function noteSpill(draft: Draft, event: EventOf<'overflowed'>): void {
  const loop = draft.plumbing.loops.get(whereOf(event.subject));
  if (loop === undefined || loop.spillsAt === null || flowStopped(draft, loop.name, event)) return;
  if (event.remark !== null && !CLOGGED.test(event.remark)) return;
  const { day, minute } = happened(event);
  const cleaned = loop.cleans.findLast((clean) => isAfter({ day, seq: event.seq }, clean));
  for (const earlier of since(loop.levels, day)) {
    if (earlier.day === day && (cleaned === undefined || isAfter(earlier, cleaned))) earlier.superseded = true;
  }
  insertInTime(loop.levels, {
    day,
    minute,
    seq: event.seq,
    level: loop.spillsAt,
    spilled: true,
    pumpOff: false,
    remark: null,
    place: event.place,
    superseded: false,
  });
}

function heightOf(draft: Draft, loop: Loop, event: EventOf<'level'>): Measure<'mm'> | null {
  if (event.from === 'bottom') return event.level;
  if (loop.spillsAt !== null) {
    const { low, likely, high } = loop.spillsAt;
    const below = event.level;
    const middle = likely === null || below.likely === null ? null : likely - below.likely;
    return { unit: 'mm', low: low - below.high, likely: middle, high: high - below.low };
  }
  draft.problems.push({
    kind: 'no-spill-height',
    weight: 'stops',
    says: `the height at which ${loop.name} spills is not known, so a level below the lip cannot be placed`,
    write: `${isoDay(event.day)} loop ${loop.name}: spills at 80 mm`,
    at: event.place,
    also: [loop.declared],
  });
  return null;
}

function isPossible(draft: Draft, loop: Loop, event: EventOf<'level'>, level: Measure<'mm'>): boolean {
  const lip = loop.spillsAt?.high ?? Infinity;
  if (level.high >= 0 && level.low <= lip) return true;
  const absurd = level.high < 0 || level.low > lip * OVER_THE_LIP;
  draft.problems.push({
    kind: 'level-above-spill',
    weight: absurd ? 'stops' : 'doubt',
    says:
      level.high < 0
        ? `a level cannot stand under the chamber's floor`
        : `a level of ${mm(level)} is above the ${mm(loop.spillsAt ?? level)} at which ${loop.name} spills`,
    write: `${isoDay(event.day)} ${loop.name}: ${level.high < 0 ? `level 20 mm` : 'overflowed'}`,
    at: event.place,
    also: [loop.declared],
  });
  return !absurd;
}

function mm(length: Measure<'mm'>): string {
  return `${Math.round(middle(length))} mm`;
}

/** True while the return pump or the power of a loop was off: the level then says nothing about clogging. */
function flowStopped(draft: Draft, loop: string, event: EventOf<'level' | 'overflowed'>): boolean {
  const pumpOff = unclosedRigs(draft).some((rig) => {
    if (rig.kind !== 'pump off' || rig.where !== loop) return false;
    const end = endsBy(rig);
    return end === null || !isBy(end, event.day, event.minute);
  });
  const dark = draft.measures.faults.some(
    (fault) => fault.kind === 'power' && fault.fixed === null && (fault.where === loop || fault.where === 'room'),
  );
  return pumpOff || dark;
}

/** Notes layers cleaned; more of them than there are cannot be. */
export function noteClean(draft: Draft, event: EventOf<'layers cleaned'>): void {
  const loop = draft.plumbing.loops.get(whereOf(event.subject));
  if (loop === undefined) return;
  const of = event.of ?? loop.layers;
  const layers = event.layers === 'all' ? (of ?? 1) : event.layers;
  if (layers < 1 || (of !== null && layers > of)) {
    draft.problems.push({
      kind: 'impossible-layers',
      weight: 'stops',
      says: `${layers} of ${of ?? 0} layers cannot be cleaned`,
      write: `${isoDay(event.day)} ${loop.name}: cleaned ${of ?? 1} of ${of ?? 1} layers`,
      at: event.place,
      also: [loop.declared],
    });
    return;
  }
  if (event.of !== null && loop.layers !== null && event.of !== loop.layers) {
    draft.problems.push({
      kind: 'other-layers',
      weight: 'doubt',
      says: `the prefilter of ${loop.name} has ${loop.layers} layers, this line says ${event.of}`,
      write: `${isoDay(event.day)} ${loop.name}: cleaned ${Math.min(layers, loop.layers)} of ${loop.layers} layers`,
      at: event.place,
      also: [loop.declared],
    });
  }
  // `all` of an unknown number is a full clean all the same.
  const whole = event.layers === 'all' ? layers : of;
  insertInTime(loop.cleans, { seq: event.seq, layers, of: whole, place: event.place, ...happened(event) });
}

/** True for a clean of all layers; one that names no number is taken for all. */
export function isFull(clean: Pick<LoopClean, 'layers' | 'of'>): boolean {
  return clean.of === null || clean.layers >= clean.of;
}

/** Levels that speak of clogging, oldest first: not superseded, read with the pump running. */
export function trueLevels<L extends Pick<LoopLevel, 'superseded' | 'pumpOff'>>(loop: {
  readonly levels: readonly L[];
}): L[] {
  return loop.levels.filter((level) => !level.superseded && !level.pumpOff);
}
