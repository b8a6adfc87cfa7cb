/** `tankside promises`: what is reserved, wanted and kept back; and what may still be offered. */
import { promises } from '../../questions/promises.ts';
import { priceList } from '../../questions/promises/pricelist.ts';
import { priceListJson, priceListText } from '../../reports/promises-list.ts';
import { promisesJson, promisesText } from '../../reports/promises.ts';
import { answer } from '../answer.ts';
import type { Command } from '../command.ts';
import { NAMES, flag } from '../flags.ts';

const LIST = flag('--list', 'a plain price list of what may be offered, to paste into a message');
export const command: Command = {
  takes: '',
  about:
    'Reservations with the day on which they lapse and the deposits paid, wants with the stock that meets them now ' +
    'or surely will in time, and what is kept back. Says where more is promised than is surely there. With --list: ' +
    'what is ready and promised to nobody, a line each.',
  flags: [LIST, NAMES],
  examples: ['tankside promises', 'tankside promises --on "next saturday"', 'tankside promises --list'],
  run: (context, get) =>
    get(LIST)
      ? answer(context, get, { ask: priceList, text: priceListText, json: priceListJson })
      : answer(context, get, {
          ask: (room) => promises(room),
          text: promisesText,
          json: (found) => promisesJson(found, get(NAMES)),
        }),
};
