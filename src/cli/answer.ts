/**
 * What every command that answers a question does: open the journal, ask, show the answer as text or
 * as JSON on standard output, and say on standard error what was left out.
 */
import type { LineRef } from '../core/span.ts';
import { buyersOf } from '../questions/buyers.ts';
import type { Look } from '../reports/look.ts';
import { dayJson, jsonText } from '../reports/json.ts';
import { nameHider, withoutNames } from '../reports/names.ts';
import { colours, PLAIN, wantsColour } from '../reports/paint.ts';
import { printableAnswer } from '../reports/printable.ts';
import { loadWidths, needsWidths } from '../reports/width.ts';
import { USUAL_WIDTH } from '../reports/wrap.ts';
import type { Reading } from '../language/reading.ts';
import type { Room } from '../state/draft.ts';
import type { Context } from './context.ts';
import type { Exit } from './exit.ts';
import { EXIT } from './exit.ts';
import type { Get } from './flags.ts';
import { COMMON, NAMES } from './flags.ts';
import type { Journal } from './journal.ts';
import { leftOutWords, openJournal } from './journal.ts';
import { tell } from './tell.ts';

export interface Shown<A> {
  /** The answer, from the room on the day asked about. */
  ask(room: Room, journal: Journal): A;
  text(answer: A, look: Look): string;
  /** Keys of the answer's JSON after `version`, `on` and `leftOut`. */
  json(answer: A): object;
}

/** Answers one question; the exit status is 1 only under `--whole` with lines left out. */
export async function answer<A>(context: Context, get: Get, shown: Shown<A>): Promise<Exit> {
  const journal = await openJournal(context, get);
  const room = journal.room();
  const found = shown.ask(room, journal);
  const leftOut = journal.leftOut(room);
  if (get(COMMON.json)) {
    const body = shown.json(found);
    const whole = { version: 1, on: dayJson(journal.on), leftOut: leftOut.length, ...body };
    context.out.write(jsonText(discreet(get, journal.latest, whole)));
  } else {
    const look = await lookOf(context, journal);
    await show(context, () => shown.text(found, look));
  }
  return tellLeftOut(context, get, leftOut);
}

/** An answer for other programs, without buyers' names unless they are asked for. */
export function discreet(get: Get, reading: Reading, body: object): object {
  return get(NAMES) ? body : withoutNames(body, hiddenIn(reading));
}

/** The same for the texts of pages and calendars. */
export function discreetText(get: Get, reading: Reading): (text: string) => string {
  return get(NAMES) ? (text) => text : nameHider(hiddenIn(reading));
}

/** A buyer called like a tank or a pair is hidden as a buyer only: the answer speaks of the other. */
function hiddenIn({ events, behind, declared }: Reading): readonly string[] {
  return buyersOf(events, behind?.buyers).filter((name) => !declared.names.isName(name));
}

/** Prints text on standard output, harmless for a terminal. */
export function say(context: Context, text: string): void {
  context.out.write(printableAnswer(text, wantsColour({ isTTY: context.out.isTTY, env: context.env })));
}

/** Prints an answer; where it holds text of which the width is not plain, it is drawn again with true widths. */
export async function show(context: Context, draw: () => string): Promise<void> {
  const text = draw();
  if (!needsWidths(text)) {
    say(context, text);
    return;
  }
  await loadWidths();
  say(context, draw());
}

/** How standard output wants to be written to. */
export async function lookOf(context: Context, { on, today }: Pick<Journal, 'on' | 'today'>): Promise<Look> {
  return { ...(await lookNow(context)), on, projected: on > today };
}

/** The same for what asks about no day. */
export async function lookNow(context: Context): Promise<Pick<Look, 'width' | 'paint' | 'machine'>> {
  const { isTTY, columns } = context.out;
  const paint = wantsColour({ isTTY, env: context.env }) ? await colours() : PLAIN;
  const width = isTTY && columns !== null && columns > 0 ? columns : USUAL_WIDTH;
  return { width, paint, machine: !isTTY };
}

/** Says on standard error which lines were left out; the status that follows from it. */
export function tellLeftOut(context: Context, get: Get, leftOut: readonly LineRef[]): Exit {
  const words = leftOutWords(leftOut);
  if (words === null) return EXIT.answered;
  tell(context, words);
  return get(COMMON.whole) ? EXIT.journalWrong : EXIT.answered;
}
