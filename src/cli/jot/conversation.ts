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

/** Told with the first line that comes back. */
const MENDED = 'what can be written stands there now: Enter takes it, Ctrl-U clears it\n';

const HELP = `${GREETING}such lines:
  A1: chasing, male on female; lights off
  A1: eggs seen, about 80 "left cave"
  C1: water change 30 %
  room: all well
a line that is not understood comes back: Enter takes what stands there then,
Ctrl-U clears it
`;

/** Typed alone: what no line of a journal says. */
const ASKS = new Set(['?', 'help']);
const LEAVES = new Set(['exit', 'quit', 'end']);

/** What has been going on at the prompt. */
interface Session {
  day: Day;
  saved: number;
  /** The disk refused a line that nobody has saved since. */
  broken: boolean;
  readonly toMend: Mending[];
  /** How a line that comes back is taken or cleared was told. */
  told: boolean;
}

/** Talks until the keeper leaves, days told as seen from `from`. Ends with a failure where the last line could not be saved. */
export async function converse(talk: Talk, first: Day, from: Day): Promise<Exit> {
  const session: Session = { day: first, saved: 0, broken: false, toMend: [], told: false };
  await talk.say(() => GREETING);
  for (;;) {
    const { words, left, mending } = await ask(talk, session);
    const word = words.trim().toLowerCase();
    if (left || LEAVES.has(word)) {
      await talk.say(() => farewell(session, left ? words : (mending?.own ?? '')));
      return session.broken ? EXIT.noFile : EXIT.answered;
    }
    if (ASKS.has(word)) {
      await talk.say(() => HELP);
      if (mending !== undefined) session.toMend.unshift(mending);
      continue;
    }
    const alone = dayAlone(words, from);
    const line = alone === null ? datedLine(words, session.day, from) : '';
    session.day = alone ?? session.day;
    if (line !== '') await take(talk, session, line, mending);
  }
}

interface Told {
  /** Where the keeper left: what stood there, a line that came back in its own words. */
  readonly words: string;
  readonly left: boolean;
  readonly mending: Mending | undefined;
}

/** Asks for a line, with one to mend filled in once nobody's words wait. */
async function ask({ prompt, look, say }: Talk, session: Session): Promise<Told> {
  const mending = prompt.hasMore() ? undefined : session.toMend.shift();
  const given = mending === undefined ? '' : undated(mending.given, session.day);
  if (mending !== undefined && !session.told) await say(() => MENDED);
  session.told ||= mending !== undefined;
  const asked = await prompt.ask(`${dayText(session.day, { ...look, machine: false })}: `, given);
  const left = asked.kind === 'left';
  const words = left && mending !== undefined && asked.words === given ? mending.own : asked.words;
  return { words, left, mending };
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
