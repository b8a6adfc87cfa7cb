/** Eggs or wrigglers of which nothing was heard for so long that they must have swum or be gone. */
import { isoDay } from '../core/day.ts';
import type { Problem } from '../core/problem.ts';
import { tanksOf } from '../state/bodies.ts';
import { clockOf } from '../state/stageclock.ts';
import { withoutWord } from '../state/withoutword.ts';
import type { Check } from './check.ts';

export const lostBroods: Check = ({ room }) =>
  [...room.stock.living.values()].flatMap((brood): Problem[] => {
    const lost = withoutWord(room, brood);
    const place = brood.lines.at(-1);
    if (lost === null || place === undefined) return [];
    const held = clockOf(room, brood).release !== null;
    const where = tanksOf(brood)[0] ?? brood.natal ?? brood.group ?? brood.name;
    return [
      {
        kind: 'brood-without-word',
        weight: 'doubt',
        says: brood.suspected
          ? `nothing came of the spawn that was suspected here`
          : `${brood.name} should have ${held ? 'been released' : 'swum'} by ${isoDay(lost.by)}, and there is no word of it since`,
        write: brood.suspected
          ? `on the day of the next look: ${where}: no eggs`
          : `what became of it, on its day: ${where}: ${brood.name} eggs gone   (or: ${held ? 'released' : 'free-swimming'}, about 40)`,
        at: place,
        also: [],
      },
    ];
  });
