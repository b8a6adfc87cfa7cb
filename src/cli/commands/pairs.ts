/** `tankside pairs`: how the pairs stand. */
import { pairs } from '../../questions/pairs.ts';
import { pairsJson, pairsText } from '../../reports/pairs.ts';
import { answer } from '../answer.ts';
import type { Command } from '../command.ts';
import { unknownName } from '../unknown.ts';

export const command: Command = {
  takes: '[NAME]',
  about:
    'How every pair, trio and harem stands: its bond as the journal says it, an open dispute with its day and ' +
    'what to do now, its last spawn, the days usual between spawns, and whether it is late. With the name of a ' +
    'pair, of one of its fish or of its tank: all its disputes and what they teach.',
  flags: [],
  examples: ['tankside pairs', 'tankside pairs Rowan', 'tankside pairs A1 --on 2026-02-15'],
  run: (context, get, words) =>
    answer(context, get, {
      ask(room) {
        const asked = words.length === 0 ? null : words.join(' ');
        const found = pairs(room, asked);
        if (asked !== null && found.pairs.length === 0) {
          const names = room.stock.groups.keys();
          throw unknownName({ what: 'pair, fish or tank', asked, names, all: 'tankside pairs' });
        }
        return found;
      },
      text: pairsText,
      json: pairsJson,
    }),
};
