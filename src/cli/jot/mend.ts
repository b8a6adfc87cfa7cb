/** Lines that were not read: what can be put right without asking, and what to offer. Each is tried before it is said. */
import type { Problem } from '../../core/problem.ts';
import { asNote, declares, withColon } from '../../language/jotted.ts';
import { lineToWrite } from '../../reports/mended.ts';
import type { Book, Judged, JudgedLine } from './judge.ts';
import { judge, mayBeRead } from './judge.ts';

const DATED = /^\d{4}-\d{2}-\d{2}\s/;

/** The journal's text and the lines before the one that is tried. */
interface Above {
  readonly book: Book;
  readonly text: string;
  readonly lines: readonly string[];
}

/** The first of these lines that would be read whole in that place, or null. */
function firstRead({ book, text, lines }: Above, tries: readonly string[]): string | null {
  const reads = (line: string): boolean => {
    const all = [...lines, line];
    return mayBeRead(book, text, all, lines.length) && isRead(judge(book, text, all), lines.length);
  };
  return tries.find(reads) ?? null;
}

function isRead(judged: Judged, index: number): boolean {
  const line = judged.lines[index];
  return line !== undefined && line.problems.every(({ weight }) => weight !== 'stops');
}

/**
 * The line as it was surely meant: with the colon that it lacks. Where the language reads it so and the room
 * refuses it, that is the true cause. Null where nothing is sure.
 */
export function mended(above: Above, line: string): string | null {
  const { book, text, lines } = above;
  const tries = withColon(line).filter((each) => mayBeRead(book, text, [...lines, each], lines.length));
  return firstRead(above, tries) ?? tries[0] ?? null;
}

/** What to write instead: a line that would be read, else the advice of the problem; null without either. */
export function offered(above: Above, line: string, problems: readonly Problem[]): string | null {
  const bad = problems.filter(({ weight }) => weight === 'stops');
  const [first] = bad;
  const date = line.slice(0, 11);
  const full = (problem: Problem, of: string): string => {
    const write = lineToWrite(problem, of);
    return DATED.test(write) || !DATED.test(date) ? write : `${date}${write}`;
  };
  const told = [...bad.map((problem) => full(problem, line)), ...withColonTold(above, line, full)];
  const better = told.filter((write) => isNote(write) === isNote(line) && declares(write) === declares(line));
  // What the language would read the room may still refuse: `died 2` of one of two stocks.
  const further = better.flatMap((write) => stopping(above, write).map((problem) => full(problem, write)));
  const read = firstRead(above, [...better, ...further, ...told]);
  if (read !== null || first === undefined) return read;
  // A whole line that the room refuses helps nobody: the words can still be kept.
  return (DATED.test(first.write) ? noted(above, line) : null) ?? first.write;
}

/** What stops a line that stands behind those lines. */
function stopping({ book, text, lines }: Above, line: string): readonly Problem[] {
  const all = [...lines, line];
  if (!mayBeRead(book, text, all, lines.length)) return [];
  const judged = judge(book, text, all).lines[lines.length];
  return judged?.problems.filter(({ weight }) => weight === 'stops') ?? [];
}

/** What would be written for the line with its colon, where that alone does not mend it: `A1 lost 2`. */
function withColonTold(
  { book, text, lines }: Above,
  line: string,
  full: (problem: Problem, of: string) => string,
): readonly string[] {
  return withColon(line).flatMap((each) => {
    const judged = judge(book, text, [...lines, each]).lines[lines.length];
    const bad = judged?.problems.filter(({ weight }) => weight === 'stops') ?? [];
    // Only where something is said of who the line is about: else each of its words might be somebody.
    return bad.length === 1 && bad[0]?.kind === 'two-readings' ? [full(bad[0], each)] : [];
  });
}

/** Keeping the words as they are is the last resort. */
function isNote(line: string): boolean {
  return /(?:^|[\s:])note\s/i.test(line);
}

/** The words as a note, where even that can be read. */
export function noted(above: Above, line: string): string | null {
  return firstRead(above, asNote(line));
}

/** What came of a few lines: all as they will stand, mended where that was sure, or each as a note. */
export function judgeMending(book: Book, text: string, lines: readonly string[], asNotes: boolean): Judged {
  const judged = asNotes ? null : judge(book, text, lines);
  const wrong = lines.map((_, index) => index).filter((index) => judged === null || !isRead(judged, index));
  let tried = [...lines];
  for (const index of wrong.slice(0, asNotes ? wrong.length : MOST_MENDED)) {
    const above = { book, text, lines: tried.slice(0, index) };
    const line = tried[index] ?? '';
    tried = tried.with(index, (asNotes ? noted(above, line) : mended(above, line)) ?? line);
  }
  return judged !== null && wrong.length === 0 ? judged : judge(book, text, tried);
}

/** Each line tried means a reading of the whole journal. */
const MOST_MENDED = 20;

/** A line that is not saved, with what to write instead. */
export function refusal(
  book: Book,
  text: string,
  judged: Judged,
  index: number,
): { line: JudgedLine; write: string | null } | null {
  const line = judged.lines[index];
  if (line === undefined || isRead(judged, index)) return null;
  const lines = judged.lines.slice(0, index).map((each) => each.text);
  return { line, write: offered({ book, text, lines }, line.text, line.problems) };
}
