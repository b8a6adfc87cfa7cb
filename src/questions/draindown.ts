/** What runs down into the sump when the return stops, against the room that it has left: else a power cut floods the floor. */
import type { Interval } from '../core/interval.ts';
import { NONE, plus, times } from '../core/interval.ts';
import type { DeepReadonly } from '../core/readonly.ts';
import { listWords, rangeWords } from '../core/words.ts';
import type { Room } from '../state/draft.ts';
import type { Loop } from '../state/plumbing.ts';
import { holderOf, tanksOn } from '../state/tanks.ts';

/** Millimetres of each tank that stand above its drain and run down (ours: a setting; measure yours with the pump off). */
const ABOVE_THE_DRAIN = { low: 8, likely: 15, high: 30 } as const satisfies Interval;
/** Height of a tank that is told by its litres alone, mm: for its surface (ours). */
const USUAL_HEIGHT = { low: 300, likely: 380, high: 500 } as const satisfies Interval;

export interface DrainDown {
  readonly litres: Interval;
  /** Litres that the sump can still take; null where the journal does not say. */
  readonly spare: Interval | null;
  readonly verdict: 'fits' | 'may overflow' | 'overflows' | 'not known';
  readonly says: string;
  readonly step: string;
}

/** Null where no tank on the loop has a known surface. */
export function drainDown(room: Room, loop: DeepReadonly<Loop>): DrainDown | null {
  const tanks = [...new Set(tanksOn(room, loop.name).map((tank) => holderOf(room, tank)))];
  const surfaces = tanks.map((tank) => surfaceOf(room, tank));
  const known = surfaces.filter((one) => one !== null);
  if (known.length === 0) return null;
  const area = known.reduce<Interval>(plus, NONE);
  const litres: Interval = {
    low: area.low * ABOVE_THE_DRAIN.low,
    likely: area.likely === null ? null : area.likely * ABOVE_THE_DRAIN.likely,
    high: area.high * ABOVE_THE_DRAIN.high,
  };
  const { spare } = loop;
  const verdict = verdictOf(litres, spare);
  const unknown = tanks.filter((_, index) => surfaces[index] === null);
  const left = unknown.length === 0 ? '' : `; ${listWords(unknown)} left out`;
  const runs = `pump off: ${rangeWords(litres)} L and the pipes run down`;
  const room_ = spare === null ? '' : `, spare ${rangeWords(spare)} L`;
  const tell = {
    fits: '',
    'may overflow': ': may overflow, mark the level with the pump off',
    overflows: ': the sump overflows',
    'not known': `: set its room (loop ${loop.name}: spare 60 L)`,
  }[verdict];
  return {
    litres,
    spare,
    verdict,
    says: `${runs}${room_}${tell}`,
    step: `drain-down: surface ${rangeWords(area, 2)} m² × ${ABOVE_THE_DRAIN.low}–${ABOVE_THE_DRAIN.high} mm above the drains (ours) = ${rangeWords(litres)} L, pipes apart${left}`,
  };
}

function verdictOf(litres: Interval, spare: Interval | null): DrainDown['verdict'] {
  if (spare === null) return 'not known';
  if (litres.low > spare.high) return 'overflows';
  return litres.high > spare.low ? 'may overflow' : 'fits';
}

/** Square metres of water surface; null where neither size nor litres are known. */
export function surfaceOf(room: Room, name: string): Interval | null {
  const tank = room.plumbing.tanks.get(name);
  if (tank === undefined) return null;
  if (tank.size !== null) {
    const [length, width] = tank.size;
    const likely = length.likely === null || width.likely === null ? null : (length.likely * width.likely) / 1e6;
    return { low: (length.low * width.low) / 1e6, likely, high: (length.high * width.high) / 1e6 };
  }
  const litres = tank.nominal ?? tank.live;
  if (litres === null) return null;
  const { low, likely, high } = times(litres, 1 / 1000);
  return {
    low: low / (USUAL_HEIGHT.high / 1000),
    likely: likely === null ? null : likely / (USUAL_HEIGHT.likely / 1000),
    high: high / (USUAL_HEIGHT.low / 1000),
  };
}
