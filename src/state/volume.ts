/** How much water is in a tank: as stated, or less than its size says, since glass, sand and the air gap take their part. */
import { exactly, plus, times, type Interval } from '../core/interval.ts';
import type { Measure } from '../core/quantity.ts';
import type { LineRef } from '../core/span.ts';
import { lineOf } from '../core/span.ts';
import { neat } from '../core/units.ts';
import type { Room } from './draft.ts';
import { holderOf, tanksOn } from './tanks.ts';
import type { Day } from '../core/day.ts';

/** Share of the nominal litres that is water (glass, sand, rock and the air gap take 10–20 %): common practice, no source. */
const LIVE_SHARE = { low: 0.8, likely: 0.85, high: 0.9 } as const satisfies Interval;

export interface LiveVolume {
  /** Null where the journal gives neither litres nor size. */
  readonly litres: Measure<'L'> | null;
  readonly nominal: Measure<'L'> | null;
  readonly basis: 'live litres stated' | 'nominal litres less 10–20 %' | 'outside size less 10–20 %' | 'unknown';
  readonly lines: readonly LineRef[];
}

/** Litres of water in a tank; for a tray, of the tank that it hangs in. */
export function liveVolume(room: Room, name: string): LiveVolume {
  const tank = room.plumbing.tanks.get(holderOf(room, name));
  if (tank === undefined) return { litres: null, nominal: null, basis: 'unknown', lines: [] };
  const lines = [lineOf(tank.declared)];
  const boxed = tank.size === null ? null : boxLitres(tank.size);
  const nominal = tank.nominal ?? boxed;
  if (tank.live !== null) return { litres: tank.live, nominal, basis: 'live litres stated', lines };
  if (nominal === null) return { litres: null, nominal, basis: 'unknown', lines };
  const litres: Measure<'L'> = {
    unit: 'L',
    low: neat(nominal.low * LIVE_SHARE.low),
    likely: nominal.likely === null ? null : neat(nominal.likely * LIVE_SHARE.likely),
    high: neat(nominal.high * LIVE_SHARE.high),
  };
  const basis = tank.nominal === null ? 'outside size less 10–20 %' : 'nominal litres less 10–20 %';
  return { litres, nominal, basis, lines };
}

/** Litres of a loop's live water: its sump and every tank that shared it then; null where one is unknown. */
export function loopVolume(room: Room, loop: string, day: Day = room.on): Measure<'L'> | null {
  const sump = room.plumbing.loops.get(loop)?.sump ?? null;
  let total: Interval = sump === null ? exactly(0) : sump;
  const holders = new Set(tanksOn(room, loop, day).map((tank) => holderOf(room, tank)));
  for (const holder of holders) {
    const { litres } = liveVolume(room, holder);
    if (litres === null) return null;
    total = plus(total, litres);
  }
  return sump === null && holders.size === 0
    ? null
    : {
        unit: 'L',
        low: neat(total.low),
        likely: total.likely === null ? null : neat(total.likely),
        high: neat(total.high),
      };
}

/** Litres of a box from length, width and height in mm (1 L = 10⁶ mm³). */
export function boxLitres(size: readonly [Interval, Interval, Interval]): Measure<'L'> {
  const [length, width, height] = size;
  const likely =
    length.likely === null || width.likely === null || height.likely === null
      ? null
      : (length.likely * width.likely * height.likely) / 1e6;
  const volume = {
    low: length.low * width.low * height.low,
    likely: null,
    high: length.high * width.high * height.high,
  };
  return { unit: 'L', ...times(volume, 1e-6), likely };
}
