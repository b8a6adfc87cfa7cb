/**
 * Jotting at a prompt: a day alone sets the day, a good line is saved at once, a bad one is shown again
 * with what would be read filled in. Leaving at any moment loses no line that was accepted.
 */
import type { Day } from '../../core/day.ts';
import { declares, undated } from '../../language/jotted.ts';
import { changesText, refusedText, savedText } from '../../reports/jot.ts';
import type { Look } from '../../reports/look.ts';
import { dayText } from '../../reports/words.ts';
import { plural } from '../../core/words.ts';
import type { Prompt } from '../context.ts';
import type { Exit } from '../exit.ts';
import { EXIT } from '../exit.ts';
import { datedLine, dayAlone } from './days.ts';
import type { Desk, Wish } from './desk.ts';

interface Talk {
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
  'write each line as you would on paper; Tab completes names; a day on its own\n' +
  '(Tue, 14 Feb, 2026-02-14) is the day of the lines after it; Ctrl-D ends\n';

/** What has been going on at the prompt. */
interface Session {
  day: Day;
  saved: number;
  /** The disk refused a line that nobody has saved since. */
  broken: boolean;
  readonly toMend: Mending[];
}

/** Talks until the keeper leaves, days told as seen from `from`. Ends with a failure where the last line could not be saved. */
export async function converse(talk: Talk, first: Day, from: Day): Promise<Exit> {
  const { prompt, look } = talk;
  const session: Session = { day: first, saved: 0, broken: false, toMend: [] };
  await talk.say(() => GREETING);
  for (;;) {
    const mending = prompt.hasMore() ? undefined : session.toMend.shift();
    const given = mending === undefined ? '' : undated(mending.given, session.day);
    const asked = await prompt.ask(`${dayText(session.day, { ...look, machine: false })}: `, given);
    if (asked.kind === 'left') {
      const last = mending !== undefined && asked.words === given ? mending.own : asked.words;
      await talk.say(() => farewell(session, last));
      return session.broken ? EXIT.noFile : EXIT.answered;
    }
    const alone = dayAlone(asked.words, from);
    const line = alone === null ? datedLine(asked.words, session.day, from) : '';
    session.day = alone ?? session.day;
    if (line !== '') await take(talk, session, line, mending);
  }
}

/** Saves a line, or keeps it for mending. */
async function take(talk: Talk, session: Session, line: string, mending: Mending | undefined): Promise<void> {
  const { desk, look } = talk;
  const outcome = desk.write([line], talk.wish);
  switch (outcome.kind) {
    case 'done':
      session.saved += outcome.answer.saved ? 1 : 0;
      session.broken = false;
      // What was missing is declared now: the line that wanted it comes again.
      if (mending !== undefined && declares(line) && !declares(mending.own)) {
        session.toMend.unshift({ own: mending.own, given: mending.own });
      }
      await talk.say(() => savedText(outcome.answer, look));
      await talk.say(() => changesText(outcome.answer, look));
      outcome.notices.forEach(talk.warn);
      break;
    case 'refused':
      for (const bad of outcome.refused) {
        await talk.say(() => refusedText(bad, look));
        session.toMend.push({ own: line, given: isLine(bad.write) ? bad.write : bad.text });
      }
      break;
    case 'unsaved':
      [...outcome.notices, outcome.says].forEach(talk.warn);
      session.toMend.push({ own: line, given: line });
      session.broken = true;
  }
}

function isLine(write: string | null): write is string {
  return write !== null && /^\d{4}-\d{2}-\d{2}\s/.test(write);
}

function farewell({ saved, toMend, day }: Session, last: string): string {
  const lost = [...toMend.map(({ own }) => own), last].filter((words) => words.trim() !== '');
  return `\n${plural(saved, 'line')} saved\n${lost.map((words) => `not saved: ${undated(words, day)}\n`).join('')}`;
}
