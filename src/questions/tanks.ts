/** Every tank: its water, who lives in it, what is rigged, and when it comes free. */
import type { Because } from '../core/because.ts';
import type { Day } from '../core/day.ts';
import type { DayWindow, Interval } from '../core/interval.ts';
import { onDay } from '../core/interval.ts';
import type { Measure } from '../core/quantity.ts';
import type { DeepReadonly } from '../core/readonly.ts';
import type { LineRef } from '../core/span.ts';
import { linesOf } from '../core/span.ts';
import { countWords, dayWords, listWords, windowWords } from '../core/words.ts';
import { bodiesIn, isBrood, partIn, type SeenBody } from '../state/bodies.ts';
import type { Room } from '../state/draft.ts';
import type { Tank } from '../state/plumbing.ts';
import { openRigs } from '../state/rigs.ts';
import { homeLoopOf, isNewWater, loopOf } from '../state/tanks.ts';
import { temperatureAt, type Warmth } from '../state/temperature.ts';
import { liveVolume, type LiveVolume } from '../state/volume.ts';
import { heldBy } from './holds/reach.ts';
import { inQuarantine } from './holds/quarantines.ts';
import { rowId } from './id.ts';
import { retiredWithFish, tanksWithFishToo, type Retired } from './retired.ts';
import { saleableFrom } from './saleable.ts';
import type { WhyRow } from './whyrow.ts';

export interface TankRow {
  readonly id: string;
  readonly name: string;
  /** The loop that it belongs to, and whether it shares its water today. */
  readonly loop: string | null;
  readonly onLoop: boolean;
  readonly litres: DeepReadonly<Measure<'L'>> | null;
  readonly basis: LiveVolume['basis'];
  readonly filter: string | null;
  readonly quarantine: boolean;
  /** Declared a quarantine or hospital tank: no place to grow young out, empty or not. */
  readonly keptForQuarantine: boolean;
  readonly temperature: Warmth | null;
  readonly fish: readonly { readonly name: string; readonly count: Interval }[];
  readonly rigs: readonly { readonly kind: string; readonly since: Day }[];
  readonly faults: readonly { readonly text: string; readonly since: Day }[];
  /** From when on it is free; null where that cannot be told (grown fish live there). */
  readonly free: DayWindow | null;
  readonly freeWhy: string;
  readonly heldUntil: Day | null;
  /** Set where it is retired and fish are on record there all the same. */
  readonly retired: Retired | null;
  readonly because: Because;
  readonly lines: readonly LineRef[];
}

interface TanksOptions {
  /** Only tanks that are free or will come free, soonest first. */
  readonly free: boolean;
}

export interface TanksAnswer {
  readonly rows: readonly TankRow[];
  readonly free: boolean;
}

/**
 * Every tank in use as it stands, and retired ones with fish on record; with `free`, those that come free, soonest
 * first and of one day empty ones first, and after them the ones that are kept for quarantine.
 */
export function tanks(room: Room, options: TanksOptions): TanksAnswer {
  const rows = tanksWithFishToo(room).flatMap((name) => {
    const tank = room.plumbing.tanks.get(name);
    return tank === undefined ? [] : [tankRow(room, tank)];
  });
  if (!options.free) return { rows, free: false };
  const start = (row: TankRow): number => row.free?.likely ?? row.free?.high ?? row.free?.low ?? Infinity;
  const free = rows.filter((row) => row.free !== null && houses(room, row.name));
  const order = (a: TankRow, b: TankRow): number =>
    Number(a.keptForQuarantine) - Number(b.keptForQuarantine) ||
    start(a) - start(b) ||
    Number(a.fish.length > 0) - Number(b.fish.length > 0);
  return { rows: free.sort(order), free: true };
}

/** A tray is no tank to move a brood into, nor is the one that stands for the new water. */
function houses(room: Room, tank: string): boolean {
  return (room.plumbing.tanks.get(tank)?.inTank ?? null) === null && !isNewWater(tank);
}

function tankRow(room: Room, tank: DeepReadonly<Tank>): TankRow {
  const { name } = tank;
  const volume = liveVolume(room, name);
  const bodies = bodiesIn(room, name);
  const rigs = openRigs(room, name);
  const faults = room.measures.faults.filter((fault) => fault.where === name && fault.fixed === null);
  const { free, why } = freeFrom(room, name, bodies);
  const kept = tank.quarantine && free !== null ? ['kept for quarantine, not to grow young out'] : [];
  const freeWhy = [why, ...kept, ...faults.map(({ text }) => `to be mended first: ${text}`)].join('; ');
  const home = homeLoopOf(room, name);
  const retired = retiredWithFish(room, name);
  const lines = linesOf([
    tank.declared,
    ...(retired?.lines ?? []),
    ...rigs.map(({ begun }) => begun),
    ...faults.map(({ begun }) => begun),
    ...bodies.flatMap(({ lines: theirs }) => theirs.slice(-1)),
  ]);
  return {
    id: rowId(name),
    name,
    loop: home,
    onLoop: home !== null && loopOf(room, name) === home,
    litres: volume.litres,
    basis: volume.basis,
    filter: tank.filter,
    quarantine: tank.quarantine || inQuarantine(room, name) !== null,
    keptForQuarantine: tank.quarantine,
    temperature: temperatureAt(room, name),
    fish: bodies.map((body) => ({ name: body.name, count: partIn(body, name) })),
    rigs: rigs.map(({ kind, day }) => ({ kind, since: day })),
    faults: faults.map(({ text, day }) => ({ text, since: day })),
    free,
    freeWhy,
    heldUntil: heldBy(room, name)?.hold.clear ?? null,
    retired,
    because: {
      rule: 'a tank is free when no fish are on record in it; young are counted out once all of them can be sold; one that is kept for quarantine is told last and offered to no young',
      source: 'the journal; sale by the rule of the species',
      steps: [
        `water: ${volume.litres === null ? 'not known' : volume.basis}`,
        ...bodies.map((body) => `${body.name}: ${countWords(partIn(body, name))}`),
        freeWhy,
      ],
      lines,
    },
    lines,
  };
}

/** When the fish of a tank will be gone: young when all can be sold, and never before a quarantine or hold ends. */
function freeFrom(room: Room, tank: string, bodies: readonly SeenBody[]): { free: DayWindow | null; why: string } {
  if (retiredWithFish(room, tank) !== null) return { free: null, why: 'retired' };
  const until = latest(inQuarantine(room, tank)?.until ?? null, heldBy(room, tank)?.hold.clear ?? null);
  if (bodies.length === 0) {
    if (until === null || until <= room.on) return { free: onDay(room.on), why: 'no fish on record there' };
    return { free: onDay(until), why: `empty, held or in quarantine until ${dayWords(until, room.on)}` };
  }
  const grown = bodies.filter((body) => !isBrood(body));
  if (grown.length > 0) return { free: null, why: `home of ${listWords(grown.map(({ name }) => name))}` };
  const sales = bodies.map((body) => ({ body, sale: saleableFrom(room, body, room.on, tank) }));
  const unknown = sales.find(({ sale }) => sale === null);
  if (unknown !== undefined) return { free: null, why: `when ${unknown.body.name} can be sold is not known` };
  const windows = sales.flatMap(({ sale }) => sale?.all ?? []);
  const free = windows.reduce((last, window) => ({
    low: latest(last.low, window.low),
    likely: latest(last.likely, window.likely),
    high: last.high === null || window.high === null ? null : latest(last.high, window.high),
  }));
  const soonest = latest(until, room.on);
  const shifted = {
    low: notBefore(free.low, soonest),
    likely: notBefore(free.likely, soonest),
    high: notBefore(free.high, soonest),
  };
  const names = listWords(bodies.map(({ name }) => name));
  const ready = shifted.high === room.on;
  const when = ready ? `once ${names} are sold: all of them can be` : `when all of ${names} can be sold`;
  return { free: shifted, why: ready ? when : `${when}: ${windowWords(shifted, room.on)}` };
}

function latest(a: Day | null, b: Day | null): Day | null {
  if (a === null) return b;
  return b === null || a > b ? a : b;
}

function notBefore(day: Day | null, until: Day | null): Day | null {
  return day === null || until === null || day >= until ? day : until;
}

/** Rows for `why`. */
export function tankRows(room: Room): readonly WhyRow[] {
  return tanks(room, { free: false }).rows.map(({ id, name, fish, because, lines }) => {
    const who = fish.length === 0 ? 'no fish on record' : listWords(fish.map((one) => one.name));
    return { id, title: `tank ${name}: ${who}`, because, lines };
  });
}
