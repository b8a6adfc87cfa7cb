/** What was done to a water after a reading of it, so that the reading tells what was and not what is. */
import type { Room } from '../state/draft.ts';
import { isToldLater } from '../state/when.ts';
import { mayAdd, type Added } from './doses.ts';
import { dosesIn, type Given } from './given.ts';
import { raisesPh } from './raised.ts';
import type { LastReading } from './readings.ts';
import type { WaterBody } from './waters.ts';

/** Changes of this water after a reading. */
export function changesAfter(room: Room, body: WaterBody, reading: LastReading): Room['water']['changes'] {
  const { changes } = room.water;
  const from = changes.findLastIndex(({ day }) => day < reading.day) + 1;
  return changes
    .slice(from)
    .filter(
      (change) =>
        isToldLater(change, reading) &&
        (change.where === body.name || body.tanks.some((tank) => change.tanks.includes(tank))),
    );
}

/** Doses of this water after a reading of its pH that can have raised it. */
export function raisedAfter(room: Room, body: WaterBody, reading: LastReading): readonly Given[] {
  return dosesAfter(room, body, reading).filter(({ product }) => raisesPh(product));
}

/** Doses of this water after a reading of its hardness that added to it; some of them nobody can tell by weight. */
export function hardenedAfter(room: Room, body: WaterBody, reading: LastReading, of: Added['of']): readonly Given[] {
  return dosesAfter(room, body, reading).filter(({ product }) => mayAdd(product, of));
}

function dosesAfter(room: Room, body: WaterBody, reading: LastReading): readonly Given[] {
  return dosesIn(room, body).filter((dose) => isToldLater(dose, reading));
}
