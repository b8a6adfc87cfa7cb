/** `tankside completion SHELL`: commands, options and the room's own names for the Tab key of a shell. */
import { jsonText } from '../../reports/json.ts';
import type { Command } from '../command.ts';
import { namesOf } from '../completion/names.ts';
import { nextAfter } from '../completion/next.ts';
import type { Next } from '../completion/next.ts';
import { SCRIPTS } from '../completion/scripts.ts';
import type { Context } from '../context.ts';
import { EXIT, misuse, Stop } from '../exit.ts';
import { COMMON } from '../flags.ts';
import type { Get } from '../flags.ts';
import { openJournal } from '../journal.ts';
import type { Entry } from '../registry.ts';

/** Completes command lines of those commands, of which it is one itself. */
export function completionOf(commands: readonly Entry[]): Command {
  return {
    takes: 'bash|zsh|fish',
    about:
      'Prints what makes the Tab key complete commands, options and the names of your tanks, loops, fish and auctions; ' +
      'its first line says into which file of the shell it goes. With `words` and the words of a command line so far: ' +
      'all that may come next, each on a line; that is what the shells ask.',
    flags: [],
    examples: ['tankside completion bash', 'tankside completion words -- pairs'],
    async run(context, get, [asked, ...before]) {
      const json = get(COMMON.json);
      if (asked === 'words') {
        const words = await wordsAfter(context, get, await nextAfter(commands, before));
        context.out.write(json ? jsonText({ version: 1, words }) : words.map((word) => `${word}\n`).join(''));
      } else {
        const script = scriptFor(asked);
        context.out.write(json ? jsonText({ version: 1, script }) : script);
      }
      return EXIT.answered;
    },
  };
}

function scriptFor(shell: string | undefined): string {
  const script = SCRIPTS.get(shell ?? '');
  if (script !== undefined) return script;
  const names = [...SCRIPTS.keys()].join(', ');
  const says = shell === undefined ? `completion takes one of ${names}` : `there is no completion for «${shell}»`;
  throw misuse(says, 'tankside completion bash');
}

/** The names are those in the journal that the line tells; none where it cannot be read: a Tab key has no room to say so. */
async function wordsAfter(context: Context, own: Get, { words, names, given }: Next): Promise<readonly string[]> {
  if (names.length === 0) return words;
  const get: Get = (flag) => (given.has(flag.spelling) ? flag.read(given.get(flag.spelling)) : own(flag));
  try {
    return [...words, ...namesOf((await openJournal(context, get)).room(), names)];
  } catch (error) {
    if (error instanceof Stop) return words;
    throw error;
  }
}
