/** `tankside jot`: writes lines down, from the shell, from standard input or at a prompt. */
import { jot } from '../jot/jot.ts';
import type { Command } from '../command.ts';
import { flag, NAMES } from '../flags.ts';

const AS_NOTE = flag('--as-note', 'keep the words as a note, whatever they say');
const DRY_RUN = flag('--dry-run', 'only say how the line is read and what it would change');

export const command: Command = {
  takes: '[WORDS...]',
  about:
    'Adds lines to the journal. Without words it asks for them one by one, exactly as you would write them: the ' +
    "best way, since the shell eats quotes, «;», «#» and «'». With words they are one line of today, or of --on; what " +
    'it makes due, or due no more, is told of today all the same. ' +
    'From standard input every line is added, or none. Each line is checked, shown as it was understood and with ' +
    'what it changes, and is on the disk before it is called saved. A line that cannot be read is not added: ' +
    'what would be read is shown instead.',
  flags: [AS_NOTE, DRY_RUN, NAMES],
  examples: [
    'tankside jot',
    'tankside jot A1: chasing, lights off',
    'tankside jot --on yesterday C1: water change 30 %',
    'tankside jot --dry-run A1: everything undone',
    'tankside jot < tuesday.txt',
  ],
  run: (context, get, words) => jot(context, get, words, { asNotes: get(AS_NOTE), tryOnly: get(DRY_RUN) }),
};
