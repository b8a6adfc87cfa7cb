/** `tankside settle`: results of an auction into the journal, or the blank sheet for them. */
import type { Command } from '../command.ts';
import { misuse } from '../exit.ts';
import { flag, NAMES, textFlag, wholeFlag } from '../flags.ts';
import { PLAN_FLAGS } from '../planning.ts';
import { blankSheet, settleFrom } from '../settle/desk.ts';

const SHEET = textFlag('--sheet FILE', 'write the blank sheet of its lots into a new file, or - for standard output');
const QUARANTINE = wholeFlag(
  '--quarantine DAYS',
  'of fish that were not sold and came back, 28 unless told; 0: none',
  28,
);
const DRY_RUN = flag('--dry-run', 'only show the lines and what they would change');

export const command: Command = {
  takes: 'AUCTION [FILE]',
  about:
    'Reads the results of an auction from a filled-in sheet (CSV), or from standard input, and adds them to the ' +
    'journal: what each stock fetched, where the unsold went, their quarantine. All of it, or nothing where anything ' +
    'does not add up. Columns: lot, stock, tank, fish, fetched (the whole lot, before the auction takes its part), ' +
    'and for what was not sold back to: a tank, stayed, given or died. Standard input may also hold lines as jot ' +
    'takes them; they get the day of the auction. The blank sheet has the lots of sale --plan with the same options.',
  flags: [SHEET, ...PLAN_FLAGS, QUARANTINE, DRY_RUN, NAMES],
  only: [{ of: PLAN_FLAGS, beside: [SHEET] }],
  examples: [
    'tankside settle Autumn --sheet autumn.csv',
    'tankside settle Autumn autumn.csv --dry-run',
    'tankside settle Autumn autumn.csv',
    'tankside settle Autumn - < results.txt',
  ],
  run(context, get, words) {
    const [auction, source, ...more] = words;
    if (auction === undefined || more.length > 0)
      throw misuse('settle takes an auction and one file', 'tankside settle Autumn results.csv');
    const sheet = get(SHEET);
    if (sheet !== null) return blankSheet(context, get, auction, sheet);
    return settleFrom(context, get, {
      auction,
      source: source ?? null,
      quarantine: get(QUARANTINE),
      tryOnly: get(DRY_RUN),
    });
  },
};
