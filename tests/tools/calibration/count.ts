/** Stock count: guessed, counted and moved now and then, some sold, most losses unseen. Nothing is asked within two weeks of a sure count. */
import { likelyCount, priorCount } from '../../../src/questions/counts.ts';
import { countCase } from '../countcase.ts';
import { roomFrom } from './frame.ts';
import type { Calibration } from './frame.ts';

const KNOWN_FOR_DAYS = 14;

export const STOCK_COUNT: Calibration = {
  name: 'stock count',
  unit: 'fish',
  trial: (seed) => {
    const { journal, on, brood: name, truth } = countCase(seed);
    const room = roomFrom(journal, on);
    const brood = room.stock.broods.get(name);
    const last = brood?.counts.at(-1);
    if (!brood || truth === 0 || !last || (last.sure && room.on - last.day < KNOWN_FOR_DAYS)) return null;
    const window = likelyCount(room, brood);
    const alone = priorCount(room, brood);
    return window && alone && { truth, window, default: alone };
  },
};
