/** `tankside due`: today's work. */
import { due } from '../../questions/due.ts';
import { dueCalendar } from '../../reports/calendar.ts';
import { dueJson, dueText } from '../../reports/due.ts';
import { answer, discreetText } from '../answer.ts';
import type { Command } from '../command.ts';
import { textFlag, wholeFlag } from '../flags.ts';
import { oneOutput, writeCalendar } from '../papers.ts';

const DAYS = wholeFlag('--days DAYS', 'how many days ahead to look (7)', 7);
const MINUTES = wholeFlag('--minutes MINUTES', 'only what fits into that time, heaviest first', null);
const ICS = textFlag('--ics FILE', 'the same as a calendar for ordinary calendar programs (- for standard output)');

export const command: Command = {
  takes: '',
  about:
    'What to do today, most pressing first, then in walking order, with held, sick and quarantine tanks ' +
    'last. Under each thing stands the line to jot when it is done. What was put off is counted at the end.',
  flags: [DAYS, MINUTES, ICS],
  examples: [
    'tankside due',
    'tankside due --days 14',
    'tankside due --minutes 40',
    'tankside due --on "next saturday"',
    'tankside due --days 28 --ics due.ics',
  ],
  run(context, get) {
    oneOutput(get, [get(ICS)]);
    return answer(context, get, {
      ask(room, journal) {
        const { on } = journal;
        const hide = discreetText(get, journal.latest);
        const found = due(room, { days: get(DAYS), minutes: get(MINUTES) });
        return { found, written: writeCalendar(context, get(ICS), () => dueCalendar(found, on, hide), on) };
      },
      text: ({ found, written }, look) => written ?? dueText(found, look),
      json: ({ found }) => dueJson(found),
    });
  },
};
