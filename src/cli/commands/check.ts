/** `tankside check`: every problem in the journal, and what to write instead. */
import path from 'node:path';
import { linesOf } from '../../language/lines.ts';
import { against } from '../../questions/against.ts';
import { checkJournal, lastDay } from '../../questions/check.ts';
import { againstJson, againstReport } from '../../reports/against.ts';
import { checkJson, checkReport } from '../../reports/check.ts';
import { dayJson, jsonText } from '../../reports/json.ts';
import { discreet, lookOf, show } from '../answer.ts';
import type { Command } from '../command.ts';
import type { Context } from '../context.ts';
import { EXIT } from '../exit.ts';
import type { Exit } from '../exit.ts';
import type { Get } from '../flags.ts';
import { COMMON, NAMES, textFlag } from '../flags.ts';
import type { Journal } from '../journal.ts';
import { openCopy, openJournal } from '../journal.ts';

const AGAINST = textFlag(
  '--against FILE',
  'another copy of the journal: what each has and the other lacks, nothing else',
);

export const command: Command = {
  takes: '',
  about:
    'Reads the whole journal and shows every line that was left out, every contradiction, and what looks forgotten, ' +
    'each with a line that would be read. Looks at the room as its last line leaves it, unless --on says otherwise. ' +
    'Ends with 1 if any line was left out or two sure facts contradict; with --against, if the copies differ.',
  flags: [AGAINST, NAMES],
  examples: [
    'tankside check',
    'tankside check --journal fishroom.txt --json',
    'tankside check --against "fishroom from the phone.txt"',
  ],
  async run(context, get) {
    const journal = await openJournal(context, get);
    const other = get(AGAINST);
    if (other !== null) return compare(context, get, journal, other);
    const on = get(COMMON.on) === null ? (lastDay(journal.reading.events) ?? journal.on) : journal.on;
    const found = checkJournal(journal.reading, journal.room(on), journal.today);
    const lines = linesOf(journal.reading);
    if (get(COMMON.json))
      context.out.write(
        jsonText(discreet(get, journal.reading, { version: 1, on: dayJson(on), ...checkJson(found, lines) })),
      );
    else {
      const look = await lookOf(context, { on, today: journal.today });
      await show(context, () => checkReport(found, lines, look));
    }
    return found.wrong ? EXIT.journalWrong : EXIT.answered;
  },
};

async function compare(context: Context, get: Get, journal: Journal, file: string): Promise<Exit> {
  const there = await openCopy(context, file);
  const found = against(journal.reading.entries, there.entries);
  if (get(COMMON.json))
    context.out.write(
      jsonText(discreet(get, journal.reading, { version: 1, on: dayJson(journal.on), ...againstJson(found) })),
    );
  else {
    const look = await lookOf(context, journal);
    const names = { here: path.basename(journal.path), there: file };
    await show(context, () => againstReport(found, names, look));
  }
  return found.rows.length > 0 ? EXIT.journalWrong : EXIT.answered;
}
