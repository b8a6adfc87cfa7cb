/** `tankside check`: every problem in the journal, and what to write instead. */
import { linesOf } from '../../language/lines.ts';
import { checkJournal, lastDay } from '../../questions/check.ts';
import { checkJson, checkReport } from '../../reports/check.ts';
import { dayJson, jsonText } from '../../reports/json.ts';
import { lookOf, show } from '../answer.ts';
import type { Command } from '../command.ts';
import { EXIT } from '../exit.ts';
import { COMMON } from '../flags.ts';
import { openJournal } from '../journal.ts';

export const command: Command = {
  takes: '',
  about:
    'Reads the whole journal and shows every line that was left out, every contradiction, and what looks forgotten, ' +
    'each with a line that would be read. Looks at the room as its last line leaves it, unless --on says otherwise. ' +
    'Ends with 1 if any line was left out or two sure facts contradict.',
  flags: [],
  examples: ['tankside check', 'tankside check --journal fishroom.txt --json'],
  async run(context, get) {
    const journal = await openJournal(context, get);
    const on = get(COMMON.on) === null ? (lastDay(journal.reading.events) ?? journal.on) : journal.on;
    const found = checkJournal(journal.reading, journal.room(on), journal.today);
    const lines = linesOf(journal.reading);
    if (get(COMMON.json)) context.out.write(jsonText({ version: 1, on: dayJson(on), ...checkJson(found, lines) }));
    else {
      const look = await lookOf(context, { on, today: journal.today });
      await show(context, () => checkReport(found, lines, look));
    }
    return found.wrong ? EXIT.journalWrong : EXIT.answered;
  },
};
