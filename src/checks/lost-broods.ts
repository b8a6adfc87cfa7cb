/** Eggs or wrigglers of which nothing was heard for so long that they must have swum or be gone. */
import { addDays, isoDay } from '../core/day.ts';
import type { Problem } from '../core/problem.ts';
import { tanksOf } from '../state/bodies.ts';
import { reached } from '../state/broodlife.ts';
import { clockOf, swimDays } from '../state/stageclock.ts';
import { dayAtAge } from '../state/stagewindows.ts';
import type { Check } from './check.ts';

/** Days after the last on which they may have swum; until then today's list asks (ours). */
const ASKED_FOR = 21;

export const lostBroods: Check = ({ room }) =>
  [...room.stock.living.values()]
    .filter((brood) => brood.ended === null && !reached(brood, 'swam') && brood.oneOf.length === 0)
    .flatMap((brood): Problem[] => {
      const clock = clockOf(room, brood);
      const { high } = dayAtAge(brood.laid, swimDays(clock));
      const held = clock.release !== null;
      const place = brood.lines.at(-1);
      if (high === null || place === undefined || room.on <= addDays(high, ASKED_FOR)) return [];
      const where = tanksOf(brood)[0] ?? brood.natal ?? brood.group ?? brood.name;
      return [
        {
          kind: 'brood-without-word',
          weight: 'doubt',
          says: brood.suspected
            ? `nothing came of the spawn that was suspected here`
            : `${brood.name} should have ${held ? 'been released' : 'swum'} by ${isoDay(high)}, and there is no word of it since`,
          write: brood.suspected
            ? `on the day of the next look: ${where}: no eggs`
            : `what became of it, on its day: ${where}: ${brood.name} eggs gone   (or: ${held ? 'released' : 'free-swimming'}, about 40)`,
          at: place,
          also: [],
        },
      ];
    });
