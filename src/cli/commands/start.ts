/** `tankside start`: a starter journal, never over an existing file. */
import path from 'node:path';
import { dayJson, jsonText } from '../../reports/json.ts';
import { say } from '../answer.ts';
import type { Command } from '../command.ts';
import type { Context } from '../context.ts';
import { readDate } from '../dates.ts';
import { EXIT, Stop } from '../exit.ts';
import { COMMON } from '../flags.ts';
import { typedName, USUAL_NAME } from '../journal.ts';
import type { CreateFile } from '../../files/port.ts';
import { unseen } from '../outfile.ts';
import { starterJournal } from '../starter.ts';

export const command: Command = {
  takes: '',
  about:
    `Writes ${USUAL_NAME} in this folder (or the file of --journal): a small made-up fish room that already ` +
    'answers due, with the basics of writing in it, dated back from today or --on. A file that is there already is left as it is.',
  flags: [],
  examples: ['tankside start', 'tankside start --journal ~/fish/fishroom.txt'],
  async run(context, get) {
    const file = path.resolve(context.cwd, get(COMMON.journal) ?? usualJournal(context));
    const now = await context.today(null);
    const asked = get(COMMON.on);
    const today = asked === null ? now : readDate(asked, now);
    const created = context.files.create(file, starterJournal(today));
    if (!created.ok) throw notWritten(context, file, created);
    if (get(COMMON.json)) {
      context.out.write(jsonText({ version: 1, on: dayJson(today), created: file }));
    } else {
      say(context, `${file} is written: a small fish room, to be changed into yours\n\n${NEXT}`);
    }
    return EXIT.answered;
  },
};

const NEXT = [
  'tankside due   what to do today',
  'tankside jot   then type what you see at the tanks, a line each: A1: eggs seen',
  '',
].join('\n');

function usualJournal({ env }: Context): string {
  const named = env['TANKSIDE_JOURNAL'];
  return named === undefined || named === '' ? USUAL_NAME : named;
}

function notWritten(
  context: Context,
  file: string,
  { exists, folder, says, unsure }: Extract<CreateFile, { ok: false }>,
): Stop {
  if (unsure === true) return new Stop(EXIT.noFile, unseen(file, says), null);
  if (!exists) {
    const inside = folder === true ? typedName(context, path.join(file, USUAL_NAME)) : 'FILE';
    return new Stop(EXIT.noFile, `${file} cannot be written: ${says}`, `tankside start --journal ${inside}`);
  }
  const there = context.files.read(file);
  // Nothing can be read through a link to nothing, so no command but a new name helps.
  if (!there.ok && !there.missing)
    return new Stop(EXIT.noFile, `${file} cannot be written: ${there.says}`, 'tankside start --journal OTHER-FILE');
  const other = 'tankside due, or tankside start --journal OTHER-FILE';
  return new Stop(EXIT.noFile, `${file} is there already, and start never writes over a file`, other);
}
