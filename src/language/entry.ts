/** Reads one entry: its date, its heading, its clauses, and what they come to. */
import { isParseFault, parseClauses, parseHeading } from '../../grammar/parse.ts';
import type { HeadingKind } from '../../grammar/phrases.ts';
import type { ClauseNode, DetailNode, Piece, VersusNode } from '../../grammar/syntax.ts';
import { openingAt } from '../../grammar/openings.ts';
import { cut } from '../../grammar/cut.ts';
import { Colon, Comma, endOf, Note, Time } from '../../grammar/tokens.ts';
import type { Token } from '../../grammar/tokens.ts';
import type { Day } from '../core/day.ts';
import { build } from './build/build.ts';
import type { Fact } from './build/build.ts';
import type { Conventions } from './conventions.ts';
import { dateOf, timeOf } from './dating.ts';
import { fault } from './faults.ts';
import type { Fault } from './faults.ts';
import { IMPLIED } from './fish.ts';
import { readHeading } from './heading.ts';
import type { ReadHeading } from './heading.ts';
import { isNameLike } from './line.ts';
import type { LineContext } from './line.ts';
import { noClause, unreadClause } from './messages.ts';
import { paidFor } from './paid.ts';
import { severalTanks } from './severaltanks.ts';
import { signFault } from './signfault.ts';
import { nearestPhrase } from './stray.ts';
import type { Names } from './names.ts';
import { foldPunctuation } from './punctuation.ts';

/** What one line came to. */
export interface ReadEntry {
  readonly day: Day | null;
  readonly minute: number | null;
  /** Empty where the line has faults that stop it. */
  readonly facts: readonly Fact[];
  /** The same, and those of a line with faults too: for its names only, never for the history. */
  readonly loose: readonly Fact[];
  readonly faults: readonly Fault[];
}

/** The parts of a line before its clauses are read. */
export interface OpenedEntry {
  readonly line: LineContext;
  readonly minute: number | null;
  readonly tokens: readonly Token[];
  /** First token after date and time. */
  readonly start: number;
  /** The colon after the heading; -1 where there is none. */
  readonly colon: number;
  readonly heading: ReadHeading | null;
}

/** Reads date, time and heading; null after a fault in the date. */
export function openEntry(text: string, names: Names, conventions: Conventions, faults: Fault[]): OpenedEntry | null {
  const folded = foldPunctuation(text);
  const tokens = cut(folded);
  const day = dateOf(text, tokens[0], faults);
  if (day === null) return null;
  const line: LineContext = { text, day, names, conventions, faults };
  for (const token of tokens) {
    const found = signFault(line, token);
    if (found !== null) faults.push(found);
  }
  const timed = tokens[1]?.tokenType === Time;
  const minute = timed ? timeOf(tokens[1], faults) : null;
  const start = timed ? 2 : 1;
  const colon = tokens.findIndex((token, index) => index >= start && token.tokenType === Colon);
  const heading = colon < 0 ? null : headingOf(line, tokens, start, colon);
  return { line, minute, tokens, start, colon, heading };
}

function headingOf(line: LineContext, tokens: readonly Token[], start: number, colon: number): ReadHeading | null {
  const dash = tokens
    .slice(start, colon)
    .find((token) => token.tokenType === Comma && line.text[token.startOffset] !== ',');
  if (dash !== undefined) {
    // Folding has made it a comma, which would mean two tanks where perhaps a row of them is meant.
    const at = { from: dash.startOffset, to: endOf(dash) };
    line.faults.push(
      fault(
        'dash-in-heading',
        at,
        'a dash in a heading: `to` for all from one to the other, a comma for the two',
        'to',
      ),
    );
    return null;
  }
  const clause = severalTanks(line, tokens, start, colon) ?? clauseAsHeading(line, tokens, start, colon);
  if (clause !== null) {
    line.faults.push(clause);
    return null;
  }
  const node = parseHeading(tokens, start, colon);
  if (!isParseFault(node)) return readHeading(line, node);
  const [first, last] = [tokens[start], tokens[colon - 1]];
  const whole =
    first && last && colon > start ? { from: first.startOffset, to: endOf(last) } : endOfDate(tokens, start);
  if (!line.faults.some(({ from, to }) => from < whole.to && to > whole.from)) {
    line.faults.push(fault('no-heading', whole, 'before the colon stands who or what the line is about'));
  }
  return null;
}

/** `to do: buy salt`: what the room is told, with its colon in the wrong place. */
function clauseAsHeading(line: LineContext, tokens: readonly Token[], start: number, colon: number): Fault | null {
  const first = tokens[start];
  if (first === undefined || first.tokenType === Note || line.names.isName(first.image)) return null;
  // One word with a capital is rather a name that is not declared yet.
  if (colon === start + 1 && isNameLike(first.image)) return null;
  const opening = openingAt(tokens, start, { heading: 'room', ...line.names }, true);
  if (opening === null || opening.head !== start || opening.end !== colon || opening.kind === 'two readings')
    return null;
  const at = { from: first.startOffset, to: endOf(tokens[colon - 1] ?? first) };
  const says = 'who or what is it about? That stands before a colon';
  return { ...fault('no-heading', at, says), edit: { from: at.from, to: at.from, text: 'room: ' } };
}

function endOfDate(tokens: readonly Token[], start: number): Piece {
  const before = tokens[start - 1];
  const at = before === undefined ? 0 : endOf(before);
  return { from: at, to: at };
}

/** Reads one line whole. Never throws, whatever the line. */
export function readEntry(text: string, names: Names, conventions: Conventions): ReadEntry {
  const faults: Fault[] = [];
  if (text.length > LONGEST_LINE) return tooLong(text);
  const opened = openEntry(text, names, conventions, faults);
  if (opened === null) return { day: null, minute: null, facts: [], loose: [], faults };
  const facts = factsOf(opened);
  const stops = faults.some(({ doubt }) => doubt !== true);
  return { day: opened.line.day, minute: opened.minute, facts: stops ? [] : facts, loose: facts, faults };
}

/** Nobody jots ten thousand signs on one line: such a line is some other file's, and is not tried. */
const LONGEST_LINE = 10_000;

function tooLong(text: string): ReadEntry {
  const says = `a line of ${String(text.length)} signs is none of a journal's: ${String(LONGEST_LINE)} at most are read`;
  const wrong = fault('line-too-long', { from: 0, to: Math.min(text.length, 60) }, says);
  return { day: null, minute: null, facts: [], loose: [], faults: [wrong] };
}

function factsOf(opened: OpenedEntry): readonly Fact[] {
  const { line, tokens, start, colon } = opened;
  const first = tokens[start];
  if (colon < 0 && first?.tokenType === Note) return clausesOf(opened, ROOM, start);
  if (colon < 0) {
    missingColon(opened);
    return [];
  }
  if (opened.heading === null) return [];
  if (colon + 1 >= tokens.length) {
    if (opened.heading.declaration !== null) return clausesOf(opened, opened.heading, colon + 1);
    if (line.faults.length === 0)
      line.faults.push(fault('nothing-said', endOfDate(tokens, colon + 1), 'after the colon stands nothing'));
    return [];
  }
  return clausesOf(opened, opened.heading, colon + 1);
}

const ROOM: ReadHeading = { kind: 'room', subjects: [{ kind: 'room' }], fish: IMPLIED, declaration: null };

function clausesOf(opened: OpenedEntry, heading: ReadHeading, at: number): readonly Fact[] {
  const { line, tokens } = opened;
  const parsed = parseClauses(tokens, at, heading.kind, line.names);
  for (const tag of parsed.faults) line.faults.push(noClause(line, tag, heading.kind, tokens));
  for (const unread of parsed.unread) line.faults.push(...unreadClause(line, unread, heading.kind));
  doubtNote(line, parsed.clauses, heading.kind);
  // `A1: -`
  if (parsed.clauses.length === 0 && line.faults.length === 0 && heading.declaration === null)
    line.faults.push(fault('nothing-said', endOfDate(tokens, at), 'after the colon stands nothing'));
  line.faults.push(...paidFor(line, parsed.clauses));
  return build(line, heading, restGiven(line, versusGiven(parsed.clauses)));
}

/** `X on Y` alone names the doer of that line's dispute where there is one. */
function versusGiven(clauses: readonly ClauseNode[]): readonly ClauseNode[] {
  const isVersus = (detail: ClauseNode['details'][number]): detail is VersusNode => detail.type === 'versus';
  const alone = clauses.find(({ kind }) => kind === 'on each other');
  const versus = alone?.details.find(isVersus);
  const sign = clauses.find(({ kind, details }) => kind === 'sign' && !details.some(isVersus));
  if (alone === undefined || versus === undefined || sign === undefined) return clauses;
  const extra = alone.details.filter((detail) => !isVersus(detail));
  return clauses
    .filter((clause) => clause !== alone)
    .map((clause) => (clause === sign ? { ...clause, details: [...clause.details, versus, ...extra] } : clause));
}

/** `moved 20 to C1; wc 30 %; rest stay`: said of the last move before it, whatever stands between. */
function restGiven(line: LineContext, clauses: readonly ClauseNode[]): readonly ClauseNode[] {
  let given = clauses;
  for (const rest of clauses.filter(({ kind }) => kind === 'rest stays')) {
    const move = given.findLast(({ kind, from }) => kind === 'moved' && from < rest.from);
    const { head } = rest;
    if (move === undefined) {
      const said = line.text.slice(head.from, head.to);
      const says = `«${said}» tells of a move that some were left: no move stands before it`;
      line.faults.push(fault('something-missing', head, says));
    }
    const stay: DetailNode = { type: 'link', link: 'restStay', values: [], from: head.from, to: head.to };
    given = given
      .filter((clause) => clause !== rest)
      .map((clause) => (clause === move ? { ...clause, details: [...clause.details, stay, ...rest.details] } : clause));
  }
  return given;
}

/** `note` runs to the end of the line: what looks like a clause after a `;` in it is text. */
function doubtNote(line: LineContext, clauses: readonly ClauseNode[], heading: HeadingKind): void {
  const note = clauses.find(({ kind }) => kind === 'note');
  if (note === undefined) return;
  const text = foldPunctuation(line.text);
  for (let at = text.indexOf(';', note.from); at >= 0; at = text.indexOf(';', at + 1)) {
    const after = cut(text.slice(at + 1, at + 80));
    if (openingAt(after, 0, { heading, ...line.names }, true) === null) continue;
    const says = 'a note runs to the end of the line: what stands after this `;` is read as its text';
    const clauses = line.text.slice(at + 1).trim();
    const parted = `${line.text.slice(0, note.from)}${clauses}; ${line.text.slice(note.from, at).trim()}`;
    line.faults.push({ ...fault('clause-in-note', { from: at, to: at + 1 }, says), doubt: true, line: parted });
    return;
  }
}

/** Words at most that a heading without its colon is looked for in. */
const LONGEST_HEADING = 8;

/** No colon: where a heading is followed by a clause, shows the line mended. */
function missingColon(opened: OpenedEntry): void {
  const { line, tokens, start } = opened;
  if (line.faults.length > 0) return;
  for (let end = Math.min(tokens.length - 1, start + LONGEST_HEADING); end > start; end -= 1) {
    const node = parseHeading(tokens, start, end);
    const heading = isParseFault(node) ? null : readHeading({ ...line, faults: [] }, node);
    if (heading === null || heading.subjects.length === 0) continue;
    const last = tokens[end - 1];
    const at = last === undefined ? 0 : endOf(last);
    const opens = openingAt(tokens, end, { heading: heading.kind, ...line.names }, heading.declaration === null);
    // `birch ded`
    const slip = opens === null ? nearestPhrase(tokens.slice(end), heading.kind) : null;
    if (opens === null && slip === null) continue;
    const slipped = slip === null ? undefined : tokens[end + slip.words - 1];
    const first = tokens[start]?.startOffset ?? 0;
    const says = 'between who the line is about and what happened stands a colon';
    const edit =
      slip === null || slipped === undefined
        ? { from: at, to: at, text: ':' }
        : { from: at, to: endOf(slipped), text: `: ${slip.phrase}` };
    line.faults.push({ ...fault('missing-colon', { from: first, to: at }, says), edit });
    return;
  }
  const from = tokens[start]?.startOffset ?? line.text.length;
  const room = openingAt(tokens, start, { heading: 'room', ...line.names }, true) !== null;
  const says = 'who or what is it about? That stands before a colon';
  line.faults.push({
    ...fault('no-heading', { from, to: Math.max(from, line.text.trimEnd().length) }, says),
    edit: room ? { from, to: from, text: 'room: ' } : null,
  });
}
