/** `tankside due`: today's work. */
import { due } from '../../questions/due.ts';
import { dueJson, dueText } from '../../reports/due.ts';
import { answer } from '../answer.ts';
import type { Command } from '../command.ts';
import { wholeFlag } from '../flags.ts';

const DAYS = wholeFlag('--days DAYS', 'how many days ahead to look (7)', 7);
const MINUTES = wholeFlag('--minutes MINUTES', 'only what fits into that time, heaviest first', null);

export const command: Command = {
  takes: '',
  about:
    'What to do today, most pressing first, then in walking order, with held, sick and quarantine tanks ' +
    'last. Under each thing stands the line to jot when it is done. What was put off is counted at the end.',
  flags: [DAYS, MINUTES],
  examples: [
    'tankside due',
    'tankside due --days 14',
    'tankside due --minutes 40',
    'tankside due --on "next saturday"',
  ],
  run: (context, get) =>
    answer(context, get, {
      ask: (room) => due(room, { days: get(DAYS), minutes: get(MINUTES) }),
      text: dueText,
      json: dueJson,
    }),
};
