/** `tankside walk`: the room tank by tank. */
import { walk } from '../../questions/walk.ts';
import { walkJson, walkPaper, walkText } from '../../reports/walk.ts';
import { answer } from '../answer.ts';
import type { Command } from '../command.ts';
import { flag } from '../flags.ts';

const PAPER = flag('--paper', 'for the printer: plain, with lines to write on below each tank');

export const command: Command = {
  takes: '',
  about:
    'The room tank by tank in walking order: who is in it and at what stage, what is rigged or broken, what to ' +
    'look at. Held, sick and quarantine tanks come last.',
  flags: [PAPER],
  examples: ['tankside walk', 'tankside walk --paper', 'tankside walk --on tomorrow'],
  run: (context, get) =>
    answer(context, get, {
      ask: (room) => walk(room),
      text: (found, look) => (get(PAPER) ? walkPaper(found, look) : walkText(found, look)),
      json: walkJson,
    }),
};
