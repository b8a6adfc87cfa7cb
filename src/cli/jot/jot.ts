/** Takes lines from where they come (the shell, standard input, a prompt) and tells what became of them. */
import type { Day } from '../../core/day.ts';
import { changesText, jotJson, refusedJson, refusedText, savedText } from '../../reports/jot.ts';
import { jsonText } from '../../reports/json.ts';
import type { Look } from '../../reports/look.ts';
import { PLAIN } from '../../reports/paint.ts';
import { printableAnswer } from '../../reports/printable.ts';
import { discreet, lookOf, show } from '../answer.ts';
import type { Context } from '../context.ts';
import { readPastDate } from '../dates.ts';
import type { Exit } from '../exit.ts';
import { EXIT, misuse, Stop } from '../exit.ts';
import type { Get } from '../flags.ts';
import { COMMON } from '../flags.ts';
import { journalPath, readMain } from '../journal.ts';
import { complete } from './complete.ts';
import { converse } from './conversation.ts';
import { datedLine, dayAlone } from './days.ts';
import { openDesk } from './desk.ts';
import type { Outcome, Wish } from './desk.ts';

/** Writes down what was given: by the shell, standard input or at the prompt. Throws a `Stop` where no journal is found. */
export async function jot(context: Context, get: Get, words: readonly string[], wish: Wish): Promise<Exit> {
  const file = journalPath(context, get(COMMON.journal));
  const { content } = readMain(context, file);
  const desk = await openDesk(context, file, content);
  const { today } = desk.book;
  const told = get(COMMON.on);
  const day = told === null ? today : readPastDate(told, today);
  // `Tue` on a line of its own is the one before the day that was asked for.
  const from = told === null ? today : day;
  const look = await lookOf(context, { on: today, today });
  if (words.length === 0 && context.input.isTTY) {
    const prompt = await context.prompt((line) => complete(desk.room(), line));
    try {
      const talk = {
        desk,
        prompt,
        wish,
        look,
        say: (draw: () => string) => show(context, draw),
        warn: warner(context),
      };
      return await converse(talk, day, from);
    } finally {
      prompt.close();
    }
  }
  const lines =
    words.length > 0 ? [datedLine(words.join(' '), day, from)] : datedLines(await context.input.text(), day, from);
  if (lines.every((line) => line === '')) throw misuse('there is nothing to write down', 'tankside jot A1: all well');
  return await tell(
    context,
    get,
    desk.write(
      lines.filter((line) => line !== ''),
      wish,
    ),
    look,
  );
}

function warner(context: Context): (text: string) => void {
  return (text) => context.err.write(printableAnswer(`${text}\n`, false));
}

/** Lines as they come in a file: a day alone is the day of those after it. */
function datedLines(text: string, first: Day, today: Day): readonly string[] {
  let day = first;
  return text.split(/\r?\n/).flatMap((words) => {
    const alone = dayAlone(words, today);
    if (alone === null) return [datedLine(words, day, today)];
    day = alone;
    return [];
  });
}

async function tell(context: Context, get: Get, outcome: Outcome, look: Look): Promise<Exit> {
  switch (outcome.kind) {
    case 'done':
      if (get(COMMON.json)) context.out.write(jsonText(discreet(get, outcome.reading, jotJson(outcome.answer))));
      else {
        await show(context, () => savedText(outcome.answer, look));
        await show(context, () => changesText(outcome.answer, look));
      }
      outcome.notices.forEach(warner(context));
      return EXIT.answered;
    case 'refused':
      if (get(COMMON.json)) context.out.write(jsonText(discreet(get, outcome.reading, refusedJson(outcome.refused))));
      for (const bad of outcome.refused) warner(context)(refusedText(bad, { ...look, paint: PLAIN }).trimEnd());
      return EXIT.misuse;
    case 'unsaved':
      outcome.notices.forEach(warner(context));
      throw new Stop(EXIT.noFile, outcome.says);
  }
}
