/**
 * Jotting at a prompt: a day alone sets the day, a good line is saved at once, a bad one is shown again
 * with what would be read filled in. Leaving at any moment loses no line that was accepted.
 */
import type { Day } from '../../core/day.ts';
import { dated, undated } from '../../language/jotted.ts';
import { jotText, refusedText } from '../../reports/jot.ts';
import type { Look } from '../../reports/look.ts';
import { dayText } from '../../reports/words.ts';
import { plural } from '../../core/words.ts';
import type { Prompt } from '../context.ts';
import type { Exit } from '../exit.ts';
import { EXIT } from '../exit.ts';
import { dayAlone } from './days.ts';
import type { Desk, Wish } from './desk.ts';

export interface Talk {
  readonly desk: Desk;
  readonly prompt: Prompt;
  readonly wish: Wish;
  readonly look: Look;
  readonly say: (draw: () => string) => Promise<void>;
  readonly warn: (text: string) => void;
}

/** A line that was not saved, and what stands in the prompt for mending it. */
interface Mending {
  readonly own: string;
  readonly given: string;
}

const GREETING =
  'one line at a time, as you would write it; Tab completes names; a day alone (Tue, 14 Feb, 2026-02-14)\n' +
  'is the day of the lines after it; Ctrl-D ends\n';

export async function converse(talk: Talk, first: Day): Promise<Exit> {
  const { desk, prompt, look } = talk;
  const toMend: Mending[] = [];
  let [day, saved, status]: [Day, number, Exit] = [first, 0, EXIT.answered];
  await talk.say(() => GREETING);
  for (;;) {
    const mending = prompt.hasMore() ? undefined : toMend.shift();
    const given = mending === undefined ? '' : undated(mending.given, day);
    const asked = await prompt.ask(`${dayText(day, { ...look, machine: false })}: `, given);
    if (asked.kind === 'left') {
      const last = mending !== undefined && asked.words === given ? mending.own : asked.words;
      const unsaved = [...toMend.map(({ own }) => own), last];
      await talk.say(() => farewell(saved, unsaved, day));
      return status;
    }
    const alone = dayAlone(asked.words, desk.book.today);
    if (alone !== null) {
      day = alone;
      continue;
    }
    const line = dated(asked.words, day);
    if (line === '') continue;
    const outcome = desk.write([line], talk.wish);
    switch (outcome.kind) {
      case 'done':
        saved += outcome.answer.saved ? 1 : 0;
        await talk.say(() => jotText(outcome.answer, look));
        outcome.notices.forEach(talk.warn);
        break;
      case 'refused':
        for (const bad of outcome.refused) {
          await talk.say(() => refusedText(bad, look));
          toMend.push({ own: line, given: isLine(bad.write) ? bad.write : bad.text });
        }
        break;
      case 'unsaved':
        [...outcome.notices, outcome.says].forEach(talk.warn);
        toMend.push({ own: line, given: line });
        status = EXIT.noFile;
    }
  }
}

function isLine(write: string | null): write is string {
  return write !== null && /^\d{4}-\d{2}-\d{2}\s/.test(write);
}

function farewell(saved: number, lost: readonly string[], day: Day): string {
  const left = lost.filter((words) => words.trim() !== '').map((words) => `not saved: ${undated(words, day)}\n`);
  return `\n${plural(saved, 'line')} saved\n${left.join('')}`;
}
