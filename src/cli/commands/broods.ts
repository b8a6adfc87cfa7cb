/** `tankside broods`: how the young stand. */
import { broods } from '../../questions/broods.ts';
import { broodsJson, broodsText } from '../../reports/broods.ts';
import { answer } from '../answer.ts';
import type { Command } from '../command.ts';
import { unknownName } from '../unknown.ts';

export const command: Command = {
  takes: '[NAME]',
  about:
    'Every brood that is left: where how many are, its age from laying (livebearers: from birth), its stage as last ' +
    'seen, its mean length, what comes next, when it can be sold, and older young that endanger it. With the ' +
    'name of a brood, of a pair, a species or a tank: those alone.',
  flags: [],
  examples: ['tankside broods', 'tankside broods Rowan-1', 'tankside broods A1 --on 2026-03-10 --json'],
  run: (context, get, words) =>
    answer(context, get, {
      ask(room) {
        const asked = words.length === 0 ? null : words.join(' ');
        const found = broods(room, asked);
        if (asked !== null && found.broods.length === 0) {
          const names = broods(room).broods.map(({ name }) => name);
          throw unknownName({ what: 'brood', asked, names, all: 'tankside broods' });
        }
        return found;
      },
      text: broodsText,
      json: broodsJson,
    }),
};
