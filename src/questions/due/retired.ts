/** Fish on record in a tank that is retired: they are somewhere, and are asked for until a line says where. */
import { onDay } from '../../core/interval.ts';
import { dayWords, listWords } from '../../core/words.ts';
import type { Room } from '../../state/draft.ts';
import { rowId } from '../id.ts';
import { retiredWithFish, retiredWords, tanksWithFishToo } from '../retired.ts';
import type { DueItem } from './item.ts';

export function retiredDue(room: Room): readonly DueItem[] {
  return tanksWithFishToo(room).flatMap((tank): DueItem[] => {
    const found = retiredWithFish(room, tank);
    if (found === null) return [];
    const { names, since, jot, lines } = found;
    const who = listWords(names);
    const when = dayWords(since, room.on);
    return [
      {
        id: rowId(tank, 'retired'),
        place: tank,
        what: `say where ${who} went: the tank is retired`,
        kind: 'silence',
        due: onDay(room.on),
        weight: 0,
        why: `retired on ${when}, and ${names.length === 1 ? 'it is' : 'they are'} still on record there`,
        close: jot,
        putOffKey: null,
        pressing: false,
        minutes: null,
        because: {
          rule: 'a tank that is retired holds no fish: whoever is on record there has gone somewhere',
          source: 'the journal',
          steps: [`retired ${when}`, retiredWords(found)],
          lines,
        },
        lines,
      },
    ];
  });
}
