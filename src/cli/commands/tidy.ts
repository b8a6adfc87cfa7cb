/** `tankside tidy`: the journal in its usual form, with the names of broods written in. */
import { jsonText } from '../../reports/json.ts';
import { tidyReport } from '../../reports/tidy.ts';
import { discreet, lookOf, show, tellLeftOut } from '../answer.ts';
import type { Command } from '../command.ts';
import { COMMON, NAMES, flag } from '../flags.ts';
import { tidyJournal } from '../tidying.ts';

const WRITE = flag('--write', 'change the journal; without it, only shows what would change');

export const command: Command = {
  takes: '',
  about:
    'Shows each line as it is and as it would be in the usual form: one word for each thing, names as they were ' +
    'declared, the names of broods written in. Lines that are not understood, comments and blank lines stay as they ' +
    'are. Refuses where the journal would not say exactly the same. Changes nothing without --write.',
  flags: [WRITE, NAMES],
  examples: ['tankside tidy', 'tankside tidy --write'],
  async run(context, get) {
    const write = get(WRITE);
    const tidying = await tidyJournal(context, get);
    if (write) tidying.write();
    if (get(COMMON.json)) {
      const files = tidying.files.map(({ file, changes }) => ({ file, changes }));
      context.out.write(jsonText(discreet(get, tidying.reading, { version: 1, written: write, files })));
    } else {
      const look = await lookOf(context, tidying);
      await show(context, () => tidyReport(tidying.files, write, look));
    }
    return tellLeftOut(context, get, tidying.leftOut);
  },
};
