/** The lines of a journal with those of the files that it reads in, each in its place. */
import { quoteText } from './clause.ts';
import { fault } from './faults.ts';
import type { Fault } from './faults.ts';
import { foldPunctuation } from './punctuation.ts';
import type { Fetch } from './reading.ts';
import { splitLines } from './split.ts';

/** One line that is neither blank nor a comment. */
export interface RawEntry {
  readonly file: string;
  readonly line: number;
  readonly text: string;
  /** What is wrong with an `also read` line; any other line has none yet. */
  readonly faults: readonly Fault[];
  /** True for `also read "…"` and a mark of a merge: nothing else is to be read in it. */
  readonly reads: boolean;
}

const NO_FAULTS: readonly Fault[] = [];

/** A blank line or a comment. */
export const NOTHING = /^\s*(?:#(?:\s|$)|$)/;
/** What git leaves around two versions of the same lines that it could not merge. */
const MERGE_MARK = /^(?:<{7}|={7}|>{7}|\|{7})(?:\s|$)/;
const ALSO = /^\s*also\s+read\b/i;
const ALSO_WHOLE = /^\s*also\s+read\s*("[^"]*")\s*(?:#(?:\s.*)?)?$/i;
/** A name without quotes, or with one of them. */
const ALSO_BARE = /^\s*also\s+read\s*:?\s*"?([^"#]*[^"#\s])"?\s*(?:#(?:\s.*)?)?$/i;

/** Whether a line is an entry of its own: no mark of a merge, and no other file read in. */
export function isPlain(line: string): boolean {
  return !MERGE_MARK.test(line) && !ALSO.test(line);
}

/** Lines of a file and of what it reads in, in the order of filing. Circles are found by the files' own names. */
export function* sourceLines(name: string, text: string, fetch: Fetch): Generator<RawEntry> {
  yield* linesOf(name, text, fetch, [name], new Set([name]));
}

function* linesOf(
  file: string,
  text: string,
  fetch: Fetch,
  open: readonly string[],
  done: Set<string>,
): Generator<RawEntry> {
  for (const { number, text: line } of splitLines(text)) {
    if (NOTHING.test(line)) continue;
    if (MERGE_MARK.test(line)) {
      yield { file, line: number, text: line, faults: [mergeMark(line)], reads: true };
      continue;
    }
    if (!ALSO.test(line)) {
      yield { file, line: number, text: line, faults: NO_FAULTS, reads: false };
      continue;
    }
    const also = alsoRead(file, line, fetch, open, done);
    yield { file, line: number, text: line, faults: also.faults, reads: true };
    if (also.read !== null) yield* linesOf(also.read.name, also.read.text, fetch, [...open, also.read.name], done);
  }
}

function mergeMark(line: string): Fault {
  const at = { from: 0, to: line.trimEnd().length };
  const says = 'a merge left this mark around two versions of the same lines: both count until one is taken out';
  return { ...fault('merge-mark', at, says), edit: comment(line, at) };
}

interface Also {
  readonly faults: readonly Fault[];
  readonly read: { readonly name: string; readonly text: string } | null;
}

function alsoRead(file: string, line: string, fetch: Fetch, open: readonly string[], done: Set<string>): Also {
  const folded = foldPunctuation(line);
  const match = ALSO_WHOLE.exec(folded);
  const whole = { from: line.length - line.trimStart().length, to: line.trimEnd().length };
  const asked = match?.[1];
  if (asked === undefined) {
    const name = ALSO_BARE.exec(folded)?.[1] ?? '2025.txt';
    const says = 'after `also read` comes the name of a file in quotes';
    return none(fault('also-read-form', whole, says, `also read "${name}"`));
  }
  const from = folded.indexOf('"');
  const at = { from, to: from + asked.length };
  const got = fetch(file, quoteText(line, at));
  // The line is then best left out: what is offered is a comment.
  const out = { ...at, from: whole.from };
  if (!got.ok)
    return none({
      ...fault('also-read', at, `«${quoteText(line, at)}» was not read: ${got.says}`),
      edit: comment(line, out),
    });
  if (open.includes(got.name)) {
    const says = `«${got.name}» reads itself in a circle: ${[...open, got.name].join(' → ')}`;
    return none({ ...fault('also-read-circle', at, says), edit: comment(line, out) });
  }
  if (done.has(got.name)) {
    return none({ ...fault('also-read-twice', at, `«${got.name}» is read in already`), edit: comment(line, out) });
  }
  done.add(got.name);
  return { faults: [], read: { name: got.name, text: got.text } };
}

function comment(line: string, at: { from: number; to: number }): NonNullable<Fault['edit']> {
  return { from: at.from, to: at.to, text: `# ${line.slice(at.from, at.to)}` };
}

function none(wrong: Fault): Also {
  return { faults: [wrong], read: null };
}
