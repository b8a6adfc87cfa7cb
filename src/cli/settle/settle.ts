/**
 * Results of an auction on their way into the journal: read, reckoned against the room of that day, judged
 * as the lines that they would be, added in one append or not at all. What changed meanwhile is judged again.
 */
import type { Day } from '../../core/day.ts';
import { isoDay, toDay } from '../../core/day.ts';
import type { Problem } from '../../core/problem.ts';
import type { DeepReadonly } from '../../core/readonly.ts';
import type { Files } from '../../files/port.ts';
import { dated } from '../../language/jotted.ts';
import type { Reading } from '../../language/reading.ts';
import { changes, type Changes } from '../../questions/changes.ts';
import { checkJournal } from '../../questions/check.ts';
import { doneLine, settle, type Settled, type Settlement } from '../../questions/settle.ts';
import type { Result, Wrong } from '../../questions/settle/result.ts';
import { takings } from '../../questions/settle/takings.ts';
import { doneBefore } from '../../questions/settle/wrong.ts';
import type { JotAnswer } from '../../reports/jot.ts';
import type { SettleAnswer } from '../../reports/settle.ts';
import type { Room } from '../../state/draft.ts';
import type { Auction } from '../../state/sale.ts';
import { auctionOf } from '../auction.ts';
import { EXIT, misuse, Stop } from '../exit.ts';
import { closed } from '../jot/desk.ts';
import type { Book, Judged } from '../jot/judge.ts';
import { judge } from '../jot/judge.ts';

/** What was handed in: a sheet with a row for each lot, or lines as the journal has them. */
export type Handed =
  | { readonly kind: 'sheet'; readonly results: readonly Result[]; readonly wrong: readonly Wrong[] }
  | { readonly kind: 'lines'; readonly lines: readonly { readonly line: number; readonly words: string }[] };

export interface Case {
  readonly book: Book;
  readonly auction: string;
  /** The day on which it is settled: no auction to come. */
  readonly on: Day;
  readonly quarantine: number;
  readonly handed: Handed;
}

export type Verdict =
  | {
      readonly ok: true;
      readonly lines: readonly string[];
      readonly answer: SettleAnswer;
      /** The journal with them. */
      readonly reading: Reading;
    }
  | { readonly ok: false; readonly auction: string; readonly wrong: readonly Wrong[] };

/** How an auction is settled, for who named one that is none. */
export const SETTLES = (name: string): string => `tankside settle ${name} results.csv`;

/** What the results come to in a journal of that text. Throws a `Stop`: no such auction, or it is still to come. */
export function verdict({ book, auction: asked, on, quarantine, handed }: Case, text: string): Verdict {
  const reading = book.read(text);
  const now = book.fold(reading, on);
  const auction = auctionOf(now, asked, SETTLES);
  const held = auction?.on ?? null;
  if (auction === null || held === null) throw misuse('which auction?', 'tankside settle Autumn results.csv');
  if (held > on) {
    const says = `${auction.name} is on ${isoDay(held)}: there is nothing to settle yet`;
    throw misuse(says, `tankside sale --for ${auction.name}`);
  }
  const settled: Settled =
    handed.kind === 'lines'
      ? asWritten(now, auction, held, handed.lines)
      : settle(book.fold(reading, held), now, handed, { auction, on: held, quarantine });
  if (!settled.ok) return { ...settled, auction: auction.name };
  const { lines, home } = settled.settlement;
  const judged = judge(
    { ...book, today: toDay(Math.max(book.today, on)) },
    text,
    lines.map((line) => line.text),
  );
  const wrong = wrongIn(judged, lines);
  if (wrong.length > 0) return { ok: false, auction: auction.name, wrong };
  const all = judged.lines.map((line) => line.text);
  const taken = takings(judged.after, auction.name, held, { file: book.file, from: firstOf(text) });
  const jotted: JotAnswer = {
    saved: false,
    lines: judged.lines,
    elsewhere: [...judged.elsewhere, ...doubts(book, text, all, judged, on)],
    cautions: [],
    changes: withoutSteps(changes(judged.before, judged.after)),
  };
  return { ok: true, lines: all, answer: { taken, home, jotted }, reading: withLines(book, text, all) };
}

/** The steps before the auction are over, and that is no news. */
function withoutSteps(changed: Changes): Changes {
  return { ...changed, over: changed.over.filter(({ kind }) => kind !== 'auction') };
}

/** Lines of the keeper's own, dated on the auction's day where they have no date. */
function asWritten(
  now: Room,
  auction: DeepReadonly<Auction>,
  held: Day,
  lines: Extract<Handed, { kind: 'lines' }>['lines'],
): Settled {
  const wrong = doneBefore(now, auction, held);
  if (wrong.length > 0) return { ok: false, wrong };
  const told = lines.map(({ line, words }) => ({ text: dated(words, held), from: [line] }));
  return { ok: true, settlement: { lines: [...told, doneLine(auction.name, held)], home: { back: [], cautions: [] } } };
}

/** What the reading and the room say against the lines, told of the rows that they come from. */
function wrongIn(judged: Judged, lines: Settlement['lines']): Wrong[] {
  const stops = (problems: readonly Problem[]): readonly Problem[] =>
    problems.filter(({ weight, kind }) => weight === 'stops' || kind === 'counts-contradict');
  const own = judged.lines.flatMap(({ problems }, index) =>
    stops(problems).map(({ says, write }): Wrong => ({ line: lines[index]?.from[0] ?? null, says, write })),
  );
  const older = stops(judged.elsewhere).map(({ says, at, write }): Wrong => ({
    line: null,
    says: `with these results line ${String(at.line)} of ${at.file} would not count: ${says}`,
    write,
  }));
  return [...own, ...older];
}

/** What `check` would ask after them and did not ask before: more promised than is left, say. */
function doubts(
  book: Book,
  text: string,
  lines: readonly string[],
  { before, after }: Judged,
  on: Day,
): readonly Problem[] {
  const today = toDay(Math.max(book.today, on));
  const old = checkJournal(book.read(text), before, today).problems;
  const now = checkJournal(withLines(book, text, lines), after, today).problems;
  const known = new Set([...old, ...before.problems, ...after.problems].map(keyOf));
  return now.filter((problem) => !known.has(keyOf(problem)));
}

function keyOf({ kind, says, at }: Problem): string {
  return JSON.stringify([kind, says, at.file, at.line]);
}

function withLines(book: Book, text: string, lines: readonly string[]): Reading {
  return book.read(`${closed(text)}${lines.join('\n')}\n`);
}

/** Number of the first line that would be added. */
function firstOf(text: string): number {
  return closed(text).split('\n').length;
}

/** Adds them under the lock; `saved` is only said of what is on the disk. Throws a `Stop` where it cannot be. */
export function write(
  files: Files,
  file: string,
  of: Case,
  text: string,
): Verdict & { readonly notices: readonly string[] } {
  let seen = text;
  let found = verdict(of, seen);
  const latest = (): Verdict => found;
  if (!found.ok) return { ...found, notices: [] };
  const result = files.append(file, (under) => {
    const now = under.read();
    if (!now.ok) return null;
    if (now.file.content.text !== seen) {
      seen = now.file.content.text;
      found = verdict(of, seen);
    }
    return found.ok ? found.lines : null;
  });
  const { notices } = result;
  const last = latest();
  if (!last.ok) return { ...last, notices };
  if (!result.saved) throw new Stop(EXIT.noFile, result.says ?? `${of.book.file} could not be read under its lock`);
  return { ...last, answer: { ...last.answer, jotted: { ...last.answer.jotted, saved: true } }, notices };
}
