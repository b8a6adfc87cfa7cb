/** `tankside promises`: what is reserved, wanted and kept back. */
import { promises } from '../../questions/promises.ts';
import { promisesJson, promisesText } from '../../reports/promises.ts';
import { answer } from '../answer.ts';
import type { Command } from '../command.ts';
import { flag } from '../flags.ts';

const NAMES = flag('--with-names', "buyers' names in JSON too");

export const command: Command = {
  takes: '',
  about:
    'Reservations with the day on which they lapse, wants with the stock that would meet them, and what is kept back. ' +
    'Says where more is promised than is surely there.',
  flags: [NAMES],
  examples: ['tankside promises', 'tankside promises --on "next saturday"', 'tankside promises --json'],
  run: (context, get) =>
    answer(context, get, { ask: promises, text: promisesText, json: (found) => promisesJson(found, get(NAMES)) }),
};
