/** `tankside cultures`: the live foods. */
import { cultures } from '../../questions/cultures.ts';
import { culturesJson, culturesText } from '../../reports/cultures.ts';
import { answer } from '../answer.ts';
import type { Command } from '../command.ts';

export const command: Command = {
  takes: '',
  about:
    'Each jar of live food: its age, its last harvest, when it turns sour, when to start the next; and hatches under ' +
    'way. Times are usual ones; a chore of your own (M1: restart every 10 days) goes before them in due.',
  flags: [],
  examples: ['tankside cultures', 'tankside cultures --on +7'],
  run: (context, get) =>
    answer(context, get, { ask: (room) => cultures(room), text: culturesText, json: culturesJson }),
};
