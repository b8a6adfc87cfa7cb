/** From faults to problems: every problem comes with a line that would be read. */
import type { Problem } from '../core/problem.ts';
import { DECLARING } from '../../grammar/reserved.ts';
import { cut } from '../../grammar/cut.ts';
import { Colon, Comma, DateToken, endOf, Note, Semicolon, Time } from '../../grammar/tokens.ts';
import { applyEdits, asRemark } from './faults.ts';
import type { Edit, Fault } from './faults.ts';
import { foldPunctuation } from './punctuation.ts';

/** Says whether a line, as it stands, would be read. */
export type Reads = (text: string) => boolean;

interface Where {
  readonly file: string;
  readonly line: number;
}

/** More problems of one line than these help nobody. */
const MOST_TOLD = 20;

/** So much of a line that is too long is kept as a note. */
const KEPT = 160;

/** Longer lines than this are not tried again: the keeper sees the place. */
const LONGEST_MENDED = 2000;

/** The problems of one line. `today` is the day to write where the line has none. */
export function problemsOf(
  text: string,
  faults: readonly Fault[],
  where: Where,
  today: string,
  reads: Reads,
): Problem[] {
  if (faults.length === 0) return [];
  const mended = mend(text, faults, today, reads);
  const alone = faults.filter((each) => each.line === undefined && each.doubt !== true).length === 0;
  const seen = new Set<string>();
  const problems: Problem[] = [];
  for (const { kind, from, to, says, also, doubt, line } of faults) {
    const key = `${String(from)} ${kind} ${says}`;
    if (seen.has(key)) continue;
    seen.add(key);
    const at = { file: where.file, line: where.line, from: clampTo(from, text), to: clampTo(Math.max(from, to), text) };
    const weight = doubt === true ? 'doubt' : 'stops';
    // A declaration alone mends nothing where something else is wrong with the line.
    const write = line !== undefined && alone && reads(line) ? line : mended;
    problems.push({ kind, weight, says, write, at, also: also ?? [] });
  }
  return problems.sort((a, b) => a.at.from - b.at.from).slice(0, MOST_TOLD);
}

function clampTo(offset: number, text: string): number {
  return Math.min(Math.max(0, offset), text.length);
}

/** The line with everything mended that can be, if it is then read; else what is not read kept as a note. */
function mend(text: string, faults: readonly Fault[], today: string, reads: Reads): string {
  const edits = faults.map(({ edit }) => edit).filter((edit) => edit !== null);
  if (text.length > LONGEST_MENDED) return asNote(text.slice(0, KEPT), today, reads);
  const others = faults.map(({ edit, otherwise }) => otherwise ?? edit).filter((edit) => edit !== null);
  for (const tried of [edits, others]) {
    const edited = tried.length > 0 ? applyEdits(text, remarksJoined(text, tried)).trim() : text;
    if (edited !== text && (reads(edited) || edited.startsWith('#'))) return edited;
  }
  return partsAndNote(text, reads) ?? asNote(withDate(text, faults), today, reads);
}

/** What can only be kept as a note is kept on the day that the line surely means. */
function withDate(text: string, faults: readonly Fault[]): string {
  const edit = faults.find(({ kind }) => kind === 'date-form' || kind === 'no-such-date')?.edit ?? null;
  return edit === null || text.slice(0, edit.from).trim() !== '' ? text : applyEdits(text, [edit]);
}

/** Words beside each other that become remarks become one: a clause has one. */
function remarksJoined(text: string, edits: readonly Edit[]): readonly Edit[] {
  const joined: Edit[] = [];
  for (const edit of [...edits].sort((a, b) => a.from - b.from)) {
    const before = joined.at(-1);
    const both = before?.text.startsWith('"') === true && edit.text.startsWith('"');
    if (before !== undefined && both && edit.from >= before.to && /^[\s,]*$/.test(text.slice(before.to, edit.from))) {
      const whole = { from: before.from, to: edit.to };
      joined[joined.length - 1] = { ...whole, text: asRemark(text.slice(whole.from, whole.to)) };
    } else joined.push(edit);
  }
  return joined.map((edit) => withoutComma(text, edit));
}

/** A remark follows its clause without a comma. */
function withoutComma(text: string, edit: Edit): Edit {
  const comma = edit.text.startsWith('"') ? /\s*,\s*$/.exec(text.slice(0, edit.from))?.[0].length : undefined;
  return comma === undefined ? edit : { from: edit.from - comma, to: edit.to, text: ` ${edit.text}` };
}

/** So many parts at most are tried one by one. */
const MOST_PARTS = 6;

/** The parts of a line that are read, and the others as a note after them; null where no part is. */
function partsAndNote(text: string, reads: Reads): string | null {
  const tokens = cut(foldPunctuation(text));
  const colon = tokens.findIndex(({ tokenType }) => tokenType === Colon);
  const last = tokens.at(-1);
  if (colon < 0 || last === undefined || tokens.some(({ tokenType }) => tokenType === Note)) return null;
  // What stands before a second colon is another heading: what follows it is said of that and not of this one.
  const starts = tokens.filter(({ tokenType }, at) => at === colon || (at > colon && PARTING.has(tokenType)));
  const ends = [...starts.slice(1).map(({ startOffset }) => startOffset), endOf(last)];
  const parts = starts.map((start, index) => ({ from: endOf(start), to: ends[index] ?? endOf(last) }));
  if (parts.length < 2 || parts.length > MOST_PARTS) return null;
  const head = text.slice(0, endOf(tokens[colon] ?? last));
  const kept: string[] = [];
  const noted: string[] = [];
  for (let at = 0; at < parts.length;) {
    const from = parts[at]?.from ?? 0;
    const said = parts.slice(at).map(({ to }) => text.slice(from, to).trim());
    // After words that stay unread a comma parts nothing: only what would begin a clause anywhere is one.
    const apart = at === 0 || noted.length === 0 || text[from - 1] === ';' ? '' : ' all well,';
    const length = said.length - said.toReversed().findIndex((words) => reads(`${head}${apart} ${words}`));
    if (length <= said.length) kept.push(said[length - 1] ?? '');
    else noted.push(said[0] ?? '');
    at += length <= said.length ? length : 1;
  }
  const line = `${head} ${kept.join('; ')}; note ${noted.join(', ')}`;
  return kept.length > 0 && noted.length > 0 && reads(line) ? line : null;
}

const PARTING = new Set([Comma, Semicolon]);

function asNote(text: string, today: string, reads: Reads): string {
  const tokens = cut(foldPunctuation(text));
  const dated = tokens[0]?.tokenType === DateToken ? tokens[0] : null;
  const timed = dated !== null && tokens[1]?.tokenType === Time ? tokens[1] : null;
  const colon = tokens.find((token) => token.tokenType === Colon);
  const start = timed ?? dated;
  const rest = (from: number): string =>
    text
      .slice(from)
      .replace(/[\0-\x1f]+/g, ' ')
      .replace(/^\s*note\b:?/i, '')
      .trim();
  const after = start === null ? 0 : endOf(start);
  const declares = DECLARING.has(tokens[timed === null ? 1 : 2]?.image.toLowerCase() ?? '');
  // A declaration that says nothing but a note would be one all the same.
  if (colon !== undefined && start !== null && !declares) {
    const kept =
      `${text.slice(start === dated ? dated.startOffset : 0, endOf(colon))} note ${rest(endOf(colon))}`.trim();
    if (reads(kept)) return kept;
  }
  const day = dated === null ? today : dated.image;
  const kept = `${day} note ${rest(after)}`.trim();
  if (reads(kept)) return kept;
  const undated = `${today} note ${rest(after)}`.trim();
  return reads(undated) ? undated : `${today} note …`;
}
